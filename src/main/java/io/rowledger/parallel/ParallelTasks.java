package io.rowledger.parallel;

import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.function.IntFunction;

/** Spreads independent pieces over threads and hands the results back in the order of the pieces. */
public final class ParallelTasks {
    private ParallelTasks() {}

    /** {@code [piece(0), ..., piece(n - 1)]}; which thread does which piece does not show in the result. */
    public static <T> List<T> map(int n, int threads, IntFunction<T> piece) {
        List<T> out = new ArrayList<>(n);
        if (threads == 1 || n < 2) {
            for (int i = 0; i < n; i++) {
                out.add(piece.apply(i));
            }
            return out;
        }
        ExecutorService pool = Executors.newFixedThreadPool(Math.min(threads, n));
        try {
            List<Future<T>> futures = new ArrayList<>(n);
            for (int i = 0; i < n; i++) {
                int index = i;
                futures.add(pool.submit(() -> piece.apply(index)));
            }
            for (Future<T> future : futures) {
                out.add(get(future));
            }
            return out;
        } finally {
            pool.shutdownNow();
        }
    }

    private static <T> T get(Future<T> future) {
        try {
            return future.get();
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            throw new IllegalStateException("interrupted", e);
        } catch (ExecutionException e) {
            if (e.getCause() instanceof RuntimeException cause) {
                throw cause;
            }
            if (e.getCause() instanceof Error cause) {
                throw cause;
            }
            throw new IllegalStateException(e.getCause());
        }
    }
}
