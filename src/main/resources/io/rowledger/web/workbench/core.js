/** What every screen uses: elements, words, calls to the server, messages to the person. */
var Rowledger = {};
(function (R) {
  'use strict';

  var words = {};
  /** Characters of a request that may outlive its page: a third of what the Fetch standard allows in bytes. */
  var MAX_KEPT_ALIVE = 20000;

  /** Saves what was entered on the screen and is not saved yet, and returns a promise; null where there is nothing. */
  R.leave = null;

  /** Screens by name: each is function(main, parts of the address) that fills the main element. */
  R.screens = {};

  /**
   * Makes an element.
   * @param {string} tag such as 'button.primary'
   * @param {Object|null} attributes names to values; functions are listeners, false and null leave an attribute out
   * @param {...(Node|string|number|null|Array)} children
   * @return {HTMLElement}
   */
  R.h = function (tag, attributes) {
    var names = tag.split('.');
    var element = document.createElement(names[0]);
    if (names.length > 1) {
      element.className = names.slice(1).join(' ');
    }
    set(element, attributes || {});
    append(element, Array.prototype.slice.call(arguments, 2));
    return element;
  };

  /** Makes an SVG element. */
  R.svg = function (tag, attributes) {
    var element = document.createElementNS('http://www.w3.org/2000/svg', tag);
    set(element, attributes || {});
    append(element, Array.prototype.slice.call(arguments, 2));
    return element;
  };

  function set(element, attributes) {
    Object.keys(attributes).forEach(function (name) {
      var value = attributes[name];
      if (typeof value === 'function') {
        element.addEventListener(name.replace(/^on/, ''), value);
      } else if (value === true) {
        element.setAttribute(name, '');
      } else if (value !== false && value !== null && value !== undefined) {
        if (name === 'value') {
          element.value = value;
        } else {
          element.setAttribute(name, value);
        }
      }
    });
  }

  function append(element, children) {
    children.forEach(function (child) {
      if (Array.isArray(child)) {
        append(element, child);
      } else if (child !== null && child !== undefined && child !== false) {
        element.appendChild(child instanceof Node ? child : document.createTextNode(String(child)));
      }
    });
  }

  /** Empties an element and fills it. */
  R.fill = function (element) {
    element.textContent = '';
    append(element, Array.prototype.slice.call(arguments, 1));
    return element;
  };

  /** The words of a key; %1, %2 stand for what follows. */
  R.t = function (key) {
    var values = arguments;
    return (words[key] || key).replace(/%(\d)/g, function (all, n) {
      return values[+n] === undefined ? '' : String(values[+n]);
    });
  };

  R.setWords = function (all) {
    words = all;
  };

  /**
   * Calls the server.
   * @param {string} method
   * @param {string} path
   * @param {*} [body] sent as JSON
   * @return {Promise<*>} the answer; rejected with {status, problem}
   */
  R.call = function (method, path, body) {
    var options = {method: method, credentials: 'same-origin', cache: 'no-store', headers: {
      Accept: 'application/json', 'X-Language': R.kept('language') || 'en', 'X-Units': R.kept('units') || 'us'
    }};
    if (body !== undefined) {
      options.headers['Content-Type'] = 'application/json';
      options.body = JSON.stringify(body);
      // Outlives a page that is closed; browsers bound what all such requests hold together.
      options.keepalive = method === 'PUT' && options.body.length < MAX_KEPT_ALIVE;
    }
    return fetch(path, options).then(read, function () {
      return Promise.reject({status: 0, problem: R.t('workbench.gone')});
    });
  };

  function read(answer) {
    return answer.text().then(function (text) {
      var value = text ? JSON.parse(text) : null;
      return answer.ok ? value : Promise.reject(value || {status: answer.status, problem: R.t('workbench.failed')});
    });
  }

  /**
   * Sends a file.
   * @param {string} path
   * @param {Blob} file
   * @param {function(number): void} progress share sent, 0 to 1
   * @return {Promise<*>}
   */
  R.upload = function (path, file, progress) {
    return new Promise(function (resolve, reject) {
      var request = new XMLHttpRequest();
      request.open('PUT', path);
      request.setRequestHeader('Accept', 'application/json');
      request.setRequestHeader('X-Language', R.kept('language') || 'en');
      request.setRequestHeader('Content-Type', 'application/octet-stream');
      request.upload.addEventListener('progress', function (event) {
        if (event.lengthComputable) {
          progress(event.loaded / event.total);
        }
      });
      request.addEventListener('load', function () {
        var value = null;
        try {
          value = JSON.parse(request.responseText);
        } catch (e) {
          value = {status: request.status, problem: R.t('workbench.failed')};
        }
        (request.status < 300 ? resolve : reject)(value);
      });
      request.addEventListener('error', function () {
        reject({status: 0, problem: R.t('workbench.upload.broken')});
      });
      request.send(file);
    });
  };

  /** The address of a field's part of the interface. */
  R.fieldPath = function (field, rest) {
    return '/api/fields/' + encodeURIComponent(field) + (rest ? '/' + rest : '');
  };

  /** Goes to a screen. */
  R.go = function () {
    location.hash = '#/' + Array.prototype.map.call(arguments, encodeURIComponent).join('/');
  };

  R.link = function (text, parts, name) {
    return R.h('a' + (name ? '.' + name : ''), {href: '#/' + parts.map(encodeURIComponent).join('/')}, text);
  };

  R.button = function (text, action, name) {
    return R.h('button' + (name ? '.' + name : ''), {type: 'button', onclick: action}, text);
  };

  /** A text whose first line says what to do; what stands below it is of interest to fewer people. */
  R.lines = function (text) {
    var lines = text.split('\n');
    return [lines[0], lines.length > 1 ? R.h('span.detail', {lang: 'en'}, lines.slice(1).join('\n')) : null];
  };

  /** Tells the person something; a problem stays until it is closed. */
  R.tell = function (text, problem) {
    var box = R.h('div' + (problem ? '.problem' : '.word'), null, R.h('p', null, R.lines(text)));
    box.appendChild(R.button(R.t('workbench.close'), function () { box.remove(); }));
    document.getElementById('messages').appendChild(box);
    if (!problem) {
      setTimeout(function () { box.remove(); }, 6000);
    }
  };

  /** For the end of a promise: shows what went wrong. */
  R.problem = function (error) {
    R.tell(error && error.problem ? error.problem : String(error), true);
  };

  /**
   * Asks before something is done.
   * @return {Promise<boolean>}
   */
  R.ask = function (question, yes, no) {
    return new Promise(function (resolve) {
      var dialog = R.h('dialog', {'aria-label': question}, R.h('p', null, question));
      var end = function (answer) {
        return function () {
          dialog.close();
          dialog.remove();
          resolve(answer);
        };
      };
      dialog.appendChild(R.h('div.buttons', null,
        R.button(yes, end(true), 'primary'), R.button(no, end(false))));
      dialog.addEventListener('cancel', end(false));
      document.body.appendChild(dialog);
      dialog.showModal();
    });
  };

  /** Calls an action when it has not been called again for some time. */
  R.later = function (ms, action) {
    var timer = 0;
    return function () {
      clearTimeout(timer);
      timer = setTimeout(action, ms);
    };
  };

  /** What is kept in the browser between visits. */
  R.kept = function (key, value) {
    try {
      if (value !== undefined) {
        localStorage.setItem('rowledger.' + key, value);
      }
      return localStorage.getItem('rowledger.' + key);
    } catch (e) {
      return null;
    }
  };
})(Rowledger);
