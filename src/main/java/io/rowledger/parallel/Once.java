package io.rowledger.parallel;

import java.util.function.Supplier;
import org.jspecify.annotations.Nullable;

/** A value that is computed when it is first needed, by the thread that needs it first; others wait for it. */
public final class Once<T> {
    private final Supplier<T> source;
    private @Nullable T value;

    public Once(Supplier<T> source) {
        this.source = source;
    }

    /** The value. */
    public synchronized T get() {
        T known = value;
        if (known == null) {
            known = source.get();
            value = known;
        }
        return known;
    }
}
