package io.rowledger.log.source;

import java.io.FilterInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.util.function.LongSupplier;

/** What comes out of a packed file, counted against what went in: a file made to swell is refused before it does. */
final class Unpacked extends FilterInputStream {
    /** Below this size no file does harm, however well it was packed. */
    private static final long HARMLESS_BYTES = 64L << 20;
    /** Logs pack to a fifth or a twentieth; even one of a machine that stood still all day does not come near this. */
    private static final long MAX_RATIO = 200;

    private final Swelling swelling;

    Unpacked(InputStream unpacked, Swelling swelling) {
        super(unpacked);
        this.swelling = swelling;
    }

    /** Counts bytes out against bytes in. */
    static final class Swelling {
        private final LongSupplier packedBytes;
        private long unpackedBytes;

        Swelling(LongSupplier packedBytes) {
            this.packedBytes = packedBytes;
        }

        /** Adds what was unpacked; refuses what has swollen out of all proportion. */
        void add(int bytes) throws IOException {
            unpackedBytes += Math.max(bytes, 0);
            if (unpackedBytes > HARMLESS_BYTES && unpackedBytes > MAX_RATIO * Math.max(1, packedBytes.getAsLong())) {
                throw new SwollenException();
            }
        }
    }

    /** A packed file that unpacks to hundreds of times its size. */
    static final class SwollenException extends IOException {
        private static final long serialVersionUID = 1L;
    }

    @Override
    public int read() throws IOException {
        int value = super.read();
        swelling.add(value < 0 ? 0 : 1);
        return value;
    }

    @Override
    public int read(byte[] into, int from, int length) throws IOException {
        int count = super.read(into, from, length);
        swelling.add(count);
        return count;
    }
}
