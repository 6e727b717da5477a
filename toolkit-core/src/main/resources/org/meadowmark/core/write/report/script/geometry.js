/* Reads the packed geometry and finds what is near a place. */

function unpack(layer) {
  var raw = atob(layer.geometry);
  var at = 0;
  function number() {
    var value = 0;
    var place = 1;
    var byte;
    do {
      byte = raw.charCodeAt(at++);
      value += (byte & 127) * place;
      place *= 128;
    } while (byte & 128);
    return value;
  }
  function step() {
    var value = number();
    return value % 2 ? -(value + 1) / 2 : value / 2;
  }
  var points = [];
  var partStart = [];
  var ring = [];
  var reachOf = [];
  var featureStart = new Int32Array(layer.count + 1);
  var box = new Float64Array(4 * layer.count);
  var x = 0;
  var y = 0;
  for (var i = 0; i < layer.count; i++) {
    featureStart[i] = partStart.length;
    var left = Infinity, bottom = Infinity, right = -Infinity, top = -Infinity;
    for (var part = number(); part > 0; part--) {
      var head = number();
      partStart.push(points.length / 2);
      ring.push(head % 2);
      var west = Infinity, south = Infinity, most = 0;
      for (var vertex = Math.floor(head / 2); vertex > 0; vertex--) {
        x += step();
        y += step();
        var east = x * data.unit;
        var north = y * data.unit;
        points.push(east, north);
        if (east < left) { left = east; }
        if (east > right) { right = east; }
        if (north < bottom) { bottom = north; }
        if (north > top) { top = north; }
        if (west === Infinity) { west = east; south = north; }
        most = Math.max(most, Math.abs(east - west), Math.abs(north - south));
      }
      reachOf.push(most);
    }
    box[4 * i] = left; box[4 * i + 1] = bottom; box[4 * i + 2] = right; box[4 * i + 3] = top;
  }
  featureStart[layer.count] = partStart.length;
  partStart.push(points.length / 2);
  layer.points = new Float64Array(points);
  layer.partStart = new Int32Array(partStart);
  layer.ring = new Uint8Array(ring);
  /* How far a part gets from its first vertex: what is too small to see is not drawn. */
  layer.reachOf = new Float32Array(reachOf);
  layer.featureStart = featureStart;
  layer.box = box;
  layer.geometry = null;
  layer.on = layer.shown;
}

var layers = {};
data.layers.forEach(function (layer) {
  unpack(layer);
  layers[layer.key] = layer;
});

function classOf(layer, i) { return layer.classOf.length ? layer.classOf[i] : 0; }

function idOf(layer, i) { return shown(layer.columns[0], i); }

/* A grid of boxes over a layer: which features are near a place. */
function indexOf(layer) {
  if (layer.index) { return layer.index; }
  var side = Math.max(1, Math.min(256, Math.ceil(Math.sqrt(layer.count))));
  var west = Infinity, south = Infinity, east = -Infinity, north = -Infinity;
  var i;
  for (i = 0; i < layer.count; i++) {
    west = Math.min(west, layer.box[4 * i]);
    south = Math.min(south, layer.box[4 * i + 1]);
    east = Math.max(east, layer.box[4 * i + 2]);
    north = Math.max(north, layer.box[4 * i + 3]);
  }
  var width = Math.max(1e-6, (east - west) / side);
  var height = Math.max(1e-6, (north - south) / side);
  function column(x) { return Math.max(0, Math.min(side - 1, Math.floor((x - west) / width))); }
  function row(y) { return Math.max(0, Math.min(side - 1, Math.floor((y - south) / height))); }
  var cells = [];
  for (i = 0; i < layer.count; i++) {
    for (var r = row(layer.box[4 * i + 1]); r <= row(layer.box[4 * i + 3]); r++) {
      for (var c = column(layer.box[4 * i]); c <= column(layer.box[4 * i + 2]); c++) {
        (cells[r * side + c] = cells[r * side + c] || []).push(i);
      }
    }
  }
  layer.index = {
    near: function (x, y, reach) {
      var found = [];
      for (var r = row(y - reach); r <= row(y + reach); r++) {
        for (var c = column(x - reach); c <= column(x + reach); c++) {
          if (cells[r * side + c]) { found = found.concat(cells[r * side + c]); }
        }
      }
      return found;
    }
  };
  return layer.index;
}

/* Distance from a place to a feature, 0 inside its rings. */
function distance(layer, i, x, y) {
  var least = Infinity;
  var inside = false;
  for (var part = layer.featureStart[i]; part < layer.featureStart[i + 1]; part++) {
    var from = layer.partStart[part];
    var to = layer.partStart[part + 1];
    var ring = layer.ring[part];
    if (to - from === 1) {
      least = Math.min(least, Math.hypot(layer.points[2 * from] - x, layer.points[2 * from + 1] - y));
    }
    for (var k = from; k < (ring ? to : to - 1); k++) {
      var next = k + 1 < to ? k + 1 : from;
      var ax = layer.points[2 * k], ay = layer.points[2 * k + 1];
      var bx = layer.points[2 * next], by = layer.points[2 * next + 1];
      if (ring && (ay > y) !== (by > y) && x < ax + (y - ay) * (bx - ax) / (by - ay)) { inside = !inside; }
      var length = (bx - ax) * (bx - ax) + (by - ay) * (by - ay);
      var along = length ? Math.max(0, Math.min(1, ((x - ax) * (bx - ax) + (y - ay) * (by - ay)) / length)) : 0;
      least = Math.min(least, Math.hypot(ax + along * (bx - ax) - x, ay + along * (by - ay) - y));
    }
  }
  return inside ? 0 : least;
}

function pick(layer, x, y, reach) {
  var best = -1;
  var least = Infinity;
  indexOf(layer).near(x, y, reach).forEach(function (i) {
    if (layer.box[4 * i] - reach > x || layer.box[4 * i + 2] + reach < x
        || layer.box[4 * i + 1] - reach > y || layer.box[4 * i + 3] + reach < y) { return; }
    var far = distance(layer, i, x, y);
    var isArea = layer.form === 'AREA' || layer.form === 'OUTLINE';
    if (far <= (isArea ? 0 : reach) && (far < least || far === least && i < best)) {
      best = i;
      least = far;
    }
  });
  return best;
}

function pickAll(x, y, reach) {
  var hits = [];
  PICK_ORDER.forEach(function (key) {
    var layer = layers[key];
    if (!layer || !layer.on || !layer.count) { return; }
    var i = pick(layer, x, y, reach);
    if (i >= 0) { hits.push({ layer: layer, i: i }); }
  });
  return hits;
}

/* A place on a feature that stands for it: the middle vertex of its longest part, or its box. */
function anchor(layer, i) {
  if (layer.form === 'AREA' || layer.form === 'OUTLINE') {
    return [(layer.box[4 * i] + layer.box[4 * i + 2]) / 2, (layer.box[4 * i + 1] + layer.box[4 * i + 3]) / 2];
  }
  var from = 0, to = 0;
  for (var part = layer.featureStart[i]; part < layer.featureStart[i + 1]; part++) {
    if (layer.partStart[part + 1] - layer.partStart[part] > to - from) {
      from = layer.partStart[part];
      to = layer.partStart[part + 1];
    }
  }
  var middle = from + Math.floor((to - from - 1) / 2);
  if (to - from > 1 && !layer.ring[layer.featureStart[i]]) {
    var k = 2 * middle;
    return [(layer.points[k] + layer.points[k + 2]) / 2, (layer.points[k + 1] + layer.points[k + 3]) / 2];
  }
  return [layer.points[2 * middle], layer.points[2 * middle + 1]];
}
