/** Running fields and what comes of it: progress, stop, the review page in place, the files. */
(function (R) {
  'use strict';

  var REVIEW = 'review.html';

  R.screens.run = function (main, field) {
    R.call('GET', R.fieldPath(field)).then(function (line) {
      var host = R.h('div', {'aria-live': 'polite'});
      // One start at a time: the button comes back with the screen once the run has ended.
      var start = R.button(R.t(line.result ? 'workbench.run.again' : 'workbench.run.start'), function () {
        start.hidden = true;
        begin(main, field, [field], host, start);
      }, 'primary');
      R.fill(main, R.title(field, 'workbench.step.run'),
        line.ready ? null : R.h('div.warn', null, R.h('p', null, R.lines(line.wants || R.t('workbench.run.notReady'))),
          R.h('p', null, R.link(R.stepName(R.stepOf(line)) + ' ›', ['field', R.stepOf(line), field], 'primary'))),
        line.old ? R.h('p.warn', null, R.t('workbench.season.old')) : null,
        line.ready && (!line.result || line.old) ? start : null,
        host,
        line.ready && !line.result ? lacking(field, line) : null,
        line.result ? results(field, line.result) : null);
      main.setAttribute('data-loaded', line.result ? 'results' : 'run');
      R.call('GET', '/api/work').then(function (work) {
        if (work.lines.some(function (each) { return each.field === field && (each.state === 'running' || each.state === 'waiting'); })) {
          start.hidden = true;
          follow(host, [field], function () { R.screens.run(main, field); });
        }
      });
    }, R.problem);
  };

  /** What can be left out, and what the review then lacks. */
  function lacking(field, line) {
    return R.h('section.card', {'aria-label': R.t('workbench.run.optional')},
      R.h('h2', null, R.t('workbench.run.optional')),
      R.h('ul', null,
        line.boundary ? null : R.h('li', null, R.link(R.t('workbench.maps.boundary'), ['field', 'maps', field]), ': ',
          R.t('workbench.run.noBoundary')),
        R.h('li', null, R.link(R.t('workbench.step.facts'), ['field', 'facts', field]), ': ', R.t('workbench.run.noFacts'))));
  }

  function begin(main, field, fields, host, start) {
    R.call('POST', '/api/work', {fields: fields}).then(function () {
      follow(host, fields, function () { R.screens.run(main, field); });
    }, function (error) {
      start.hidden = false;
      R.problem(error);
    });
  }

  /** Shows progress until all of these fields have ended. */
  function follow(host, fields, ended) {
    var lineHost = R.h('div');
    R.fill(host, lineHost, stopping());
    var show = function (work) {
      var lines = work.lines.filter(function (line) { return fields.indexOf(line.field) >= 0; });
      R.fill(lineHost, lines.map(function (line) { return progress(line, line.field + ': '); }));
      var busy = lines.some(function (line) { return line.state === 'waiting' || line.state === 'running'; });
      if (!busy) {
        R.events.removeEventListener('work', hear);
        R.fill(host);
        lines.forEach(function (line) {
          if (line.state === 'failed') {
            R.tell(line.message, true);
          }
        });
        ended();
      }
    };
    var hear = function (event) {
      if (!host.isConnected) {
        R.events.removeEventListener('work', hear);
        return;
      }
      show(JSON.parse(event.data));
    };
    R.events.addEventListener('work', hear);
    R.call('GET', '/api/work').then(show, R.problem);
  }

  /** How far a field is; its name stands before it where the line is not under its name already. */
  function progress(line, name) {
    return R.h('div.progress', {'data-state': line.state},
      R.h('label', null, name + stateName(line.state) + (line.phase ? ', ' + phaseName(line.phase) : ''),
        R.h('progress', {max: 100, value: line.percent})));
  }

  function stateName(state) {
    return {
      waiting: R.t('workbench.run.waiting'), running: R.t('workbench.run.running'), done: R.t('workbench.run.done'),
      stopped: R.t('workbench.run.stopped'), failed: R.t('workbench.run.failed')
    }[state] || state;
  }

  function phaseName(phase) {
    return {
      'reading the log': R.t('workbench.phase.reading'), 'rebuilding the track': R.t('workbench.phase.track'),
      'diagnosing rows': R.t('workbench.phase.rows'), 'computing coverage': R.t('workbench.phase.coverage'),
      'estimating uncertainty': R.t('workbench.phase.uncertainty'), writing: R.t('workbench.phase.writing')
    }[phase] || phase;
  }

  function path(field, file) {
    return '/results/' + encodeURIComponent(field) + '/' + file.split('/').map(encodeURIComponent).join('/');
  }

  /** The end of a review page's address that shows it as the workbench is shown. */
  function shownAs() {
    return '#as-' + document.documentElement.lang + '-' + (R.kept('units') || 'us') + '-'
      + (document.documentElement.classList.contains('night') ? 'night' : 'day');
  }

  /** Shows the review that is on the screen, if any, as the workbench is shown now; it is not loaded anew. */
  R.showReviewAs = function () {
    Array.prototype.forEach.call(document.querySelectorAll('.results iframe'), function (frame) {
      frame.src = frame.src.split('#')[0] + shownAs();
    });
  };

  function results(field, result) {
    var file = function (name, label) {
      return result.files.indexOf(name) < 0 ? null : R.h('a.file', {
        href: path(field, name) + (name === REVIEW ? shownAs() : ''), target: '_blank', rel: 'noopener'
      }, label);
    };
    return R.h('div.results', null,
      R.h('div.files', null,
        file('pass-review.pdf', R.t('workbench.file.review')), file('nitrogen-record.pdf', R.t('workbench.file.record')),
        file('row-diagnosis.pdf', R.t('workbench.file.rows')), file('layers/places.gpx', R.t('workbench.file.gpx')),
        file('layers/field.gpkg', R.t('workbench.file.map')), file(REVIEW, R.t('workbench.file.page')),
        R.about.opens ? R.button(R.t('workbench.file.folder'), function () {
          R.call('POST', R.fieldPath(field, 'show'), {}).then(null, R.problem);
        }) : null),
      compare(field),
      R.h('iframe', {src: path(field, REVIEW) + shownAs(), title: R.t('workbench.file.page'), sandbox: 'allow-scripts allow-downloads'}));
  }

  /** What a repair changed: this job beside another one of the same machine. */
  function compare(field) {
    var host = R.h('div', {'aria-live': 'polite'});
    var box = R.h('select', {id: 'compare'});
    var form = R.h('p', null, R.h('label', {'for': 'compare'}, R.t('workbench.compare.before')), ' ', box, ' ',
      R.button(R.t('workbench.compare.run'), function () {
        R.call('POST', '/api/compare', {before: box.value, after: field}).then(function (compared) {
          R.fill(host, compared.answer.map(function (line) { return R.h('p', null, line); }),
            R.h('a.file', {href: path(compared.folder, 'comparison.pdf'), target: '_blank', rel: 'noopener'},
              R.t('workbench.file.comparison')));
        }, R.problem);
      }));
    var part = R.h('details.compare', {ontoggle: function () {
      if (!part.open || box.options.length) {
        return;
      }
      R.call('GET', '/api/season').then(function (season) {
        season.fields.forEach(function (each) {
          if (each.result && each.name !== field) {
            box.appendChild(new Option(each.name, each.name));
          }
        });
        if (!box.options.length) {
          R.fill(form, R.t('workbench.compare.none'));
        }
      }, R.problem);
    }}, R.h('summary', null, R.t('workbench.compare.title')),
    form, host);
    return part;
  }

  /** Hears of what is at work, now and at every change, while the screen is shown. */
  R.hearWork = function (main, hear) {
    var listen = function (event) {
      if (main.isConnected) {
        hear(JSON.parse(event.data));
      } else {
        R.events.removeEventListener('work', listen);
      }
    };
    R.events.addEventListener('work', listen);
    R.call('GET', '/api/work').then(hear, R.problem);
  };

  /** What is at work in a field, or why it failed. */
  R.workLine = function (line) {
    return line.state === 'running' ? progress(line, '')
      : line.state === 'waiting' || line.state === 'stopped' ? R.h('p.note', null, stateName(line.state))
        : line.state === 'failed' ? R.h('p.warn', null, R.lines(line.message)) : null;
  };

  /** A button that stops all work. It stays the same while progress changes, or a click could miss it. */
  function stopping() {
    return R.button(R.t('workbench.run.stop'), function () { R.call('POST', '/api/work/stop', {}).then(null, R.problem); });
  }

  /** How far the season's run is. */
  function overall(host, work) {
    var ended = work.lines.filter(function (line) { return line.state !== 'waiting' && line.state !== 'running'; }).length;
    R.fill(host, work.busy ? R.h('div.progress', null,
      R.h('label', null, R.t('workbench.atWork', ended, work.lines.length),
        R.h('progress', {max: work.lines.length, value: ended}))) : null);
  }

  /** The run of all fields, above the list of them. */
  R.seasonRun = function (season) {
    if (season.fields.length < 2) {
      return null;
    }
    var host = R.h('div');
    var start = R.button(R.t('workbench.run.seasonStart'), function () {
      R.call('POST', '/api/work', {fields: null}).then(null, R.problem);
    }, 'primary');
    var stop = stopping();
    var busy = false;
    stop.hidden = true;
    R.hearWork(host, function (work) {
      start.hidden = work.busy;
      stop.hidden = !work.busy;
      overall(host, work);
      if (busy && !work.busy) {
        R.show();
      }
      busy = work.busy;
    });
    return R.h('section.card', {'aria-label': R.t('workbench.run.season')},
      R.h('h2', null, R.t('workbench.run.season')),
      R.h('p', null, R.t('workbench.run.seasonNote')),
      start, host, stop,
      season.ledger ? R.h('p.files', null,
        R.h('a.file', {href: '/results/season.pdf', target: '_blank', rel: 'noopener'}, R.t('workbench.file.ledger')),
        R.h('a.file', {href: '/results/batch-summary.pdf', target: '_blank', rel: 'noopener'}, R.t('workbench.file.summary'))) : null);
  };
})(Rowledger);
