/* Graticule, frame and scale bar. */

/* Meridians and parallels at round minutes, or grid lines where degrees are not known. */
function graticule(view) {
  function east(px) { return (px - view.x) / view.scale; }
  function north(py) { return (view.y - py) / view.scale; }
  var lines = { meridians: [], parallels: [], decimals: 0, degrees: fit.known };
  var inside = fit.known && east(0) > fit.west && east(view.width) < fit.east
    && north(view.height) > fit.south && north(0) < fit.north;
  lines.degrees = inside;
  function along(count, from, to, valueAt, put, step) {
    for (var n = Math.ceil(from / step); n * step <= to; n++) { put(n * step, valueAt(n * step)); }
  }
  if (!inside) {
    var step = roundStep(Math.min(view.width, view.height) / view.scale / 2.5);
    along(0, east(0) + data.origin[0], east(view.width) + data.origin[0], function (x) {
      var px = view.x + (x - data.origin[0]) * view.scale;
      return [[px, view.height], [px, 0]];
    }, function (value, line) { lines.meridians.push({ value: value, line: line }); }, step);
    along(0, north(view.height) + data.origin[1], north(0) + data.origin[1], function (y) {
      var py = view.y - (y - data.origin[1]) * view.scale;
      return [[0, py], [view.width, py]];
    }, function (value, line) { lines.parallels.push({ value: value, line: line }); }, step);
    return lines;
  }
  var x0 = east(0), x1 = east(view.width), y0 = north(view.height), y1 = north(0);
  var xm = (x0 + x1) / 2, ym = (y0 + y1) / 2;
  var spanLat = fit.latitude(xm, y1) - fit.latitude(xm, y0);
  var spanLon = fit.longitude(x1, ym) - fit.longitude(x0, ym);
  var minutes = roundStep(60 * Math.min(Math.abs(spanLat), Math.abs(spanLon)) / 2.2);
  var stepDegrees = minutes / 60;
  lines.decimals = Math.max(0, -Math.floor(Math.log10(minutes) + 1e-9));
  /* Where a value is reached on a straight line: two secant steps from a linear guess are enough. */
  function reach(valueAt, target, from, to) {
    var a = from, b = to, fa = valueAt(a) - target, fb = valueAt(b) - target;
    for (var n = 0; n < 4 && Math.abs(fb - fa) > 1e-14; n++) {
      var next = b - fb * (b - a) / (fb - fa);
      a = b; fa = fb;
      b = next; fb = valueAt(b) - target;
    }
    return b;
  }
  var lonLow = Math.min(fit.longitude(x0, y0), fit.longitude(x0, y1));
  var lonHigh = Math.max(fit.longitude(x1, y0), fit.longitude(x1, y1));
  for (var m = Math.ceil(lonLow / stepDegrees); m * stepDegrees <= lonHigh; m++) {
    var meridian = [];
    for (var k = 0; k <= 4; k++) {
      var y = y0 + k * (y1 - y0) / 4;
      var x = reach(function (v) { return fit.longitude(v, y); }, m * stepDegrees, x0, x1);
      meridian.push([view.x + x * view.scale, view.y - y * view.scale]);
    }
    lines.meridians.push({ value: m * stepDegrees, line: meridian });
  }
  var latLow = Math.min(fit.latitude(x0, y0), fit.latitude(x1, y0));
  var latHigh = Math.max(fit.latitude(x0, y1), fit.latitude(x1, y1));
  for (var p = Math.ceil(latLow / stepDegrees); p * stepDegrees <= latHigh; p++) {
    var parallel = [];
    for (k = 0; k <= 4; k++) {
      var px = x0 + k * (x1 - x0) / 4;
      var py = reach(function (v) { return fit.latitude(px, v); }, p * stepDegrees, y0, y1);
      parallel.push([view.x + px * view.scale, view.y - py * view.scale]);
    }
    lines.parallels.push({ value: p * stepDegrees, line: parallel });
  }
  return lines;
}

var showGraticule = true;
var BAND = 7;

function drawFrame(g, view, c) {
  if (!showGraticule) { return; }
  var lines = graticule(view);
  g.save();
  g.setLineDash([]);
  g.strokeStyle = c.graticule;
  g.lineWidth = 1;
  g.globalAlpha = 0.85;
  lines.meridians.concat(lines.parallels).forEach(function (each) {
    g.beginPath();
    each.line.forEach(function (at, k) { if (k) { g.lineTo(at[0], at[1]); } else { g.moveTo(at[0], at[1]); } });
    g.stroke();
  });
  g.globalAlpha = 1;
  band(g, view, c, lines);
  g.font = '13px ' + view.sans;
  g.lineJoin = 'round';
  g.strokeStyle = c.water;
  g.fillStyle = c.ink;
  g.lineWidth = 4;
  function put(words, x, y, align, base) {
    g.textAlign = align;
    g.textBaseline = base;
    g.strokeText(words, x, y);
    g.fillText(words, x, y);
  }
  lines.meridians.forEach(function (each) {
    var x = each.line[each.line.length - 1][0];
    if (x > 60 && x < view.width - 60) {
      put(lines.degrees ? longitudeText(each.value, lines.decimals) : grouped(each.value.toFixed(0)), x, BAND + 5, 'center', 'top');
    }
  });
  lines.parallels.forEach(function (each) {
    var y = each.line[0][1];
    if (y > 30 && y < view.height - 60) {
      put(lines.degrees ? latitudeText(each.value, lines.decimals) : grouped(each.value.toFixed(0)), BAND + 6, y - 3, 'left', 'bottom');
    }
  });
  g.restore();
}

/* The frame of a chart: bands that change colour where a meridian or parallel meets them. */
function band(g, view, c, lines) {
  function side(positions, even, size, rect) {
    var stops = [0].concat(positions.filter(function (p) { return p > 0 && p < size; }).sort(function (a, b) { return a - b; }), [size]);
    for (var k = 0; k + 1 < stops.length; k++) {
      g.fillStyle = (k + even) % 2 ? c.ink : c.paper;
      rect(stops[k], stops[k + 1] - stops[k]);
    }
  }
  function parity(list, first, step) { return list.length ? Math.abs(Math.round(list[0].value / step)) % 2 : 0; }
  var stepX = lines.meridians.length > 1 ? lines.meridians[1].value - lines.meridians[0].value : 1;
  var stepY = lines.parallels.length > 1 ? lines.parallels[1].value - lines.parallels[0].value : 1;
  function at(list, index, axis) {
    return list.map(function (each) { return each.line[index < 0 ? each.line.length - 1 : 0][axis]; });
  }
  side(at(lines.meridians, -1, 0), parity(lines.meridians, 0, stepX), view.width, function (from, size) { g.fillRect(from, 0, size, BAND); });
  side(at(lines.meridians, 0, 0), parity(lines.meridians, 0, stepX), view.width, function (from, size) { g.fillRect(from, view.height - BAND, size, BAND); });
  var turned = parity(lines.parallels, 0, stepY) + lines.parallels.length % 2;
  side(at(lines.parallels, 0, 1), turned, view.height, function (from, size) { g.fillRect(0, from, BAND, size); });
  side(at(lines.parallels, -1, 1), turned, view.height, function (from, size) { g.fillRect(view.width - BAND, from, BAND, size); });
  g.strokeStyle = c.ink;
  g.lineWidth = 1;
  g.strokeRect(BAND + 0.5, BAND + 0.5, view.width - 2 * BAND - 1, view.height - 2 * BAND - 1);
}

function scaleBar(g, view, c) {
  var x = (view.width / 2 - view.x) / view.scale;
  var y = (view.y - view.height / 2) / view.scale;
  var factor = x > fit.west && x < fit.east && y > fit.south && y < fit.north ? fit.factor(x, y) : 1;
  var pixelsPerMetre = view.scale * factor;
  var metres = roundStep(Math.min(220, view.width / 4) / pixelsPerMetre);
  var length = metres * pixelsPerMetre;
  var left = BAND + 18;
  var top = view.height - BAND - 24;
  g.save();
  g.setLineDash([]);
  g.globalAlpha = 0.88;
  g.fillStyle = c.paper;
  g.fillRect(left - 10, top - 26, length + 46, 46);
  g.globalAlpha = 1;
  for (var part = 0; part < 4; part++) {
    g.fillStyle = part % 2 ? c.paper : c.ink;
    g.fillRect(left + part * length / 4, top, length / 4, 7);
  }
  g.strokeStyle = c.ink;
  g.lineWidth = 1;
  g.strokeRect(left, top, length, 7);
  g.font = '13px ' + view.sans;
  g.fillStyle = c.ink;
  g.textBaseline = 'bottom';
  g.textAlign = 'center';
  g.fillText('0', left, top - 3);
  g.fillText(lengthText(metres), left + length, top - 3);
  g.restore();
  return { metres: metres, pixels: length };
}
