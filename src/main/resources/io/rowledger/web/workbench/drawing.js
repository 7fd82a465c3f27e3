/** Small pictures: traces, paths, maps of results. */
(function (R) {
  'use strict';

  /**
   * A small trace.
   * @param {Array<number|null>} values
   */
  R.trace = function (values) {
    var width = 120;
    var height = 28;
    var known = values.filter(function (v) { return v !== null; });
    var svg = R.svg('svg', {viewBox: '0 0 ' + width + ' ' + height, 'class': 'trace', 'aria-hidden': 'true'});
    if (known.length < 2) {
      return svg;
    }
    var low = Math.min.apply(null, known);
    var high = Math.max.apply(null, known);
    var span = high - low || 1;
    var d = '';
    var pen = 'M';
    values.forEach(function (v, i) {
      if (v === null) {
        pen = 'M';
        return;
      }
      d += pen + (i / (values.length - 1) * width).toFixed(1) + ' '
        + (height - 2 - (v - low) / span * (height - 4)).toFixed(1);
      pen = 'L';
    });
    svg.appendChild(R.svg('path', {d: d}));
    return svg;
  };

  /**
   * Paths of logs on one plane, north up.
   * @param {Array<{file: string, path: number[]}>} logs
   * @param {string} label for those who can't see it
   */
  R.paths = function (logs, label) {
    var low = [Infinity, Infinity];
    var high = [-Infinity, -Infinity];
    logs.forEach(function (log) {
      for (var i = 0; i < log.path.length; i += 2) {
        low = [Math.min(low[0], log.path[i]), Math.min(low[1], log.path[i + 1])];
        high = [Math.max(high[0], log.path[i]), Math.max(high[1], log.path[i + 1])];
      }
    });
    if (!isFinite(low[0])) {
      return R.h('p.note', null, R.t('workbench.logs.noPath'));
    }
    var size = Math.max(high[0] - low[0], high[1] - low[1], 20);
    var scale = 600 / size;
    var width = (high[0] - low[0]) * scale + 20;
    var height = (high[1] - low[1]) * scale + 20;
    var svg = R.svg('svg', {
      viewBox: '0 0 ' + width.toFixed(0) + ' ' + height.toFixed(0), 'class': 'paths', role: 'img', 'aria-label': label
    });
    logs.forEach(function (log, n) {
      var d = '';
      for (var i = 0; i < log.path.length; i += 2) {
        d += (i ? 'L' : 'M') + ((log.path[i] - low[0]) * scale + 10).toFixed(1) + ' '
          + ((high[1] - log.path[i + 1]) * scale + 10).toFixed(1);
      }
      svg.appendChild(R.svg('path', {d: d, 'class': 'path' + n % 4}));
    });
    return svg;
  };

  /** The map of a field's results, as large as its box. */
  R.thumbnail = function (field, label) {
    var box = R.h('div.thumbnail');
    R.call('GET', R.fieldPath(field, 'picture')).then(function (picture) {
      if (!picture.shapes.length) {
        return;
      }
      var svg = R.svg('svg', {viewBox: '0 0 ' + picture.width + ' ' + picture.height, 'class': 'picture', role: 'img',
        'aria-label': label});
      picture.shapes.forEach(function (shape) {
        svg.appendChild(R.svg('path', {'class': shape.kind, 'fill-rule': 'evenodd', d: shape.path}));
      });
      box.appendChild(svg);
    }, function () { /* A field without a picture has none. */ });
    return box;
  };

  /** A length of time in words: 44 min, 3 h 5 min. */
  R.duration = function (seconds) {
    var minutes = Math.round(seconds / 60);
    return minutes < 60 ? R.t('workbench.minutes', minutes)
      : R.t('workbench.hours', Math.floor(minutes / 60), minutes % 60);
  };

  /** The units that the person reads. */
  R.reader = function (zone) {
    var system = R.kept('units') || 'us';
    try {
      return new R.Units(system, zone && zone !== 'Z' ? zone : 'UTC', document.documentElement.lang);
    } catch (e) {
      // A zone that this browser doesn't know.
      return new R.Units(system, 'UTC', document.documentElement.lang);
    }
  };

  /** True where the page shows metric units. */
  R.isMetric = function () {
    return R.kept('units') === 'metric';
  };

  function roundRate(value, unit) {
    return value.toFixed(value < 10 ? 1 : 0) + ' ' + unit;
  }

  /** A rate of liquid in whole units, with a tenth below ten of them. */
  R.rate = function (lPerM2) {
    return R.isMetric() ? roundRate(lPerM2 * 1e4, 'L/ha') : roundRate(lPerM2 * 4046.8564224 / 3.785411784, 'gal/ac');
  };

  /** A distance on the ground: feet or meters, from a mile or a kilometer on in these. */
  R.distance = function (m) {
    var far = R.isMetric() ? 1000 : 1609.344;
    return m < far ? R.reader().text('length', m) : (m / far).toFixed(1) + (R.isMetric() ? ' km' : ' mi');
  };

  /** A row spacing. */
  R.spacing = function (m) {
    return R.isMetric() ? (m * 100).toFixed(0) + ' cm' : (m / 0.0254).toFixed(0) + ' in';
  };

  /** A length of the bar: 14 ft 6 in, or 4.42 m. */
  R.barLength = function (m) {
    return R.isMetric() ? m.toFixed(2) + ' m' : R.feet(m);
  };

  /** Nitrogen in a volume of liquid and on ground, in words; a question mark where there is no rate. */
  R.nitrogen = function (kgPerL, kgPerM2) {
    var lb = 1 / 0.45359237;
    var figure = function (perM2) { return kgPerM2 === null ? '?' : (kgPerM2 * perM2).toFixed(0); };
    return R.isMetric() ? R.t('workbench.product.nitrogenMetric', kgPerL.toFixed(3), figure(1e4))
      : R.t('workbench.product.nitrogen', (kgPerL * lb * 3.785411784).toFixed(2), figure(lb * 4046.8564224));
  };
})(Rowledger);
