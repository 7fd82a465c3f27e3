/** Traces of one row on one time axis: flow with the other rows' median and the target, ratio, pressure, speed. */
(function (R) {
  'use strict';

  /** More points than this are thinned out before they are drawn. */
  var MAX_POINTS = 6000;
  /** No line is drawn over a longer silence, s. */
  var MAX_GAP_S = 120;

  /**
   * @param {HTMLElement} element
   * @param {R.Job} job
   * @param {Object} state
   * @param {function(string): string} t words
   */
  R.Traces = function (element, job, state, t) {
    this.element = element;
    this.job = job;
    this.state = state;
    this.t = t;
    this.plots = [];
    this.draw();
  };

  R.Traces.prototype.series = function () {
    var job = this.job;
    var state = this.state;
    var p = state.product;
    var r = state.row;
    var units = state.units.of;
    var edges = job.data.rows[r];
    var width = job.meterWidth(p, r);
    var from = state.span ? state.span.from : 0;
    var to = state.span ? state.span.to : job.steps;
    var stride = Math.max(1, Math.floor((to - from) / MAX_POINTS));
    var out = {time: [], flow: [], peers: [], target: [], ratio: [], pressure: [], speed: []};
    var names = Object.keys(out);
    for (var k = from; k < to; k += stride) {
      var working = job.pass[k] > 0;
      var advance = job.area(k, k + 1, edges[0], edges[1]) / (edges[1] - edges[0]);
      var point = {
        time: job.data.startS + job.axis[k],
        flow: number(job.meterFlow(p, r, k) / units.flow.size),
        peers: working ? number(job.peerMedian(p, k) * width / units.flow.size) : null,
        target: working && job.targets[p][r][k] > 0
          ? number(job.targets[p][r][k] * width * advance / job.duration[k] / units.flow.size) : null,
        ratio: working ? number(100 * job.ratio(p, r, k)) : null,
        pressure: number(job.columns.pressure[k] / units.pressure.size),
        speed: number(job.speed(k) / units.speed.size)
      };
      names.forEach(function (name) { out[name].push(point[name]); });
      if (job.time[Math.min(k + stride, job.steps)] - job.time[k] > MAX_GAP_S) {
        names.forEach(function (name) { out[name].push(name === 'time' ? point.time + 1 : null); });
      }
    }
    return out;
  };

  function number(value) {
    return isFinite(value) ? value : null;
  }

  R.Traces.prototype.remove = function () {
    this.plots.forEach(function (plot) { plot.destroy(); });
    this.plots = [];
  };

  /** Where an epoch time stands on the time axis. */
  R.Traces.prototype.at = function (epochS) {
    return this.job.data.startS + this.job.axisAt(epochS - this.job.data.startS);
  };

  /** The step at a place on the time axis. */
  R.Traces.prototype.stepAt = function (axisS) {
    return this.job.stepAt(this.job.timeAt(axisS - this.job.data.startS));
  };

  /** Shades the times of findings that are about the row. */
  R.Traces.prototype.shade = function (plot) {
    var self = this;
    var row = this.state.row + 1;
    var context = plot.ctx;
    context.save();
    context.fillStyle = 'rgba(120,120,120,0.18)';
    this.job.data.findings.forEach(function (finding) {
      if (!finding.rows.length || finding.rows.indexOf(row) >= 0) {
        var box = plot.bbox;
        var from = Math.max(box.left, plot.valToPos(self.at(finding.fromS), 'x', true));
        var to = Math.min(box.left + box.width, plot.valToPos(self.at(finding.toS), 'x', true));
        if (to > from) {
          context.fillRect(from, box.top, to - from, box.height);
        }
      }
    });
    context.restore();
  };

  R.Traces.prototype.draw = function () {
    var self = this;
    var t = this.t;
    var units = this.state.units;
    this.remove();
    var s = this.series();
    var colors = {row: '#0072b2', peers: '#888', target: '#d55e00'};
    var charts = [{
      title: t('page.trace.flow') + ', ' + units.of.flow.name,
      data: [s.time, s.flow, s.peers, s.target],
      series: [[this.state.meterName(t('page.row') + ' ' + (this.state.row + 1)), colors.row, []],
        [t('page.trace.peers'), colors.peers, []],
        [t('page.trace.target'), colors.target, [6, 4]]]
    }];
    if (this.state.oneMeter()) {
      charts[0].data = [s.time, s.flow];
      charts[0].series = [[t('page.bar_flow'), colors.row, []]];
    }
    if (!this.state.oneMeter()) {
      charts.push({
        title: t('page.trace.ratio') + ', %',
        data: [s.time, s.ratio],
        series: [[t('page.trace.ratio'), colors.row, []]]
      });
    }
    if (s.pressure.some(function (value) { return value !== null; })) {
      charts.push({
        title: t('page.trace.pressure') + ', ' + units.of.pressure.name,
        data: [s.time, s.pressure],
        series: [[t('page.trace.pressure'), colors.row, []]]
      });
    }
    charts.push({
      title: t('page.trace.speed') + ', ' + units.of.speed.name,
      data: [s.time, s.speed],
      series: [[t('page.trace.speed'), colors.row, []]]
    });
    var style = getComputedStyle(this.element);
    var grid = {stroke: style.getPropertyValue('--line'), width: 1};
    var clock = function (plot, splits) {
      return units.axis(splits.map(function (s) { return self.job.data.startS + self.job.timeAt(s - self.job.data.startS); }),
        self.state.severalDays(), '\n');
    };
    this.plots = charts.map(function (chart) {
      return new uPlot({
        title: chart.title,
        width: Math.max(280, self.element.clientWidth),
        height: 150,
        cursor: {y: false, sync: {key: 'rowledger'}, drag: {x: true, y: false, setScale: false}},
        select: {show: true},
        legend: {live: false},
        tzDate: function (epoch) { return uPlot.tzDate(new Date(epoch * 1000), self.job.data.zone); },
        axes: [{stroke: style.color, grid: grid, values: clock}, {stroke: style.color, grid: grid, size: 55}],
        series: [{}].concat(chart.series.map(function (line) {
          return {label: line[0], stroke: line[1], dash: line[2], width: 1.2, spanGaps: false, points: {show: false}};
        })),
        hooks: {
          drawAxes: [function (plot) { self.shade(plot); }],
          setSelect: [function (plot) {
            if (plot.select.width > 6) {
              var left = plot.select.left;
              self.state.brush({
                from: self.stepAt(plot.posToVal(left, 'x')),
                to: self.stepAt(plot.posToVal(left + plot.select.width, 'x')) + 1
              });
            }
          }],
          ready: [function (plot) {
            self.point(plot);
            plot.over.addEventListener('click', function () {
              if (plot.cursor.left >= 0 && plot.select.width < 6) {
                self.state.moveTo(self.stepAt(plot.posToVal(plot.cursor.left, 'x')), self.state.row);
              }
            });
          }]
        }
      }, chart.data, self.element);
    });
  };

  /** A small drawing of a pass: the bar's rate against its target from the start to the end, half to one and a half. */
  R.passTrace = function (job, product, number) {
    var pass = job.data.passes.filter(function (p) { return p.number === number; })[0];
    var points = 40;
    var path = '';
    for (var i = 0; pass && i < points; i++) {
      var from = pass.firstStep + Math.floor(i * (pass.endStep - pass.firstStep) / points);
      var to = pass.firstStep + Math.floor((i + 1) * (pass.endStep - pass.firstStep) / points);
      var share = job.shareOfTarget(product, from, Math.max(to, from + 1));
      if (share === share) {
        path += (path ? 'L' : 'M') + (i * 2 + 1) + ' ' + (24 - Math.max(0, Math.min(1, share - 0.5)) * 24).toFixed(1);
      }
    }
    var space = 'http://www.w3.org/2000/svg';
    var svg = document.createElementNS(space, 'svg');
    svg.setAttribute('viewBox', '0 0 80 24');
    svg.setAttribute('class', 'pass-trace');
    svg.setAttribute('aria-hidden', 'true');
    [['M0 12H80', 'target'], [path, 'rate']].forEach(function (line) {
      var shape = document.createElementNS(space, 'path');
      shape.setAttribute('d', line[0]);
      shape.setAttribute('class', line[1]);
      svg.appendChild(shape);
    });
    return svg;
  };

  /** Puts the plots' cursor on the step. */
  R.Traces.prototype.cursor = function () {
    this.plots.forEach(this.point, this);
  };

  /** Puts a plot's cursor on the step; a plot has no scales before it is ready. */
  R.Traces.prototype.point = function (plot) {
    var at = this.job.data.startS + this.job.axis[this.state.step];
    plot.setCursor({left: plot.valToPos(at, 'x'), top: 20}, false);
  };
})(Rowledger);
