package io.rowledger.workbench;

import java.time.Duration;
import java.util.concurrent.Executor;
import java.util.concurrent.ScheduledExecutorService;
import org.jspecify.annotations.Nullable;

/**
 * Bounds the time that the head of a request may take. The JDK's server reads the head in the thread that then answers, and its
 * own bound, {@code sun.net.httpserver.maxReqTime}, holds for head and body together, so it has to leave time for the upload of
 * a large log.
 */
final class HeadTimeout implements Executor {
    /** Of the head that a thread reads. */
    private static final ThreadLocal<@Nullable TimeGuard> GUARDS = new ThreadLocal<>();

    private final Executor threads;
    private final ScheduledExecutorService timer;
    private final long maxMs;

    /**
     * Runs the server's tasks.
     *
     * @param threads runs them
     * @param timer ends those whose head does not come
     * @param max time for a head
     */
    HeadTimeout(Executor threads, ScheduledExecutorService timer, Duration max) {
        this.threads = threads;
        this.timer = timer;
        this.maxMs = max.toMillis();
    }

    @Override
    public void execute(Runnable task) {
        threads.execute(() -> {
            GUARDS.set(TimeGuard.of(timer, maxMs));
            try {
                task.run();
            } finally {
                headRead();
            }
        });
    }

    /** The head that the calling thread reads is there: its time no longer runs. */
    void headRead() {
        TimeGuard guard = GUARDS.get();
        if (guard != null) {
            GUARDS.remove();
            guard.end();
        }
    }
}
