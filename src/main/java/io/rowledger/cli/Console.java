package io.rowledger.cli;

import io.rowledger.analysis.Progress;
import java.io.IOException;
import java.io.PrintStream;
import java.nio.file.Files;
import java.nio.file.Path;

/** Where a command prints: results to {@code out}, progress to {@code err} and only where that is a terminal. */
record Console(PrintStream out, PrintStream err) {
    private static final Path PROCESSES = Path.of("/proc/self");
    private static final Path STANDARD_ERROR = Path.of("/proc/self/fd/2");

    /** Progress lines, or silence. */
    Progress progress(boolean quiet) {
        return quiet || !errIsTerminal() ? Progress.SILENT : new PhaseLines(err, System::nanoTime);
    }

    /**
     * True if the error stream is a terminal. Where the system can't be asked (macOS, Windows), true if Java has a console, which it
     * has where a person typed the call and nothing is redirected. From Java 22 on it always has one: there the lines also go to
     * a file, unless the call has {@code --quiet}.
     */
    @SuppressWarnings("SystemConsoleNull")
    private static boolean errIsTerminal() {
        if (!Files.isSymbolicLink(STANDARD_ERROR)) {
            return !Files.isDirectory(PROCESSES) && System.console() != null;
        }
        try {
            String target = Files.readSymbolicLink(STANDARD_ERROR).toString();
            return target.startsWith("/dev/pts/") || target.startsWith("/dev/tty");
        } catch (IOException e) {
            return false;
        }
    }
}
