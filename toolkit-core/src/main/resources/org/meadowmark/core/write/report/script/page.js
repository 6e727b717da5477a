/* What the report carries, its words, and small helpers. Attributes reach the page as text only. */

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
