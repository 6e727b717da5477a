/* Degrees and ground scale of the analysis grid, interpolated. */

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
