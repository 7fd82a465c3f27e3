/** The season: fields with what is open, a new field, what is at work. */
(function (R) {
  'use strict';

  R.screens.season = function (main) {
    R.fill(main, R.h('h1', null, R.t('workbench.season.title')));
  };
})(Rowledger);
