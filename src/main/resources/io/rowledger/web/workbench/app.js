/** The frame around the screens: address, header, steps of a field, what is at work. */
(function (R) {
  'use strict';

  function parts() {
    return location.hash.replace(/^#\/?/, '').split('/').filter(Boolean).map(decodeURIComponent);
  }

  function show() {
    var at = parts();
    var screen = at.length < 2 ? 'season' : at[1];
    var main = document.getElementById('main');
    R.fill(main);
    main.className = screen;
    R.fill(document.getElementById('steps'));
    (R.screens[screen] || R.screens.season)(main, at);
    main.setAttribute('data-shown', screen);
    window.scrollTo(0, 0);
  }

  function header() {
    R.fill(document.getElementById('top'),
      R.h('a.brand', {href: '#/'}, 'Rowledger'),
      R.h('span.folder', null, R.about.folder),
      R.button(R.t('workbench.night'), function () {
        R.kept('night', document.documentElement.classList.toggle('night') ? '1' : '');
      }));
  }

  function listen() {
    var source = new EventSource('/api/events');
    source.addEventListener('open', function () {
      document.documentElement.setAttribute('data-connected', '1');
    });
    R.events = source;
  }

  document.addEventListener('DOMContentLoaded', function () {
    if (R.kept('night')) {
      document.documentElement.classList.add('night');
    }
    Promise.all([R.call('GET', '/api/words'), R.call('GET', '/api/about')]).then(function (all) {
      R.setWords(all[0].words);
      document.documentElement.lang = all[0].language;
      R.about = all[1];
      header();
      listen();
      window.addEventListener('hashchange', show);
      show();
      document.documentElement.setAttribute('data-ready', String(Math.round(performance.now())));
    }, R.problem);
  });
})(Rowledger);
