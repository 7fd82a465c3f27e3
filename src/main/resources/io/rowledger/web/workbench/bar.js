/** The bar: a saved one, or hitch, rows, spacing and the outside rows, drawn as they are entered. */
(function (R) {
  'use strict';

  R.screens.bar = function (main, field) {
    R.withRig(field, function (rig) {
      if (!rig.get('rows.count') && !rig.get('rows.outlets') && rig.state.logRows) {
        rig.propose('rows.count', String(rig.state.logRows));
      }
      if (!rig.get('rig.name')) {
        rig.propose('rig.name', R.t('workbench.bar.defaultName', rig.state.bars.length + 1));
      }
      var view = R.h('div.view');
      rig.listen(function () { R.fill(view, R.topView(rig)); });
      R.fill(main, R.title(field, 'workbench.step.bar'),
        saved(rig),
        R.h('div.split2', null, R.h('div.form', null,
          rig.choice(R.t('workbench.bar.hitch'), 'rig.hitch',
            [['pull-type', R.t('workbench.bar.pullType')], ['mounted', R.t('workbench.bar.mounted')]]),
          rig.get('rows.outlets') ? R.h('p.note', null, R.t('workbench.bar.outlets')) : [
            rig.choice(R.t('workbench.bar.spacing'), 'rows.spacing',
              [['30 in', '30 in'], ['20 in', '20 in'], ['22 in', '22 in'], ['36 in', '36 in'], ['75 cm', '75 cm']]),
            rig.choice(R.t('workbench.bar.outside'), 'rows.outer_share', [
              ['0.5', R.t('workbench.bar.half')], ['1', R.t('workbench.bar.whole')], ['1.5', R.t('workbench.bar.more')]]),
            R.h('details', null, R.h('summary', null, R.t('workbench.bar.others')),
              rig.input(R.t('workbench.bar.count'), 'rows.count', null),
              rig.input(R.t('workbench.bar.spacingOther'), 'rows.spacing', function () { return 'in'; }),
              meters(rig),
              rig.input(R.t('workbench.bar.name'), 'rig.name', null))],
          rig.next('tape')), view));
      main.setAttribute('data-loaded', 'bar');
    });
  };

  function saved(rig) {
    return rig.state.bars.length ? R.h('section.card', {'aria-label': R.t('workbench.bar.saved')},
      R.h('h2', null, R.t('workbench.bar.saved')), R.h('div.choices', null, rig.state.bars.map(function (bar) {
        return R.useBar(rig.field, bar.name);
      }))) : null;
  }

  /** A button that takes a saved bar and goes to the review. */
  R.useBar = function (field, name) {
    return R.button(R.t('workbench.bar.use', name), function () {
      R.call('POST', R.fieldPath(field, 'bar'), {name: name}).then(function () { R.go('field', 'run', field); }, R.problem);
    }, 'choice');
  };

  /** One meter a row, or a meter for each two or three neighboring rows. */
  function meters(rig) {
    var box = R.h('select', {id: 'meters', onchange: function () {
      var rows = parseInt(rig.get('rows.count'), 10) || 0;
      var each = +box.value;
      var groups = [];
      for (var row = 1; each > 1 && row <= rows; row += each) {
        var group = [];
        for (var r = row; r < row + each && r <= rows; r++) {
          group.push(String(r));
        }
        groups.push(group);
      }
      rig.set('rows.meters', groups.length ? groups : '');
    }});
    [1, 2, 3, 4].forEach(function (n) { box.appendChild(new Option(R.t('workbench.bar.metersOf', n), n)); });
    return R.h('p', null, R.h('label', {'for': 'meters'}, R.t('workbench.bar.meters')), ' ', box);
  }
})(Rowledger);
