/** Places to drive back to, and what a person has settled about them. */
(function (R) {
  'use strict';

  /** Places in a list; filters find the others. */
  var MAX_LISTED = 300;

  function element(name, text, className) {
    var e = document.createElement(name);
    if (text !== undefined) {
      e.textContent = text;
    }
    if (className) {
      e.className = className;
    }
    return e;
  }

  function button(text, label, action) {
    var b = element('button', text);
    b.type = 'button';
    if (label) {
      b.setAttribute('aria-label', label);
    }
    b.addEventListener('click', action);
    return b;
  }

  /**
   * What was settled about places, kept by this browser for this file.
   * @param {string} key names the job
   */
  R.Settled = function (key) {
    this.key = 'rowledger.' + key;
    this.of = {};
    /** False where the browser keeps nothing, as inside the workbench or in a private window. */
    this.kept = true;
    try {
      this.of = JSON.parse(localStorage.getItem(this.key) || '{}');
    } catch (e) {
      this.kept = false;
    }
  };

  R.Settled.prototype.set = function (label, as) {
    if (as) {
      this.of[label] = as;
    } else {
      delete this.of[label];
    }
    try {
      localStorage.setItem(this.key, JSON.stringify(this.of));
    } catch (e) {
      this.kept = false;
    }
  };

  /**
   * The list of skips and overlaps.
   * @param {HTMLElement} host
   * @param {Object} app see review.js
   */
  R.Places = function (host, app) {
    this.host = host;
    this.app = app;
    this.filter = app.filter;
    this.build();
  };

  R.Places.prototype.all = function () {
    var data = this.app.job.data;
    return data.skips.map(function (p) { return {kind: 'skip', place: p}; })
      .concat(data.overlaps.map(function (p) { return {kind: 'overlap', place: p}; }))
      .sort(function (a, b) { return b.place.areaM2 - a.place.areaM2; });
  };

  R.Places.prototype.dayOf = function (place) {
    var job = this.app.job;
    var pass = job.data.passes.filter(function (p) { return place.passes.indexOf(p.number) >= 0; })[0];
    return pass ? this.app.units.day(job.data.startS + job.time[pass.firstStep]) : '';
  };

  R.Places.prototype.chosen = function () {
    var f = this.filter;
    var self = this;
    return this.all().filter(function (each) {
      var p = each.place;
      return (!f.kind || each.kind === f.kind)
        && (!f.size || p.areaM2 >= +f.size)
        && (!f.cause || p.cause === f.cause)
        && (!f.row || p.rows.indexOf(+f.row) >= 0)
        && (!f.pass || p.passes.indexOf(+f.pass) >= 0)
        && (!f.day || self.dayOf(p) === f.day);
    });
  };

  R.Places.prototype.build = function () {
    this.host.textContent = '';
    if (this.all().length) {
      this.filters();
      this.list();
    }
    this.listDoubtful();
  };

  R.Places.prototype.filters = function () {
    var t = this.app.t;
    var self = this;
    var bar = element('div', undefined, 'filters');
    var all = this.all();
    var choice = function (name, values, label) {
      var box = element('label', label + ' ');
      var select = element('select');
      select.appendChild(new Option(t('page.all'), ''));
      values.forEach(function (v) { select.appendChild(new Option(v[1], v[0])); });
      select.id = 'filter-' + name;
      select.value = self.filter[name];
      select.addEventListener('change', function () {
        self.filter[name] = select.value;
        self.list();
      });
      box.appendChild(select);
      bar.appendChild(box);
    };
    var unique = function (of) {
      var seen = {};
      all.forEach(function (each) { of(each.place).forEach(function (v) { seen[v] = true; }); });
      return Object.keys(seen);
    };
    var choices = function (of) {
      return unique(of).sort(function (a, b) { return a - b; }).map(function (v) { return [v, v]; });
    };
    choice('kind', [['skip', t('page.skips')], ['overlap', t('page.overlaps')]], t('page.what'));
    choice('cause', unique(function (p) { return [p.cause]; }).map(function (c) { return [c, self.cause(c)]; }),
      t('page.cause'));
    choice('size', this.app.units.sizes().map(function (m2) { return [m2, self.app.units.anyArea(m2)]; }),
      t('page.size'));
    choice('row', choices(function (p) { return p.rows; }), t('page.row'));
    choice('pass', choices(function (p) { return p.passes; }), t('page.pass'));
    var days = unique(function (p) { return [self.dayOf(p)]; });
    if (days.length > 1) {
      choice('day', days.map(function (d) { return [d, d]; }), t('page.day'));
    }
    bar.appendChild(button(t('page.gpx'), '', function () { self.save(); }));
    this.host.appendChild(bar);
    var box = element('div', undefined, 'scroll');
    box.tabIndex = 0;
    box.setAttribute('role', 'region');
    box.setAttribute('aria-label', t('page.places'));
    this.table = element('table');
    box.appendChild(this.table);
    this.host.appendChild(box);
    this.warning = element('p', '', 'note warning');
    this.warning.setAttribute('role', 'status');
    this.host.appendChild(this.warning);
    this.warn();
  };

  /** Says so where marks are lost when the page is closed. */
  R.Places.prototype.warn = function () {
    this.warning.textContent = this.app.settled.kept ? '' : this.app.t('page.not_kept');
  };

  /** Skips at which only a meter reads zero: shown apart, never saved as places to drive back to. */
  R.Places.prototype.listDoubtful = function () {
    var app = this.app;
    var places = app.job.data.doubtful;
    if (!places.length) {
      return;
    }
    this.host.appendChild(element('h3', app.t('page.doubtful')));
    this.host.appendChild(element('p', app.t('page.doubtful.note'), 'note'));
    var list = element('ul', undefined, 'doubtful');
    places.slice(0, MAX_LISTED).forEach(function (p) {
      var item = element('li');
      item.appendChild(button(p.label, app.t('page.show') + ' ' + p.label, function () { app.showPlace(p); }));
      item.appendChild(document.createTextNode(' ' + app.units.anyArea(p.areaM2) + ', ' + app.t('page.rows') + ' '
        + numbers(p.rows)));
      list.appendChild(item);
    });
    this.host.appendChild(list);
  };

  R.Places.prototype.cause = function (key) {
    return this.app.t('page.cause.' + key);
  };

  R.Places.prototype.list = function () {
    var t = this.app.t;
    var app = this.app;
    var self = this;
    this.table.textContent = '';
    // On a phone lines are laid out as grids: roles keep them lines and cells of a table for a screen reader.
    var cell = function (text) {
      var td = element('td', text);
      td.setAttribute('role', 'cell');
      return td;
    };
    var line = function () {
      var tr = element('tr');
      tr.setAttribute('role', 'row');
      return tr;
    };
    this.table.setAttribute('role', 'table');
    var head = line();
    ['page.place', 'page.area', 'page.passes', 'page.rows', 'page.cause', 'page.settled'].forEach(function (key) {
      var th = element('th', t(key));
      th.scope = 'col';
      th.setAttribute('role', 'columnheader');
      head.appendChild(th);
    });
    this.table.appendChild(head);
    this.chosen().slice(0, MAX_LISTED).forEach(function (each) {
      var p = each.place;
      var row = line();
      var first = cell();
      first.appendChild(button(p.label, t('page.show') + ' ' + p.label, function () { app.showPlace(p); }));
      row.appendChild(first);
      row.appendChild(cell(app.units.anyArea(p.areaM2)));
      row.appendChild(cell(numbers(p.passes)));
      row.appendChild(cell(numbers(p.rows)));
      row.appendChild(cell(self.cause(p.cause)));
      var settled = cell();
      var select = element('select');
      select.setAttribute('aria-label', t('page.settled') + ' ' + p.label);
      [['', t('page.open')], ['fixed', t('page.fixed')], ['not_real', t('page.not_real')]].forEach(function (v) {
        select.appendChild(new Option(v[1], v[0]));
      });
      select.value = app.settled.of[p.label] || '';
      row.className = select.value ? 'done' : '';
      select.addEventListener('change', function () {
        app.settled.set(p.label, select.value);
        self.warn();
        row.className = select.value ? 'done' : '';
      });
      settled.appendChild(select);
      row.appendChild(settled);
      self.table.appendChild(row);
    });
  };

  /** Whole numbers as ranges: 1 to 4, 7. */
  function numbers(values) {
    var out = [];
    var i = 0;
    while (i < values.length) {
      var j = i;
      while (j + 1 < values.length && values[j + 1] === values[j] + 1) {
        j++;
      }
      out.push(i === j ? String(values[i]) : values[i] + '–' + values[j]);
      i = j + 1;
    }
    return out.join(', ');
  }

  function escaped(text) {
    return text.replace(/&/g, '&amp;').replace(/</g, '&lt;').replace(/>/g, '&gt;').replace(/"/g, '&quot;');
  }

  /** What is left to do, as GPX 1.1. */
  R.Places.prototype.gpx = function () {
    var app = this.app;
    var self = this;
    var points = this.chosen().filter(function (each) { return !app.settled.of[each.place.label]; });
    return '<?xml version="1.0" encoding="UTF-8"?>\n'
      + '<gpx xmlns="http://www.topografix.com/GPX/1/1" version="1.1" creator="Rowledger">\n'
      + points.map(function (each) {
        var p = each.place;
        return '  <wpt lat="' + p.latLon[0] + '" lon="' + p.latLon[1] + '"><name>' + p.label + '</name><desc>'
          + escaped(self.cause(p.cause) + ', ' + app.units.anyArea(p.areaM2)) + '</desc></wpt>\n';
      }).join('') + '</gpx>\n';
  };

  R.Places.prototype.save = function () {
    var link = document.createElement('a');
    link.href = URL.createObjectURL(new Blob([this.gpx()], {type: 'application/gpx+xml'}));
    link.download = 'places-left.gpx';
    link.click();
    setTimeout(function () { URL.revokeObjectURL(link.href); }, 1000);
  };

  R.element = element;
  R.numbers = numbers;
  R.button = button;
})(Rowledger);
