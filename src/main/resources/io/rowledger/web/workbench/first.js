/** The first start: the sample season, and a short walk through it. */
(function (R) {
  'use strict';

  var SAMPLE = 'Sample plugged row';

  /** A button that unpacks and runs the samples. */
  R.showSample = function () {
    return R.button(R.t('workbench.first.sample'), function () {
      R.call('POST', '/api/sample', {}).then(function (made) {
        return R.call('POST', '/api/work', {fields: [made.fields[0]]});
      }).then(function () { R.go('field', 'run', SAMPLE); }, R.problem);
    }, 'primary');
  };

  /** Where to look, while there are samples among the fields. */
  R.walk = function (fields) {
    if (!fields.some(function (field) { return field.name === SAMPLE; }) || R.kept('walked')) {
      return null;
    }
    var box = R.h('section.card', {'aria-label': R.t('workbench.first.walk')},
      R.h('h2', null, R.t('workbench.first.walk')),
      R.h('ol', null,
        R.h('li', null, R.link(R.t('workbench.first.review'), ['field', 'run', SAMPLE])),
        R.h('li', null, R.link(R.t('workbench.first.columns'), ['field', 'columns', SAMPLE])),
        R.h('li', null, R.link(R.t('workbench.first.tape'), ['field', 'tape', SAMPLE])),
        R.h('li', null, R.t('workbench.first.own'))),
      R.button(R.t('workbench.first.enough'), function () {
        R.kept('walked', '1');
        box.remove();
      }));
    return box;
  };
})(Rowledger);
