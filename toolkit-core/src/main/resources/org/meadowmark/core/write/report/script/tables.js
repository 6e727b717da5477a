/* Tables of the layers: sorted, by pages, linked to the map. */

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
