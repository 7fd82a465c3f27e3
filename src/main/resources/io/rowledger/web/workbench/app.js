/** The frame around the screens: address, header, steps of a field, what is at work. */
(function (R) {
  'use strict';

  /** The steps of a field in the order in which a person meets them. */
  var STEPS = ['logs', 'columns', 'time', 'bar', 'tape', 'product', 'maps', 'facts', 'run'];

  R.stepName = function (step) {
    return {
      logs: R.t('workbench.step.logs'), columns: R.t('workbench.step.columns'), time: R.t('workbench.step.time'),
      bar: R.t('workbench.step.bar'), tape: R.t('workbench.step.tape'), product: R.t('workbench.step.product'),
      maps: R.t('workbench.step.maps'), facts: R.t('workbench.step.facts'), run: R.t('workbench.step.run')
    }[step];
  };

  /** The step that a field waits for. */
  R.nextStep = function (field) {
    return !field.logs.length ? 'logs' : !field.rig ? 'columns' : field.ready ? 'run' : 'bar';
  };

  /** The step on which a rig file's refusal can be put right. */
  R.stepOf = function (field) {
    var key = field.wantsKey;
    return !field.logs.length || !field.wants ? R.nextStep(field)
      : /hitch_to|axle_to|antenna|right_of_center/.test(key) ? 'tape'
        : /^products/.test(key) ? 'product'
          : /^job/.test(key) ? 'facts'
            : /^prescription/.test(key) ? 'maps'
              : /^(columns|log)\b/.test(key) ? 'columns' : 'bar';
  };

  R.title = function (field, key) {
    return R.h('h1', null, R.h('span.note', null, field), ' ', R.t(key));
  };

  /** The way on to the next screen. */
  R.next = function (step, field, key) {
    return R.screens[step] ? R.h('p.next', null, R.link(R.t(key) + ' ›', ['field', step, field], 'primary')) : null;
  };

  function parts() {
    return location.hash.replace(/^#\/?/, '').split('/').filter(Boolean).map(decodeURIComponent);
  }

  function steps(step, field) {
    R.fill(document.getElementById('steps'), R.h('ol', null,
      R.h('li.back', null, R.h('a', {href: '#/'}, '‹ ' + R.t('workbench.season.title'))), STEPS.filter(function (each) {
      return R.screens[each];
    }).map(function (each) {
      var link = R.link(R.stepName(each), ['field', each, field]);
      if (each === step) {
        link.setAttribute('aria-current', 'step');
        setTimeout(function () { link.scrollIntoView({block: 'nearest', inline: 'center'}); }, 0);
      }
      return R.h('li', null, link);
    })));
  }

  /** Saves what was entered on the screen that is left, then shows the one that the address names. */
  function show() {
    var leave = R.leave;
    R.leave = null;
    if (leave) {
      leave().then(draw);
    } else {
      draw();
    }
  }

  function draw() {
    var at = parts();
    var field = at[0] === 'field' && R.screens[at[1]] && at[2];
    var screen = field ? at[1] : at[0] && R.screens[at[0]] ? at[0] : 'season';
    var main = R.h('main', {id: 'main', tabindex: '-1', 'class': screen, 'data-shown': screen});
    document.getElementById('main').replaceWith(main);
    if (field) {
      steps(screen, field);
    } else {
      R.fill(document.getElementById('steps'));
    }
    R.screens[screen](main, field || at[1]);
    window.scrollTo(0, 0);
    main.focus({preventScroll: true});
  }

  R.show = show;

  /** Where the season folder is; a phone shows its name alone. */
  function folder(path) {
    var cut = Math.max(path.lastIndexOf('/'), path.lastIndexOf('\\')) + 1;
    return R.h('span.folder', {title: path}, R.h('span.above', null, path.slice(0, cut)), path.slice(cut));
  }

  function header() {
    var units = R.button(R.t('workbench.units'), function () {
      R.kept('units', R.kept('units') === 'metric' ? 'us' : 'metric');
      show();
    });
    R.fill(document.getElementById('top'),
      R.h('a.brand', {href: '#/'}, 'Rowledger'),
      folder(R.about.folder),
      R.h('span', {id: 'at-work'}),
      units,
      R.h('button', {type: 'button', lang: R.t('workbench.language.code'), onclick: function () {
        var left = R.leave ? R.leave() : Promise.resolve();
        left.then(function () {
          R.kept('language', R.t('workbench.language.code'));
          location.reload();
        });
      }}, R.t('workbench.language')),
      R.button(R.t('workbench.night'), function () {
        R.kept('night', document.documentElement.classList.toggle('night') ? '1' : '');
        R.showReviewAs();
      }));
  }

  /** What runs while the person is elsewhere. */
  function atWork(work) {
    var done = work.lines.filter(function (line) { return line.state !== 'waiting' && line.state !== 'running'; }).length;
    R.fill(document.getElementById('at-work'), work.busy
      ? R.h('a', {href: '#/'}, R.t('workbench.atWork', done, work.lines.length)) : null);
  }

  function listen() {
    var source = new EventSource('/api/events?language=' + document.documentElement.lang);
    source.addEventListener('open', function () {
      document.documentElement.setAttribute('data-connected', '1');
    });
    source.addEventListener('error', function () {
      document.documentElement.setAttribute('data-connected', '0');
      // The program has ended, or this page was opened from a link of an earlier start.
      if (source.readyState === EventSource.CLOSED) {
        R.tell(R.t('workbench.gone'), true);
      }
    });
    source.addEventListener('work', function (event) { atWork(JSON.parse(event.data)); });
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
      R.zones = all[1].zones || [];
      header();
      listen();
      window.addEventListener('hashchange', show);
      // A page that is closed or loaded again is left too; the request outlives it.
      window.addEventListener('pagehide', function () {
        if (R.leave) {
          R.leave();
        }
      });
      show();
      document.documentElement.setAttribute('data-ready', String(Math.round(performance.now())));
    }, R.problem);
  });
})(Rowledger);
