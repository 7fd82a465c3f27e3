/**
 * Reads the page's data block. The format is described in src/site/markdown/review-page.md.
 * One global, Rowledger; every file adds to it.
 */
var Rowledger = {};

(function (R) {
  'use strict';

  /** Bytes of a packed block. */
  R.bytes = function (base64) {
    var packed = atob(base64.trim());
    var bytes = new Uint8Array(packed.length);
    for (var i = 0; i < packed.length; i++) {
      bytes[i] = packed.charCodeAt(i);
    }
    return bytes;
  };

  /** Text of a packed block. */
  R.inflated = function (base64) {
    return new TextDecoder().decode(R.inflate(R.bytes(base64)));
  };

  /**
   * Unpacks the columns.
   * @param {{name: string, count: number, step: number, order: number}[]} columns in their order
   * @param {string} base64 deflated bytes
   * @returns {Object<string, Float64Array>} values by name; NaN is missing
   */
  R.unpack = function (columns, base64) {
    var data = R.inflate(R.bytes(base64));
    var at = 0;
    var out = {};
    columns.forEach(function (column) {
      var values = new Float64Array(column.count);
      var before = 0;
      var beforeThat = 0;
      for (var k = 0; k < column.count; k++) {
        var folded = 0;
        var scale = 1;
        var byte = data[at++];
        while (byte > 127) {
          folded += (byte & 127) * scale;
          scale *= 128;
          byte = data[at++];
        }
        folded += byte * scale;
        if (folded === 0) {
          values[k] = NaN;
          continue;
        }
        folded -= 1;
        var difference = folded % 2 ? -(folded + 1) / 2 : folded / 2;
        var q = difference + (column.order === 0 ? 0 : column.order === 1 ? before : 2 * before - beforeThat);
        beforeThat = before;
        before = q;
        values[k] = q * column.step;
      }
      out[column.name] = values;
    });
    return out;
  };

  /** Ground with one rate each, where the log is a map of areas: rings, and rate and target by product. */
  function areasOf(data, columns, rings) {
    var ring = 0;
    return Array.prototype.map.call(columns['area.rings'], function (count, i) {
      var corners = Array.prototype.slice.call(columns['area.corners'], ring, ring += count);
      return {
        rings: rings(corners),
        rate: data.products.map(function (unused, p) { return columns['area.rate.' + p][i]; }),
        target: data.products.map(function (unused, p) { return columns['area.target.' + p][i]; })
      };
    });
  }

  /**
   * Gives places, boundary, setbacks and zones their outlines as rings of [east, north], m: of the data's numbers of corners, from
   * the columns of corners.
   * @param {Object} data the page's JSON
   * @param {Object<string, Float64Array>} columns
   */
  R.outline = function (data, columns) {
    var at = 0;
    var rings = function (corners) {
      return corners.map(function (count) {
        var ring = [];
        for (var end = at + count; at < end; at++) {
          ring.push([columns['outline.east'][at], columns['outline.north'][at]]);
        }
        return ring;
      });
    };
    [data.skips, data.doubtful, data.overlaps].forEach(function (places) {
      places.forEach(function (place) { place.rings = rings(place.corners); });
    });
    data.boundary = data.boundary && rings(data.boundary);
    data.setbacks = rings(data.setbacks);
    data.zones = rings(data.zones);
    data.areas = areasOf(data, columns, rings);
  };
})(Rowledger);
