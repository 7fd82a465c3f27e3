/** Figures of the record that only a person has: plan, what was there before, order, load tickets, price. */
(function (R) {
  'use strict';

  /**
   * The figures of a job as a part that opens.
   * @param {string} field
   * @param {Object} job the block of the rig file, changed in place
   * @param {string[]} products keys of the products
   * @param {function(): void} changed called after each change
   */
  R.amounts = function (field, job, products, changed) {
    var keys = products.length ? products : ['uan'];
    var problem = R.h('p', {'aria-live': 'polite'});
    var consider = R.later(400, function () {
      R.call('POST', R.fieldPath(field, 'rig/consider'), {blocks: {job: job}}).then(function (state) {
        var at = /^job\b/.test(state.wantsKey);
        problem.className = at ? 'warn' : '';
        R.fill(problem, at ? R.lines(state.wants) : null);
        mark(at ? state.wantsKey : '');
      }, R.problem);
    });
    // job.tickets[1].weight is the field amount-tickets-0-weight.
    var mark = function (key) {
      var id = 'amount-' + key.replace(/^job\./, '').replace(/\[(\d+)]/, function (all, n) { return '.' + (n - 1); })
        .replace(/\./g, '-');
      Array.prototype.forEach.call(document.querySelectorAll('.amounts input'), function (input) {
        input.setAttribute('aria-invalid', String(input.id === id));
      });
    };
    var put = function (holder, key, text) {
      if (text) {
        holder[key] = text;
      } else {
        delete holder[key];
      }
      changed();
      consider();
    };
    var single = function (key, label, example) {
      return input(label, 'amount-' + key, job[key], example, function (text) { put(job, key, text); });
    };
    var each = function (key, label, example) {
      return keys.map(function (product, n) {
        var entered = job[key];
        var value = entered && typeof entered === 'object' ? entered[product] : n === 0 ? entered : '';
        return input(keys.length > 1 ? label + ': ' + product : label, 'amount-' + key + '-' + product, value, example, function (text) {
          var block = job[key] && typeof job[key] === 'object' ? job[key] : {};
          job[key] = block;
          put(block, product, text);
          if (!Object.keys(block).length) {
            delete job[key];
          }
        });
      });
    };
    var either = function (us, metric) { return R.isMetric() ? metric : us; };
    var what = ['what', R.t('workbench.amounts.what'), ''];
    var date = ['date', R.t('workbench.amounts.date'), 'date'];
    var nitrogen = ['nitrogen', R.t('workbench.amounts.nitrogen'), either('30 lb/ac', '35 kg/ha')];
    var update = function () {
      changed();
      consider();
    };
    return R.h('details.amounts', {open: ['order', 'tickets', 'earlier', 'credits', 'price'].some(function (key) { return job[key]; })},
      R.h('summary', null, R.t('workbench.amounts.title')),
      R.h('p.note', null, R.t('workbench.amounts.note')),
      single('plan', R.t('workbench.amounts.plan'), either('180 lb/ac', '200 kg/ha')),
      single('cap', R.t('workbench.amounts.cap'), either('200 lb/ac', '225 kg/ha')),
      list(job, 'earlier', R.t('workbench.amounts.earlier'), [what, date, nitrogen], update),
      list(job, 'credits', R.t('workbench.amounts.credits'), [what, nitrogen], update),
      each('order', R.t('workbench.amounts.order'), either('1300 gal', '4900 L')),
      list(job, 'tickets', R.t('workbench.amounts.tickets'), [
        ['number', R.t('workbench.amounts.number'), '48213'], date,
        keys.length > 1 ? ['product', R.t('workbench.amounts.product'), keys[0]] : null,
        ['weight', R.t('workbench.amounts.weight'), either('14380 lb', '6500 kg')],
        ['volume', R.t('workbench.amounts.volume'), either('1300 gal', '4900 L')],
        ['temperature', R.t('workbench.amounts.temperature'), either('64 F', '18 C')]].filter(Boolean), update),
      each('price', R.t('workbench.amounts.price'), either('1.85 USD/gal', '0.49 USD/L')),
      problem);
  };

  function input(label, id, value, example, hear) {
    var text = value || '';
    // A day is chosen from the browser's own calendar, unless the file has it in another form.
    var day = example === 'date' && (!text || /^\d{4}-\d\d-\d\d$/.test(text));
    return R.h('div.input', null, R.h('label', {'for': id}, label),
      R.h('input', {id: id, type: day ? 'date' : 'text', value: text, placeholder: day || example === 'date' ? null : example,
        autocomplete: 'off', oninput: function (event) { hear(event.target.value.trim()); }}));
  }

  R.textInput = input;

  /** A list of lines, each with a few texts; keys that have no place here stay as they are. */
  function list(job, key, label, columns, changed) {
    var items = Array.isArray(job[key]) ? job[key].slice() : [];
    var host = R.h('div');
    var keep = function () {
      var filled = items.filter(function (item) { return Object.keys(item).length; });
      if (filled.length) {
        job[key] = filled;
      } else {
        delete job[key];
      }
      changed();
    };
    var fill = function () {
      R.fill(host, items.map(function (item, n) {
        return R.h('div.line', {role: 'group', 'aria-label': label + ' ' + (n + 1)}, columns.map(function (column) {
          return input(column[1], 'amount-' + key + '-' + n + '-' + column[0], item[column[0]], column[2], function (text) {
            if (text) {
              item[column[0]] = text;
            } else {
              delete item[column[0]];
            }
            keep();
          });
        }), R.button(R.t('workbench.amounts.remove'), function () {
          items.splice(n, 1);
          keep();
          fill();
        }, 'quiet'));
      }), R.button(R.t('workbench.amounts.add'), function () {
        items.push({});
        fill();
        var lines = host.querySelectorAll('.line');
        lines[lines.length - 1].querySelector('input').focus();
      }));
    };
    fill();
    return R.h('fieldset', {'data-list': key}, R.h('legend', null, label), host);
  }
})(Rowledger);
