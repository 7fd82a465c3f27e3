/** Boundary, prescription and places to keep away from, under the passes. */
(function (R) {
  'use strict';

  var KINDS = ['boundary', 'prescription', 'keep-out'];

  R.screens.maps = function (main, field) {
    R.call('GET', R.fieldPath(field, 'maps')).then(function (maps) { show(main, field, maps, null); }, R.problem);
  };

  function show(main, field, maps, drawn) {
    var again = function (next) { show(main, field, next, null); };
    R.fill(main, R.title(field, 'workbench.step.maps'),
      R.h('div.split2', null,
        R.h('div', null,
          section('boundary', maps.boundary, boundary(main, field, maps, drawn, again)),
          section('prescription', maps.prescription, prescription(field, maps, again)),
          section('keep-out', maps.keepOut, setback(field, maps, again)),
          R.next('run', field, 'workbench.next')),
        R.h('div.view', null, drawn ? R.corners(drawn, function () { return R.mapPicture(maps, drawn); }) : R.mapPicture(maps, null))));
    Array.prototype.forEach.call(main.querySelectorAll('section[data-kind]'), function (host) {
      var kind = host.getAttribute('data-kind');
      host.appendChild(R.dropBox(R.t('workbench.maps.drop'), function (files) { put(field, kind, files).then(function () {
        R.screens.maps(main, field);
      }); }, R.t('workbench.maps.forms')));
    });
    main.setAttribute('data-loaded', 'maps');
  }

  /** Files take the name of what they are for, so that every command finds them. */
  function put(field, kind, files) {
    var renamed = files.map(function (file) {
      var end = /\.[A-Za-z0-9]+$/.exec(file.name);
      return new File([file], kind + (end ? end[0].toLowerCase() : ''));
    });
    return R.putFiles(field, renamed);
  }

  function section(kind, file, content) {
    var name = {boundary: R.t('workbench.maps.boundary'), prescription: R.t('workbench.maps.prescription'),
      'keep-out': R.t('workbench.maps.keepOut')}[kind];
    return R.h('section.card', {'data-kind': kind, 'aria-label': name}, R.h('h2', null, name),
      file ? R.h('p', null, file.own ? file.file : R.t('workbench.maps.above', file.file)) : null,
      file && file.problem ? R.h('p.warn', null, R.lines(file.problem)) : null, content);
  }

  function boundary(main, field, maps, drawn, again) {
    if (drawn) {
      return R.h('div.buttons', null,
        R.button(R.t('workbench.maps.take'), function () {
          R.call('PUT', R.fieldPath(field, 'boundary'), {ring: drawn.ring}).then(again, R.problem);
        }, 'primary'),
        R.button(R.t('workbench.keep'), function () { show(main, field, maps, null); }));
    }
    return maps.paths.length ? R.button(R.t('workbench.maps.around'), function () {
      R.call('GET', R.fieldPath(field, 'boundary/around')).then(function (drawn) {
        // The picture keeps its frame while corners are moved.
        drawn.around = drawn.ring;
        show(main, field, maps, drawn);
      }, R.problem);
    }) : null;
  }

  function prescription(field, maps, again) {
    var map = maps.prescription;
    if (!map || map.problem) {
      return null;
    }
    var names = Object.keys(map.attributes);
    var rate = R.h('select', {id: 'rate'});
    var unit = R.h('select', {id: 'rate-unit'});
    rate.appendChild(new Option(R.t('workbench.maps.attribute'), ''));
    names.forEach(function (name) {
      rate.appendChild(new Option(name + ': ' + map.attributes[name].join(', '), name));
    });
    ['gal/ac', 'L/ha', 'lb N/ac', 'kg N/ha'].forEach(function (each) { unit.appendChild(new Option(each, each)); });
    rate.value = maps.chosen.rate || '';
    unit.value = maps.chosen.unit || 'gal/ac';
    var save = function () {
      if (rate.value) {
        R.call('PUT', R.fieldPath(field, 'rig'), {blocks: {prescription: {rate: rate.value, unit: unit.value}}})
          .then(function () { return R.call('GET', R.fieldPath(field, 'maps')); }).then(again, R.problem);
      }
    };
    rate.addEventListener('change', save);
    unit.addEventListener('change', save);
    return R.h('p', null, R.h('label', {'for': 'rate'}, R.t('workbench.maps.rate')), ' ', rate, ' ',
      R.h('label', {'for': 'rate-unit'}, R.t('workbench.maps.unit')), ' ', unit);
  }

  function setback(field, maps, again) {
    var map = maps.keepOut;
    if (!map || map.problem || !map.withoutSetback) {
      return map ? R.h('p.note', null, R.t('workbench.maps.allSet')) : null;
    }
    var input = R.h('input', {id: 'setback', type: 'text', placeholder: R.isMetric() ? '10 m' : '35 ft'});
    return R.h('form', {onsubmit: function (event) {
      event.preventDefault();
      R.call('PUT', R.fieldPath(field, 'setback'), {setback: input.value}).then(again, R.problem);
    }}, R.h('p', null, R.t('workbench.maps.without', map.withoutSetback)),
    R.h('label', {'for': 'setback'}, R.t('workbench.maps.setback')), ' ', input, ' ',
    R.h('button', {type: 'submit'}, R.t('workbench.maps.give')));
  }

  /**
   * Everything on one plane, north up.
   * @param {Object} maps of a field, as the server gives them
   * @param {{ring: number[], around: number[]}|null} drawn a boundary that is being drawn
   */
  R.mapPicture = function (maps, drawn) {
    var layers = [];
    var add = function (name, shapes) { shapes.forEach(function (shape) { layers.push([name, shape]); }); };
    if (maps.prescription) { add('zone', maps.prescription.shapes); }
    add('path0', maps.paths);
    if (maps.boundary && !drawn) { add('boundary', maps.boundary.shapes); }
    if (maps.keepOut) { add('setback', maps.keepOut.shapes); }
    if (drawn) { add('boundary drawn', [drawn.ring]); }
    var low = [Infinity, Infinity];
    var high = [-Infinity, -Infinity];
    maps.paths.concat(drawn ? [drawn.around] : [], maps.boundary ? maps.boundary.shapes : []).forEach(function (points) {
      for (var i = 0; i < points.length; i += 2) {
        low = [Math.min(low[0], points[i]), Math.min(low[1], points[i + 1])];
        high = [Math.max(high[0], points[i]), Math.max(high[1], points[i + 1])];
      }
    });
    if (!isFinite(low[0])) {
      return R.h('p.note', null, R.t('workbench.logs.noPath'));
    }
    var scale = 600 / Math.max(high[0] - low[0], high[1] - low[1], 20);
    var svg = R.svg('svg', {viewBox: '-12 -12 ' + ((high[0] - low[0]) * scale + 24).toFixed(0) + ' '
      + ((high[1] - low[1]) * scale + 24).toFixed(0), 'class': 'paths maps', role: 'img', 'aria-label': R.t('workbench.maps.map')});
    svg.place = {scale: scale, low: low, high: high};
    layers.forEach(function (layer) {
      var d = '';
      for (var i = 0; i < layer[1].length; i += 2) {
        d += (i ? 'L' : 'M') + ((layer[1][i] - low[0]) * scale).toFixed(1) + ' ' + ((high[1] - layer[1][i + 1]) * scale).toFixed(1);
      }
      if (layer[1].length === 2) {
        svg.appendChild(R.svg('circle', {cx: (layer[1][0] - low[0]) * scale, cy: (high[1] - layer[1][1]) * scale, r: 6,
          'class': layer[0]}));
      } else {
        svg.appendChild(R.svg('path', {d: d, 'class': layer[0]}));
      }
    });
    return svg;
  };
})(Rowledger);
