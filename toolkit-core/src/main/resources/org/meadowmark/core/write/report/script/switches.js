/* Layer switches, which are the legend too. */

function swatch(layer, place) {
  var canvas = make('canvas', 'swatch');
  canvas.width = 52;
  canvas.height = 30;
  canvas.setAttribute('aria-hidden', 'true');
  canvas.dataset.layer = layer.key;
  canvas.dataset.place = place;
  return canvas;
}

function drawSwatches(c) {
  document.querySelectorAll('canvas.swatch').forEach(function (canvas) {
    var layer = layers[canvas.dataset.layer];
    var style = layer.classes[Number(canvas.dataset.place)].style;
    var g = canvas.getContext('2d');
    g.setTransform(2, 0, 0, 2, 0, 0);
    g.clearRect(0, 0, 26, 15);
    if (layer.key === 'marks') { drawMark(g, style, 13, 7.5, 4.2, c); return; }
    if (layer.key === 'repairs') { drawSite(g, 13, 7.5, 6, c); return; }
    looks(style, c, 0.5).forEach(function (look) {
      g.setLineDash(look.dash || []);
      g.lineWidth = Math.min(12, look.width || 1);
      g.strokeStyle = look.line || look.hatch;
      g.beginPath();
      if (layer.form === 'AREA') { g.rect(0.5, 0.5, 25, 14); } else { g.moveTo(0, 7.5); g.lineTo(26, 7.5); }
      if (look.fill && layer.form === 'AREA') {
        g.fillStyle = look.fill;
        g.fill();
        if (look.hatch) { hatch(g, look.hatch, { width: 26, height: 15 }); }
      }
      if (look.line) { g.stroke(); }
    });
  });
}

function switchLayer(layer, on) {
  layer.on = on;
  layer.box_.checked = on;
  layer.item.classList.toggle('off', !on);
  redraw();
}

var switches = byId('layers');
data.layers.slice().reverse().forEach(function (layer) {
  if (!layer.count) { return; }
  var item = make('div', 'layer' + (layer.on ? '' : ' off'));
  var words = make('label');
  var box = make('input');
  box.type = 'checkbox';
  box.checked = layer.on;
  box.id = 'layer-' + layer.key;
  words.appendChild(box);
  words.appendChild(make('span', '', phrase('layer.' + layer.key)));
  words.appendChild(make('span', 'soft', grouped(String(layer.count))));
  item.appendChild(words);
  var counts = layer.classes.map(function () { return 0; });
  for (var i = 0; i < layer.count; i++) { counts[classOf(layer, i)]++; }
  var list = make('ul');
  layer.classes.forEach(function (group, place) {
    if (!counts[place]) { return; }
    var line = make('li');
    line.appendChild(swatch(layer, place));
    line.appendChild(make('span', '', group.label));
    if (layer.classes.length > 1) { line.appendChild(make('span', 'soft', grouped(String(counts[place])))); }
    list.appendChild(line);
  });
  item.appendChild(list);
  switches.appendChild(item);
  layer.box_ = box;
  layer.item = item;
  box.addEventListener('change', function () { switchLayer(layer, box.checked); });
});
(function () {
  var item = make('div', 'layer on-screen');
  var words = make('label');
  var box = make('input');
  box.type = 'checkbox';
  box.checked = true;
  box.id = 'layer-graticule';
  words.appendChild(box);
  words.appendChild(make('span', '', phrase('graticule')));
  item.appendChild(words);
  switches.appendChild(item);
  box.addEventListener('change', function () { showGraticule = box.checked; drawOverlay(); });
})();
