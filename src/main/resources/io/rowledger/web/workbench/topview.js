/** Tractor and bar from above, to scale, drawn as the figures are typed. */
(function (R) {
  'use strict';

  /** Half the rear axle of a row-crop tractor, m: for the eye only. */
  var HALF_AXLE_M = 1.6;
  /** Width of the drawing on a desk and on smaller screens, on which letters of the same size stay readable. */
  var WIDTH = 640;
  var PHONE_WIDTH = 420;
  /** Width of the small picture beside a length, and of the ends of its line. */
  var SMALL_WIDTH = 150;
  var SMALL_END = 4;
  /** Distance between two measures, room for the name of the last one, and narrowest row with a number. */
  var MEASURE = 22;
  var NAME = 116;
  var WIDE_NAME = 160;
  var MIN_NUMBERED = 20;

  /**
   * Draws the machine; lengths that are not known yet are drawn as dashed lines of a usual size.
   * @param {R.Rig} rig
   * @param {string} [marked] path of the length that is being typed
   * @param {boolean} [grips] lengths have ends to take hold of
   * @param {boolean} [small] the marked length alone, without names and numbers
   */
  R.topView = function (rig, marked, grips, small) {
    var value = function (path, otherwise) {
      var si = rig.state.values[path];
      return {m: si === undefined ? otherwise : si, known: si !== undefined};
    };
    var antenna = value('rig.antenna.ahead_of_axle', 1.5);
    var right = value('rig.antenna.right_of_center', 0);
    var hitch = value('rig.axle_to_hitch', 0.9);
    var wheels = value('rig.hitch_to_wheels', 4.5);
    var drop = value('rig.hitch_to_drop', 6);
    var aside = value('rig.bar_right_of_center', 0);
    var spacing = value('rows.spacing', 0.762).m;
    var count = Math.max(1, Math.min(96, parseInt(rig.get('rows.count'), 10) || rig.state.logRows || 12));
    var share = parseFloat(rig.get('rows.outer_share')) || 1;
    var towed = rig.get('rig.hitch') !== 'mounted';
    var half = (count - 2 + 2 * share) * spacing / 2;
    var left = Math.min(-half + aside.m, -HALF_AXLE_M) - 0.8;
    var front = Math.max(antenna.m, 1) + 1.2;
    var back = -hitch.m - Math.max(drop.m, towed ? wheels.m : 0) - 1.4;
    var room = Math.max(half + aside.m, HALF_AXLE_M) + 0.8;
    var width = small ? SMALL_WIDTH : window.innerWidth < 1000 ? PHONE_WIDTH : WIDTH;
    var wide = width === WIDTH;
    var scale = (width - (small ? 2 * SMALL_END : (towed ? 4 : 3) * MEASURE + (wide ? WIDE_NAME : NAME))) / (room - left);
    var x = function (m) { return ((m - left) * scale).toFixed(1); };
    var y = function (m) { return ((front - m) * scale).toFixed(1); };
    var svg = R.svg('svg', {viewBox: '0 0 ' + width + ' ' + ((front - back) * scale).toFixed(0), 'class': 'bar top' + (small ? ' small' : wide ? ' wide' : ''),
      role: 'img', 'aria-label': R.t('workbench.bar.picture')});
    svg.perMeter = scale;
    var line = function (x0, y0, x1, y1, name) {
      svg.appendChild(R.svg('line', {x1: x(x0), y1: y(y0), x2: x(x1), y2: y(y1), 'class': name}));
    };
    line(0, front - 0.6, 0, -hitch.m, 'center');
    line(-HALF_AXLE_M, 0, HALF_AXLE_M, 0, 'axle');
    line(0, -hitch.m, aside.m, -hitch.m - drop.m, 'frame');
    if (towed) {
      line(-HALF_AXLE_M, -hitch.m - wheels.m, HALF_AXLE_M, -hitch.m - wheels.m, 'axle');
    }
    var at = -half + aside.m;
    for (var row = 1; row <= count; row++) {
      var band = (row === 1 || row === count ? share : 1) * spacing;
      line(at + 0.03, -hitch.m - drop.m, at + band - 0.03, -hitch.m - drop.m, 'band' + (row % 2 ? '' : ' even'));
      if (!small && (spacing * scale >= MIN_NUMBERED || row === 1 || row === count)) {
        svg.appendChild(R.svg('text', {x: x(at + band / 2), y: +y(-hitch.m - drop.m) + 18, 'class': 'row'}, row));
      }
      at += band;
    }
    svg.appendChild(R.svg('circle', {cx: x(right.m), cy: y(antenna.m), r: small ? 4 : 6, 'class': 'antenna'}));
    svg.appendChild(R.svg('circle', {cx: x(0), cy: y(-hitch.m), r: small ? 3 : 5, 'class': 'pin'}));
    var end = (small ? SMALL_END : 4) / scale;
    var across = function (to, at) {
      line(0, at, to, at, 'length marked');
      line(0, at - end, 0, at + end, 'length marked');
      line(to, at - end, to, at + end, 'length marked');
    };
    if (marked === 'rig.antenna.right_of_center') {
      across(right.m, antenna.m);
    } else if (marked === 'rig.bar_right_of_center') {
      across(aside.m, -hitch.m - drop.m);
    }
    var measures = [
      ['rig.antenna.ahead_of_axle', antenna, 0, antenna.m, R.t('workbench.tape.antennaShort')],
      ['rig.axle_to_hitch', hitch, 0, -hitch.m, R.t('workbench.tape.hitchShort')]
    ];
    measures.push(['rig.hitch_to_drop', drop, -hitch.m, -hitch.m - drop.m, R.t('workbench.tape.dropShort')]);
    if (towed) {
      measures.push(['rig.hitch_to_wheels', wheels, -hitch.m, -hitch.m - wheels.m, R.t('workbench.tape.wheelsShort')]);
    }
    // The longer of the two stands left, its name beyond the end of the shorter one: no line runs through a name.
    if (towed && wheels.m > drop.m) {
      measures.push(measures.splice(2, 1)[0]);
    }
    var beyond = towed ? (0.3 * Math.min(wheels.m, drop.m) + 0.7 * Math.max(wheels.m, drop.m)) / Math.max(wheels.m, drop.m) : 0.6;
    if (small) {
      measures = measures.filter(function (measure) { return measure[0] === marked; });
    }
    measures.forEach(function (measure, n) {
      var name = 'length' + (measure[1].known ? '' : ' open') + (measure[0] === marked ? ' marked' : '');
      var px = 1 / scale;
      var at = small ? 0 : room + n * MEASURE * px;
      line(at, measure[2], at, measure[3], name);
      line(at - 4 * px, measure[2], at + 4 * px, measure[2], name);
      line(at - 4 * px, measure[3], at + 4 * px, measure[3], name);
      if (small) {
        return;
      }
      svg.appendChild(R.svg('text', {x: x(at + 6 * px), y: y(measure[2] + (measure[3] - measure[2]) * (n === 2 ? beyond : 0.55)),
        'class': measure[0] === marked ? 'marked' : ''},
        measure[4] + ' ' + (measure[1].known ? R.barLength(measure[1].m) : '?')));
      if (grips) {
        svg.appendChild(R.svg('circle', {cx: x(at), cy: y(measure[3]), r: 5, 'class': 'corner' + (measure[0] === marked ? ' marked' : '')}));
        svg.appendChild(R.svg('circle', {cx: x(at), cy: y(measure[3]), r: 15, 'class': 'grip', 'data-length': measure[0],
          'data-from': measure[1].m, 'data-up': measure[3] > measure[2] ? 1 : -1}));
      }
    });
    return svg;
  };
})(Rowledger);
