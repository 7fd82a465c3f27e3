/** Unpacks zlib data (RFC 1950) of deflated bytes (RFC 1951). */
(function (R) {
  'use strict';

  /** Shortest length and distance of each symbol, and how many bits follow it (RFC 1951, 3.2.5). */
  var LENGTHS = [3, 4, 5, 6, 7, 8, 9, 10, 11, 13, 15, 17, 19, 23, 27, 31, 35, 43, 51, 59, 67, 83, 99, 115, 131, 163, 195, 227, 258];
  var LENGTH_BITS = [0, 0, 0, 0, 0, 0, 0, 0, 1, 1, 1, 1, 2, 2, 2, 2, 3, 3, 3, 3, 4, 4, 4, 4, 5, 5, 5, 5, 0];
  var DISTANCES = [1, 2, 3, 4, 5, 7, 9, 13, 17, 25, 33, 49, 65, 97, 129, 193, 257, 385, 513, 769, 1025, 1537, 2049, 3073, 4097,
    6145, 8193, 12289, 16385, 24577];
  var DISTANCE_BITS = [0, 0, 0, 0, 1, 1, 2, 2, 3, 3, 4, 4, 5, 5, 6, 6, 7, 7, 8, 8, 9, 9, 10, 10, 11, 11, 12, 12, 13, 13];
  /** The order in which the lengths of the codes of code lengths are written (3.2.7). */
  var ORDER = [16, 17, 18, 0, 8, 7, 9, 6, 10, 5, 11, 4, 12, 3, 13, 2, 14, 1, 15];
  var END_OF_BLOCK = 256;
  var ADLER_MODULUS = 65521;
  /** So many bytes can be summed before the sums need their modulus. */
  var ADLER_RUN = 3800;

  /** Bits of some bytes, the least significant first. */
  function Bits(bytes, at) {
    this.bytes = bytes;
    this.at = at;
    this.held = 0;
    this.count = 0;
  }

  Bits.prototype.need = function (n) {
    while (this.count < n) {
      this.held |= this.bytes[this.at++] << this.count;
      this.count += 8;
    }
  };

  Bits.prototype.take = function (n) {
    this.need(n);
    var value = this.held & (1 << n) - 1;
    this.held >>>= n;
    this.count -= n;
    return value;
  };

  Bits.prototype.symbol = function (code) {
    this.need(code.longest);
    var entry = code.table[this.held & code.table.length - 1];
    this.held >>>= entry & 15;
    this.count -= entry & 15;
    return entry >> 4;
  };

  /** Goes back to the next whole byte that was not used. */
  Bits.prototype.align = function () {
    this.at -= this.count >> 3;
    this.held = 0;
    this.count = 0;
  };

  /**
   * The code of some lengths (3.2.2): a table by the next bits, each entry a symbol times 16 plus the length of its code.
   * @param {number[]} lengths of each symbol's code, 0 for none
   */
  function codeOf(lengths) {
    var counts = new Uint16Array(16);
    lengths.forEach(function (length) { counts[length]++; });
    counts[0] = 0;
    var next = [0];
    var longest = 1;
    for (var n = 1; n < 16; n++) {
      next[n] = next[n - 1] + counts[n - 1] << 1;
      longest = counts[n] ? n : longest;
    }
    var table = new Uint16Array(1 << longest);
    lengths.forEach(function (length, symbol) {
      if (length) {
        var from = reversed(next[length]++, length);
        for (var i = from; i < table.length; i += 1 << length) {
          table[i] = symbol << 4 | length;
        }
      }
    });
    return {table: table, longest: longest};
  }

  function reversed(code, length) {
    var out = 0;
    for (var i = 0; i < length; i++) {
      out = out << 1 | code >> i & 1;
    }
    return out;
  }

  function repeated(value, times) {
    return new Array(times).fill(value);
  }

  /** The fixed codes, of literals with lengths and of distances (3.2.6). */
  function fixedCodes() {
    return [
      codeOf(repeated(8, 144).concat(repeated(9, 112), repeated(7, 24), repeated(8, 8))),
      codeOf(repeated(5, 30))
    ];
  }

  /** The codes that a block begins with (3.2.7). */
  function writtenCodes(bits) {
    var literals = bits.take(5) + 257;
    var distances = bits.take(5) + 1;
    var given = bits.take(4) + 4;
    var ofLengths = repeated(0, 19);
    for (var i = 0; i < given; i++) {
      ofLengths[ORDER[i]] = bits.take(3);
    }
    var code = codeOf(ofLengths);
    var lengths = [];
    while (lengths.length < literals + distances) {
      var symbol = bits.symbol(code);
      var more = symbol < 16 ? [symbol]
        : symbol === 16 ? repeated(lengths[lengths.length - 1], bits.take(2) + 3)
        : repeated(0, symbol === 17 ? bits.take(3) + 3 : bits.take(7) + 11);
      lengths = lengths.concat(more);
    }
    return [codeOf(lengths.slice(0, literals)), codeOf(lengths.slice(literals, literals + distances))];
  }

  /** Bytes that grow. */
  function Output() {
    this.bytes = new Uint8Array(1 << 16);
    this.length = 0;
  }

  Output.prototype.room = function (more) {
    if (this.length + more > this.bytes.length) {
      var larger = new Uint8Array(Math.max(2 * this.bytes.length, this.length + more));
      larger.set(this.bytes);
      this.bytes = larger;
    }
  };

  function stored(bits, out) {
    bits.align();
    var length = bits.bytes[bits.at] | bits.bytes[bits.at + 1] << 8;
    bits.at += 4;
    out.room(length);
    out.bytes.set(bits.bytes.subarray(bits.at, bits.at + length), out.length);
    out.length += length;
    bits.at += length;
  }

  function coded(bits, out, codes) {
    for (var symbol = bits.symbol(codes[0]); symbol !== END_OF_BLOCK; symbol = bits.symbol(codes[0])) {
      if (bits.at > bits.bytes.length + 4) {
        throw new Error('The data of this page ends early.');
      }
      out.room(258);
      if (symbol < END_OF_BLOCK) {
        out.bytes[out.length++] = symbol;
        continue;
      }
      var length = LENGTHS[symbol - 257] + bits.take(LENGTH_BITS[symbol - 257]);
      var far = bits.symbol(codes[1]);
      var from = out.length - DISTANCES[far] - bits.take(DISTANCE_BITS[far]);
      for (var end = from + length; from < end; from++) {
        out.bytes[out.length++] = out.bytes[from];
      }
    }
  }

  /** The check sum of RFC 1950 (Adler-32). */
  function adler(bytes) {
    var a = 1;
    var b = 0;
    for (var i = 0; i < bytes.length;) {
      for (var end = Math.min(i + ADLER_RUN, bytes.length); i < end; i++) {
        a += bytes[i];
        b += a;
      }
      a %= ADLER_MODULUS;
      b %= ADLER_MODULUS;
    }
    return b * 65536 + a;
  }

  /**
   * The plain bytes.
   * @param {Uint8Array} packed
   * @returns {Uint8Array}
   * @throws {Error} where they were damaged on the way
   */
  R.inflate = function (packed) {
    var bits = new Bits(packed, 2);
    var out = new Output();
    var last = 0;
    while (!last) {
      last = bits.take(1);
      var kind = bits.take(2);
      if (kind === 0) {
        stored(bits, out);
      } else {
        coded(bits, out, kind === 1 ? fixedCodes() : writtenCodes(bits));
      }
    }
    bits.align();
    var plain = out.bytes.subarray(0, out.length);
    var sum = [0, 1, 2, 3].reduce(function (before, i) { return before * 256 + packed[bits.at + i]; }, 0);
    if (sum !== adler(plain)) {
      throw new Error('The data of this page was damaged.');
    }
    return plain;
  };
})(Rowledger);
