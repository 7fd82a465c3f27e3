package io.rowledger.parallel;

import java.util.concurrent.ForkJoinPool;
import java.util.concurrent.FutureTask;
import java.util.function.Supplier;

/** A value that is being computed on another thread while this one goes on. */
public final class Ahead<T> {
    private final FutureTask<T> task;

    private Ahead(FutureTask<T> task) {
        this.task = task;
    }

    /**
     * Begins to compute a value.
     *
     * @param threads with 1 it is computed by {@link #get}, on the caller's thread
     */
    public static <T> Ahead<T> of(int threads, Supplier<T> source) {
        FutureTask<T> task = new FutureTask<>(source::get);
        if (threads > 1) {
            ForkJoinPool.commonPool().execute(task);
        }
        return new Ahead<>(task);
    }

    /**
     * The value; computed here if no other thread has begun to.
     *
     * @throws RuntimeException what the computation threw
     */
    public T get() {
        task.run();
        return ParallelTasks.get(task);
    }
}
