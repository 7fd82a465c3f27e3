/** The rig file of a field as the screens of bar, lengths, product and time edit it: a tree of texts, saved as typed. */
(function (R) {
  'use strict';

  /**
   * @param {string} field
   * @param {Object} state as the server gives it
   */
  R.Rig = function (field, state) {
    this.field = field;
    this.state = state;
    this.tree = state.tree;
    this.changed = {};
    this.listeners = [];
  };

  /** Loads the rig file and hands it to a screen. */
  R.withRig = function (field, use) {
    R.call('GET', R.fieldPath(field, 'rig')).then(function (state) { use(new R.Rig(field, state)); }, R.problem);
  };

  /** The text at a path such as rig.hitch; empty where there is none. */
  R.Rig.prototype.get = function (path) {
    var at = this.tree;
    path.split('.').forEach(function (key) { at = at && typeof at === 'object' ? at[key] : undefined; });
    return at === undefined || at === null ? '' : at;
  };

  /** Sets or, with an empty text, takes out what stands at a path; the server is asked what it comes to. */
  R.Rig.prototype.set = function (path, value) {
    var keys = path.split('.');
    var at = this.tree;
    for (var i = 0; i < keys.length - 1; i++) {
      if (!at[keys[i]] || typeof at[keys[i]] !== 'object') {
        at[keys[i]] = {};
      }
      at = at[keys[i]];
    }
    if (value === '') {
      delete at[keys[keys.length - 1]];
    } else {
      at[keys[keys.length - 1]] = value;
    }
    this.changed[keys[0]] = true;
    this.consider();
    R.leave = this.save.bind(this, null);
  };

  /** Sets what a person has not entered: it is saved when the person goes on, not when the screen is only looked at. */
  R.Rig.prototype.propose = function (path, value) {
    var before = R.leave;
    this.set(path, value);
    R.leave = before;
  };

  /** Sets what stands at a path and shows it where it is typed. */
  R.Rig.prototype.put = function (path, value) {
    document.getElementById(idOf(path)).value = value;
    this.set(path, value);
  };

  function idOf(path) {
    return path.replace(/\W/g, '-');
  }

  R.Rig.prototype.blocks = function () {
    var self = this;
    var blocks = {};
    Object.keys(this.changed).forEach(function (key) { blocks[key] = self.tree[key] || {}; });
    return {blocks: blocks};
  };

  R.Rig.prototype.consider = function () {
    var self = this;
    this.asked = (this.asked || 0) + 1;
    var mine = this.asked;
    R.call('POST', R.fieldPath(this.field, 'rig/consider'), this.blocks()).then(function (state) {
      if (mine === self.asked) {
        self.state = state;
        self.listeners.forEach(function (listener) { listener(); });
      }
    }, R.problem);
  };

  /** Calls the listener now and whenever the server has said what the texts come to. */
  R.Rig.prototype.listen = function (listener) {
    this.listeners.push(listener);
    listener();
  };

  /** Saves and goes on. */
  R.Rig.prototype.save = function (step) {
    var self = this;
    R.leave = null;
    return R.call('PUT', R.fieldPath(this.field, 'rig'), this.blocks()).then(function () {
      self.changed = {};
      if (step) {
        R.go('field', step, self.field);
      }
    }, R.problem);
  };

  /** The button that saves and goes on. */
  R.Rig.prototype.next = function (step) {
    var self = this;
    return R.h('p.next', null, R.button(R.t('workbench.next') + ' ›', function () { self.save(step); }, 'primary'));
  };

  /** Buttons of which one is chosen. */
  R.Rig.prototype.choice = function (label, path, options) {
    var self = this;
    var group = R.h('div.choices', {role: 'radiogroup', 'aria-label': label});
    options.forEach(function (option) {
      var button = R.h('button.choice', {type: 'button', role: 'radio', 'data-value': option[0], onclick: function () {
        self.set(path, option[0]);
        mark();
      }}, option[1]);
      group.appendChild(button);
    });
    var mark = function () {
      Array.prototype.forEach.call(group.children, function (button) {
        button.setAttribute('aria-checked', String(button.getAttribute('data-value') === self.get(path)));
      });
    };
    mark();
    return R.h('fieldset', null, R.h('legend', null, label), group);
  };

  /**
   * A field for a figure with its unit. A bare number takes the unit that is chosen for the form.
   * @param {string} label
   * @param {string} path
   * @param {function(): string} unit of bare numbers
   * @param {string} [note]
   */
  R.Rig.prototype.input = function (label, path, unit, note) {
    var self = this;
    var id = idOf(path);
    var message = R.h('p.message', {id: id + '-message', 'aria-live': 'polite'});
    var input = R.h('input', {id: id, type: 'text', value: self.get(path), autocomplete: 'off',
      'aria-describedby': id + '-message', oninput: function () {
        var text = input.value.trim();
        self.set(path, /^-?\d+([.,]\d+)?$/.test(text) && unit ? text + ' ' + unit() : text);
      }});
    self.listen(function () {
      var problem = self.state.problems[path];
      var caution = self.state.cautions[path];
      input.setAttribute('aria-invalid', String(!!problem));
      message.className = 'message' + (problem || caution ? ' warn' : '');
      message.textContent = problem || (caution ? R.cautionText(caution) : said(self, path));
    });
    return R.h('div.input', {'data-path': path}, R.h('label', {'for': id}, label), input,
      note ? R.h('p.note', null, note) : null, message);
  };

  /** What a text was understood as, in the other unit system. */
  function said(rig, path) {
    var si = rig.state.values[path];
    if (si === undefined || !rig.get(path)) {
      return '';
    }
    if (/density$/.test(path)) {
      return '= ' + (si * 2.2046226218 * 3.785411784).toFixed(2) + ' lb/gal = ' + si.toFixed(3) + ' kg/L';
    }
    if (/density_at$/.test(path)) {
      return '';
    }
    if (/target$/.test(path)) {
      return '= ' + (si * 4046.8564224 / 3.785411784).toFixed(1) + ' gal/ac = ' + (si * 1e4).toFixed(0) + ' L/ha';
    }
    return '= ' + R.feet(si) + ' = ' + si.toFixed(3) + ' m';
  }

  /** A length in feet and inches: 14 ft 6 in. */
  R.feet = function (m) {
    var inches = Math.round(Math.abs(m) / 0.0254 * 8) / 8;
    var ft = Math.floor(inches / 12);
    var rest = inches - 12 * ft;
    return (m < 0 ? '−' : '') + (ft ? ft + ' ft ' : '') + rest + ' in';
  };

  R.cautionText = function (key) {
    return {
      longer: R.t('workbench.caution.longer'), shorter: R.t('workbench.caution.shorter'),
      aheadOfWheels: R.t('workbench.caution.aheadOfWheels')
    }[key] || key;
  };
})(Rowledger);
