package io.rowledger.batch;

import java.io.IOException;
import java.io.RandomAccessFile;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Locale;
import java.util.concurrent.Semaphore;
import java.util.function.Supplier;
import java.util.stream.Stream;
import java.util.zip.ZipEntry;
import java.util.zip.ZipFile;

/**
 * Who may work beside whom: a job asks for as much of the heap as its logs will need, and waits until so much is free. A
 * job that needs more than there is works alone.
 */
final class MemoryShare {
    /** Heap that an analysis holds at most, per byte of its logs as text. Measured: see DEVELOPERS.md, Speed. */
    private static final int HEAP_PER_BYTE = 9;
    /** Heap that any analysis holds, MB: grids, pages and fonts, and the strips of a log at 1 Hz, which is small for its field. */
    private static final int HEAP_MB = 192;
    /** Share of the heap that is given out; the rest is for what the collector has not taken back yet. */
    private static final double GIVEN_OUT = 0.8;

    /** Task data keeps a value in five bytes and only when it changes; the same log as text is about so many times larger. */
    private static final int BINARY_AS_TEXT = 3;

    private static final int MB = 1 << 20;

    private final int totalMb;
    private final Semaphore freeMb;

    /**
     * Shares out a heap.
     *
     * @param heapBytes the largest the heap may become
     */
    MemoryShare(long heapBytes) {
        totalMb = (int) Math.max(1, Math.min(Integer.MAX_VALUE, heapBytes * GIVEN_OUT / MB));
        freeMb = new Semaphore(totalMb, true);
    }

    /** True where logs of so many bytes need more than half of the heap, so that no other of their size fits beside. */
    boolean isAlone(long logBytes) {
        return needMb(logBytes) > totalMb / 2;
    }

    /** Does the work when so much memory is free. */
    <T> T with(long logBytes, Supplier<T> work) throws InterruptedException {
        int mb = needMb(logBytes);
        freeMb.acquire(mb);
        try {
            return work.get();
        } finally {
            freeMb.release(mb);
        }
    }

    private int needMb(long logBytes) {
        return (int) Math.min(totalMb, HEAP_MB + logBytes / MB * HEAP_PER_BYTE);
    }

    /** Bytes of a log unpacked, as its packing says (which may be wrong); 0 where it can't be read. */
    static long textBytes(Path log) {
        String name = log.toString().toLowerCase(Locale.ROOT);
        try {
            if (Files.isDirectory(log)) {
                try (Stream<Path> files = Files.walk(log)) {
                    return BINARY_AS_TEXT
                            * files.filter(Files::isRegularFile)
                                    .mapToLong(file -> file.toFile().length())
                                    .sum();
                }
            }
            long bytes = Files.size(log);
            if (name.endsWith(".gz")) {
                return Math.max(bytes, gzipBytes(log, bytes));
            }
            return name.endsWith(".zip") ? Math.max(bytes, zipBytes(log)) : bytes;
        } catch (IOException e) {
            return 0;
        }
    }

    /** RFC 1952, section 2.3.1: the last four bytes are the size unpacked modulo 2^32, least significant first. */
    private static long gzipBytes(Path log, long bytes) throws IOException {
        if (bytes < 18) {
            return bytes;
        }
        try (RandomAccessFile file = new RandomAccessFile(log.toFile(), "r")) {
            file.seek(bytes - 4);
            return Integer.toUnsignedLong(Integer.reverseBytes(file.readInt()));
        }
    }

    private static long zipBytes(Path log) throws IOException {
        try (ZipFile zip = new ZipFile(log.toFile())) {
            return zip.stream().mapToLong(ZipEntry::getSize).max().orElse(0);
        }
    }
}
