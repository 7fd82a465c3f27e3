/** The job: geometry and figures of strips. Lengths in m, areas in m², flows in L/s, rates in L/m². */
(function (R) {
  'use strict';

  /** Side of a cell of the index by place, m. */
  var CELL_M = 16;
  /** Longer silences are shortened on axes of time, in whole parts of this many seconds, so that a night doesn't squeeze the work. */
  var MAX_SILENCE_S = 3600;
  var CUT_S = 600;

  /**
   * @param {Object} data the page's JSON
   * @param {Object<string, Float64Array>} columns
   */
  R.Job = function (data, columns) {
    this.data = data;
    this.columns = columns;
    this.time = columns.time;
    this.east = columns.east;
    this.north = columns.north;
    this.pass = columns.pass;
    this.duration = columns.duration;
    this.rows = data.rows.length;
    this.steps = this.pass.length;
    this.cos = columns.heading.map(Math.cos);
    this.sin = columns.heading.map(Math.sin);
    this.delivering = [];
    for (var r = 0; r < this.rows; r++) {
      var on = new Uint8Array(this.steps);
      var toggles = columns['delivering.' + (r + 1)];
      for (var t = 0; t + 1 < toggles.length; t += 2) {
        on.fill(1, toggles[t], toggles[t + 1]);
      }
      this.delivering.push(on);
    }
    this.flows = [];
    this.targets = [];
    for (var p = 0; p < data.products.length; p++) {
      this.flows.push(rowColumns(columns, 'flow.' + p + '.', this.rows));
      this.targets.push(rowColumns(columns, 'target.' + p + '.', this.rows));
    }
    this.lanes = data.meters.map(function (meters) { return lanesOf(meters, data.rows.length); });
    this.axis = axisOf(this.time);
    this.medians = {};
    this.index = null;
  };

  /** For each row (from 0) the rows that its meter feeds. */
  function lanesOf(meters, rows) {
    var lanes = [];
    for (var r = 0; r < rows; r++) {
      lanes.push([r]);
    }
    meters.forEach(function (meter) {
      var lane = meter.map(function (row) { return row - 1; });
      lane.forEach(function (r) { lanes[r] = lane; });
    });
    return lanes;
  }

  /** Times since the start with long silences shortened, s. */
  function axisOf(time) {
    var axis = new Float64Array(time.length);
    for (var k = 1; k < time.length; k++) {
      var between = time[k] - time[k - 1];
      axis[k] = axis[k - 1] + between - (between > MAX_SILENCE_S ? CUT_S * (Math.floor(between / CUT_S) - 1) : 0);
    }
    return axis;
  }

  function rowColumns(columns, prefix, rows) {
    var out = [];
    for (var r = 0; r < rows; r++) {
      out.push(columns[prefix + (r + 1)] || columns[prefix + '1']);
    }
    return out;
  }

  /** East of a place y right of the bar's center at pose i, m. */
  R.Job.prototype.eastAt = function (i, y) {
    return this.east[i] + y * this.cos[i];
  };

  /** North of a place y right of the bar's center at pose i, m. */
  R.Job.prototype.northAt = function (i, y) {
    return this.north[i] - y * this.sin[i];
  };

  /** Signed area between poses i and j (i < j) of the ground from left to right, m²; positive forward. */
  R.Job.prototype.area = function (i, j, left, right) {
    var l0e = this.eastAt(i, left);
    var l0n = this.northAt(i, left);
    var r1e = this.eastAt(j, right);
    var r1n = this.northAt(j, right);
    var l1e = this.eastAt(j, left);
    var l1n = this.northAt(j, left);
    var r0e = this.eastAt(i, right);
    var r0n = this.northAt(i, right);
    return 0.5 * ((r1e - l0e) * (l1n - r0n) - (r1n - l0n) * (l1e - r0e));
  };

  /** Flow of the meter that feeds row r, for all of its rows together, in step k, L/s. */
  R.Job.prototype.meterFlow = function (p, r, k) {
    var flows = this.flows[p];
    return this.lanes[p][r].reduce(function (sum, row) { return sum + flows[row][k]; }, 0);
  };

  /** Width of the rows that row r's meter feeds, m. */
  R.Job.prototype.meterWidth = function (p, r) {
    var rows = this.data.rows;
    return this.lanes[p][r].reduce(function (sum, row) { return sum + rows[row][1] - rows[row][0]; }, 0);
  };

  /** Rate that row r applied in step k, L/m²; NaN where it did not apply or its flow is not known. */
  R.Job.prototype.rate = function (p, r, k) {
    if (!this.delivering[r][k]) {
      return NaN;
    }
    var edges = this.data.rows[r];
    var areaM2 = this.area(k, k + 1, edges[0], edges[1]);
    return areaM2 > 0 ? this.flows[p][r][k] * this.duration[k] / areaM2 : NaN;
  };

  /** Target of row r in step k, L/m²; the mean rate of the job where there is none. */
  R.Job.prototype.target = function (p, r, k) {
    var target = this.targets[p][r][k];
    return target > 0 ? target : this.data.products[p].meanRateLPerM2;
  };

  /** Speed of the bar's center in step k, m/s. */
  R.Job.prototype.speed = function (k) {
    var east = this.east[k + 1] - this.east[k];
    var north = this.north[k + 1] - this.north[k];
    return this.duration[k] > 0 ? Math.sqrt(east * east + north * north) / this.duration[k] : NaN;
  };

  /** Median of the applying rows' flow per meter of band in step k, L/s per m; NaN with fewer than three. */
  R.Job.prototype.peerMedian = function (p, k) {
    var cache = this.medians[p] || (this.medians[p] = new Float32Array(this.steps).fill(-1));
    if (cache[k] >= 0 || cache[k] !== cache[k]) {
      return cache[k];
    }
    var values = [];
    for (var r = 0; r < this.rows; r++) {
      var flow = this.flows[p][r][k];
      if (this.pass[k] > 0 && this.delivering[r][k] && flow === flow) {
        values.push(flow / (this.data.rows[r][1] - this.data.rows[r][0]));
      }
    }
    values.sort(function (a, b) { return a - b; });
    var n = values.length;
    cache[k] = n < 3 ? NaN : n % 2 ? values[(n - 1) / 2] : (values[n / 2 - 1] + values[n / 2]) / 2;
    return cache[k];
  };

  /** Row r against the other rows in step k, 1 where it is like them. */
  R.Job.prototype.ratio = function (p, r, k) {
    var edges = this.data.rows[r];
    return this.flows[p][r][k] / (this.peerMedian(p, k) * (edges[1] - edges[0]));
  };

  R.Job.prototype.buildIndex = function () {
    this.index = new Map();
    var reach = Math.max(-this.data.rows[0][0], this.data.rows[this.rows - 1][1]);
    for (var k = 0; k < this.steps; k++) {
      if (!(this.pass[k] > 0)) {
        continue;
      }
      var e0 = Math.floor((Math.min(this.east[k], this.east[k + 1]) - reach) / CELL_M);
      var e1 = Math.floor((Math.max(this.east[k], this.east[k + 1]) + reach) / CELL_M);
      var n0 = Math.floor((Math.min(this.north[k], this.north[k + 1]) - reach) / CELL_M);
      var n1 = Math.floor((Math.max(this.north[k], this.north[k + 1]) + reach) / CELL_M);
      for (var e = e0; e <= e1; e++) {
        for (var n = n0; n <= n1; n++) {
          var key = e * 100003 + n;
          var list = this.index.get(key);
          if (list) {
            list.push(k);
          } else {
            this.index.set(key, [k]);
          }
        }
      }
    }
  };

  function inside(x, y, quad) {
    var sign = 0;
    for (var i = 0; i < 4; i++) {
      var a = quad[i];
      var b = quad[(i + 1) % 4];
      var cross = (b[0] - a[0]) * (y - a[1]) - (b[1] - a[1]) * (x - a[0]);
      if (cross !== 0) {
        if (sign !== 0 && (cross > 0) !== (sign > 0)) {
          return false;
        }
        sign = cross;
      }
    }
    return true;
  }

  /**
   * The strips over a place, earliest first.
   * @returns {{step: number, row: number, pass: number}[]} row from 0
   */
  R.Job.prototype.stripsAt = function (east, north) {
    if (!this.index) {
      this.buildIndex();
    }
    var steps = this.index.get(Math.floor(east / CELL_M) * 100003 + Math.floor(north / CELL_M)) || [];
    var found = [];
    var left = this.data.rows[0][0];
    var right = this.data.rows[this.rows - 1][1];
    for (var s = 0; s < steps.length; s++) {
      var k = steps[s];
      if (!inside(east, north, this.quad(k, k + 1, left, right))) {
        continue;
      }
      for (var r = 0; r < this.rows; r++) {
        if (inside(east, north, this.quad(k, k + 1, this.data.rows[r][0], this.data.rows[r][1]))) {
          found.push({step: k, row: r, pass: this.pass[k]});
          break;
        }
      }
    }
    return found;
  };

  /** The areas that hold a place, where the log is a map of areas. */
  R.Job.prototype.areasAt = function (east, north) {
    return this.data.areas.filter(function (area) {
      // An inner ring takes its ground away again.
      return area.rings.filter(function (ring) { return inRing(east, north, ring); }).length % 2 === 1;
    });
  };

  function inRing(east, north, ring) {
    var odd = false;
    for (var i = 0, j = ring.length - 1; i < ring.length; j = i++) {
      if ((ring[i][1] > north) !== (ring[j][1] > north)
          && east < (ring[j][0] - ring[i][0]) * (north - ring[i][1]) / (ring[j][1] - ring[i][1]) + ring[i][0]) {
        odd = !odd;
      }
    }
    return odd;
  }

  /** Corners of the ground between two poses. */
  R.Job.prototype.quad = function (i, j, left, right) {
    return [
      [this.eastAt(i, left), this.northAt(i, left)],
      [this.eastAt(j, left), this.northAt(j, left)],
      [this.eastAt(j, right), this.northAt(j, right)],
      [this.eastAt(i, right), this.northAt(i, right)]
    ];
  };

  /** Volume over target volume of all rows in steps from to one before to, some of them; NaN without a target. */
  R.Job.prototype.shareOfTarget = function (p, from, to) {
    var volume = 0;
    var target = 0;
    var stride = Math.max(1, Math.floor((to - from) / 3));
    for (var k = from; k < to; k += stride) {
      for (var r = 0; r < this.rows; r++) {
        var flow = this.flows[p][r][k];
        var rate = this.targets[p][r][k];
        if (flow === flow && rate > 0) {
          volume += flow * this.duration[k];
          target += rate * this.area(k, k + 1, this.data.rows[r][0], this.data.rows[r][1]);
        }
      }
    }
    return target > 0 ? volume / target : NaN;
  };

  /** Rate that a place received from all visits, L/m². */
  R.Job.prototype.received = function (p, strips) {
    var seen = {};
    var sum = 0;
    for (var s = strips.length - 1; s >= 0; s--) {
      var strip = strips[s];
      var visit = strip.pass + '.' + strip.row;
      var rate = this.rate(p, strip.row, strip.step);
      if (!seen[visit] && rate === rate) {
        seen[visit] = true;
        sum += rate;
      }
    }
    return sum;
  };

  /** The step at a time since the start, s. */
  R.Job.prototype.stepAt = function (timeS) {
    return lastUpTo(this.time, this.steps, timeS);
  };

  /** The place on an axis of shortened silences of a time since the start, s. */
  R.Job.prototype.axisAt = function (timeS) {
    var k = this.stepAt(timeS);
    return this.axis[k] + Math.max(0, Math.min(timeS - this.time[k], this.axis[k + 1] - this.axis[k]));
  };

  /** The time since the start at a place on an axis of shortened silences, s. */
  R.Job.prototype.timeAt = function (axisS) {
    var k = lastUpTo(this.axis, this.steps, axisS);
    return this.time[k] + axisS - this.axis[k];
  };

  function lastUpTo(values, count, value) {
    var low = 0;
    var high = count - 1;
    while (low < high) {
      var middle = (low + high + 1) >> 1;
      if (values[middle] <= value) {
        low = middle;
      } else {
        high = middle - 1;
      }
    }
    return low;
  }
})(Rowledger);
