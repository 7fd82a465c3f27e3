/** Paints strips into pixels: convex quads by scan lines, later visits over earlier ones. */
(function (R) {
  'use strict';

  /** Steps are joined until they are so long on the screen, and rows until they are so wide, px. */
  var MIN_PX = 1.6;

  /**
   * @param {number} width px
   * @param {number} height px
   */
  R.Raster = function (width, height) {
    this.width = width;
    this.height = height;
    this.image = new ImageData(width, height);
    this.pixels = new Uint32Array(this.image.data.buffer);
  };

  /**
   * Fills a convex quad.
   * @param {number[]} q x and y of four corners, px
   * @param {number} color
   * @param {number} hatch 0 none, 1 under, 2 over
   * @param {number} dark color of the hatch
   */
  R.Raster.prototype.quad = function (q, color, hatch, dark) {
    var top = Math.max(0, Math.ceil(Math.min(q[1], q[3], q[5], q[7]) - 0.5));
    var bottom = Math.min(this.height - 1, Math.floor(Math.max(q[1], q[3], q[5], q[7]) - 0.5));
    for (var y = top; y <= bottom; y++) {
      var at = y + 0.5;
      var low = Infinity;
      var high = -Infinity;
      for (var i = 0; i < 8; i += 2) {
        var ax = q[i];
        var ay = q[i + 1];
        var bx = q[i + 2 & 7];
        var by = q[i + 3 & 7];
        if ((ay <= at && by > at) || (by <= at && ay > at)) {
          var x = ax + (at - ay) / (by - ay) * (bx - ax);
          low = x < low ? x : low;
          high = x > high ? x : high;
        }
      }
      var from = Math.max(0, Math.ceil(low - 0.5));
      var to = Math.min(this.width - 1, Math.floor(high - 0.5));
      var row = y * this.width;
      for (var px = from; px <= to; px++) {
        var line = hatch === 1 ? (px + y) % 7 : hatch === 2 ? (px - y + 70000) % 7 : 1;
        this.pixels[row + px] = line === 0 ? dark : color;
      }
    }
  };

  /**
   * Paints the job's strips.
   * @param {R.Job} job
   * @param {R.Raster} raster
   * @param {{x: function(number): number, y: function(number): number, scale: number}} view from the plane to px
   * @param {Object} mode from R.modes
   * @param {number} product
   * @param {{from: number, to: number}|null} span only these steps in full color
   */
  R.paintField = function (job, raster, view, mode, product, span) {
    var dark = R.pixel(0x3a3f42);
    var band = (job.data.rows[job.rows - 1][1] - job.data.rows[0][0]) / job.rows * view.scale;
    var rowsTogether = Math.max(1, Math.ceil(MIN_PX / band));
    job.data.passes.forEach(function (pass) {
      var k = pass.firstStep;
      while (k < pass.endStep) {
        var end = k + 1;
        var lengthPx = job.speed(k) * job.duration[k] * view.scale;
        while (end < pass.endStep && lengthPx < MIN_PX) {
          lengthPx += job.speed(end) * job.duration[end] * view.scale;
          end++;
        }
        if (onScreen(job, raster, view, k, end)) {
          paintSteps(job, raster, view, mode, product, k, end, rowsTogether, dark, span);
        }
        k = end;
      }
    });
  };

  /**
   * Paints ground with one rate each, where the log is a map of areas.
   * @param {R.Job} job
   * @param {CanvasRenderingContext2D} ink
   * @param {{x: function(number): number, y: function(number): number, scale: number}} view from the plane to px
   * @param {Object} mode from R.modes
   * @param {number} product
   */
  R.paintAreas = function (job, ink, view, mode, product) {
    var hatches = [null, hatching(ink, 1), hatching(ink, 2)];
    job.data.areas.forEach(function (area) {
      if (area.rate[product] === 0) {
        return;
      }
      var value = mode.ofArea(product, area);
      ink.beginPath();
      area.rings.forEach(function (ring) {
        ring.forEach(function (at, i) {
          if (i) {
            ink.lineTo(view.x(at[0]), view.y(at[1]));
          } else {
            ink.moveTo(view.x(at[0]), view.y(at[1]));
          }
        });
        ink.closePath();
      });
      [R.css(mode.color(value)), hatches[mode.hatch(value)]].forEach(function (style) {
        if (style) {
          ink.fillStyle = style;
          ink.fill('evenodd');
        }
      });
    });
  };

  /** Lines for under (1) and over (2), as strips have them. */
  function hatching(ink, kind) {
    var tile = document.createElement('canvas');
    tile.width = tile.height = 7;
    var dots = tile.getContext('2d');
    dots.fillStyle = '#3a3f42';
    for (var y = 0; y < 7; y++) {
      dots.fillRect(kind === 1 ? (7 - y) % 7 : y, y, 1, 1);
    }
    return ink.createPattern(tile, 'repeat');
  }

  function onScreen(job, raster, view, k, end) {
    var reach = Math.max(-job.data.rows[0][0], job.data.rows[job.rows - 1][1]) * view.scale + 2;
    var x0 = view.x(job.east[k]);
    var x1 = view.x(job.east[end]);
    var y0 = view.y(job.north[k]);
    var y1 = view.y(job.north[end]);
    return Math.max(x0, x1) > -reach && Math.min(x0, x1) < raster.width + reach
      && Math.max(y0, y1) > -reach && Math.min(y0, y1) < raster.height + reach;
  }

  function paintSteps(job, raster, view, mode, product, k, end, rowsTogether, dark, span) {
    var q = [0, 0, 0, 0, 0, 0, 0, 0];
    var middle = k + end >> 1;
    for (var r = 0; r < job.rows; r += rowsTogether) {
      var last = Math.min(job.rows, r + rowsTogether) - 1;
      var sum = 0;
      var n = 0;
      var on = false;
      for (var i = r; i <= last; i++) {
        if (job.delivering[i][middle]) {
          on = true;
          var value = mode.value(product, i, middle);
          if (value === value) {
            // The row that differs most stands for its neighbors, so that a plugged row doesn't vanish.
            sum = mode.classes && Math.abs(value) < Math.abs(sum) ? sum : value;
            n++;
          }
        }
      }
      if (!on) {
        continue;
      }
      var shown = n ? sum : NaN;
      var left = job.data.rows[r][0];
      var right = job.data.rows[last][1];
      q[0] = view.x(job.eastAt(k, left));
      q[1] = view.y(job.northAt(k, left));
      q[2] = view.x(job.eastAt(end, left));
      q[3] = view.y(job.northAt(end, left));
      q[4] = view.x(job.eastAt(end, right));
      q[5] = view.y(job.northAt(end, right));
      q[6] = view.x(job.eastAt(k, right));
      q[7] = view.y(job.northAt(k, right));
      var color = R.pixel(mode.color(shown));
      if (span && (end <= span.from || k >= span.to)) {
        color = (color & 0x00ffffff | 0x38000000) >>> 0;
        raster.quad(q, color, 0, dark);
      } else {
        raster.quad(q, color, view.scale > 1.2 ? mode.hatch(shown) : 0, dark);
      }
    }
  }
})(Rowledger);
