/* Numbers for people, as in the tables on paper. */

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
