/** Figures as people read them. Factors: NIST Special Publication 811, appendix B. */
(function (R) {
  'use strict';

  var L_PER_GAL = 3.785411784;
  var M2_PER_ACRE = 4046.8564224;
  var MPS_PER_MPH = 0.44704;
  var PA_PER_PSI = 6894.757293168;
  var M_PER_FT = 0.3048;

  /**
   * @typedef {Object} Unit
   * @property {string} name
   * @property {number} size of one unit in SI
   * @property {number} digits behind the point
   */
  var SYSTEMS = {
    us: {
      rate: {name: 'gal/ac', size: L_PER_GAL / M2_PER_ACRE, digits: 1},
      flow: {name: 'gal/min', size: L_PER_GAL / 60, digits: 3},
      speed: {name: 'mph', size: MPS_PER_MPH, digits: 1},
      pressure: {name: 'psi', size: PA_PER_PSI, digits: 1},
      area: {name: 'ac', size: M2_PER_ACRE, digits: 2},
      patch: {name: 'ft²', size: M_PER_FT * M_PER_FT, digits: 0},
      length: {name: 'ft', size: M_PER_FT, digits: 0}
    },
    metric: {
      rate: {name: 'L/ha', size: 1e-4, digits: 0},
      flow: {name: 'L/min', size: 1 / 60, digits: 3},
      speed: {name: 'km/h', size: 1 / 3.6, digits: 1},
      pressure: {name: 'kPa', size: 1000, digits: 0},
      area: {name: 'ha', size: 10000, digits: 2},
      patch: {name: 'm²', size: 1, digits: 0},
      length: {name: 'm', size: 1, digits: 1}
    }
  };

  /**
   * @param {string} system us or metric
   * @param {string} zone IANA time zone
   * @param {string} language en or es
   */
  R.Units = function (system, zone, language) {
    var locale = language === 'es' ? 'es-US' : 'en-US';
    this.system = system;
    this.of = SYSTEMS[system];
    this.clockFormat = new Intl.DateTimeFormat(locale, {
      timeZone: zone, hour: 'numeric', minute: '2-digit', second: '2-digit', hour12: system === 'us'
    });
    this.shortClockFormat = new Intl.DateTimeFormat(locale, {
      timeZone: zone, hour: 'numeric', minute: '2-digit', hour12: system === 'us'
    });
    this.shortDayFormat = new Intl.DateTimeFormat(locale, {timeZone: zone, month: 'short', day: 'numeric'});
    this.dayFormat = new Intl.DateTimeFormat(locale, {
      timeZone: zone, year: 'numeric', month: 'short', day: 'numeric'
    });
  };

  /**
   * A figure with its unit.
   * @param {string} kind rate, flow, speed, pressure, area or length
   * @param {number} si value in SI; NaN gives a dash
   */
  R.Units.prototype.text = function (kind, si) {
    var unit = this.of[kind];
    return isFinite(si) ? (si / unit.size).toFixed(unit.digits) + ' ' + unit.name : '–';
  };

  /** An area: from a tenth of an acre or hectare on in these, else in square feet or meters. */
  R.Units.prototype.anyArea = function (m2) {
    return m2 >= 0.1 * this.of.area.size ? this.text('area', m2)
      : Math.round(m2 / this.of.patch.size).toLocaleString('en-US') + ' ' + this.of.patch.name;
  };

  /** Areas that places are filtered by, m². */
  R.Units.prototype.sizes = function () {
    var patch = this.of.patch.size;
    var area = this.of.area.size;
    return this.system === 'us' ? [100 * patch, 1000 * patch, 0.1 * area, area] : [10, 100, 0.1 * area, 0.5 * area];
  };

  /** A deviation, 0.05 for 5 percent over. */
  R.Units.prototype.percent = function (share) {
    if (!isFinite(share)) {
      return '–';
    }
    var pct = share * 100;
    return (pct >= 0 ? '+' : '−') + Math.abs(pct).toFixed(1) + '%';
  };

  /** Local time of day of epoch seconds. */
  R.Units.prototype.clock = function (epochS) {
    return this.clockFormat.format(new Date(epochS * 1000));
  };

  /**
   * Labels of an axis of time: hours and minutes, with seconds where a minute repeats, and the day where it changes on a job of
   * several days.
   * @param {number[]} epochS in their order
   * @param {boolean} days the job is of several days
   * @param {string} between what stands between time and day
   */
  R.Units.prototype.axis = function (epochS, days, between) {
    var self = this;
    var short = epochS.map(function (s) { return self.shortClockFormat.format(new Date(s * 1000)); });
    var close = short.some(function (text, i) { return i > 0 && text === short[i - 1]; });
    var before = '';
    return epochS.map(function (s, i) {
      var day = self.shortDayFormat.format(new Date(s * 1000));
      var text = (close ? self.clock(s) : short[i]) + (days && day !== before ? between + day : '');
      before = day;
      return text;
    });
  };

  /** Local date of epoch seconds. */
  R.Units.prototype.day = function (epochS) {
    return this.dayFormat.format(new Date(epochS * 1000));
  };
})(Rowledger);
