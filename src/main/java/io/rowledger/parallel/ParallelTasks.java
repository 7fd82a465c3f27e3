package io.rowledger.parallel;

import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.function.IntFunction;

/** Runs independent tasks on several threads and returns the results in task order. */
public final class ParallelTasks {
    /** Blocks of {@link #inBlocks}: enough for the threads of most machines, and for the last block to end not long after the others. */
    private static final int BLOCKS = 16;

    private ParallelTasks() {}

    /**
     * Returns {@code [task(0), ..., task(n - 1)]}, the same for any number of threads.
     *
     * @param n number of tasks
     * @param threads threads to use; with 1 the caller's thread runs all tasks
     * @param task computes one result from its index
     * @throws RuntimeException if a task throws: the exception of the first one in task order
     */
    public static <T> List<T> map(int n, int threads, IntFunction<T> task) {
        List<T> out = new ArrayList<>(n);
        if (threads == 1 || n < 2) {
            for (int i = 0; i < n; i++) {
                out.add(task.apply(i));
            }
            return out;
        }
        ExecutorService pool = Executors.newFixedThreadPool(Math.min(threads, n));
        try {
            List<Future<T>> futures = new ArrayList<>(n);
            for (int i = 0; i < n; i++) {
                int index = i;
                futures.add(pool.submit(() -> task.apply(index)));
            }
            for (Future<T> future : futures) {
                out.add(get(future));
            }
            return out;
        } finally {
            pool.shutdownNow();
        }
    }

    /**
     * Does work on {@code [0, n)} in blocks: what one block does must not depend on another.
     *
     * @param n number of entries
     * @param threads threads to use; with 1 the caller's thread does all of the work
     * @throws RuntimeException if a block throws: the exception of the first one in order
     */
    public static void inBlocks(int n, int threads, BlockTask task) {
        map(BLOCKS, threads, block -> {
            task.run((int) ((long) n * block / BLOCKS), (int) ((long) n * (block + 1) / BLOCKS));
            return block;
        });
    }

    /** Work on a block of entries. */
    @FunctionalInterface
    public interface BlockTask {
        /** Does the work on entries {@code [from, end)}. */
        void run(int from, int end);
    }

    static <T> T get(Future<T> future) {
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
