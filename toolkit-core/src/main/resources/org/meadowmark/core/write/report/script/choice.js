/* A feature is chosen: on the map, in a table, in the details. */

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
