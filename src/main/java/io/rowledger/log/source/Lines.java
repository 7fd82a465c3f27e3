package io.rowledger.log.source;

import org.jspecify.annotations.Nullable;

/** The lines of a log below its header, one after the other. */
public interface Lines {
    /** The next line, or null after the last. */
    @Nullable
    Line next();
}
