/** The record's facts: what the state's published rule asks for and no others; what is missing is listed. */
(function (R) {
  'use strict';

  /** Facts in the page's language; a record prints the rule's own words, which stand behind them where the language is another. */
  function name(fact) {
    var own = {
      farm: R.t('workbench.fact.farm'),
      field: R.t('workbench.fact.field'),
      tract: R.t('workbench.fact.tract'),
      county: R.t('workbench.fact.county'),
      address: R.t('workbench.fact.address'),
      operator: R.t('workbench.fact.operator'),
      landlord: R.t('workbench.fact.landlord'),
      customer: R.t('workbench.fact.customer'),
      company: R.t('workbench.fact.company'),
      applicator: R.t('workbench.fact.applicator'),
      certificate: R.t('workbench.fact.certificate'),
      certificate_holder: R.t('workbench.fact.certificateHolder'),
      crop: R.t('workbench.fact.crop'),
      stage: R.t('workbench.fact.stage'),
      planted: R.t('workbench.fact.planted'),
      yield_goal: R.t('workbench.fact.yieldGoal'),
      date: R.t('workbench.fact.date'),
      soil: R.t('workbench.fact.soil'),
      soil_moisture: R.t('workbench.fact.soilMoisture'),
      weather: R.t('workbench.fact.weather'),
      temperature: R.t('workbench.fact.temperature'),
      wind: R.t('workbench.fact.wind'),
      precipitation: R.t('workbench.fact.precipitation'),
      forecast: R.t('workbench.fact.forecast'),
      frozen_or_snow: R.t('workbench.fact.frozenOrSnow'),
      method: R.t('workbench.fact.method'),
      depth: R.t('workbench.fact.depth'),
      knives: R.t('workbench.fact.knives'),
      incorporation: R.t('workbench.fact.incorporation'),
      source: R.t('workbench.fact.source'),
      derived_from: R.t('workbench.fact.derivedFrom'),
      reason: R.t('workbench.fact.reason'),
      notes: R.t('workbench.fact.notes'),
      season: R.t('workbench.fact.season'),
      plan: R.t('workbench.fact.plan')
    }[fact.key];
    return !own ? fact.label : document.documentElement.lang === 'en' ? fact.label : own + ' (' + fact.label + ')';
  }

  /** How somebody writes a fact, in the page's language and units. */
  function example(key) {
    var metric = R.isMetric();
    return {
      farm: R.t('workbench.example.farm'), field: R.t('workbench.example.field'), tract: R.t('workbench.example.tract'),
      crop: R.t('workbench.example.crop'), stage: 'V6', planted: 'date', date: 'date', season: '2026',
      yield_goal: metric ? '12.5 t/ha' : '200 bu/ac', soil: R.t('workbench.example.soil'),
      soil_moisture: metric ? R.t('workbench.example.soilMoistureMetric') : R.t('workbench.example.soilMoisture'),
      weather: R.t('workbench.example.weather'), temperature: metric ? '22 C' : '72 F',
      wind: metric ? R.t('workbench.example.windMetric') : R.t('workbench.example.wind'),
      precipitation: R.t('workbench.example.precipitation'), forecast: R.t('workbench.example.forecast'),
      frozen_or_snow: R.t('workbench.example.frozen'), method: R.t('workbench.example.method'),
      depth: metric ? '10 cm' : '4 in', knives: R.t('workbench.example.knives'),
      incorporation: R.t('workbench.example.incorporation'), derived_from: R.t('workbench.example.derivedFrom')
    }[key] || '';
  }

  /** What has a part of its own; a state may ask for the first of them. */
  var AMOUNTS = ['plan', 'cap', 'earlier', 'credits', 'order', 'tickets', 'price'];

  R.screens.facts = function (main, field) {
    R.call('GET', R.fieldPath(field, 'facts')).then(function (facts) { show(main, field, facts, {}); }, R.problem);
  };

  function save(field, changed) {
    R.leave = null;
    return R.call('PUT', R.fieldPath(field, 'rig'), {blocks: changed});
  }

  function show(main, field, facts, changed) {
    var job = facts.job;
    var state = job.state || '';
    var box = R.h('select', {id: 'state', onchange: function () {
      set('state', box.value);
      show(main, field, facts, changed);
    }});
    box.appendChild(new Option(R.t('workbench.facts.noState'), ''));
    facts.states.forEach(function (name) { box.appendChild(new Option(name, name)); });
    if (state && facts.states.indexOf(state) < 0) {
      box.appendChild(new Option(state, state));
    }
    box.value = state;
    var set = function (key, text) {
      if (text) {
        job[key] = text;
      } else {
        delete job[key];
      }
      changed.job = job;
      R.leave = function () { return save(field, changed).then(null, R.problem); };
      missing();
    };
    var asked = facts.fields.filter(function (fact) {
      return !fact.beside && AMOUNTS.indexOf(fact.key) < 0 && (state ? fact.states.indexOf(state) >= 0 : ['field', 'farm', 'crop', 'operator', 'date'].indexOf(fact.key) >= 0);
    });
    var lack = R.h('p', {'aria-live': 'polite'});
    var missing = function () {
      var names = asked.concat(facts.fields.filter(function (fact) {
        return state && fact.key === 'plan' && fact.states.indexOf(state) >= 0;
      })).filter(function (fact) { return !job[fact.key]; }).map(function (fact) { return name(fact); });
      lack.className = names.length ? 'warn' : '';
      lack.textContent = names.length ? R.t('workbench.facts.missing', names.join('; ')) : R.t('workbench.facts.complete');
    };
    R.fill(main, R.title(field, 'workbench.step.facts'),
      R.h('p', null, R.t('workbench.facts.note')),
      R.h('p', null, R.h('label', {'for': 'state'}, R.t('workbench.facts.state')), ' ', box),
      lack,
      R.h('div.form', null, asked.map(function (fact) {
        var id = 'fact-' + fact.key;
        var entered = job[fact.key];
        if (entered && typeof entered === 'object') {
          return R.h('div.input', null, R.h('label', null, name(fact)), R.h('p.note', null, R.t('workbench.facts.inFile')));
        }
        return R.textInput(name(fact), id, entered, example(fact.key), function (text) { set(fact.key, text); });
      })),
      R.amounts(field, job, facts.products, function () {
        changed.job = job;
        R.leave = function () { return save(field, changed).then(null, R.problem); };
        missing();
      }),
      R.h('p.next', null, R.button(R.t('workbench.next') + ' ›', function () {
        save(field, changed).then(function () { R.go('field', 'run', field); }, R.problem);
      }, 'primary')));
    missing();
    main.setAttribute('data-loaded', 'facts');
  }
})(Rowledger);
