/* The map, the tables and the switches of the report. Attributes reach the page as text only. */
(function () {
  'use strict';

  var data = JSON.parse(document.getElementById('report-data').textContent);
  var text = data.text;
  var root = document.documentElement;
  root.classList.add('js');

  var PAGE_ROWS = 20;
  var SMALLEST_PIXELS = 1;
  /* More scars in view than this are drawn thin and see-through, so that the beds still show. */
  var CROWD = 4000;
  var PICK_PIXELS = 6;
  var WHOLE = { paddingTopLeft: [34, 34], paddingBottomRight: [34, 72] };
  var PICK_ORDER = ['marks', 'repairs', 'gaps', 'scars', 'segments', 'zones', 'patches', 'beds', 'areas'];
  var TAB_ORDER = ['areas', 'beds', 'scars', 'gaps', 'patches', 'segments', 'zones', 'marks', 'repairs'];
  var calm = window.matchMedia('(prefers-reduced-motion: reduce)').matches;

  function phrase(key) {
    var words = text[key] === undefined ? key : text[key];
    for (var i = 1; i < arguments.length; i++) {
      words = words.split('{' + (i - 1) + '}').join(arguments[i]);
    }
    return words;
  }

  function make(name, className, words) {
    var element = document.createElement(name);
    if (className) { element.className = className; }
    if (words !== undefined) { element.textContent = words; }
    return element;
  }

  function byId(id) { return document.getElementById(id); }

  /* ---- numbers for people, as in the tables on paper ---- */

  function grouped(plain) {
    var parts = plain.replace('-', '').split('.');
    var whole = parts[0].replace(/\B(?=(\d{3})+$)/g, '\u202f');
    return (plain.charAt(0) === '-' ? '\u2212' : '') + whole + (parts[1] ? '.' + parts[1] : '');
  }

  function figure(value) {
    if (value === 0) { return '0'; }
    var digits = Math.abs(value) < 1 ? 2 : 3;
    var exponent = Number(value.toExponential(digits - 1).split('e')[1]);
    return grouped(value.toFixed(Math.max(0, Math.min(6, digits - 1 - exponent))));
  }

  function shown(column, row) {
    var value = column.values[row];
    if (value === null) { return phrase('none'); }
    if (column.kind === 'TEXT') { return column.words ? column.words[value] : value; }
    return column.kind === 'COUNT' ? grouped(String(value)) : figure(value);
  }

  /* ---- geometry ---- */

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

  /* ---- degrees and ground scale ---- */

  var fit = (function () {
    var n = data.fit.nodes;
    var area = data.fit.area;
    function weights(position) {
      var out = [];
      var sum = 0;
      for (var i = 0; i < n; i++) {
        var apart = position - Math.cos(Math.PI * (i + 0.5) / n) || 1e-15;
        out[i] = (i % 2 ? -1 : 1) * Math.sin(Math.PI * (i + 0.5) / n) / apart;
        sum += out[i];
      }
      return out.map(function (weight) { return weight / sum; });
    }
    function value(values, x, y) {
      var east = x + data.origin[0];
      var north = y + data.origin[1];
      var across = weights((2 * east - area[0] - area[2]) / (area[2] - area[0]));
      var along = weights((2 * north - area[1] - area[3]) / (area[3] - area[1]));
      var sum = 0;
      for (var r = 0; r < n; r++) {
        for (var c = 0; c < n; c++) { sum += along[r] * across[c] * values[r * n + c]; }
      }
      return sum;
    }
    return {
      known: data.fit.latitudes.length > 0,
      latitude: function (x, y) { return value(data.fit.latitudes, x, y); },
      longitude: function (x, y) { return value(data.fit.longitudes, x, y); },
      factor: function (x, y) { return value(data.fit.factors, x, y); },
      west: area[0] - data.origin[0], south: area[1] - data.origin[1],
      east: area[2] - data.origin[0], north: area[3] - data.origin[1]
    };
  })();

  function padded(value, width) {
    var digits = String(value);
    while (digits.length < width) { digits = '0' + digits; }
    return digits;
  }

  function angle(degrees, decimals, width) {
    var parts = Math.pow(10, decimals);
    var all = Math.round(Math.abs(degrees) * 60 * parts);
    var minutes = Math.floor(all / parts);
    return padded(Math.floor(minutes / 60), width) + '\u00b0\u00a0' + padded(minutes % 60, 2)
      + (decimals ? '.' + padded(all % parts, decimals) : '') + '\u2032';
  }

  function latitudeText(degrees, decimals) {
    return angle(degrees, decimals, 2) + '\u00a0' + phrase(degrees < 0 ? 'south' : 'north');
  }

  function longitudeText(degrees, decimals) {
    return angle(degrees, decimals, 3) + '\u00a0' + phrase(degrees < 0 ? 'west' : 'east');
  }

  function placeText(x, y) {
    var east = grouped((x + data.origin[0]).toFixed(0));
    var north = grouped((y + data.origin[1]).toFixed(0));
    var grid = phrase('easting') + '\u00a0' + east + '  ' + phrase('northing') + '\u00a0' + north;
    if (!fit.known || x < fit.west || x > fit.east || y < fit.south || y > fit.north) { return grid; }
    return latitudeText(fit.latitude(x, y), 3) + '  ' + longitudeText(fit.longitude(x, y), 3) + '  \u00b7  ' + grid;
  }

  function roundStep(most) {
    var power = Math.pow(10, Math.floor(Math.log10(most)));
    return [5, 2, 1].map(function (step) { return step * power; })
      .filter(function (step) { return step <= most * (1 + 1e-9); })[0] || power;
  }

  function lengthText(metres) {
    return metres < 1000 ? grouped(String(metres)) + '\u00a0m' : grouped(String(metres / 1000)) + '\u00a0km';
  }

  /* ---- drawing ---- */

  var colours = {};

  function readColours() {
    var style = getComputedStyle(root);
    var read = {};
    for (var i = 0; i < 4; i++) { read['bed-' + i] = style.getPropertyValue('--bed-' + i).trim(); }
    for (i = 0; i < 6; i++) { read['scar-' + i] = style.getPropertyValue('--scar-' + i).trim(); }
    ['paper', 'ink', 'soft', 'water', 'land', 'land-edge', 'graticule', 'bed-edge', 'bed-unknown', 'patch', 'gap',
      'gap-case', 'segment-first', 'segment-next', 'segment-rest', 'zone', 'zone-line', 'area', 'repair',
      'repair-case', 'mark', 'mark-case', 'chosen', 'accent'].forEach(function (name) {
      read[name] = style.getPropertyValue('--' + name).trim();
    });
    return read;
  }

  /* How a class is drawn: a list of strokes and fills from below to above. */
  function looks(style, c, scale) {
    var wide = Math.max(0.75, Math.min(1.25, 1 + Math.log10(Math.max(0.01, scale) * 10) / 2));
    if (style.indexOf('scar-') === 0) { return [{ line: c[style], width: 1.9 * wide, fill: c[style] }]; }
    if (style === 'bed-unknown') { return [{ fill: c['bed-unknown'], hatch: c.soft }, { line: c['bed-edge'], width: 0.6 }]; }
    if (style.indexOf('bed-') === 0) { return [{ fill: c[style] }, { line: c['bed-edge'], width: 0.6 }]; }
    if (style.indexOf('mark-') === 0) { return []; }
    switch (style) {
      case 'land': return [{ fill: c.land }, { line: c['land-edge'], width: 1 }];
      case 'surveyed': return [{ line: c.soft, width: 1.2, dash: [7, 4, 1.5, 4] }];
      case 'area': return [{ line: c.area, width: 1.2, dash: [9, 5] }];
      case 'patch': return [{ line: c.patch, width: scale < 0.25 ? 0.7 : 1.3 }];
      case 'zone': return [{ line: c['zone-line'], width: 14 * wide }, { line: c.zone, width: 11 * wide }];
      case 'segment-first': return [{ line: c['segment-first'], width: 5 * wide }];
      case 'segment-next': return [{ line: c['segment-next'], width: 3.4 * wide }];
      case 'segment-rest': return [{ line: c['segment-rest'], width: 1.8 * wide }];
      case 'segment-none': return [{ line: c['segment-rest'], width: 1.5, dash: [2, 4] }];
      /* Dashes of many lines cost time and cannot be seen from afar. */
      case 'gap': return scale < 0.25 ? [{ line: c.gap, width: 1 }] : [{ line: c['gap-case'], width: 5 * wide }, { line: c.gap, width: 2.6 * wide, dash: [3, 3] }];
      case 'repair': return [{ line: c['repair-case'], width: 7 * wide }, { line: c.repair, width: 4 * wide }];
      default: return [];
    }
  }

  /* A view: pixels a metre, and the pixel that the origin is at. */
  function trace(g, layer, i, view) {
    var box = layer.box;
    var scale = view.scale;
    var width = (box[4 * i + 2] - box[4 * i]) * scale;
    var height = (box[4 * i + 3] - box[4 * i + 1]) * scale;
    if (width < SMALLEST_PIXELS && height < SMALLEST_PIXELS && layer.form !== 'POINT') {
      return dot(g, box, i, view);
    }
    var drawn = 0;
    for (var part = layer.featureStart[i]; part < layer.featureStart[i + 1]; part++) {
      if (layer.reachOf[part] * scale < SMALLEST_PIXELS && layer.form !== 'POINT') { continue; }
      var from = layer.partStart[part];
      var to = layer.partStart[part + 1];
      var lastX = view.x + layer.points[2 * from] * scale;
      var lastY = view.y - layer.points[2 * from + 1] * scale;
      g.moveTo(lastX, lastY);
      for (var k = from + 1; k < to; k++) {
        var x = view.x + layer.points[2 * k] * scale;
        var y = view.y - layer.points[2 * k + 1] * scale;
        if (Math.abs(x - lastX) + Math.abs(y - lastY) >= SMALLEST_PIXELS || k === to - 1) {
          g.lineTo(x, y);
          lastX = x;
          lastY = y;
          drawn++;
        }
      }
      if (layer.ring[part]) { g.closePath(); }
      drawn += 2;
    }
    return drawn || dot(g, box, i, view);
  }

  function dot(g, box, i, view) {
    var x = view.x + box[4 * i] * view.scale;
    var y = view.y - box[4 * i + 3] * view.scale;
    g.moveTo(x, y);
    g.lineTo(x + 0.8, y + 0.4);
    return 2;
  }

  var CHUNK = 4000;

  function drawClass(g, layer, members, look, view, crowd) {
    var thin = Boolean(crowd && crowd > CROWD);
    g.globalAlpha = thin ? Math.max(0.3, CROWD / crowd) : 1;
    var filled = look.fill && (layer.form === 'AREA' || layer.key === 'scars');
    g.strokeStyle = look.line || look.hatch || '#000';
    g.fillStyle = look.fill || '#000';
    g.lineWidth = thin ? 1 : look.width || 1;
    g.setLineDash(look.dash || []);
    /* Round corners of hair lines cost time and cannot be seen. */
    g.lineJoin = g.lineWidth > 2 ? 'round' : 'bevel';
    g.lineCap = g.lineWidth > 8 || g.lineWidth < 1.5 || look.dash ? 'butt' : 'round';
    var at = 0;
    while (at < members.length) {
      var load = 0;
      g.beginPath();
      while (at < members.length && load < CHUNK) { load += trace(g, layer, members[at++], view); }
      if (filled && layer.form === 'AREA') { g.fill(); }
      if (look.hatch && layer.form === 'AREA') { hatch(g, look.hatch, view); }
      if (look.line) { g.stroke(); }
    }
    if (filled && layer.form !== 'AREA') {
      g.beginPath();
      members.forEach(function (i) {
        if (layer.ring[layer.featureStart[i]]) { trace(g, layer, i, view); }
      });
      g.fill();
    }
    g.globalAlpha = 1;
  }

  function hatch(g, colour, view) {
    g.save();
    g.clip();
    g.beginPath();
    for (var x = -view.height; x < view.width; x += 9) {
      g.moveTo(x, view.height);
      g.lineTo(x + view.height, 0);
    }
    g.globalAlpha = 0.45;
    g.lineWidth = 1;
    g.stroke();
    g.restore();
  }

  function drawMark(g, style, x, y, size, c) {
    g.save();
    g.translate(x, y);
    g.beginPath();
    if (style === 'mark-restriction-circle') {
      g.arc(0, 0, size, 0, 2 * Math.PI);
    } else if (style === 'mark-information-rectangle') {
      g.rect(-size, -size * 0.8, 2 * size, 1.6 * size);
    } else if (style === 'mark-mooring-buoy' || style === 'mark-channel-mark' || style === 'mark-none') {
      g.moveTo(0, -size); g.lineTo(size, size); g.lineTo(-size, size); g.closePath();
    } else {
      g.moveTo(0, -size * 1.2); g.lineTo(size * 1.2, 0); g.lineTo(0, size * 1.2); g.lineTo(-size * 1.2, 0); g.closePath();
    }
    g.setLineDash([]);
    g.lineJoin = 'miter';
    g.strokeStyle = c['mark-case'];
    g.lineWidth = 6;
    g.stroke();
    g.fillStyle = c['mark-case'];
    g.fill();
    g.strokeStyle = c.mark;
    g.lineWidth = 3;
    g.stroke();
    if (style === 'mark-exclusion-diamond') {
      g.beginPath();
      g.moveTo(-size * 0.6, 0); g.lineTo(size * 0.6, 0); g.moveTo(0, -size * 0.6); g.lineTo(0, size * 0.6);
      g.stroke();
    }
    g.restore();
  }

  function drawSite(g, x, y, size, c) {
    g.beginPath();
    g.arc(x, y, size, 0, 2 * Math.PI);
    g.setLineDash([]);
    g.fillStyle = c['repair-case'];
    g.fill();
    g.strokeStyle = c.repair;
    g.lineWidth = 2.4;
    g.stroke();
    g.beginPath();
    g.moveTo(x, y + size * 0.55); g.lineTo(x, y - size * 0.1);
    g.moveTo(x, y + size * 0.4); g.quadraticCurveTo(x - size * 0.6, y, x - size * 0.5, y - size * 0.5);
    g.moveTo(x, y + size * 0.4); g.quadraticCurveTo(x + size * 0.6, y, x + size * 0.5, y - size * 0.5);
    g.lineWidth = 1.5;
    g.lineCap = 'round';
    g.stroke();
  }

  function label(g, words, x, y, font, colour, halo) {
    g.font = font;
    g.textAlign = 'center';
    g.textBaseline = 'middle';
    g.lineJoin = 'round';
    g.setLineDash([]);
    g.strokeStyle = halo;
    g.lineWidth = 4;
    g.strokeText(words, x, y);
    g.fillStyle = colour;
    g.fillText(words, x, y);
  }

  function visible(layer, view) {
    var west = -view.x / view.scale - 20 / view.scale;
    var east = (view.width - view.x) / view.scale + 20 / view.scale;
    var north = view.y / view.scale + 20 / view.scale;
    var south = (view.y - view.height) / view.scale - 20 / view.scale;
    var members = layer.classes.map(function () { return []; });
    var box = layer.box;
    for (var i = 0, k = 0; i < layer.count; i++, k += 4) {
      if (box[k] <= east && box[k + 2] >= west && box[k + 1] <= north && box[k + 3] >= south) {
        members[layer.classOf.length ? layer.classOf[i] : 0].push(i);
      }
    }
    return members;
  }

  function drawAll(g, view, c) {
    g.clearRect(0, 0, view.width, view.height);
    g.fillStyle = c.water;
    g.fillRect(0, 0, view.width, view.height);
    data.layers.forEach(function (layer) {
      if (!layer.on || !layer.count) { return; }
      var members = visible(layer, view);
      if (layer.key === 'marks' || layer.key === 'repairs') { return; }
      var crowd = 0;
      if (layer.key === 'scars') { members.forEach(function (group) { crowd += group.length; }); }
      for (var place = members.length - 1; place >= 0; place--) {
        looks(layer.classes[place].style, c, view.scale).forEach(function (look) {
          drawClass(g, layer, members[place], look, view, crowd);
        });
      }
    });
    drawSymbols(g, view, c);
    drawNames(g, view, c);
  }

  function drawSymbols(g, view, c) {
    var sites = layers.repairs;
    if (sites && sites.on) {
      var members = visible(sites, view)[0] || [];
      looks('repair', c, view.scale).forEach(function (look) { drawClass(g, sites, members, look, view); });
      members.slice().reverse().forEach(function (i) {
        var at = anchor(sites, i);
        drawSite(g, view.x + at[0] * view.scale, view.y - at[1] * view.scale, 8, c);
      });
    }
    var marks = layers.marks;
    if (marks && marks.on) {
      visible(marks, view).forEach(function (group, place) {
        group.forEach(function (i) {
          var at = anchor(marks, i);
          drawMark(g, marks.classes[place].style, view.x + at[0] * view.scale, view.y - at[1] * view.scale, 6.5, c);
        });
      });
    }
  }

  function drawNames(g, view, c) {
    var areas = layers.areas;
    if (areas && areas.on) {
      for (var i = 0; i < areas.count; i++) {
        var at = anchor(areas, i);
        var name = idOf(areas, i);
        g.font = 'italic 600 17px ' + view.serif;
        if (g.measureText(name).width < (areas.box[4 * i + 2] - areas.box[4 * i]) * view.scale) {
          label(g, name, view.x + at[0] * view.scale, view.y - at[1] * view.scale, g.font, c.soft, c.paper);
        }
      }
    }
    var zones = layers.zones;
    if (zones && zones.on) {
      for (i = 0; i < zones.count; i++) {
        at = anchor(zones, i);
        label(g, idOf(zones, i), view.x + at[0] * view.scale + 22, view.y - at[1] * view.scale - 14,
          '700 15px ' + view.sans, c['zone-line'], c.paper);
      }
    }
  }

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

  /* ---- the map ---- */

  var map = L.map('map', {
    crs: L.CRS.Simple,
    attributionControl: false,
    zoomControl: false,
    scrollWheelZoom: false,
    zoomSnap: 0.25,
    zoomDelta: 0.5,
    wheelPxPerZoomLevel: 120,
    maxZoom: 5,
    minZoom: -14,
    keyboardPanDelta: 90,
    zoomAnimation: !calm,
    fadeAnimation: false,
    inertia: !calm
  });
  if (calm) {
    map.panBy = function (offset) { return L.Map.prototype.panBy.call(map, offset, { animate: false }); };
  }
  var extent = L.latLngBounds(
    [data.extent[1] - data.origin[1], data.extent[0] - data.origin[0]],
    [data.extent[3] - data.origin[1], data.extent[2] - data.origin[0]]);
  var chosen = null;

  function viewOf(width, height, scale, x, y) {
    var style = getComputedStyle(root);
    return {
      width: width, height: height, scale: scale, x: x, y: y,
      serif: style.getPropertyValue('--serif'), sans: style.getPropertyValue('--sans')
    };
  }

  function sized(canvas, width, height) {
    var ratio = Math.min(2, window.devicePixelRatio || 1);
    if (canvas.width !== Math.round(width * ratio) || canvas.height !== Math.round(height * ratio)) {
      canvas.width = Math.round(width * ratio);
      canvas.height = Math.round(height * ratio);
      canvas.style.width = width + 'px';
      canvas.style.height = height + 'px';
    }
    var g = canvas.getContext('2d');
    g.setTransform(ratio, 0, 0, ratio, 0, 0);
    return g;
  }

  /* All features on one canvas that reaches beyond the frame, so that a pan only moves it. */
  var Chart = L.Renderer.extend({
    _initContainer: function () {
      this._container = document.createElement('canvas');
      this._container.setAttribute('aria-hidden', 'true');
    },
    _destroyContainer: function () { L.DomUtil.remove(this._container); },
    _updatePaths: function () {},
    _update: function () {
      if (this._map._animatingZoom && this._bounds) { return; }
      L.Renderer.prototype._update.call(this);
      this.draw();
    },
    draw: function () {
      var size = this._bounds.getSize();
      var g = sized(this._container, size.x, size.y);
      L.DomUtil.setPosition(this._container, this._bounds.min);
      var origin = this._map.getPixelOrigin();
      var view = viewOf(size.x, size.y, this._map.getZoomScale(this._zoom, 0),
        -origin.x - this._bounds.min.x, -origin.y - this._bounds.min.y);
      drawAll(g, view, colours);
    },
    /* A pan beyond the margin draws at once. */
    catchUp: function () {
      var low = this._map.containerPointToLayerPoint([0, 0]);
      var high = this._map.containerPointToLayerPoint(this._map.getSize());
      if (this._bounds && (!this._bounds.contains(low) || !this._bounds.contains(high))) { this._update(); }
    }
  });
  var chart = new Chart({ padding: 0.3, pane: 'overlayPane' });
  var overlay = make('canvas', 'overlay');
  overlay.setAttribute('aria-hidden', 'true');
  var hover = make('div');
  hover.id = 'hover';
  hover.hidden = true;

  function currentView() {
    var size = map.getSize();
    var origin = map.latLngToContainerPoint([0, 0]);
    return viewOf(size.x, size.y, map.getZoomScale(map.getZoom(), 0), origin.x, origin.y);
  }

  function drawOverlay() {
    var view = currentView();
    var g = sized(overlay, view.width, view.height);
    g.clearRect(0, 0, view.width, view.height);
    if (chosen) { highlight(g, view); }
    drawFrame(g, view, colours);
    var bar = scaleBar(g, view, colours);
    var mapElement = byId('map');
    mapElement.dataset.barMetres = bar.metres;
    mapElement.dataset.barPixels = bar.pixels;
    byId('scale-text').textContent = phrase('scale', lengthText(bar.metres));
    if (byKey) { cross(g, view); }
  }

  function highlight(g, view) {
    var layer = chosen.layer;
    var at = anchor(layer, chosen.i);
    g.save();
    g.setLineDash([]);
    g.lineJoin = 'round';
    g.lineCap = 'round';
    [[colours.paper, 7], [colours.chosen, 3.5]].forEach(function (stroke) {
      g.strokeStyle = stroke[0];
      g.lineWidth = stroke[1];
      g.beginPath();
      if (layer.form === 'POINT') {
        g.arc(view.x + at[0] * view.scale, view.y - at[1] * view.scale, 14, 0, 2 * Math.PI);
      } else {
        trace(g, layer, chosen.i, view);
      }
      g.stroke();
    });
    if (layer.form === 'LINE') {
      [[colours.paper, 6], [colours.chosen, 2.5]].forEach(function (stroke) {
        g.strokeStyle = stroke[0];
        g.lineWidth = stroke[1];
        g.beginPath();
        g.arc(view.x + at[0] * view.scale, view.y - at[1] * view.scale, 17, 0, 2 * Math.PI);
        g.stroke();
      });
    }
    g.restore();
  }

  var byKey = false;

  function cross(g, view) {
    g.save();
    g.strokeStyle = colours.ink;
    g.lineWidth = 1.5;
    g.setLineDash([]);
    g.beginPath();
    g.moveTo(view.width / 2 - 12, view.height / 2); g.lineTo(view.width / 2 - 3, view.height / 2);
    g.moveTo(view.width / 2 + 3, view.height / 2); g.lineTo(view.width / 2 + 12, view.height / 2);
    g.moveTo(view.width / 2, view.height / 2 - 12); g.lineTo(view.width / 2, view.height / 2 - 3);
    g.moveTo(view.width / 2, view.height / 2 + 3); g.lineTo(view.width / 2, view.height / 2 + 12);
    g.stroke();
    g.restore();
  }

  function redraw() {
    chart._update();
    drawOverlay();
  }

  colours = readColours();
  map.fitBounds(extent, L.extend({}, WHOLE, { animate: false }));
  map.setMaxBounds(extent.pad(0.5));
  map.setMinZoom(Math.min(map.getZoom() - 1, map.getBoundsZoom(extent.pad(0.5))));
  byId('map').appendChild(overlay);
  byId('map').appendChild(hover);
  chart.addTo(map);
  map.on('move', function () { chart.catchUp(); drawOverlay(); });
  map.on('zoomanim', function () { hover.hidden = true; });
  map.on('moveend zoomend resize', drawOverlay);
  drawOverlay();
  if (window.ResizeObserver) {
    new ResizeObserver(function () {
      requestAnimationFrame(function () { map.invalidateSize({ animate: false }); });
    }).observe(byId('map'));
  }

  function metresAt(latlng) { return [latlng.lng, latlng.lat]; }

  function reach() { return PICK_PIXELS / map.getZoomScale(map.getZoom(), 0); }

  var waiting = null;
  map.on('mousemove', function (event) {
    if (!waiting) { requestAnimationFrame(function () { var last = waiting; waiting = null; point(last); }); }
    waiting = event;
  });
  map.on('mouseout', function () { hover.hidden = true; waitingClear(); });

  function waitingClear() { byId('pointer').textContent = ''; }

  function point(event) {
    var at = metresAt(event.latlng);
    byId('pointer').textContent = placeText(at[0], at[1]);
    var hit = map.dragging.moving && map.dragging.moving() ? null : pickAll(at[0], at[1], reach())[0];
    if (!hit) {
      hover.hidden = true;
      byId('map').style.cursor = '';
      return;
    }
    byId('map').style.cursor = 'pointer';
    hover.textContent = phrase('one.' + hit.layer.key) + ' ' + idOf(hit.layer, hit.i);
    var group = hit.layer.classes[classOf(hit.layer, hit.i)].label;
    if (hit.layer.classes.length > 1) { hover.textContent += ': ' + group; }
    hover.hidden = false;
    var size = map.getSize();
    hover.style.left = Math.max(4, Math.min(size.x - hover.offsetWidth - 4, event.containerPoint.x + 14)) + 'px';
    hover.style.top = Math.max(4, Math.min(size.y - hover.offsetHeight - 4, event.containerPoint.y + 16)) + 'px';
  }

  function pickAt(latlng) {
    var at = metresAt(latlng);
    var hits = pickAll(at[0], at[1], reach());
    if (hits.length) { choose(hits[0], hits.slice(1), false); } else { clearChoice(); }
  }

  map.on('click', function (event) {
    map.scrollWheelZoom.enable();
    pickAt(event.latlng);
  });

  var mapElement = byId('map');
  mapElement.addEventListener('focus', function () {
    byKey = mapElement.matches(':focus-visible');
    drawOverlay();
  });
  mapElement.addEventListener('blur', function () {
    byKey = false;
    map.scrollWheelZoom.disable();
    drawOverlay();
  });
  mapElement.addEventListener('keydown', function (event) {
    byKey = true;
    if (event.key === 'Enter') { pickAt(map.getCenter()); event.preventDefault(); }
    if (event.key === 'Escape') { clearChoice(); }
    if (event.key === 'Home') { map.fitBounds(extent, WHOLE); event.preventDefault(); }
    byId('pointer').textContent = placeText(map.getCenter().lng, map.getCenter().lat);
  });
  map.on('moveend', function () {
    if (byKey) { byId('pointer').textContent = placeText(map.getCenter().lng, map.getCenter().lat); }
  });
  byId('zoom-in').addEventListener('click', function () { map.zoomIn(1); });
  byId('zoom-out').addEventListener('click', function () { map.zoomOut(1); });
  byId('whole').addEventListener('click', function () { map.fitBounds(extent, WHOLE); });

  /* ---- choosing ---- */

  function choose(hit, others, go) {
    chosen = hit;
    var layer = hit.layer;
    if (!layer.on) { switchLayer(layer, true); }
    describe(hit, others);
    if (go) { goTo(layer, hit.i); }
    showTable(layer.key, hit.i);
    drawOverlay();
  }

  function clearChoice() {
    chosen = null;
    var place = byId('details-text');
    place.textContent = '';
    place.appendChild(make('p', 'soft', emptyDetails));
    drawOverlay();
    markRows();
  }

  var emptyDetails = byId('details-text').textContent.trim();

  function goTo(layer, i) {
    var bounds = L.latLngBounds(
      [layer.box[4 * i + 1], layer.box[4 * i]], [layer.box[4 * i + 3], layer.box[4 * i + 2]]);
    map.fitBounds(bounds, { padding: [70, 70], maxZoom: Math.max(0, map.getZoom()), animate: !calm });
    byId('map-part').scrollIntoView({ behavior: calm ? 'auto' : 'smooth', block: 'start' });
  }

  function describe(hit, others) {
    var layer = hit.layer;
    var place = byId('details-text');
    place.textContent = '';
    place.appendChild(make('h3', '', phrase('selected', phrase('one.' + layer.key), idOf(layer, hit.i))));
    var list = make('dl');
    layer.columns.forEach(function (column, k) {
      if (k === 0 || column.values[hit.i] === null) { return; }
      list.appendChild(make('dt', '', column.label));
      list.appendChild(make('dd', '', shown(column, hit.i) + (column.unit ? '\u00a0' + column.unit : '')));
    });
    place.appendChild(list);
    if (others.length) {
      place.appendChild(make('p', 'soft', phrase('alsoHere')));
      others.forEach(function (other) {
        var button = make('button', '', phrase('one.' + other.layer.key) + ' ' + idOf(other.layer, other.i));
        button.type = 'button';
        button.addEventListener('click', function () {
          choose(other, [hit].concat(others.filter(function (each) { return each !== other; })), false);
        });
        place.appendChild(button);
      });
    }
  }

  /* ---- switches, which are the legend too ---- */

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

  /* ---- tables ---- */

  var tableState = {};
  var openTable = null;

  function stateOf(key) {
    if (!tableState[key]) {
      var order = new Int32Array(layers[key].count);
      for (var i = 0; i < order.length; i++) { order[i] = i; }
      tableState[key] = { order: order, page: 0, column: -1, up: true };
    }
    return tableState[key];
  }

  function sortBy(key, k) {
    var state = stateOf(key);
    var column = layers[key].columns[k];
    state.up = state.column === k ? !state.up : column.kind === 'TEXT' || column.label === layers[key].columns[0].label;
    state.column = k;
    state.page = 0;
    var values = column.values.map(function (value) {
      return value !== null && column.words ? column.words[value] : value;
    });
    var words = new Intl.Collator('en', { numeric: true });
    var sign = state.up ? 1 : -1;
    state.order.sort(function (a, b) {
      var x = values[a], y = values[b];
      if (x === null || y === null) { return (x === null) - (y === null) || a - b; }
      var less = column.kind === 'TEXT' ? words.compare(x, y) : x - y;
      return sign * less || a - b;
    });
  }

  var tabs = TAB_ORDER.filter(function (key) { return layers[key] && layers[key].count; });
  tabs.forEach(function (key, place) {
    var tab = make('button', '', phrase('table.' + key));
    tab.type = 'button';
    tab.id = 'tab-' + key;
    tab.setAttribute('role', 'tab');
    tab.setAttribute('aria-controls', 'table');
    tab.addEventListener('click', function () { showTable(key, -1); });
    tab.addEventListener('keydown', function (event) {
      var by = { ArrowRight: 1, ArrowLeft: -1 }[event.key];
      if (by) {
        var next = tabs[(place + by + tabs.length) % tabs.length];
        showTable(next, -1);
        byId('tab-' + next).focus();
      }
    });
    byId('tabs').appendChild(tab);
  });

  function showTable(key, feature) {
    var state = stateOf(key);
    if (feature >= 0) { state.page = Math.floor(state.order.indexOf(feature) / PAGE_ROWS); }
    openTable = key;
    tabs.forEach(function (each) {
      var tab = byId('tab-' + each);
      tab.setAttribute('aria-selected', String(each === key));
      tab.tabIndex = each === key ? 0 : -1;
    });
    fillTable();
  }

  function fillTable() {
    var layer = layers[openTable];
    var state = stateOf(openTable);
    var place = byId('table');
    var scrolled = place.firstChild && place.dataset.key === openTable ? place.firstChild.scrollLeft : 0;
    place.textContent = '';
    place.dataset.key = openTable;
    place.setAttribute('aria-labelledby', 'tab-' + openTable);
    var scroll = make('div', 'scroll');
    var table = make('table');
    var head = make('tr');
    layer.columns.forEach(function (column, k) {
      var cell = make('th', column.kind === 'TEXT' ? '' : 'number');
      cell.scope = 'col';
      if (state.column === k) { cell.setAttribute('aria-sort', state.up ? 'ascending' : 'descending'); }
      var button = make('button', '', column.label + (column.unit ? ', ' + column.unit : ''));
      button.type = 'button';
      button.title = phrase('sort', column.label);
      button.addEventListener('click', function () {
        sortBy(openTable, k);
        fillTable();
        byId('table').querySelectorAll('th button')[k].focus();
      });
      cell.appendChild(button);
      head.appendChild(cell);
    });
    var thead = make('thead');
    thead.appendChild(head);
    table.appendChild(thead);
    var body = make('tbody');
    var from = state.page * PAGE_ROWS;
    var to = Math.min(layer.count, from + PAGE_ROWS);
    for (var r = from; r < to; r++) { body.appendChild(rowOf(layer, state.order[r])); }
    table.appendChild(body);
    scroll.appendChild(table);
    place.appendChild(scroll);
    scroll.scrollLeft = scrolled;
    place.appendChild(pages(layer, state, from, to));
    markRows();
  }

  function rowOf(layer, i) {
    var row = make('tr');
    row.dataset.feature = i;
    layer.columns.forEach(function (column, k) {
      var cell = make('td', column.kind === 'TEXT' ? '' : 'number');
      if (k === 0) {
        var button = make('button', 'go', shown(column, i));
        button.type = 'button';
        button.setAttribute('aria-label', phrase('onMap', phrase('one.' + layer.key) + ' ' + shown(column, i)));
        cell.appendChild(button);
      } else {
        cell.textContent = shown(column, i);
      }
      row.appendChild(cell);
    });
    row.addEventListener('click', function () { choose({ layer: layer, i: i }, [], true); });
    return row;
  }

  function pages(layer, state, from, to) {
    var line = make('div', 'pages');
    function button(words, by, dead) {
      var element = make('button', '', words);
      element.type = 'button';
      element.disabled = dead;
      element.addEventListener('click', function () {
        state.page += by;
        fillTable();
        var again = byId('table').querySelectorAll('.pages button')[by < 0 ? 0 : 1];
        if (again && !again.disabled) { again.focus(); }
      });
      return element;
    }
    if (layer.count > PAGE_ROWS) {
      line.appendChild(button(phrase('previous'), -1, from === 0));
      line.appendChild(button(phrase('next'), 1, to >= layer.count));
    }
    line.appendChild(make('span', 'soft', phrase('rows', grouped(String(from + 1)), grouped(String(to)), grouped(String(layer.count)))));
    return line;
  }

  function markRows() {
    document.querySelectorAll('#table tbody tr').forEach(function (row) {
      var is = Boolean(chosen && chosen.layer.key === openTable && Number(row.dataset.feature) === chosen.i);
      row.classList.toggle('chosen', is);
      if (is) { row.setAttribute('aria-current', 'true'); } else { row.removeAttribute('aria-current'); }
    });
  }

  if (tabs.length) { showTable(tabs[0], -1); }
  document.querySelectorAll('a[data-table]').forEach(function (link) {
    link.addEventListener('click', function () {
      if (tabs.indexOf(link.dataset.table) >= 0) { showTable(link.dataset.table, -1); }
    });
  });

  /* ---- day and night ---- */

  var dark = window.matchMedia('(prefers-color-scheme: dark)');

  function isDark() { return root.dataset.theme ? root.dataset.theme === 'dark' : dark.matches; }

  function applyTheme() {
    colours = readColours();
    byId('theme').textContent = phrase(isDark() ? 'themeLight' : 'themeDark');
    drawSwatches(colours);
    redraw();
  }

  byId('theme').addEventListener('click', function () {
    root.dataset.theme = isDark() ? 'light' : 'dark';
    applyTheme();
  });
  dark.addEventListener('change', applyTheme);
  applyTheme();

  /* ---- paper ---- */

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
})();
