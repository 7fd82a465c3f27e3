/** The lengths, with a picture to scale, and the field's own headland turns driven by them. */
(function (R) {
  'use strict';

  /** Steps in which a length is moved, in the unit that it is typed in, and the longest, m. */
  var STEPS = {'in': 0.5, ft: 0.05, m: 0.01, cm: 1};
  var METERS = {'in': 0.0254, ft: 0.3048, m: 1, cm: 0.01};
  var INCHES_PER_FT = 12;
  var MAX_M = 30;

  R.screens.tape = function (main, field) {
    R.withRig(field, function (rig) {
      var towed = rig.get('rig.hitch') !== 'mounted';
      var unit = R.kept('lengthUnit') || (R.isMetric() ? 'cm' : 'in');
      var box = R.h('select', {id: 'unit', onchange: function () {
        unit = box.value;
        R.kept('lengthUnit', unit);
      }});
      ['in', 'ft', 'm', 'cm'].forEach(function (each) { box.appendChild(new Option(each, each)); });
      box.value = unit;
      var of = function () { return unit; };
      var marked = '';
      var view = R.h('div.view');
      var draw = function () { R.fill(view, R.topView(rig, marked, true)); };
      var undo = moved(rig, view, of, function (path) {
        marked = path;
        draw();
      });
      var fields = [
        length(rig, R.t('workbench.tape.antenna'), 'rig.antenna.ahead_of_axle', of, R.t('workbench.tape.antennaNote')),
        length(rig, R.t('workbench.tape.hitch'), 'rig.axle_to_hitch', of, R.t('workbench.tape.hitchNote')),
        towed ? length(rig, R.t('workbench.tape.wheels'), 'rig.hitch_to_wheels', of, R.t('workbench.tape.wheelsNote')) : null,
        length(rig, R.t('workbench.tape.drop'), 'rig.hitch_to_drop', of, R.t('workbench.tape.dropNote')),
        R.h('details', null, R.h('summary', null, R.t('workbench.tape.aside')),
          length(rig, R.t('workbench.tape.antennaAside'), 'rig.antenna.right_of_center', of, R.t('workbench.tape.asideNote')),
          length(rig, R.t('workbench.tape.barAside'), 'rig.bar_right_of_center', of, R.t('workbench.tape.asideNote')))];
      var form = R.h('div.form', {onfocusin: function (event) {
        var path = event.target.closest('[data-path]');
        marked = path ? path.getAttribute('data-path') : '';
        draw();
      }}, R.h('p', null, R.h('label', {'for': 'unit'}, R.t('workbench.tape.unit')), ' ', box), fields, rig.next('product'));
      rig.listen(draw);
      var turn = R.h('section.turn', {'aria-label': R.t('workbench.tape.turns'), 'aria-live': 'polite'});
      R.fill(main, R.title(field, 'workbench.step.tape'), R.h('p', null, R.t('workbench.tape.how')),
        R.h('div.split2', null, form, R.h('div', null, view, R.h('p.note', null, R.t('workbench.tape.drag'), ' ', undo), turn)));
      drives(rig, turn);
      main.setAttribute('data-loaded', 'tape');
    });
  };

  /** The field of a length with a small picture of where it is taken. */
  function length(rig, label, path, unit, note) {
    var host = R.h('div.where', {'aria-hidden': 'true'});
    rig.listen(function () { R.fill(host, R.topView(rig, path, false, true)); });
    return R.h('div.measured', null, rig.input(label, path, unit, note), host);
  }

  /**
   * Lets the ends of lengths be moved in the drawing.
   * @param {function(): string} unit of lengths that were not typed yet
   * @param {function(string): void} draw the drawing with this length marked
   * @return {HTMLElement} the button that takes the last move back
   */
  function moved(rig, view, unit, draw) {
    var past = [];
    var undo = R.button(R.t('workbench.undo'), function () {
      var last = past.pop();
      undo.disabled = !past.length;
      rig.put(last[0], last[1]);
    }, 'undo');
    undo.disabled = true;
    R.drag(view, '.grip', function (grip) {
      var path = grip.getAttribute('data-length');
      var fromM = +grip.getAttribute('data-from');
      var before = rig.get(path);
      var known = rig.state.values[path];
      var svg = view.querySelector('svg');
      var perPx = -grip.getAttribute('data-up') / (svg.perMeter * R.unitPx(svg));
      var text = before;
      return {
        move: function (right, down) {
          text = lengthText(Math.max(0, Math.min(MAX_M, fromM + down * perPx)), before, unit());
          rig.state.values[path] = metersOf(text);
          draw(path);
        },
        end: function () {
          if (text !== before) {
            past.push([path, before]);
            undo.disabled = false;
            rig.put(path, text);
          }
        },
        cancel: function () {
          rig.state.values[path] = known;
          draw(path);
        }
      };
    });
    return undo;
  }

  /** A length in the unit that it was typed in before, to its step: 63.5 in, 19 ft 4.5 in, 5.25 ft, 1.61 m, 161 cm. */
  function lengthText(m, before, otherwise) {
    var feet = /ft.*in\s*$/.test(before);
    var unit = feet ? 'in' : (/(in|ft|cm|m)\s*$/.exec(before) || [0, otherwise])[1];
    var steps = Math.round(m / METERS[unit] / STEPS[unit]);
    var value = +(steps * STEPS[unit]).toFixed(2);
    return feet ? Math.floor(value / INCHES_PER_FT) + ' ft ' + value % INCHES_PER_FT + ' in' : value + ' ' + unit;
  }

  /** Meters of such a text. */
  function metersOf(text) {
    var m = 0;
    text.replace(/([\d.]+) (in|ft|cm|m)/g, function (all, value, unit) { m += value * METERS[unit]; });
    return m;
  }

  /** Drives the field again whenever the lengths have changed and are whole. */
  function drives(rig, host) {
    var last = '';
    var drive = R.later(500, function () {
      R.fill(host, R.h('p.note', null, R.t('workbench.tape.driving')));
      R.call('POST', R.fieldPath(rig.field, 'rig/drive'), rig.blocks()).then(function (driven) { show(host, driven); },
        function (error) { R.fill(host, R.h('p.warn', null, R.lines(error.problem))); });
    });
    rig.listen(function () {
      var need = ['rig.antenna.ahead_of_axle', 'rig.axle_to_hitch', 'rig.hitch_to_drop'];
      if (rig.get('rig.hitch') !== 'mounted') {
        need.push('rig.hitch_to_wheels');
      }
      var open = need.some(function (path) { return rig.state.values[path] === undefined; });
      var now = JSON.stringify(rig.state.values);
      if (open || !rig.get('rows.outer_share') && !rig.get('rows.outlets')) {
        R.fill(host, R.h('p.note', null, R.t('workbench.tape.open')));
      } else if (now !== last) {
        drive();
      }
      last = now;
    });
  }

  /** Puts what the log says of a length beside its field; returns what has no field here. */
  function beside(words) {
    Array.prototype.forEach.call(document.querySelectorAll('.by-log'), function (old) { old.remove(); });
    return words.filter(function (word) {
      var input = word.key && document.querySelector('[data-path="' + word.key + '"]');
      if (input) {
        if (word.differs && input.closest('details')) {
          input.closest('details').open = true;
        }
        input.appendChild(R.h('p.by-log' + (word.differs ? '.warn' : ''), null, R.t('workbench.tape.byLog', word.byLog)));
      }
      return !input;
    });
  }

  function show(host, driven) {
    var rest = beside(driven.setup);
    R.fill(host,
      R.h('h2', null, R.t('workbench.tape.turns')),
      R.h('p.big', {id: 'drive-figures'}, R.t('workbench.tape.areas', driven.skip, driven.overlap)),
      driven.overlap === driven.fineOverlap ? null : R.h('p.note', null, R.t('workbench.tape.fine', driven.fineOverlap)),
      driven.turns.map(picture),
      rest.length ? R.h('div', null, R.h('h2', null, R.t('workbench.tape.says')),
        R.h('p.note', null, R.t('workbench.tape.saysNote')),
        R.h('dl.facts', null, rest.map(function (word) {
          return [R.h('dt', null, word.name), R.h('dd' + (word.differs ? '.warn' : ''), null, word.text)];
        }))) : null,
      driven.untold.length ? R.h('details', null, R.h('summary', null, R.t('workbench.tape.untold')),
        R.h('dl.facts', null, driven.untold.map(function (word) {
          return [R.h('dt', null, word.name), R.h('dd', null, word.text)];
        }))) : null);
    host.setAttribute('data-driven', '1');
  }

  function picture(turn) {
    var all = turn.before.concat(turn.after, turn.antenna);
    var low = [Infinity, Infinity];
    var high = [-Infinity, -Infinity];
    for (var i = 0; i < all.length; i += 2) {
      low = [Math.min(low[0], all[i]), Math.min(low[1], all[i + 1])];
      high = [Math.max(high[0], all[i]), Math.max(high[1], all[i + 1])];
    }
    var scale = 300 / Math.max(high[0] - low[0], high[1] - low[1], 1);
    var path = function (points, name, close) {
      var d = '';
      for (var i = 0; i < points.length; i += 2) {
        d += (i ? 'L' : 'M') + ((points[i] - low[0]) * scale).toFixed(1) + ' ' + ((high[1] - points[i + 1]) * scale).toFixed(1);
      }
      return R.svg('path', {d: d + (close ? 'Z' : ''), 'class': name});
    };
    return R.svg('svg', {viewBox: '-5 -5 ' + ((high[0] - low[0]) * scale + 10).toFixed(0) + ' '
      + ((high[1] - low[1]) * scale + 10).toFixed(0), 'class': 'turn', role: 'img', 'aria-label': R.t('workbench.tape.turn')},
      path(turn.before, 'strip', true), path(turn.after, 'strip', true), path(turn.antenna, 'antenna-path'), path(turn.drop, 'drop-path'));
  }
})(Rowledger);
