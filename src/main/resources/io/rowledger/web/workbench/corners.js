/** Corners of a boundary that is being drawn: moved in the picture, or step by step with buttons. */
(function (R) {
  'use strict';

  /** Corners stand on tenths of a meter, as the server draws them. */
  var STEPS_PER_M = 10;
  /** A push of a button, m: a meter or a yard. */
  var PUSH_M = {metric: 1, us: 0.9144};

  /**
   * @param {{ring: number[]}} drawn east and north of each corner, m; the last is the first
   * @param {function(): SVGElement} draw the picture, whose place is {scale, low, high}: units a meter, corner of the plane
   * @return {HTMLElement} picture and buttons
   */
  R.corners = function (drawn, draw) {
    var count = drawn.ring.length / 2 - 1;
    var chosen = 0;
    var past = [];
    var svg = null;
    var picture = R.h('div');
    var name = R.h('span', {'aria-live': 'polite'});
    var undo = R.button(R.t('workbench.undo'), function () {
      drawn.ring = past.pop();
      paint();
    }, 'undo');

    function paint() {
      svg = draw();
      for (var i = 0; i < count; i++) {
        grip(i);
      }
      R.fill(picture, svg);
      name.textContent = R.t('workbench.maps.corner', chosen + 1, count);
      undo.disabled = !past.length;
    }

    function grip(i) {
      var x = (drawn.ring[2 * i] - svg.place.low[0]) * svg.place.scale;
      var y = (svg.place.high[1] - drawn.ring[2 * i + 1]) * svg.place.scale;
      svg.appendChild(R.svg('circle', {cx: x, cy: y, r: 6, 'class': 'corner' + (i === chosen ? ' marked' : '')}));
      svg.appendChild(R.svg('circle', {cx: x, cy: y, r: 18, 'class': 'grip', 'data-corner': i}));
    }

    function put(ring, east, north) {
      var place = [Math.round(east * STEPS_PER_M) / STEPS_PER_M, Math.round(north * STEPS_PER_M) / STEPS_PER_M];
      drawn.ring = ring.slice();
      drawn.ring.splice(2 * chosen, 2, place[0], place[1]);
      if (!chosen) {
        drawn.ring.splice(2 * count, 2, place[0], place[1]);
      }
      paint();
    }

    function push(east, north) {
      return function () {
        var by = PUSH_M[R.kept('units') || 'us'];
        past.push(drawn.ring);
        put(drawn.ring, drawn.ring[2 * chosen] + east * by, drawn.ring[2 * chosen + 1] + north * by);
      };
    }

    function choose(by) {
      return function () {
        chosen = (chosen + by + count) % count;
        paint();
      };
    }

    R.drag(picture, '.grip', function (grip) {
      chosen = +grip.getAttribute('data-corner');
      var before = drawn.ring;
      var perPx = 1 / (svg.place.scale * R.unitPx(svg));
      return {
        move: function (right, down) {
          put(before, before[2 * chosen] + right * perPx, before[2 * chosen + 1] - down * perPx);
        },
        end: function () {
          if (drawn.ring !== before) {
            past.push(before);
          }
          paint();
        },
        cancel: function () {
          drawn.ring = before;
          paint();
        }
      };
    });

    var arrow = function (sign, label, east, north) {
      return R.h('button', {type: 'button', 'aria-label': label, onclick: push(east, north)}, sign);
    };
    var panel = R.h('div.buttons.corners', {role: 'group', 'aria-label': R.t('workbench.maps.corners')},
      R.h('button', {type: 'button', 'aria-label': R.t('workbench.maps.cornerBefore'), onclick: choose(-1)}, '‹'), name,
      R.h('button', {type: 'button', 'aria-label': R.t('workbench.maps.cornerAfter'), onclick: choose(1)}, '›'),
      arrow('↑', R.t('workbench.maps.north'), 0, 1), arrow('↓', R.t('workbench.maps.south'), 0, -1),
      arrow('←', R.t('workbench.maps.west'), -1, 0), arrow('→', R.t('workbench.maps.east'), 1, 0), undo);
    paint();
    return R.h('div', null, picture, R.h('p.note', null, R.t('workbench.maps.cornersNote')), panel);
  };
})(Rowledger);
