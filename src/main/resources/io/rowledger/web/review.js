/** Puts the page together: one state, one cursor in place, row and time. */
(function (R) {
  'use strict';

  function byId(id) {
    return document.getElementById(id);
  }

  function json(id) {
    return JSON.parse(byId(id).textContent);
  }

  function App() {
    var data = json('job-data');
    var root = document.documentElement;
    this.language = root.getAttribute('data-language');
    this.words = {};
    this.words[this.language] = json('words');
    this.system = root.getAttribute('data-units');
    this.texts = {};
    this.texts[this.language + '-' + this.system] = byId('body').innerHTML;
    var self = this;
    this.t = function (key) { return self.words[self.language][key] || key; };
    var columns = R.unpack(data.columns, byId('job-columns').textContent);
    R.outline(data, columns);
    this.job = new R.Job(data, columns);
    this.settled = new R.Settled(data.key);
    var first = data.passes[0];
    this.step = first ? first.firstStep + first.endStep >> 1 : 0;
    this.row = 0;
    this.product = 0;
    this.span = null;
    this.layers = {
      backdrop: true, strips: true, skips: true, doubtful: false, overlaps: true, findings: true, boundary: true, setbacks: true,
      zones: false
    };
    this.filter = {kind: '', cause: '', size: '', row: '', pass: '', day: ''};
    this.playing = 0;
    this.modes = R.modes(this.job, 0);
    this.mode = this.modes.filter(function (m) { return m.key === (data.ground ? 'target' : 'peers'); })[0] || this.modes[0];
  }

  App.prototype.start = function () {
    document.documentElement.classList.add('live');
    this.build();
    this.showAs(location.hash);
    var self = this;
    var waiting = 0;
    window.addEventListener('hashchange', function () { self.showAs(location.hash); });
    window.addEventListener('resize', function () {
      clearTimeout(waiting);
      waiting = setTimeout(function () {
        self.rowsInTime.draw();
        self.traces.draw();
      }, 100);
    });
    document.documentElement.setAttribute('data-ready', String(Math.round(performance.now())));
  };

  /**
   * Shows the page in the language, units and colors that its address ends in, as the workbench shows it: #as-es-metric-night.
   * Any other ending changes nothing.
   */
  App.prototype.showAs = function (ending) {
    var as = /^#as-(en|es)-(us|metric)-(day|night)$/.exec(ending);
    if (!as) {
      return;
    }
    var root = document.documentElement;
    var night = as[3] === 'night';
    if (as[1] !== this.language || as[2] !== this.system || night !== root.classList.contains('night')) {
      root.classList.toggle('night', night);
      this.show(as[1], as[2]);
    }
  };

  /** Hides what needs a path or times that the log doesn't have. */
  App.prototype.hideUnlogged = function () {
    var job = this.job;
    var hide = function (id, parent) {
      var element = byId(id);
      if (element) {
        (parent ? element.parentNode : element).style.display = 'none';
      }
    };
    if (!job.steps || !job.data.timed) {
      hide('h-time', true);
      hide('h-traces', true);
      hide('play');
    }
    if (!job.steps) {
      hide('row', true);
      hide('h-passes', true);
    }
    if (!job.steps && !job.data.areas.length) {
      hide('mode', true);
      hide('legend');
      hide('here');
    }
    if (this.oneMeter()) {
      hide('row', true);
      hide('h-time', true);
    }
  };

  /** Fills the page's live parts; again after the text has been changed. */
  App.prototype.build = function () {
    this.units = new R.Units(this.system, this.job.data.zone, this.language);
    R.dressControls(this);
    this.hideUnlogged();
    this.map = byId('map') ? new R.FieldMap(byId('map'), this) : R.NO_MAP;
    this.rowsInTime = new R.RowsInTime(byId('rows-in-time'), this.job, this);
    this.traces = new R.Traces(byId('traces'), this.job, this, this.t);
    this.places = byId('places-list') ? new R.Places(byId('places-list'), this) : null;
    R.legend(this);
    R.dressLists(this);
    R.here(this);
  };

  /** Shows the page in another language and other units, with place, row and view as they are. */
  App.prototype.show = function (language, system) {
    var key = language + '-' + system;
    if (!this.texts[key]) {
      var others = JSON.parse(R.inflated(byId('job-texts').textContent));
      Object.assign(this.words, others.words);
      Object.assign(this.texts, others.bodies);
    }
    if (this.playing) {
      this.play();
    }
    var view = this.map.view();
    var focused = document.activeElement ? document.activeElement.id : '';
    var kept = document.querySelector('[data-keep]');
    this.map.remove();
    this.traces.remove();
    this.language = language;
    this.system = system;
    byId('body').innerHTML = this.texts[key];
    var place = document.querySelector('[data-keep]');
    if (place && kept) {
      place.textContent = '';
      while (kept.firstChild) {
        place.appendChild(kept.firstChild);
      }
    }
    document.documentElement.lang = language;
    this.build();
    this.map.show(view);
    if (this.at) {
      this.map.mark(this.at[0], this.at[1]);
    }
    if (focused && byId(focused)) {
      byId(focused).focus();
    }
  };

  /** True where one meter serves the whole bar: then the figures of a row are shares, not readings. */
  App.prototype.oneMeter = function () {
    return this.job.data.metering[this.product] === 'whole_bar';
  };

  /** True where the log runs over midnight. */
  App.prototype.severalDays = function () {
    var job = this.job;
    return job.steps > 0 && this.units.day(job.data.startS) !== this.units.day(job.data.startS + job.time[job.time.length - 1]);
  };

  /** What the row's meter reads: the row's own by this name, or that of several rows. */
  App.prototype.meterName = function (own) {
    var lane = this.job.lanes[this.product][this.row];
    return this.oneMeter() ? this.t('page.bar_flow') : lane.length < 2 ? own
      : this.t('page.meter_flow') + ' ' + R.numbers(lane.map(function (r) { return r + 1; }));
  };

  App.prototype.setMode = function (key) {
    this.mode = this.modes.filter(function (m) { return m.key === key; })[0] || this.modes[0];
    byId('mode').value = this.mode.key;
    this.map.redraw();
    this.rowsInTime.draw();
    R.legend(this);
  };

  App.prototype.setProduct = function (product) {
    this.product = product;
    this.modes = R.modes(this.job, product);
    this.setMode(this.mode.key);
    this.traces.draw();
    R.dressTraces(this);
    R.here(this);
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
    this.follow(true);
  };

  /** The cursor on a step and a row (from 0). */
  App.prototype.moveTo = function (step, row) {
    var rowChanged = this.row !== row;
    this.step = step;
    this.row = row;
    var edges = this.job.data.rows[row];
    var y = (edges[0] + edges[1]) / 2;
    this.at = [this.job.eastAt(step, y), this.job.northAt(step, y)];
    this.follow(rowChanged);
  };

  App.prototype.follow = function (redraw) {
    this.map.mark(this.at[0], this.at[1]);
    this.rowsInTime.cursor();
    if (redraw) {
      this.traces.draw();
    } else {
      this.traces.cursor();
    }
    byId('row').value = this.row;
    R.here(this);
  };

  /** Only these steps in full color; null for all. */
  App.prototype.brush = function (span) {
    this.span = span;
    byId('clear').disabled = !span;
    this.map.redraw();
    this.rowsInTime.cursor();
    this.traces.draw();
  };

  /** One end of the span at the cursor. */
  App.prototype.brushEnd = function (end) {
    var span = this.span || {from: 0, to: this.job.steps};
    span = end === 'from' ? {from: this.step, to: Math.max(span.to, this.step + 1)}
      : {from: Math.min(span.from, this.step), to: this.step + 1};
    this.brush(span);
  };

  App.prototype.showPlace = function (place) {
    this.map.zoomTo([place]);
    this.tap(place.at[0], place.at[1]);
    byId('map').scrollIntoView({block: 'nearest'});
  };

  /** Leads to a finding: its span, its first sign, its row. */
  App.prototype.showFinding = function (finding) {
    var step = this.job.stepAt(finding.fromS - this.job.data.startS);
    this.brush({from: step, to: this.job.stepAt(finding.toS - this.job.data.startS) + 1});
    this.moveTo(step, finding.rows.length ? finding.rows[0] - 1 : this.row);
    byId('rows-in-time').scrollIntoView({block: 'center'});
  };

  App.prototype.play = function () {
    var self = this;
    var button = byId('play');
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
      self.moveTo(Math.max(self.job.stepAt(timeS), self.step + 1), self.row);
    }, 100);
  };

  App.prototype.locate = function () {
    var self = this;
    navigator.geolocation.getCurrentPosition(function (position) {
      var at = self.map.plane(position.coords.latitude, position.coords.longitude);
      self.map.goTo(at[0], at[1]);
      self.tap(at[0], at[1]);
    }, function () {
      byId('locate').disabled = true;
      byId('locate').textContent = self.t('page.locate.refused');
    });
  };

  document.addEventListener('DOMContentLoaded', function () {
    R.app = new App();
    R.app.start();
  });
})(Rowledger);
