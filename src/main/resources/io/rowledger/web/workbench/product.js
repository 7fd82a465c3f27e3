/** The product: what it is, its density, its target, and the nitrogen that comes of it. */
(function (R) {
  'use strict';

  /**
   * Usual solutions of urea and ammonium nitrate with their usual density at 60 °F (handbook values of extension services,
   * from memory); the load ticket decides.
   */
  var USUAL = [
    ['uan', 'UAN 32-0-0', '32-0-0', '11.06 lb/gal'],
    ['uan', 'UAN 28-0-0', '28-0-0', '10.67 lb/gal'],
    ['uan', 'UAN 30-0-0', '30-0-0', '10.86 lb/gal'],
    ['uan', 'UAN 28-0-0-5S', '28-0-0-5', '10.90 lb/gal']
  ];

  R.screens.product = function (main, field) {
    R.withRig(field, function (rig) {
      var keys = Object.keys(rig.get('products') || {});
      var key = keys[0] || 'uan';
      var path = function (name) { return 'products.' + key + '.' + name; };
      var host = R.h('div');
      var form = function () {
        R.fill(host,
          rig.input(R.t('workbench.product.name'), path('name'), null),
          rig.input(R.t('workbench.product.analysis'), path('analysis'), null),
          rig.input(R.t('workbench.product.density'), path('density'), function () { return 'lb/gal'; }, R.t('workbench.product.ticket')),
          rig.input(R.t('workbench.product.densityAt'), path('density_at'), function () { return R.isMetric() ? 'C' : 'F'; },
            R.t('workbench.product.densityAtNote')),
          rig.input(R.t('workbench.product.target'), path('target'), function () {
            return R.kept('units') === 'metric' ? 'L/ha' : 'gal/ac';
          }, R.t('workbench.product.targetNote')));
      };
      var nitrogen = R.h('p.big', {'aria-live': 'polite'});
      R.fill(main, R.title(field, 'workbench.step.product'),
        keys.length > 1 ? R.h('p.note', null, R.t('workbench.product.several', keys.join(', '))) : null,
        R.h('div.choices', null, USUAL.map(function (usual) {
          return R.button(usual[1], function () {
            rig.set(path('name'), usual[1]);
            rig.set(path('analysis'), usual[2]);
            rig.set(path('density'), usual[3]);
            form();
          }, 'choice');
        })),
        host, nitrogen, average(rig), rig.next('run'));
      form();
      rig.listen(function () {
        var n = rig.state.nitrogen;
        R.fill(nitrogen, n ? R.nitrogen(n.kgPerL, n.kgPerM2) : '');
      });
      main.setAttribute('data-loaded', 'product');
    });
  };

  /** The log's own usual rate, beside the target. */
  function average(rig) {
    var line = R.h('p.note');
    R.call('GET', R.fieldPath(rig.field, 'columns')).then(function (table) {
      var sums = table.columns.map(function (column) {
        var reading = /^(.*\.)?(flow|rate)_\d+/.test(column.quantity)
          ? column.readings.filter(function (each) { return each.unit === column.unit; })[0] : null;
        return reading ? reading.rateLPerM2 : NaN;
      }).filter(isFinite).sort(function (a, b) { return a - b; });
      if (sums.length) {
        line.textContent = R.t('workbench.product.average', R.rate(sums[sums.length >> 1]));
      }
    }, function () { /* The screen of the columns says why. */ });
    return line;
  }
})(Rowledger);
