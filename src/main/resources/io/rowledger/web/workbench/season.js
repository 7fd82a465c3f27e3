/** The season: fields with what is open, a new field, the whole season's run. */
(function (R) {
  'use strict';

  R.screens.season = function (main) {
    R.call('GET', '/api/season').then(function (season) {
      var shown = season.fields;
      var list = R.h('ul.fields', {'aria-label': R.t('workbench.season.fields')});
      var work = {lines: [], busy: false};
      var fill = function () {
        R.fill(list, shown.map(line));
        atWork(list, work, work);
      };
      fill();
      R.fill(main,
        R.h('h1', null, R.t('workbench.season.title')),
        season.fields.length ? totals(season.fields) : welcome(),
        season.closed.map(function (text) { return R.h('p.warn', null, R.lines(text)); }),
        R.walk(season.fields),
        newField(season),
        R.seasonRun(season),
        season.fields.length > 3 ? R.h('label.search', null, R.t('workbench.season.search'), R.h('input', {
          type: 'search', oninput: function (event) {
            var text = event.target.value.toLowerCase();
            shown = season.fields.filter(function (field) { return field.name.toLowerCase().indexOf(text) >= 0; });
            fill();
          }
        })) : null,
        list,
        season.fields.some(function (field) { return field.result && field.result.actions.length; })
          ? R.h('p.warn', null, R.t('workbench.caution.machine')) : null);
      R.hearWork(main, function (now) {
        atWork(list, now, work);
        work = now;
      });
      main.setAttribute('data-loaded', 'season');
    }, R.problem);
  };

  /** Shows in each field's line what is at work there; a field that has just been done is shown anew. */
  function atWork(list, work, before) {
    var states = {};
    before.lines.forEach(function (each) { states[each.field] = each.state; });
    var lines = {};
    work.lines.forEach(function (each) { lines[each.field] = each; });
    Array.prototype.forEach.call(list.children, function (item) {
      var now = lines[item.getAttribute('data-field')];
      if (!now) {
        return;
      }
      if (now.state === 'done' && (states[now.field] === 'running' || states[now.field] === 'waiting')) {
        R.call('GET', R.fieldPath(now.field)).then(function (field) { item.replaceWith(line(field)); }, R.problem);
      } else {
        R.fill(item.querySelector('.work'), R.workLine(now));
      }
    });
  }

  function welcome() {
    return R.h('div.welcome', null,
      R.h('p', null, R.t('workbench.season.empty')),
      R.showSample());
  }

  function totals(fields) {
    var units = R.reader();
    var done = fields.filter(function (field) { return field.result; });
    var acres = done.reduce(function (sum, field) { return sum + (field.result.coveredM2 || 0); }, 0);
    var open = done.reduce(function (sum, field) { return sum + field.result.actions.length; }, 0);
    return R.h('p.totals', null, R.t('workbench.season.totals', fields.length, done.length, units.text('area', acres), open));
  }

  function line(field) {
    var result = field.result;
    var units = R.reader(result ? result.zone : null);
    var facts = [];
    if (result) {
      facts.push(result.startS === null ? '' : units.day(result.startS), units.text('area', result.coveredM2));
    } else {
      facts.push(R.t('workbench.season.logs', field.logs.length));
    }
    return R.h('li.field', {'data-field': field.name},
      R.thumbnail(field.name, R.t('workbench.season.map', field.name)),
      R.h('div.what', null,
        R.h('h2', null, R.link(field.name, ['field', result ? 'run' : R.nextStep(field), field.name])),
        R.h('p.note', null, facts.filter(Boolean).join(' · ')),
        result ? R.h('p', null, result.verdict[0] || '') : R.h('p', null,
          R.link(R.t('workbench.season.next', R.stepName(R.nextStep(field))) + ' ›', ['field', R.nextStep(field), field.name])),
        R.h('div.work'),
        result && field.old ? R.h('p.warn', null, R.t('workbench.season.old')) : null,
        result && result.actions.length ? R.h('ul.actions', null, result.actions.slice(0, 3).map(function (action) {
          return R.h('li', {title: action.text}, action.title);
        })) : null));
  }

  function newField(season) {
    var name = R.h('input', {type: 'text', id: 'field-name', maxlength: 80, placeholder: R.t('workbench.season.example')});
    var make = function (event) {
      event.preventDefault();
      var text = name.value.trim();
      if (!text) {
        name.focus();
        return;
      }
      R.call('POST', '/api/fields', {name: text}).then(function () { R.go('field', 'logs', text); }, R.problem);
    };
    var drop = R.dropBox(R.t('workbench.season.drop'), function (files) {
      R.newFieldFor(files, season.fields.map(function (field) { return field.name; }));
    });
    return R.h('section.new', {'aria-label': R.t('workbench.season.new')},
      drop,
      R.h('form', {onsubmit: make},
        R.h('label', {'for': 'field-name'}, R.t('workbench.season.orEmpty')), name,
        R.h('button', {type: 'submit'}, R.t('workbench.season.make'))));
  }

  /** Makes a field named after the first of these logs and puts them there. */
  R.newFieldFor = function (files, taken) {
    var stem = files[0].name.replace(/\.(csv|tsv|txt|xlsx|zip|gz|geojson|gpkg|shp)/gi, '').replace(/[^\w .-]/g, '-')
      .replace(/^[. ]+|[. ]+$/g, '') || 'Field';
    var name = stem;
    for (var n = 2; taken.indexOf(name) >= 0; n++) {
      name = stem + ' ' + n;
    }
    return R.call('POST', '/api/fields', {name: name}).then(function () {
      return R.putFiles(name, files);
    }).then(function () { R.go('field', 'logs', name); }, R.problem);
  };
})(Rowledger);
