package io.rowledger.parallel;

import java.util.function.Supplier;
import org.jspecify.annotations.Nullable;

/** A value that is computed when it is first needed, by the thread that needs it first; others wait for it. */
public final class Lazy<T> {
    private final Supplier<T> source;
    private volatile @Nullable T value;

    public Lazy(Supplier<T> source) {
        this.source = source;
    }

    /** Returns the value; if the computation throws, the next call computes it again. */
    public T get() {
        T known = value;
        return known == null ? compute() : known;
    }

    private synchronized T compute() {
        T known = value;
        if (known == null) {
            known = source.get();
            value = known;
        }
        return known;
    }
}
