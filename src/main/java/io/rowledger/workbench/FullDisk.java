package io.rowledger.workbench;

import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;

/** Tells a full disk by the system's words for a write that failed: Java has no exception of its own for it. */
final class FullDisk {
    /** ENOSPC and EDQUOT as Linux and macOS put them (strerror), and Windows' ERROR_DISK_FULL. */
    private static final Pattern TOLD =
            Pattern.compile("No space left on device|Disk quota exceeded|not enough space on the disk");

    private FullDisk() {}

    /** Returns true if a message of a failure is that of a full disk. */
    static boolean isToldBy(@Nullable String message) {
        return message != null && TOLD.matcher(message).find();
    }

    /** What to tell a person. */
    static ProblemText text() {
        return ProblemText.of("refusals.full");
    }
}
