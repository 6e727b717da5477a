/* Draws layers on a canvas. */

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
