/** Moving things with a mouse, a finger or a pen. Whatever can be moved so can be moved by buttons or typed too. */
(function (R) {
  'use strict';

  /**
   * Lets things inside an element be moved. What is inside may be drawn anew while it moves, since the element itself holds the
   * pointer, but not when it begins: a finger whose target is gone by then scrolls the page.
   * @param {HTMLElement} host
   * @param {string} selector of what is taken hold of
   * @param {function(Element): {move: function(number, number, PointerEvent): void, end: function(): void,
   *   cancel: function(): void}} begin says what happens while the thing moves: px to the right and down from where it was taken
   */
  R.drag = function (host, selector, begin) {
    var moving = null;
    var escape = function (event) {
      if (event.key === 'Escape') {
        stop('cancel');
      }
    };
    var stop = function (how) {
      var was = moving;
      moving = null;
      document.removeEventListener('keydown', escape);
      if (was) {
        was.act[how]();
      }
    };
    host.addEventListener('pointerdown', function (event) {
      var grip = event.target.closest(selector);
      if (!grip || event.button || moving) {
        return;
      }
      event.preventDefault();
      host.setPointerCapture(event.pointerId);
      document.addEventListener('keydown', escape);
      moving = {pointer: event.pointerId, x: event.clientX, y: event.clientY, act: begin(grip)};
    });
    var move = function (event) {
      if (moving && event.pointerId === moving.pointer) {
        moving.act.move(event.clientX - moving.x, event.clientY - moving.y, event);
      }
    };
    host.addEventListener('pointermove', move);
    host.addEventListener('pointerup', function (event) {
      move(event);
      stop('end');
    });
    host.addEventListener('pointercancel', function () { stop('cancel'); });
    // A finger on a grip moves it and not the page.
    host.addEventListener('touchstart', function (event) {
      if (event.target.closest(selector)) {
        event.preventDefault();
      }
    }, {passive: false});
  };

  /** Size on the screen of one unit of a drawing, px. */
  R.unitPx = function (svg) {
    return svg.getScreenCTM().a;
  };
})(Rowledger);
