/**
 * Colors. Deviation: PuOr in seven classes (C. Brewer, M. Harrower, ColorBrewer 2.0, color-blind safe), with hatching for
 * under and over so that gray still tells them apart. Amounts: cividis (J. Nunez, C. Anderton, R. Renslow, PLoS ONE 13(7), 2018).
 * Kinds: M. Okabe, K. Ito, "Color Universal Design" (2008).
 */
(function (R) {
  'use strict';

  var CIVIDIS = [0x00224e, 0x123570, 0x3b496c, 0x575d6d, 0x707173, 0x8a8678, 0xa59c74, 0xc3b369, 0xe1cc55, 0xfee838];
  var KINDS = {'0': 0xd55e00, '1': 0xe69f00, '2': 0x56b4e9, '4': 0x009e73, '5': 0xf0e442};
  var UNKNOWN = 0xb9bdbf;

  /** Pixel in the order that canvases have, opaque. */
  function pixel(rgb) {
    return (0xff000000 | (rgb & 0xff) << 16 | rgb & 0xff00 | rgb >> 16) >>> 0;
  }

  R.css = function (rgb) {
    return '#' + ('000000' + rgb.toString(16)).slice(-6);
  };

  function scale(share) {
    if (!(share === share)) {
      return UNKNOWN;
    }
    var at = Math.max(0, Math.min(1, share)) * (CIVIDIS.length - 1);
    var i = Math.min(CIVIDIS.length - 2, Math.floor(at));
    var t = at - i;
    var a = CIVIDIS[i];
    var b = CIVIDIS[i + 1];
    var mix = function (shift) {
      return Math.round((a >> shift & 255) * (1 - t) + (b >> shift & 255) * t) << shift;
    };
    return mix(16) | mix(8) | mix(0);
  }

  /**
   * A way to color the ground.
   * @typedef {Object} Mode
   * @property {string} key
   * @property {function(R.Job, number, number, number): number} value product, row, step to a number
   * @property {function(number): number} color of a value, RGB
   * @property {function(number): number} hatch 0 none, 1 under, 2 over
   */

  /** The ways to color the ground of a job. */
  R.modes = function (job, product) {
    var classes = job.data.classes;
    var middle = (classes.length - 1) / 2;
    var classOf = function (deviation) {
      var i = 0;
      while (i < classes.length - 1 && deviation > classes[i].upTo) {
        i++;
      }
      return i;
    };
    var byClass = {
      color: function (deviation) { return deviation === deviation ? classes[classOf(deviation)].rgb : UNKNOWN; },
      hatch: function (deviation) {
        var i = classOf(deviation);
        return deviation !== deviation || Math.abs(i - middle) < 2 ? 0 : i < middle ? 1 : 2;
      }
    };
    var range = R.ranges(job, product);
    var amount = function (kind, low, high) {
      return {
        kind: kind,
        low: low,
        high: high,
        color: function (value) { return value === value ? scale((value - low) / (high - low || 1)) : UNKNOWN; },
        hatch: function () { return 0; }
      };
    };
    var modes = [
      Object.assign({key: 'target', classes: classes}, byClass, {
        value: function (p, r, k) { return job.rate(p, r, k) / job.target(p, r, k) - 1; },
        ofArea: function (p, area) { return area.rate[p] / (area.target[p] || job.data.products[p].meanRateLPerM2) - 1; }
      }),
      Object.assign({key: 'applied'}, amount('rate', 0, 2 * range.rate), {
        value: function (p, r, k) { return job.rate(p, r, k); },
        ofArea: function (p, area) { return area.rate[p]; }
      }),
      Object.assign({key: 'peers', classes: classes}, byClass, {
        value: function (p, r, k) { return job.delivering[r][k] ? job.ratio(p, r, k) - 1 : NaN; }
      }),
      Object.assign({key: 'speed'}, amount('speed', 0, range.speed), {
        value: function (p, r, k) { return job.speed(k); }
      }),
      {
        key: 'fix',
        kinds: KINDS,
        value: function (p, r, k) { return job.columns.fix[k]; },
        color: function (value) { return KINDS[value] === undefined ? UNKNOWN : KINDS[value]; },
        hatch: function () { return 0; }
      },
      Object.assign({key: 'time'}, amount('time', job.axis[0], job.axis[job.axis.length - 1]), {
        value: function (p, r, k) { return job.axis[k]; }
      })
    ];
    return modes.filter(function (mode) {
      return job.data.areas.length ? !!mode.ofArea : mode.key === 'peers' ? job.data.metering[product] === 'per_row'
        : job.data.timed || (mode.key !== 'speed' && mode.key !== 'time');
    });
  };

  function medianRate(job, product) {
    var rates = [];
    for (var k = 0; k < job.steps; k += Math.max(1, Math.floor(job.steps / 2000))) {
      var rate = job.rate(product, k % job.rows, k);
      if (job.pass[k] > 0 && rate > 0) {
        rates.push(rate);
      }
    }
    rates.sort(function (a, b) { return a - b; });
    return rates.length ? rates[rates.length >> 1] : 1e-3;
  }

  /** Typical rate and largest usual speed of a job. */
  R.ranges = function (job, product) {
    var speeds = [];
    for (var k = 0; k < job.steps; k += Math.max(1, Math.floor(job.steps / 2000))) {
      if (job.pass[k] > 0) {
        speeds.push(job.speed(k));
      }
    }
    speeds.sort(function (a, b) { return a - b; });
    return {
      rate: job.data.products[product].meanRateLPerM2 || medianRate(job, product),
      speed: speeds.length ? speeds[Math.floor(speeds.length * 0.98)] * 1.05 : 3
    };
  };

  R.pixel = pixel;
})(Rowledger);
