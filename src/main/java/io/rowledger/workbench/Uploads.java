package io.rowledger.workbench;

import com.sun.net.httpserver.HttpExchange;
import io.rowledger.digest.Sha256;
import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.Path;
import java.util.List;
import java.util.concurrent.ScheduledExecutorService;
import java.util.concurrent.ScheduledFuture;
import java.util.concurrent.Semaphore;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicLong;

/** Takes files from the page, streamed to disk. */
final class Uploads {
    /** Uploads at a time: each holds a thread. */
    private static final int MAX_AT_ONCE = 4;
    /** Time between two looks at how far an upload is, ms. */
    private static final long MAX_CHECK_MS = 1000;

    private final SeasonFolder folder;
    private final ScheduledExecutorService timer;
    private final Workbench.UploadLimits limits;
    private final Semaphore places;

    Uploads(SeasonFolder folder, ScheduledExecutorService timer, Workbench.UploadLimits limits) {
        this.folder = folder;
        this.timer = timer;
        this.limits = limits;
        this.places = new Semaphore(MAX_AT_ONCE);
    }

    /**
     * Result of an upload.
     *
     * @param file its name
     * @param bytes its size
     * @param same true if this very file was there already
     */
    record Taken(String file, long bytes, boolean same) {}

    /**
     * Takes a file.
     *
     * @param replace true if a different file of this name goes to the dated folder
     * @throws HttpRefusal if it is too large or too slow, or if a different file of this name is there
     */
    Taken take(HttpExchange exchange, List<String> place, boolean replace) throws IOException {
        Path target = folder.inside(place);
        String length = exchange.getRequestHeaders().getFirst("Content-Length");
        if (length != null && length.length() < 19 && Long.parseLong(length) > limits.maxBytes()) {
            throw tooLarge();
        }
        if (!places.tryAcquire()) {
            throw new HttpRefusal(HttpRefusal.BUSY, "refusals.upload.busy");
        }
        Path fresh = folder.temporary();
        try {
            long bytes = receive(exchange, fresh);
            if (length != null && bytes != Long.parseLong(length)) {
                throw new HttpRefusal(HttpRefusal.BAD_REQUEST, "refusals.upload.broken");
            }
            return keep(place, target, fresh, bytes, replace);
        } finally {
            Files.deleteIfExists(fresh);
            places.release();
        }
    }

    private Taken keep(List<String> place, Path target, Path fresh, long bytes, boolean replace) throws IOException {
        String name = place.get(place.size() - 1);
        if (Files.exists(target, LinkOption.NOFOLLOW_LINKS)) {
            if (Files.isRegularFile(target, LinkOption.NOFOLLOW_LINKS)
                    && Sha256.of(target).equals(Sha256.of(fresh))) {
                return new Taken(name, bytes, true);
            }
            if (!replace) {
                throw new HttpRefusal(HttpRefusal.CONFLICT, "refusals.upload.there", name);
            }
        }
        // A log that is replaced is always kept, unlike earlier versions of a form.
        folder.replace(place, out -> Files.copy(fresh, out));
        return new Taken(name, bytes, false);
    }

    private long receive(HttpExchange exchange, Path fresh) throws IOException {
        AtomicLong received = new AtomicLong();
        ScheduledFuture<?> guard = guard(exchange, received);
        byte[] part = new byte[1 << 16];
        try (OutputStream out = Files.newOutputStream(fresh)) {
            InputStream in = exchange.getRequestBody();
            for (int n = in.read(part); n >= 0; n = in.read(part)) {
                if (received.addAndGet(n) > limits.maxBytes()) {
                    throw tooLarge();
                }
                write(out, part, n, in);
            }
        } finally {
            guard.cancel(false);
        }
        return received.get();
    }

    /** Where the disk is full the rest is read and thrown away: a browser that still sends does not read the answer. */
    private void write(OutputStream out, byte[] part, int n, InputStream in) throws IOException {
        try {
            out.write(part, 0, n);
        } catch (IOException full) {
            long left = limits.maxBytes();
            for (int read = in.read(part); read >= 0 && left > 0; read = in.read(part)) {
                left -= read;
            }
            throw full;
        }
    }

    /** Ends the connection of an upload that stalls or takes too long; the reading thread then fails. */
    private ScheduledFuture<?> guard(HttpExchange exchange, AtomicLong received) {
        long begunNanos = System.nanoTime();
        long[] seen = {0, begunNanos};
        long checkMs = Math.max(1, Math.min(MAX_CHECK_MS, limits.maxStall().toMillis() / 4));
        return timer.scheduleWithFixedDelay(
                () -> {
                    long nowNanos = System.nanoTime();
                    if (received.get() != seen[0]) {
                        seen[0] = received.get();
                        seen[1] = nowNanos;
                    }
                    if (nowNanos - begunNanos > limits.max().toNanos()
                            || nowNanos - seen[1] > limits.maxStall().toNanos()) {
                        exchange.close();
                    }
                },
                checkMs,
                checkMs,
                TimeUnit.MILLISECONDS);
    }

    private HttpRefusal tooLarge() {
        return new HttpRefusal(HttpRefusal.TOO_LARGE, "refusals.upload.large", limits.maxBytes() >> 20);
    }
}
