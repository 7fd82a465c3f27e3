/** Controls, legend and what is known of the place under the cursor. */
(function (R) {
  'use strict';

  function byId(id) {
    return document.getElementById(id);
  }

  function on(id, event, action) {
    if (byId(id)) {
      byId(id).addEventListener(event, action);
    }
  }

  /** Fills the controls of the page and gives them their work. */
  R.dressControls = function (app) {
    var t = app.t;
    var mode = byId('mode');
    app.modes.forEach(function (m) { mode.appendChild(new Option(t('page.mode.' + m.key), m.key)); });
    mode.value = app.mode.key;
    mode.addEventListener('change', function () { app.setMode(mode.value); });
    var product = byId('product');
    app.job.data.products.forEach(function (p, i) { product.appendChild(new Option(p.name, i)); });
    product.value = app.product;
    product.parentNode.hidden = app.job.data.products.length < 2;
    product.addEventListener('change', function () { app.setProduct(+product.value); });
    var row = byId('row');
    for (var r = 0; r < app.job.rows; r++) {
      row.appendChild(new Option(String(r + 1), r));
    }
    row.value = app.row;
    row.addEventListener('change', function () { app.moveTo(app.step, +row.value); });
    on('home', 'click', function () { app.map.reset(); });
    on('clear', 'click', function () { app.brush(null); });
    byId('clear').disabled = !app.span;
    on('span-from', 'click', function () { app.brushEnd('from'); });
    on('span-to', 'click', function () { app.brushEnd('to'); });
    on('play', 'click', function () { app.play(); });
    on('units', 'click', function () { app.show(app.language, app.system === 'us' ? 'metric' : 'us'); });
    on('language', 'click', function () { app.show(app.language === 'en' ? 'es' : 'en', app.system); });
    var night = byId('night');
    night.setAttribute('aria-pressed', String(document.documentElement.classList.contains('night')));
    night.addEventListener('click', function () {
      night.setAttribute('aria-pressed', String(document.documentElement.classList.toggle('night')));
      app.rowsInTime.draw();
      app.traces.draw();
    });
    if (byId('locate')) {
      byId('locate').hidden = !navigator.geolocation;
      on('locate', 'click', function () { app.locate(); });
    }
    if (byId('layers')) {
      layers(app);
    }
  };

  function has(data, key) {
    return key === 'strips' ? !!data.backdrop : key === 'boundary' || key === 'backdrop' ? !!data[key] : (data[key] || []).length > 0;
  }

  function layers(app) {
    Object.keys(app.layers).forEach(function (key) {
      if (!has(app.job.data, key)) {
        return;
      }
      var label = R.element('label');
      var box = R.element('input');
      box.type = 'checkbox';
      box.id = 'layer-' + key;
      box.checked = app.layers[key];
      box.addEventListener('change', function () {
        app.layers[key] = box.checked;
        app.map.toggle(key, box.checked);
      });
      label.appendChild(box);
      label.appendChild(document.createTextNode(' ' + app.t('page.layer.' + key)));
      byId('layers').appendChild(label);
    });
  }

  /** What the colors mean. */
  R.legend = function (app) {
    var host = byId('legend');
    host.textContent = '';
    var entry = function (rgb, text, hatch) {
      var item = R.element('span', undefined, 'entry');
      var swatch = R.element('span', undefined, 'swatch hatch' + (hatch || 0));
      swatch.style.backgroundColor = R.css(rgb);
      item.appendChild(swatch);
      item.appendChild(document.createTextNode(text));
      host.appendChild(item);
    };
    var mode = app.mode;
    if (mode.classes) {
      mode.classes.forEach(function (c, i) {
        var middle = (mode.classes.length - 1) / 2;
        entry(c.rgb, app.t((mode.key === 'peers' ? 'classShort.' : 'class.') + i),
          Math.abs(i - middle) < 2 ? 0 : i < middle ? 1 : 2);
      });
    } else if (mode.kinds) {
      Object.keys(mode.kinds).forEach(function (k) { entry(mode.kinds[k], app.t('page.fix.' + k)); });
    } else {
      [0, 0.25, 0.5, 0.75, 1].forEach(function (share) {
        var value = mode.low + share * (mode.high - mode.low);
        entry(mode.color(value), mode.kind === 'time' ? when(app, app.job.timeAt(value)) : app.units.text(mode.kind, value));
      });
    }
    var note = {whole_bar: 'page.one_meter', shared: 'page.shared_meters'}[app.job.data.metering[app.product]];
    if (note && !app.job.data.areas.length) {
      host.appendChild(R.element('span', app.t(note), 'note'));
    }
  };

  /** A time since the start as people read it, with the day on a job of several days. */
  function when(app, timeS) {
    var epochS = app.job.data.startS + timeS;
    return (app.severalDays() ? app.units.day(epochS) + ' ' : '') + app.units.clock(epochS);
  }

  /** What is known of the place under the cursor. */
  R.here = function (app) {
    var host = byId('here');
    host.textContent = '';
    var job = app.job;
    var t = app.t;
    var k = app.step;
    var p = app.product;
    var units = app.units;
    var line = function (key, value) {
      host.appendChild(R.element('dt', t(key)));
      host.appendChild(R.element('dd', value));
    };
    if (job.data.areas.length && app.at) {
      ofAreas(app, line);
    }
    if (!job.steps) {
      return;
    }
    if (!app.oneMeter()) {
      line('page.row', String(app.row + 1));
    }
    line('page.pass', job.pass[k] > 0 ? String(job.pass[k]) : t('page.no_pass'));
    if (job.data.timed) {
      line('page.time', units.day(job.data.startS + job.time[k]) + ' ' + units.clock(job.data.startS + job.time[k]));
      line('page.trace.speed', units.text('speed', job.speed(k)));
      host.appendChild(R.element('dt', app.meterName(t('page.trace.flow'))));
      host.appendChild(R.element('dd', units.text('flow', job.meterFlow(p, app.row, k))));
    }
    line('page.trace.target', units.text('rate', job.targets[p][app.row][k]));
    line('page.applied', units.text('rate', job.rate(p, app.row, k)));
    if (job.data.metering[p] === 'per_row') {
      line('page.against_peers', units.percent(job.ratio(p, app.row, k) - 1));
    }
    if (job.data.ground) {
      ground(app, line);
    }
  };

  function ground(app, line) {
    var job = app.job;
    var at = app.at || [job.east[app.step], job.north[app.step]];
    var strips = job.stripsAt(at[0], at[1]);
    line('page.received', strips.length ? app.units.text('rate', job.received(app.product, strips)) : app.t('page.nothing'));
    place(app, at, line);
  }

  /** Target and rates of the areas at the place. */
  function ofAreas(app, line) {
    var areas = app.job.areasAt(app.at[0], app.at[1]);
    var p = app.product;
    if (areas.length) {
      line('page.trace.target', app.units.text('rate', areas[0].target[p]));
    }
    line('page.received', areas.length
      ? app.units.text('rate', areas.reduce(function (sum, area) { return sum + area.rate[p]; }, 0)) : app.t('page.nothing'));
    place(app, app.at, line);
  }

  function place(app, at, line) {
    var data = app.job.data;
    line('page.place', (data.origin[0] + at[1] / data.metersPerDegree[0]).toFixed(6) + ', '
      + (data.origin[1] + at[0] / data.metersPerDegree[1]).toFixed(6));
  }

  /** Buttons and traces in what the page shows without scripts as well. */
  R.dressLists = function (app) {
    each('[data-pass]', function (cell) { passButton(app, cell); });
    R.dressTraces(app);
    each('[data-finding]', function (host) {
      var i = +host.getAttribute('data-finding') - 1;
      var t = app.t(app.job.data.ground ? 'page.finding.show' : 'page.finding.traces');
      host.appendChild(R.button(t, t + ' ' + (i + 1), function () { app.showFinding(app.job.data.findings[i]); }));
    });
    each('.actions [data-rows]', function (host) { actionButton(app, host); });
  };

  /** Draws each pass's trace of the product that is shown. */
  R.dressTraces = function (app) {
    each('[data-trace]', function (cell) {
      cell.textContent = '';
      cell.appendChild(R.passTrace(app.job, app.product, +cell.getAttribute('data-trace')));
    });
  };

  function each(selector, action) {
    Array.prototype.forEach.call(document.querySelectorAll(selector), action);
  }

  function passButton(app, cell) {
    var number = +cell.getAttribute('data-pass');
    var pass = app.job.data.passes.filter(function (p) { return p.number === number; })[0];
    if (pass) {
      cell.textContent = '';
      cell.appendChild(R.button(String(number), app.t('page.show') + ' ' + app.t('page.pass') + ' ' + number,
        function () {
          app.brush({from: pass.firstStep, to: pass.endStep});
          app.moveTo(pass.firstStep, app.row);
        }));
    }
  }

  /** Leads from an action to the places or the finding that it is about. */
  function actionButton(app, host) {
    var data = app.job.data;
    var labels = host.getAttribute('data-places').split(',');
    var rows = host.getAttribute('data-rows');
    var places = data.skips.concat(data.overlaps).filter(function (p) { return labels.indexOf(p.label) >= 0; });
    var check = host.getAttribute('data-kind') === 'check' && !host.getAttribute('data-places');
    var finding = data.findings.filter(function (f) { return (rows || check) && f.rows.join(',') === rows; })[0];
    var number = Array.prototype.indexOf.call(host.parentNode.parentNode.children, host.parentNode) + 1;
    if (places.length || finding) {
      host.appendChild(R.button(app.t('page.show'), app.t('page.show') + ' ' + number, function () {
        if (places.length) {
          app.map.zoomTo(places);
          app.tap(places[0].at[0], places[0].at[1]);
          byId('map').scrollIntoView({block: 'nearest'});
        } else {
          app.showFinding(finding);
        }
      }));
    }
  }
})(Rowledger);
