/** The logs of a field: drop them, see where and when each ran. */
(function (R) {
  'use strict';

  /**
   * A place for files to be dropped on, or chosen by a click.
   * @param {string} text
   * @param {function(File[]): void} take
   * @param {string} [note] what can be dropped
   */
  R.dropBox = function (text, take, note) {
    var input = R.h('input', {type: 'file', multiple: true, 'aria-label': text, onchange: function () {
      if (input.files.length) {
        take(Array.prototype.slice.call(input.files));
        input.value = '';
      }
    }});
    var box = R.h('label.drop', null, R.h('strong', null, text), R.h('span.note', null, note || R.t('workbench.drop.note')),
      R.h('span.choose', null, R.t('workbench.drop.choose')), input);
    ['dragenter', 'dragover'].forEach(function (name) {
      box.addEventListener(name, function (event) {
        event.preventDefault();
        box.classList.add('over');
      });
    });
    box.addEventListener('dragleave', function () { box.classList.remove('over'); });
    box.addEventListener('drop', function (event) {
      event.preventDefault();
      box.classList.remove('over');
      dropped(event.dataTransfer).then(function (files) {
        if (files.length) {
          take(files);
        }
      });
    });
    return box;
  };

  /** Files that were dropped, those of folders too. */
  function dropped(transfer) {
    var entries = Array.prototype.map.call(transfer.items || [], function (item) {
      return item.webkitGetAsEntry ? item.webkitGetAsEntry() : null;
    });
    if (!entries.length || entries.some(function (entry) { return !entry; })) {
      return Promise.resolve(Array.prototype.slice.call(transfer.files));
    }
    return Promise.all(entries.map(walk)).then(function (lists) { return [].concat.apply([], lists); });
  }

  function walk(entry) {
    if (entry.isFile) {
      return new Promise(function (resolve) {
        entry.file(function (file) { resolve([file]); }, function () { resolve([]); });
      });
    }
    var reader = entry.createReader();
    var all = [];
    return new Promise(function (resolve) {
      var more = function () {
        reader.readEntries(function (part) {
          if (!part.length) {
            Promise.all(all.map(walk)).then(function (lists) { resolve([].concat.apply([], lists)); });
            return;
          }
          all = all.concat(part);
          more();
        }, function () { resolve([]); });
      };
      more();
    });
  }

  /** Sends files into a field's folder, one after the other; asks before one takes the place of another. */
  R.putFiles = function (field, files) {
    var bar = R.h('div.word', null);
    document.getElementById('messages').appendChild(bar);
    var one = function (file, replace) {
      var path = R.fieldPath(field, 'files/' + encodeURIComponent(file.name)) + (replace ? '?replace=true' : '');
      return R.upload(path, file, function (share) {
        R.fill(bar, R.h('p', null, R.t('workbench.upload.share', file.name, Math.round(share * 100))));
      }).then(function (taken) {
        if (taken.same) {
          R.tell(R.t('workbench.upload.same', file.name));
        }
      }, function (error) {
        if (error.status !== 409) {
          return R.problem(error);
        }
        return R.ask(error.problem, R.t('workbench.replace'), R.t('workbench.keep')).then(function (yes) {
          return yes ? one(file, true) : null;
        });
      });
    };
    // The server would refuse it while it is being sent, which a browser takes for a broken connection.
    var tooLarge = files.filter(function (file) { return file.size > R.about.maxBytes; });
    tooLarge.forEach(function (file) {
      R.tell(R.t('workbench.upload.large', file.name, R.about.maxBytes / 1048576), true);
    });
    return files.filter(function (file) { return tooLarge.indexOf(file) < 0; }).reduce(function (before, file) {
      return before.then(function () { return one(file, false); });
    }, Promise.resolve()).then(function () { bar.remove(); });
  };

  R.screens.logs = function (main, field) {
    var again = function () { R.screens.logs(main, field); };
    R.call('GET', R.fieldPath(field, 'logs')).then(function (logs) {
      var open = logs.logs.some(function (log) { return log.problems.length; });
      R.fill(main,
        R.title(field, 'workbench.step.logs'),
        R.dropBox(R.t('workbench.logs.drop'), function (files) { R.putFiles(field, files).then(again); }),
        logs.apartM ? apart(field, logs, again) : null,
        severalDays(logs),
        logs.others.length ? R.h('p.warn', null, R.t('workbench.logs.others', logs.others.join(', '))) : null,
        logs.logs.length ? R.h('div.split2', null,
          R.paths(logs.logs, R.t('workbench.logs.map')),
          R.h('ul.logs', null, logs.logs.map(function (log, n) { return line(field, log, n, logs, again); }))) : null,
        logs.logs.length && logs.bars.length && !logs.hasRig ? R.h('section.card', {'aria-label': R.t('workbench.bar.saved')},
          R.h('h2', null, R.t('workbench.bar.saved')),
          R.h('div.choices', null, logs.bars.map(function (name) { return R.useBar(field, name); }))) : null,
        logs.logs.length ? R.next(open ? 'columns' : 'time', field, open ? 'workbench.logs.next' : 'workbench.logs.fine') : null);
      main.setAttribute('data-loaded', 'logs');
    }, R.problem);
  };

  /** Work in places far apart: fields of their own, by one click. */
  function apart(field, logs, again) {
    return R.h('div.warn', null,
      R.h('p', null, R.t('workbench.logs.apart', R.distance(logs.apartM))),
      R.button(R.t('workbench.logs.split', logs.places), function () {
        R.ask(R.t('workbench.logs.splitAsk', field), R.t('workbench.logs.split', logs.places), R.t('workbench.keep')).then(function (yes) {
          if (yes) {
            R.call('POST', R.fieldPath(field, 'split'), {}).then(function (split) {
              R.tell(R.t('workbench.logs.splitDone', split.fields.join(', ')));
              again();
            }, R.problem);
          }
        });
      }));
  }

  function severalDays(logs) {
    var units = R.reader(logs.zone);
    var days = [];
    logs.logs.forEach(function (log) {
      [log.startS, log.endS].forEach(function (at) {
        if (at !== null && days.indexOf(units.day(at)) < 0) {
          days.push(units.day(at));
        }
      });
    });
    return days.length > 1 ? R.h('p.warn', null, R.t('workbench.logs.days', days.length, days.join(', '))) : null;
  }

  function line(field, log, n, logs, again) {
    var units = R.reader(logs.zone);
    var areaM2 = log.flowingM && log.rows ? log.flowingM * log.rows * logs.spacingM : NaN;
    return R.h('li.log', {'data-log': log.file},
      R.h('h2', null, R.h('span.key.path' + n % 4, {'aria-hidden': 'true'}), log.file),
      log.startS === null ? null : R.h('p', null, R.t('workbench.logs.when', units.day(log.startS), units.clock(log.startS),
        units.clock(log.endS), R.duration(log.endS - log.startS))),
      R.h('p', null, log.records === 1 ? R.t('workbench.logs.record') : R.t('workbench.logs.records', log.records.toLocaleString()),
        log.rows ? ', ' + R.t('workbench.logs.rows', log.rows) : '',
        isFinite(areaM2) ? ', ' + R.t('workbench.logs.acres', units.text('area', areaM2), R.spacing(logs.spacingM)) : '',
        log.gaps ? ', ' + R.t('workbench.logs.gaps', log.gaps) : ''),
      log.sameAs ? R.h('p.warn', null, R.t('workbench.logs.same', log.sameAs)) : null,
      log.problems.length ? R.h('p.warn', null, log.unusable ? R.lines(log.problems[0])
        : R.t('workbench.logs.questions', log.problems.length)) : null,
      R.button(R.t('workbench.logs.away'), function () {
        R.ask(R.t('workbench.logs.awayAsk', log.file), R.t('workbench.logs.away'), R.t('workbench.keep')).then(function (yes) {
          if (yes) {
            R.call('POST', R.fieldPath(field, 'files/' + encodeURIComponent(log.file) + '/away'), {}).then(again, R.problem);
          }
        });
      }, 'quiet'));
  }
})(Rowledger);
