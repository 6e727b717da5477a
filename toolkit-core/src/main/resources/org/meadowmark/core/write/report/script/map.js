/* The map: moves with the library, is drawn here. */

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
