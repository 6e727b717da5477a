/* The map on paper, and a handle for tests and the console. */

function paperMap() {
  var before = root.dataset.theme;
  root.dataset.theme = 'light';
  var day = readColours();
  var width = data.extent[2] - data.extent[0] || 1;
  var height = data.extent[3] - data.extent[1] || 1;
  var canvas = byId('paper-map');
  var across = 900;
  var margin = 34;
  var foot = 72;
  var down = Math.round(Math.max(420, Math.min(1000, (across - 2 * margin) * height / width + margin + foot)));
  canvas.width = 2 * across;
  canvas.height = 2 * down;
  var scale = Math.min((across - 2 * margin) / width, (down - margin - foot) / height);
  var view = viewOf(across, down, scale,
    (across - width * scale) / 2 - (data.extent[0] - data.origin[0]) * scale,
    (down - margin - foot + height * scale) / 2 + margin + (data.extent[1] - data.origin[1]) * scale);
  var g = canvas.getContext('2d');
  g.setTransform(2, 0, 0, 2, 0, 0);
  drawAll(g, view, day);
  drawFrame(g, view, day);
  scaleBar(g, view, day);
  drawSwatches(day);
  if (before === undefined) { delete root.dataset.theme; } else { root.dataset.theme = before; }
}

window.addEventListener('beforeprint', paperMap);
window.addEventListener('afterprint', function () { drawSwatches(colours); });

/* For tests and the console: where a feature is on the screen. */
window.reportMap = {
  map: map,
  place: function (key, id) {
    var layer = layers[key];
    for (var i = 0; i < layer.count; i++) {
      if (idOf(layer, i) === id) {
        var at = anchor(layer, i);
        var point = map.latLngToContainerPoint([at[1], at[0]]);
        return [Math.round(point.x), Math.round(point.y)];
      }
    }
    return null;
  },
  text: placeText,
  origin: data.origin
};
