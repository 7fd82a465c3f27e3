package io.rowledger.workbench;

import java.util.concurrent.ScheduledExecutorService;
import java.util.concurrent.ScheduledFuture;
import java.util.concurrent.TimeUnit;

/**
 * Bounds the time that a request may hold its thread while it waits for the other side. When the time is over the thread is
 * interrupted, which closes the connection that it reads from.
 */
final class TimeGuard {
    private final Thread thread = Thread.currentThread();
    private final ScheduledFuture<?> task;
    private boolean over;

    private TimeGuard(ScheduledExecutorService timer, long afterMs) {
        task = timer.schedule(this::interrupt, afterMs, TimeUnit.MILLISECONDS);
    }

    /** Bounds what the calling thread does until the guard is ended. */
    static TimeGuard of(ScheduledExecutorService timer, long afterMs) {
        return new TimeGuard(timer, afterMs);
    }

    private synchronized void interrupt() {
        if (!over) {
            thread.interrupt();
        }
    }

    /** Ends the guard. */
    synchronized void end() {
        over = true;
        task.cancel(false);
        // The interruption is of this request and must not reach the thread's next one.
        Thread.interrupted();
    }
}
