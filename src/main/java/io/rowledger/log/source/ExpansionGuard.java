package io.rowledger.log.source;

import java.io.FilterInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.util.function.LongSupplier;

/** Limits the expansion of a packed file (protection against zip bombs): compares unpacked with packed bytes. */
final class ExpansionGuard extends FilterInputStream {
    /** Unpacked size below which the ratio is not checked, bytes. */
    private static final long MIN_CHECKED_BYTES = 64L << 20;
    /** Largest ratio of unpacked to packed bytes; logs reach 5 to 20. */
    private static final long MAX_RATIO = 200;

    private final ExpansionCounter swelling;

    ExpansionGuard(InputStream unpacked, ExpansionCounter swelling) {
        super(unpacked);
        this.swelling = swelling;
    }

    /** Counts bytes out against bytes in. */
    static final class ExpansionCounter {
        private final LongSupplier packedBytes;
        private long unpackedBytes;

        ExpansionCounter(LongSupplier packedBytes) {
            this.packedBytes = packedBytes;
        }

        /** Adds unpacked bytes; throws if the ratio is too large. */
        void add(int bytes) throws IOException {
            unpackedBytes += Math.max(bytes, 0);
            if (unpackedBytes > MIN_CHECKED_BYTES && unpackedBytes > MAX_RATIO * Math.max(1, packedBytes.getAsLong())) {
                throw new ExpansionException();
            }
        }
    }

    /** Thrown for a packed file that expands beyond MAX_RATIO. */
    static final class ExpansionException extends IOException {
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
