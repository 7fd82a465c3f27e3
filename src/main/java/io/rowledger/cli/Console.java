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
    /** The same on macOS. */
    private static final Path DEVICE = Path.of("/dev/fd/2");
    /** Names the module whose console Java takes. */
    private static final String CONSOLE = "jdk.console";

    /** True if somebody sees what is printed, as far as the system can say; false after a double click. */
    boolean isSeen() {
        return errIsTerminal();
    }

    /** Progress lines, or silence. */
    Progress progress(boolean quiet) {
        return quiet || !errIsTerminal() ? Progress.SILENT : new PhaseLines(err, System::nanoTime);
    }

    /**
     * True if the error stream is a terminal. Where the system can't be asked (macOS, Windows), true if Java has a console, which it
     * has where a person typed the call and neither input nor output is redirected, and the error stream isn't a file.
     */
    private static boolean errIsTerminal() {
        if (!Files.isSymbolicLink(STANDARD_ERROR)) {
            return !Files.isDirectory(PROCESSES) && hasConsole() && !Files.isRegularFile(DEVICE);
        }
        try {
            String target = Files.readSymbolicLink(STANDARD_ERROR).toString();
            return target.startsWith("/dev/pts/") || target.startsWith("/dev/tty");
        } catch (IOException e) {
            return false;
        }
    }

    /** From Java 22 to 24 the usual console is there even without a terminal; the plain one of the base module is not. */
    @SuppressWarnings("SystemConsoleNull")
    private static boolean hasConsole() {
        if (System.getProperty(CONSOLE) == null) {
            System.setProperty(CONSOLE, "java.base");
        }
        return System.console() != null;
    }
}
