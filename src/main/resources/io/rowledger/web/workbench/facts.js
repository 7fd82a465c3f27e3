/** The record's facts: what the state's published rule asks for and no others; what is missing is listed. */
(function (R) {
  'use strict';

  /** The facts that every job has, in the page's language; what a state's rule asks for is in the rule's own words. */
  function name(fact) {
    return {
      farm: R.t('workbench.fact.farm'), field: R.t('workbench.fact.field'), operator: R.t('workbench.fact.operator'),
      crop: R.t('workbench.fact.crop'), date: R.t('workbench.fact.date')
    }[fact.key] || fact.label;
  }

  /** What has a part of its own; a state may ask for the first of them. */
  var AMOUNTS = ['plan', 'cap', 'earlier', 'credits', 'order', 'tickets', 'price'];

  R.screens.facts = function (main, field) {
    R.call('GET', R.fieldPath(field, 'facts')).then(function (facts) { show(main, field, facts, {}); }, R.problem);
  };

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
        return R.h('div.input', null, R.h('label', {'for': id}, name(fact)),
          R.h('input', {id: id, type: 'text', value: entered || '', placeholder: fact.example,
            oninput: function (event) { set(fact.key, event.target.value.trim()); }}));
      })),
      R.amounts(field, job, facts.products, function () {
        changed.job = job;
        missing();
      }),
      R.h('p.next', null, R.button(R.t('workbench.next') + ' ›', function () {
        R.call('PUT', R.fieldPath(field, 'rig'), {blocks: changed}).then(function () { R.go('field', 'run', field); }, R.problem);
      }, 'primary')));
    missing();
    main.setAttribute('data-loaded', 'facts');
  }
})(Rowledger);
