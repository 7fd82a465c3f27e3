package io.rowledger.cli;

import io.rowledger.analysis.Progress;
import java.io.IOException;
import java.io.PrintStream;
import java.nio.file.Files;
import java.nio.file.Path;

/** Where a command prints: results to {@code out}, progress to {@code err} and only where that is a terminal. */
record Console(PrintStream out, PrintStream err) {
    private static final Path STANDARD_ERROR = Path.of("/proc/self/fd/2");

    /** Progress lines with the seconds since the start, or silence. */
    Progress progress(boolean quiet) {
        if (quiet || !errIsTerminal()) {
            return Progress.SILENT;
        }
        long start = System.nanoTime();
        return (phase, detail) -> {
            long tenths = (System.nanoTime() - start) / 100_000_000L;
            err.println(pad(tenths / 10 + "." + tenths % 10 + " s") + "  " + phase
                    + (detail.isEmpty() ? "" : ": " + detail));
        };
    }

    private static String pad(String text) {
        return " ".repeat(Math.max(0, 8 - text.length())) + text;
    }

    /** Where the system can't be asked what the error stream is, silence is the safe answer. */
    private static boolean errIsTerminal() {
        if (!Files.isSymbolicLink(STANDARD_ERROR)) {
            return false;
        }
        try {
            String target = Files.readSymbolicLink(STANDARD_ERROR).toString();
            return target.startsWith("/dev/pts/") || target.startsWith("/dev/tty");
        } catch (IOException e) {
            return false;
        }
    }
}
