/** Puts the page together: one state, one cursor in place, row and time. */
(function (R) {
  'use strict';

  function json(id) {
    return JSON.parse(document.getElementById(id).textContent);
  }

  function App() {
    var data = json('job-data');
    var words = json('words');
    this.t = function (key) { return words[key] || key; };
    this.job = new R.Job(data, R.unpack(data.columns, document.getElementById('job-columns').textContent.trim()));
    this.settled = new R.Settled(data.startS + '.' + data.columns[0].count);
    this.system = document.documentElement.getAttribute('data-units');
    this.units = new R.Units(this.system, data.zone);
    this.step = data.passes.length ? data.passes[0].firstStep : 0;
    this.row = 0;
    this.product = 0;
    this.span = null;
    this.layers = {skips: true, overlaps: true, findings: true, boundary: true, setbacks: true, zones: false};
    this.modes = R.modes(this.job, 0);
    this.mode = this.modes[0];
    this.playing = 0;
  }

  App.prototype.start = function () {
    document.documentElement.className += ' live';
    var self = this;
    this.map = new R.FieldMap(document.getElementById('map'), this.job, this, this.t);
    this.rowsInTime = new R.RowsInTime(document.getElementById('rows-in-time'), this.job, this);
    this.traces = new R.Traces(document.getElementById('traces'), this.job, this, this.t);
    this.places = new R.Places(document.getElementById('places-list'), this);
    this.controls();
    this.legend();
    this.passButtons();
    this.findingButtons();
    this.here();
    window.addEventListener('resize', function () {
      self.rowsInTime.draw();
      self.traces.draw();
    });
    document.documentElement.setAttribute('data-ready', String(Math.round(performance.now())));
  };

  App.prototype.controls = function () {
    var self = this;
    var t = this.t;
    var mode = document.getElementById('mode');
    this.modes.forEach(function (m) { mode.appendChild(new Option(t('page.mode.' + m.key), m.key)); });
    mode.addEventListener('change', function () { self.setMode(mode.value); });
    var product = document.getElementById('product');
    this.job.data.products.forEach(function (p, i) { product.appendChild(new Option(p.name, i)); });
    product.parentNode.hidden = this.job.data.products.length < 2;
    product.addEventListener('change', function () {
      self.product = +product.value;
      self.modes = R.modes(self.job, self.product);
      self.setMode(self.mode.key);
    });
    var row = document.getElementById('row');
    for (var r = 0; r < this.job.rows; r++) {
      row.appendChild(new Option(String(r + 1), r));
    }
    row.addEventListener('change', function () { self.moveTo(self.step, +row.value); });
    var layers = document.getElementById('layers');
    Object.keys(this.layers).forEach(function (key) {
      if (!self.has(key)) {
        return;
      }
      var label = R.element('label');
      var box = R.element('input');
      box.type = 'checkbox';
      box.checked = self.layers[key];
      box.addEventListener('change', function () { self.map.toggle(key, box.checked); });
      label.appendChild(box);
      label.appendChild(document.createTextNode(' ' + t('page.layer.' + key)));
      layers.appendChild(label);
    });
    document.getElementById('home').addEventListener('click', function () { self.map.reset(); });
    document.getElementById('clear').addEventListener('click', function () { self.brush(null); });
    document.getElementById('play').addEventListener('click', function () { self.play(); });
    document.getElementById('night').addEventListener('click', function () {
      document.documentElement.classList.toggle('night');
      self.traces.draw();
    });
    document.getElementById('units').addEventListener('click', function () { self.switchUnits(); });
    var locate = document.getElementById('locate');
    locate.hidden = !navigator.geolocation;
    locate.addEventListener('click', function () { self.locate(); });
  };

  App.prototype.has = function (key) {
    var data = this.job.data;
    return key === 'boundary' ? !!data.boundary : (data[key] || []).length > 0;
  };

  App.prototype.setMode = function (key) {
    this.mode = this.modes.filter(function (m) { return m.key === key; })[0];
    this.map.redraw();
    this.rowsInTime.draw();
    this.legend();
  };

  App.prototype.legend = function () {
    var host = document.getElementById('legend');
    var self = this;
    host.textContent = '';
    var entry = function (rgb, text, hatch) {
      var item = R.element('span', undefined, 'entry');
      var swatch = R.element('span', undefined, 'swatch hatch' + (hatch || 0));
      swatch.style.backgroundColor = R.css(rgb);
      item.appendChild(swatch);
      item.appendChild(document.createTextNode(text));
      host.appendChild(item);
    };
    var mode = this.mode;
    if (mode.classes) {
      mode.classes.forEach(function (c, i) {
        var middle = (mode.classes.length - 1) / 2;
        entry(c.rgb, mode.key === 'peers' ? c.shortName : c.name,
          Math.abs(i - middle) < 2 ? 0 : i < middle ? 1 : 2);
      });
    } else if (mode.kinds) {
      Object.keys(mode.kinds).forEach(function (k) { entry(mode.kinds[k], self.t('page.fix.' + k)); });
    } else {
      [0, 0.25, 0.5, 0.75, 1].forEach(function (share) {
        var value = mode.low + share * (mode.high - mode.low);
        entry(mode.color(value), mode.kind === 'time'
          ? self.units.clock(self.job.data.startS + value) : self.units.text(mode.kind, value));
      });
    }
  };

  /** A tap on the ground: the last visit there, and all that follows it. */
  App.prototype.tap = function (east, north) {
    this.at = [east, north];
    var strips = this.job.stripsAt(east, north);
    if (strips.length) {
      var last = strips[strips.length - 1];
      this.step = last.step;
      this.row = last.row;
    }
    this.follow(strips);
  };

  /** The cursor on a step and a row (from 0). */
  App.prototype.moveTo = function (step, row) {
    this.step = step;
    var rowChanged = this.row !== row;
    this.row = row;
    var edges = this.job.data.rows[row];
    var y = (edges[0] + edges[1]) / 2;
    this.at = [this.job.eastAt(step, y), this.job.northAt(step, y)];
    if (rowChanged) {
      this.traces.draw();
    }
    this.follow(null);
  };

  App.prototype.follow = function (strips) {
    this.map.mark(this.at[0], this.at[1]);
    this.rowsInTime.cursor();
    if (strips) {
      this.traces.draw();
    } else {
      this.traces.cursor();
    }
    document.getElementById('row').value = this.row;
    this.here();
  };

  /** What is known of the place under the cursor. */
  App.prototype.here = function () {
    var host = document.getElementById('here');
    host.textContent = '';
    var job = this.job;
    var t = this.t;
    var k = this.step;
    var p = this.product;
    var at = this.at || [job.east[k], job.north[k]];
    var strips = job.stripsAt(at[0], at[1]);
    var latLon = [job.data.origin[0] + at[1] / job.data.metersPerDegree[0],
      job.data.origin[1] + at[0] / job.data.metersPerDegree[1]];
    var units = this.units;
    var line = function (key, value) {
      host.appendChild(R.element('dt', t(key)));
      host.appendChild(R.element('dd', value));
    };
    line('page.row', String(this.row + 1));
    line('page.pass', job.pass[k] > 0 ? String(job.pass[k]) : t('page.no_pass'));
    line('page.time', units.day(job.data.startS + job.time[k]) + ' ' + units.clock(job.data.startS + job.time[k]));
    line('page.trace.speed', units.text('speed', job.speed(k)));
    line('page.trace.flow', units.text('flow', job.flows[p][this.row][k]));
    line('page.trace.target', units.text('rate', job.targets[p][this.row][k]));
    line('page.applied', units.text('rate', job.rate(p, this.row, k)));
    line('page.received', strips.length ? units.text('rate', job.received(p, strips)) : t('page.nothing'));
    line('page.against_peers', units.percent(job.ratio(p, this.row, k) - 1));
    line('page.place', latLon[0].toFixed(6) + ', ' + latLon[1].toFixed(6));
  };

  /** Only these steps in full color; null for all. */
  App.prototype.brush = function (span) {
    this.span = span;
    document.getElementById('clear').disabled = !span;
    this.map.redraw();
    this.rowsInTime.cursor();
    this.traces.draw();
  };

  App.prototype.showPlace = function (place) {
    this.map.show(place);
    this.tap(place.at[0], place.at[1]);
    document.getElementById('map').scrollIntoView({block: 'nearest'});
  };

  App.prototype.passButtons = function () {
    var self = this;
    Array.prototype.forEach.call(document.querySelectorAll('[data-pass]'), function (cell) {
      var number = +cell.getAttribute('data-pass');
      var pass = self.job.data.passes.filter(function (p) { return p.number === number; })[0];
      if (pass) {
        cell.textContent = '';
        cell.appendChild(R.button(String(number), self.t('page.show') + ' ' + self.t('page.pass') + ' ' + number,
          function () {
            self.brush({from: pass.firstStep, to: pass.endStep});
            self.moveTo(pass.firstStep, self.row);
          }));
      }
    });
  };

  App.prototype.findingButtons = function () {
    var self = this;
    Array.prototype.forEach.call(document.querySelectorAll('[data-finding]'), function (host) {
      var i = +host.getAttribute('data-finding') - 1;
      var finding = self.job.data.findings[i];
      host.textContent = '';
      host.appendChild(R.button(self.t('page.finding.show'), self.t('page.finding.show') + ' ' + (i + 1), function () {
        var step = self.job.stepAt(finding.fromS - self.job.data.startS);
        self.brush({from: step, to: self.job.stepAt(finding.toS - self.job.data.startS) + 1});
        self.moveTo(step, finding.rows.length ? finding.rows[0] - 1 : self.row);
      }));
    });
  };

  App.prototype.play = function () {
    var self = this;
    var button = document.getElementById('play');
    if (this.playing) {
      clearInterval(this.playing);
      this.playing = 0;
      button.textContent = this.t('page.play');
      return;
    }
    button.textContent = this.t('page.stop');
    this.playing = setInterval(function () {
      var timeS = self.job.time[self.step] + 6;
      if (timeS >= self.job.time[self.job.steps - 1]) {
        self.play();
        return;
      }
      self.moveTo(self.job.stepAt(timeS), self.row);
    }, 100);
  };

  /** Shows the printed words and figures in the other unit system. */
  App.prototype.switchUnits = function () {
    this.system = this.system === 'us' ? 'metric' : 'us';
    this.units = new R.Units(this.system, this.job.data.zone);
    Array.prototype.forEach.call(document.querySelectorAll('[data-in]'), function (part) {
      part.hidden = part.getAttribute('data-in') !== this.system;
    }, this);
    this.traces.draw();
    this.places.build();
    this.legend();
    this.here();
  };

  App.prototype.locate = function () {
    var self = this;
    navigator.geolocation.getCurrentPosition(function (position) {
      var at = self.map.plane(position.coords.latitude, position.coords.longitude);
      self.map.map.setView([at[1], at[0]], Math.max(1, self.map.map.getZoom()));
      self.tap(at[0], at[1]);
    }, function () {
      document.getElementById('locate').disabled = true;
    });
  };

  document.addEventListener('DOMContentLoaded', function () {
    R.app = new App();
    R.app.start();
  });
})(Rowledger);
