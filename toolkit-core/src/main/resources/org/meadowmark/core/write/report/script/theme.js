/* Day and night colours. */

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
