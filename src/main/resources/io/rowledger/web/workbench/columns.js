/** The columns of a log: what each was understood as, with a choice where it is open, and the row check. */
(function (R) {
  'use strict';

  /** Correlation with speed from which an unknown column is offered as a flow. */
  var MIN_WITH_SPEED = 0.4;
  /** Rates outside of these are nobody's target for a side-dress bar (common practice, no source). */
  var MIN_GAL_PER_AC = 1;
  var MAX_GAL_PER_AC = 500;
  var M2_PER_ACRE = 4046.8564224;
  var L_PER_GAL = 3.785411784;

  /** Quantities that a person can choose for a column: key in the rig file, unit choices. */
  var QUANTITIES = [
    ['time', []], ['date', []], ['lat', []], ['lon', []], ['speed', ['mph', 'km/h', 'm/s']], ['course', []],
    ['target', ['gal/ac', 'L/ha']], ['pressure', ['psi', 'kPa', 'bar']], ['flow_total', ['gal/min', 'L/min']],
    ['volume_total', ['gal', 'L']], ['down', []], ['fix', []], ['width', ['ft', 'in', 'm']]
  ];

  /** The choice that leaves a column out. */
  var OFF = '-';

  /** The columns as they stood before rows were put in another order: {field, columns}, or null. */
  var taken = null;

  R.screens.columns = function (main, field) {
    R.call('GET', R.fieldPath(field, 'columns')).then(function (table) { show(main, field, table); }, R.problem);
  };

  function show(main, field, table) {
    var state = {
      field: field,
      table: table,
      columns: Object.assign({}, table.chosen),
      hints: Object.assign({}, table.hints),
      save: function () {
        taken = null;
        main.setAttribute('data-loaded', 'saving');
        main.inert = true;
        return R.call('PUT', R.fieldPath(field, 'columns'), {columns: state.columns, hints: state.hints})
          .then(function (next) { show(main, field, next); }, function (error) {
            R.problem(error);
            show(main, field, table);
          });
      }
    };
    var settled = !table.problems.length;
    main.inert = false;
    R.fill(main,
      R.title(field, 'workbench.step.columns'),
      R.h('p', null, settled ? R.t('workbench.columns.settled', table.file, table.rows)
        : R.t('workbench.columns.open', table.file)),
      times(state),
      families(state),
      speeds(state),
      hints(state),
      order(state),
      table.problems.length ? R.h('details.questions', {open: !times(state) && !families(state) && !speeds(state)},
        R.h('summary', null, R.t('workbench.columns.questions', table.problems.length)),
        R.h('ol', null, table.problems.map(function (problem) { return R.h('li', null, R.lines(problem.text)); }))) : null,
      settled ? check(field) : null,
      settled ? R.next('time', field, 'workbench.next') : null,
      R.h('h2', null, R.t('workbench.columns.all')),
      R.h('div.scroll', {tabindex: 0, role: 'region', 'aria-label': R.t('workbench.columns.all')}, R.h('table', null,
        R.h('thead', null, R.h('tr', null,
          ['header', 'values', 'trace', 'is', 'choice'].map(function (key) {
            return R.h('th', {scope: 'col'}, heading(key));
          }))),
        R.h('tbody', null, table.columns.map(function (column) { return row(state, column); })))));
    main.setAttribute('data-loaded', settled ? 'columns' : 'questions');
  }

  function heading(key) {
    return {
      header: R.t('workbench.columns.header'), values: R.t('workbench.columns.values'), trace: R.t('workbench.columns.trace'),
      is: R.t('workbench.columns.is'), choice: R.t('workbench.columns.choice')
    }[key];
  }

  /** A quantity of the rig file such as uan.flow_07[gal/min], in words: uan: flow, row 7, gal/min. */
  R.quantity = function (key) {
    var match = /^(?:(\w+)\.)?([a-z_]+?)(?:_(\d+))?(?:\[(.*)])?$/.exec(key);
    var word = match && {
      time: R.t('workbench.quantity.time'), date: R.t('workbench.quantity.date'), lat: R.t('workbench.quantity.lat'),
      lon: R.t('workbench.quantity.lon'), speed: R.t('workbench.quantity.speed'), course: R.t('workbench.quantity.course'),
      target: R.t('workbench.quantity.target'), pressure: R.t('workbench.quantity.pressure'),
      flow_total: R.t('workbench.quantity.flowTotal'), volume_total: R.t('workbench.quantity.volumeTotal'),
      down: R.t('workbench.quantity.down'), fix: R.t('workbench.quantity.fix'),
      hdop: R.t('workbench.quantity.hdop'), width: R.t('workbench.quantity.width'), flow: R.t('workbench.quantity.flow'),
      rate: R.t('workbench.quantity.rate'), on: R.t('workbench.quantity.on'), row: R.t('workbench.quantity.row')
    }[match[2]];
    if (!word) {
      return key.replace('[', ' [');
    }
    return (match[1] ? match[1] + ': ' : '') + (match[3] ? R.t('workbench.quantity.ofRow', word, +match[3]) : word)
      + (match[4] ? ', ' + match[4] : '');
  };

  function chosenFor(state, header) {
    return Object.keys(state.columns).filter(function (key) { return state.columns[key] === header; })[0];
  }

  function row(state, column) {
    var chosen = chosenFor(state, column.header);
    return R.h('tr', {'data-header': column.header},
      R.h('th', {scope: 'row'}, column.header),
      R.h('td', null, values(column.first)),
      R.h('td', null, R.trace(column.trace)),
      R.h('td', null, column.quantity ? R.quantity(column.quantity + (column.unit ? '[' + column.unit + ']' : ''))
        : R.t('workbench.columns.unused'), column.remark ? R.h('span.note', null, ' ' + column.remark) : null),
      R.h('td', null, select(state, column, chosen)));
  }

  /** Values one after the other, each in one piece where the line has room for it. */
  function values(texts) {
    return texts.map(function (text, n) { return R.h('span.value', null, text + (n + 1 < texts.length ? ',' : '')); });
  }

  function select(state, column, chosen) {
    var off = notNeeded(state).indexOf(column.header) >= 0;
    var box = R.h('select', {'aria-label': R.t('workbench.columns.choiceOf', column.header), onchange: function () {
      if (chosen) {
        delete state.columns[chosen];
      }
      leaveOut(state, column.header, box.value === OFF);
      if (box.value && box.value !== OFF) {
        delete state.columns[box.value];
        state.columns[box.value] = column.header;
      }
      state.save();
    }});
    if (column.quantity || chosen || off) {
      box.appendChild(new Option(R.t(chosen || off ? 'workbench.columns.byName' : 'workbench.columns.asUnderstood'), ''));
      box.appendChild(new Option(R.t('workbench.columns.notNeeded'), OFF));
    } else {
      box.appendChild(new Option(R.t('workbench.columns.notNeeded'), ''));
    }
    options(column).forEach(function (key) { box.appendChild(new Option(R.quantity(key), key)); });
    if (chosen && options(column).indexOf(chosen) < 0) {
      box.appendChild(new Option(R.quantity(chosen), chosen));
    }
    box.value = off ? OFF : chosen || '';
    return box;
  }

  /** Headers of columns that are left out, whatever their names say: a text or a list in the rig file. */
  function notNeeded(state) {
    return [].concat(state.hints.not_needed || []);
  }

  function leaveOut(state, header, off) {
    var left = notNeeded(state).filter(function (each) { return each !== header; });
    if (off) {
      left.push(header);
    }
    if (left.length) {
      state.hints.not_needed = left;
    } else {
      delete state.hints.not_needed;
    }
  }

  function options(column) {
    var number = (/(\d+)\D*$/.exec(column.header) || [])[1];
    var keys = [];
    if (number) {
      var two = ('0' + (+number)).slice(-2);
      ['gal/min', 'L/min', 'oz/min'].forEach(function (unit) { keys.push('flow_' + two + '[' + unit + ']'); });
      ['gal/ac', 'L/ha'].forEach(function (unit) { keys.push('rate_' + two + '[' + unit + ']'); });
      keys.push('pressure_' + two + '[psi]', 'on_' + two);
    } else {
      ['gal/min', 'L/min'].forEach(function (unit) { keys.push('flow[' + unit + ']'); });
      ['gal/ac', 'L/ha'].forEach(function (unit) { keys.push('rate[' + unit + ']'); });
    }
    QUANTITIES.forEach(function (each) {
      if (each[1].length) {
        each[1].forEach(function (unit) { keys.push(each[0] + '[' + unit + ']'); });
      } else {
        keys.push(each[0]);
      }
    });
    return keys;
  }

  /** Series of columns whose names differ by a number and that nobody understood: flows of the rows, likely. */
  function families(state) {
    var groups = {};
    state.table.columns.forEach(function (column) {
      var match = /^(.*?)(\d+)(\D*)$/.exec(column.header);
      if (match && column.usual !== null && (!column.quantity || column.open) && !chosenFor(state, column.header)
          && notNeeded(state).indexOf(column.header) < 0) {
        var key = match[1] + '#' + match[3];
        (groups[key] = groups[key] || []).push({number: +match[2], column: column});
      }
    });
    var cards = Object.keys(groups).filter(function (key) {
      var group = groups[key];
      var moving = group.filter(function (each) { return (each.column.withSpeed || 0) > MIN_WITH_SPEED; });
      return group.length > 1 && moving.length * 2 > group.length;
    }).map(function (key) { return family(state, groups[key]); });
    return cards.length ? cards : null;
  }

  function family(state, group) {
    group.sort(function (a, b) { return a.number - b.number; });
    var first = group[0].column;
    // The column whose usual value is the median: a row that was plugged says little about the unit.
    var middle = group.map(function (each) { return each.column; })
      .sort(function (a, b) { return a.usual - b.usual; })[group.length >> 1];
    return R.h('section.card', {'aria-label': R.t('workbench.columns.flows'), 'data-family': first.header},
      R.h('h2', null, R.t('workbench.columns.family', first.header, group[group.length - 1].column.header, group.length)),
      R.trace(middle.trace),
      R.h('p', null, R.t('workbench.columns.familyNote', figure(middle.usual), R.spacing(state.table.spacingM),
        R.reader().text('speed', state.table.usualMps === null ? NaN : state.table.usualMps))),
      R.h('div.choices', null, plausible(middle.readings).map(function (reading) {
        var name = reading.unit.indexOf('/min') > 0 ? 'flow_' : 'rate_';
        return R.button(R.t('workbench.columns.gives', reading.unit, R.rate(reading.rateLPerM2)), function () {
          group.forEach(function (each) {
            state.columns[name + ('0' + each.number).slice(-2) + '[' + reading.unit + ']'] = each.column.header;
          });
          state.save();
        }, 'choice');
      })));
  }

  /** Readings that somebody could have wanted; all of them where none is. */
  function plausible(readings) {
    var near = readings.filter(function (reading) {
      var gal = reading.rateLPerM2 * M2_PER_ACRE / L_PER_GAL;
      return gal > MIN_GAL_PER_AC && gal < MAX_GAL_PER_AC;
    });
    return near.length ? near : readings;
  }

  /** A column whose values look like times, where no column is known for them. */
  function times(state) {
    var open = state.table.problems.some(function (problem) { return problem.kind === 'COLUMN' && problem.column === 'time'; });
    var column = state.table.columns.filter(function (each) {
      return !each.quantity && each.first.length && each.first.every(function (text) { return /\d\d?:\d\d/.test(text); });
    })[0];
    return open && column ? R.h('section.card', {'aria-label': R.t('workbench.quantity.time'), 'data-family': column.header},
      R.h('h2', null, R.t('workbench.columns.timeOf', column.header)),
      R.h('p', null, values(column.first)),
      R.h('div.choices', null, R.button(R.t('workbench.columns.timeYes'), function () {
        state.columns.time = column.header;
        state.save();
      }, 'choice'))) : null;
  }

  /** A column that runs like the speed by the positions and has no unit. */
  function speeds(state) {
    var table = state.table;
    var known = table.columns.some(function (column) { return column.quantity === 'speed' && column.unit; })
      || Object.keys(state.columns).some(function (key) { return key.indexOf('speed') === 0; });
    if (known || !table.usualMps) {
      return null;
    }
    var column = table.columns.filter(function (each) {
      return each.usual !== null && /sp(ee)?d|vel|mph|kmh/i.test(each.header) && (each.withSpeed || 0) > MIN_WITH_SPEED;
    })[0];
    if (!column) {
      return null;
    }
    var units = [['mph', 0.44704], ['km/h', 1 / 3.6], ['m/s', 1], ['ft/s', 0.3048]];
    var read = R.reader();
    return R.h('section.card', {'aria-label': R.t('workbench.columns.speed'), 'data-family': column.header},
      R.h('h2', null, R.t('workbench.columns.speedOf', column.header)),
      R.h('p', null, R.t('workbench.columns.speedNote', figure(column.usual), read.text('speed', table.usualMps))),
      R.h('div.choices', null, units.map(function (unit) {
        return R.button(R.t('workbench.columns.speedGives', unit[0], read.text('speed', column.usual * unit[1])), function () {
          state.columns['speed[' + unit[0] + ']'] = column.header;
          state.save();
        }, 'choice');
      })));
  }

  /** Facts that a log does not show, as selects, where a question asks for one. */
  function hints(state) {
    var rows = [];
    var asked = function (kind, key) {
      return state.hints[key] || state.table.problems.some(function (problem) { return problem.kind === kind; });
    };
    var put = function (key, value) {
      if (value) {
        state.hints[key] = value;
      } else {
        delete state.hints[key];
      }
      state.save();
    };
    var ask = function (key, label, values) {
      if (values.length < 4) {
        rows.push(R.h('fieldset', null, R.h('legend', null, label),
          R.h('div.choices', {role: 'radiogroup', 'aria-label': label}, values.map(function (value) {
            return R.h('button.choice', {type: 'button', role: 'radio', 'data-value': value[0],
              'aria-checked': String(state.hints[key] === value[0]), onclick: function () { put(key, value[0]); }}, value[1]);
          }))));
        return;
      }
      var box = R.h('select', {'aria-label': label, onchange: function () { put(key, box.value); }});
      box.appendChild(new Option('', ''));
      values.forEach(function (value) { box.appendChild(new Option(value[1], value[0])); });
      box.value = state.hints[key] || '';
      rows.push(R.h('label', null, label, ' ', box));
    };
    var type = function (key, label, kind, example) {
      var input = R.h('input', {type: kind, 'aria-label': label, value: state.hints[key] || '', placeholder: example,
        onchange: function () { put(key, input.value.trim()); }});
      rows.push(R.h('label', null, label, ' ', input));
    };
    if (asked('ZONE', 'zone')) {
      ask('zone', R.t('workbench.columns.zone'), R.zones.map(function (zone) { return [zone, zone.replace(/_/g, ' ')]; }));
    }
    if (asked('DATE', 'date')) {
      type('date', R.t('workbench.columns.day'), 'date');
    }
    if (asked('DATE_ORDER', 'date_order')) {
      var at = orders(state.table);
      ask('date_order', R.t('workbench.columns.dateOrder'), [['month-day-year', R.t('workbench.columns.monthFirst'), at[0]],
        ['day-month-year', R.t('workbench.columns.dayFirst'), at[1]],
        ['year-month-day', R.t('workbench.columns.yearFirst'), at[2]]].filter(function (each) {
        return !at.length || each[2];
      }).map(function (each) { return [each[0], each[2] || each[1]]; }));
    }
    if (asked('GPS_WEEK', 'gps_week')) {
      type('gps_week', R.t('workbench.columns.gpsWeek'), 'text', '2418');
    }
    if (asked('COUNTS', 'counts')) {
      ask('counts', R.t('workbench.columns.counts'), [['since_last', R.t('workbench.columns.sinceLast')],
        ['total', R.t('workbench.columns.total')]]);
    }
    if (asked('PULSES', 'pulses')) {
      type('pulses', R.t('workbench.columns.pulses'), 'text', '2800 per gal');
    }
    return rows.length ? R.h('section.card', {'aria-label': R.t('workbench.columns.facts')},
      R.h('h2', null, R.t('workbench.columns.facts')), rows) : null;
  }

  /** What the first date of the column that is asked about is, month first, day first and year first. */
  function orders(table) {
    var question = table.problems.filter(function (problem) { return problem.kind === 'DATE_ORDER'; })[0];
    var column = question && table.columns.filter(function (each) { return each.header === question.column; })[0];
    var part = column && /(\d+)\D(\d+)\D(\d+)/.exec(column.first[0]);
    return part ? [is(part, 3, 1, 2), is(part, 3, 2, 1), is(part, 1, 2, 3)] : [];
  }

  function is(part, year, month, day) {
    var full = part[year].length < 3 ? 2000 + +part[year] : +part[year];
    var date = Date.UTC(full, part[month] - 1, +part[day]);
    var fits = part[month] <= 12 && new Date(date).getUTCDate() === +part[day] && full > 1900 && full < 2100;
    return fits ? R.t('workbench.columns.dateIs', part[0], R.reader().day(date / 1000)) : '';
  }

  /** Which column is which row, from the left: a column can be moved past its neighbor. */
  function order(state) {
    var lines = state.table.columns.map(function (column) {
      var key = chosenFor(state, column.header) || column.quantity + (column.unit ? '[' + column.unit + ']' : '');
      var match = /^(flow|rate)_(\d+)(\[|$)/.exec(key);
      return match ? {key: key, kind: match[1], row: +match[2], header: column.header} : null;
    }).filter(Boolean);
    lines = lines.filter(function (line) { return line.kind === lines[0].kind; })
      .sort(function (a, b) { return a.row - b.row; });
    if (lines.length < 2) {
      return null;
    }
    var move = function (from, to) {
      var before = {field: state.field, columns: Object.assign({}, state.columns)};
      var headers = lines.map(function (line) { return line.header; });
      headers.splice(to, 0, headers.splice(from, 1)[0]);
      lines.forEach(function (line, n) { state.columns[line.key] = headers[n]; });
      state.save();
      taken = before;
    };
    var list = R.h('ol', null, lines.map(function (line, n) {
      return R.h('li', {value: line.row, 'data-line': n}, R.h('span.grip', {'aria-hidden': 'true'}, '↕'), line.header, ' ',
        n + 1 < lines.length ? R.h('button.quiet', {
          type: 'button', 'aria-label': R.t('workbench.columns.moveRightOf', line.header), onclick: function () { move(n, n + 1); }
        }, R.t('workbench.columns.moveRight')) : null);
    }));
    R.drag(list, '.grip', function (grip) { return carried(list, +grip.parentNode.getAttribute('data-line'), move); });
    return [
      R.h('details.order', null, R.h('summary', null, R.t('workbench.columns.order')),
        R.h('p.note', null, R.t('workbench.columns.drag')), list),
      taken && taken.field === state.field ? R.button(R.t('workbench.columns.undo'), function () {
        state.columns = taken.columns;
        state.save();
      }, 'undo') : null
    ];
  }

  /** A line of the list that is carried to another place. */
  function carried(list, from, move) {
    var lines = Array.prototype.slice.call(list.children);
    var middles = lines.map(function (line) {
      var box = line.getBoundingClientRect();
      return (box.top + box.bottom) / 2;
    });
    var to = from;
    var show = function (at) {
      to = at;
      lines.forEach(function (line, n) {
        line.className = n === from ? 'carried' : n === to ? n < from ? 'before' : 'behind' : '';
      });
    };
    return {
      move: function (right, down, event) {
        show(middles.filter(function (middle, n) { return n !== from && middle < event.clientY; }).length);
      },
      end: function () {
        var at = to;
        show(from);
        if (at !== from) {
          move(from, at);
        }
      },
      cancel: function () { show(from); }
    };
  }

  function check(field) {
    var out = R.h('div.check', {'aria-live': 'polite'});
    var run = function () {
      R.fill(out, R.h('p', null, R.t('workbench.working')));
      R.call('POST', R.fieldPath(field, 'check'), {}).then(function (check) { answer(out, check); }, function (error) {
        R.fill(out);
        R.problem(error);
      });
    };
    return R.h('section.card', {'aria-label': R.t('workbench.check.title')},
      R.h('h2', null, R.t('workbench.check.title')),
      R.h('p', null, R.t('workbench.check.note')),
      R.button(R.t('workbench.check.run'), run, 'primary'), out);
  }

  function answer(out, check) {
    R.fill(out,
      check.findings.length ? null : R.h('p', null, R.t(check.comparesRows ? 'workbench.check.nothing' : 'workbench.check.cannot')),
      check.findings.map(function (finding) {
        return R.h('article.card', null,
          R.h('h3', null, finding.title, ' ', R.h('span.sure', null, R.t('workbench.check.sure', finding.confidencePct))),
          R.h('p', null, finding.evidence), R.h('p', null, R.t('workbench.check.alternative'), ' ', finding.alternative),
          R.h('p', null, R.t('workbench.check.look'), ' ', finding.check));
      }),
      check.findings.length ? R.h('p.warn', null, R.t('workbench.caution.machine')) : null,
      check.notes.length ? R.h('ul.note', null, check.notes.map(function (note) { return R.h('li', null, note); })) : null);
    out.setAttribute('data-checked', String(check.findings.length));
  }

  function figure(value) {
    return value >= 100 ? value.toFixed(0) : value >= 10 ? value.toFixed(1) : value.toFixed(2);
  }
})(Rowledger);
