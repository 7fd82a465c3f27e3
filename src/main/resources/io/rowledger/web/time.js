/** Rows through time: each line a row, time to the right with the turns left out. */
(function (R) {
  'use strict';

  var ROW_PX = 14;
  /** Room for row numbers on the left and times below, px. */
  var LABELS_PX = 28;
  var TIMES_PX = 20;
  /** A row number takes this height, and a time this width, px. */
  var LABEL_HEIGHT_PX = 12;
  var LABEL_WIDTH_PX = 110;

  /**
   * @param {HTMLCanvasElement} canvas
   * @param {R.Job} job
   * @param {Object} state
   */
  R.RowsInTime = function (canvas, job, state) {
    this.canvas = canvas;
    this.job = job;
    this.state = state;
    this.steps = [];
    for (var k = 0; k < job.steps; k++) {
      if (job.pass[k] > 0) {
        this.steps.push(k);
      }
    }
    this.listen();
    this.draw();
  };

  /** The column of the picture at a place on the canvas, px from its left. */
  R.RowsInTime.prototype.column = function (x) {
    var width = Math.max(1, this.canvas.clientWidth - LABELS_PX);
    return Math.max(0, Math.min(this.steps.length - 1, Math.floor((x - LABELS_PX) / width * this.steps.length)));
  };

  R.RowsInTime.prototype.listen = function () {
    var self = this;
    var canvas = this.canvas;
    var from = -1;
    canvas.addEventListener('pointerdown', function (event) {
      from = event.offsetX;
      canvas.setPointerCapture(event.pointerId);
    });
    canvas.addEventListener('pointerup', function (event) {
      if (from < 0 || !self.steps.length) {
        return;
      }
      var row = Math.max(0, Math.min(self.job.rows - 1,
        Math.floor(event.offsetY / (self.base ? self.base.height : 1) * self.job.rows)));
      if (Math.abs(event.offsetX - from) > 6) {
        var a = self.steps[self.column(Math.min(from, event.offsetX))];
        var b = self.steps[self.column(Math.max(from, event.offsetX))];
        self.state.brush({from: a, to: b + 1});
      } else {
        self.state.moveTo(self.steps[self.column(event.offsetX)], row);
      }
      from = -1;
    });
    canvas.addEventListener('keydown', function (event) {
      var by = {ArrowLeft: -1, ArrowRight: 1}[event.key];
      var down = {ArrowUp: -1, ArrowDown: 1}[event.key];
      if (by === undefined && down === undefined) {
        return;
      }
      event.preventDefault();
      var stride = event.shiftKey ? 20 : 1;
      var step = Math.max(0, Math.min(self.job.steps - 1, self.state.step + (by || 0) * stride));
      var row = Math.max(0, Math.min(self.job.rows - 1, self.state.row + (down || 0)));
      self.state.moveTo(step, row);
    });
  };

  R.RowsInTime.prototype.draw = function () {
    var job = this.job;
    var width = Math.max(300, Math.round(this.canvas.clientWidth || 900)) - LABELS_PX;
    var height = Math.max(job.rows * 3, Math.min(job.rows * ROW_PX, 360));
    this.canvas.width = width + LABELS_PX;
    this.canvas.height = height + TIMES_PX;
    this.canvas.style.height = this.canvas.height + 'px';
    var image = new ImageData(width, height);
    var pixels = new Uint32Array(image.data.buffer);
    var mode = this.state.mode;
    var p = this.state.product;
    var off = R.pixel(0xe3e5e6);
    var dark = R.pixel(0x3a3f42);
    for (var x = 0; x < width && this.steps.length; x++) {
      var k = this.steps[Math.floor((x + 0.5) / width * this.steps.length)];
      for (var r = 0; r < job.rows; r++) {
        var value = job.delivering[r][k] ? mode.value(p, r, k) : NaN;
        var color = job.delivering[r][k] ? R.pixel(mode.color(value)) : off;
        var hatch = job.delivering[r][k] ? mode.hatch(value) : 0;
        var y1 = Math.floor((r + 1) / job.rows * height) - (height / job.rows > 5 ? 1 : 0);
        for (var y = Math.floor(r / job.rows * height); y < y1; y++) {
          var line = hatch === 1 ? (x + y) % 6 : hatch === 2 ? (x - y + 60000) % 6 : 1;
          pixels[y * width + x] = line === 0 ? dark : color;
        }
      }
    }
    this.base = image;
    this.cursor();
  };

  /** Writes row numbers and times. */
  R.RowsInTime.prototype.labels = function (context) {
    var job = this.job;
    var state = this.state;
    var width = this.base.width;
    var height = this.base.height;
    var every = Math.ceil(LABEL_HEIGHT_PX / (height / job.rows));
    context.fillStyle = getComputedStyle(this.canvas).color;
    context.font = '11px system-ui, sans-serif';
    context.textBaseline = 'middle';
    context.textAlign = 'right';
    for (var r = 0; r < job.rows; r += every) {
      context.fillText(String(r + 1), LABELS_PX - 5, (r + 0.5) / job.rows * height);
    }
    var steps = this.steps;
    var times = Math.max(2, Math.floor(width / LABEL_WIDTH_PX));
    var shares = [];
    for (var i = 0; i < times && steps.length; i++) {
      shares.push(i / (times - 1));
    }
    var texts = state.units.axis(shares.map(function (share) {
      return job.data.startS + job.time[steps[Math.round(share * (steps.length - 1))]];
    }), state.severalDays(), ' ');
    texts.forEach(function (text, k) {
      context.textAlign = k === 0 ? 'left' : k === times - 1 ? 'right' : 'center';
      context.fillText(text, LABELS_PX + shares[k] * width, height + TIMES_PX / 2);
    });
  };

  /** Frames a finding in its rows, from its onset to its end. */
  R.RowsInTime.prototype.outline = function (context, finding, xOf) {
    var job = this.job;
    var rows = finding.rows.length ? finding.rows : [1, job.rows];
    var height = this.base.height / job.rows;
    var from = xOf(job.stepAt(finding.fromS - job.data.startS));
    var to = xOf(job.stepAt(finding.toS - job.data.startS));
    context.strokeStyle = '#d55e00';
    context.lineWidth = 2;
    context.strokeRect(from, (rows[0] - 1) * height, Math.max(3, to - from),
      (rows[rows.length - 1] - rows[0] + 1) * height);
  };

  /** Draws cursor and brush over the picture. */
  R.RowsInTime.prototype.cursor = function () {
    var context = this.canvas.getContext('2d');
    var width = this.base.width;
    var height = this.base.height;
    context.setTransform(1, 0, 0, 1, 0, 0);
    context.clearRect(0, 0, this.canvas.width, this.canvas.height);
    context.putImageData(this.base, LABELS_PX, 0);
    this.labels(context);
    context.translate(LABELS_PX, 0);
    var n = this.steps.length || 1;
    var self = this;
    var xOf = function (step) {
      var low = 0;
      var high = n;
      while (low < high) {
        var middle = low + high >> 1;
        if (self.steps[middle] < step) {
          low = middle + 1;
        } else {
          high = middle;
        }
      }
      return low / n * width;
    };
    this.job.data.findings.forEach(function (finding) { self.outline(context, finding, xOf); });
    if (this.state.span) {
      context.fillStyle = 'rgba(255,255,255,0.6)';
      context.fillRect(0, 0, xOf(this.state.span.from), height);
      var right = xOf(this.state.span.to);
      context.fillRect(right, 0, width - right, height);
    }
    context.strokeStyle = '#000';
    context.lineWidth = 2;
    var x = xOf(this.state.step);
    context.beginPath();
    context.moveTo(x, 0);
    context.lineTo(x, height);
    context.stroke();
    context.strokeRect(1, this.state.row / this.job.rows * height, width - 2, height / this.job.rows);
  };
})(Rowledger);
