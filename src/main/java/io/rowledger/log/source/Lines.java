package io.rowledger.log.source;

import org.jspecify.annotations.Nullable;

/** The lines of a log below its header, in order. */
public interface Lines {
    /** Returns the next line, or null at the end. */
    @Nullable
    Line next();
}
