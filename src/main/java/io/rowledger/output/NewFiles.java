package io.rowledger.output;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * Files and folders that a run makes in places of its own and that go again where it doesn't end well: by a failure, and by
 * SIGINT, SIGTERM or SIGHUP.
 */
public final class NewFiles implements AutoCloseable {
    private final List<Path> made = new ArrayList<>();
    private final Thread atExit = new Thread(this::clear, "clear new files");
    private boolean kept;

    /** Watches from now on until it is closed. */
    public NewFiles() {
        Runtime.getRuntime().addShutdownHook(atExit);
    }

    /** Says that a file or folder will be made, with the folders around it; what exists already is nobody's to clear. */
    public synchronized void willMake(Path path) {
        Path missing = null;
        for (Path at = path.toAbsolutePath().normalize(); isMissing(at); at = Outputs.parent(at)) {
            missing = at;
        }
        if (missing != null) {
            made.add(missing);
        }
    }

    private static boolean isMissing(@Nullable Path at) {
        return at != null && at.getParent() != null && !Files.exists(at);
    }

    /** The run has ended well. */
    public synchronized void keep() {
        kept = true;
    }

    private synchronized void clear() {
        if (!kept) {
            Collections.reverse(made);
            made.forEach(WorkFolder::clear);
            made.clear();
        }
    }

    @Override
    public void close() {
        try {
            Runtime.getRuntime().removeShutdownHook(atExit);
        } catch (IllegalStateException e) {
            // The program is being ended, and the hook clears: what fails for want of the cleared files is not to be
            // told.
            awaitEnd();
        }
        clear();
    }

    private static void awaitEnd() {
        while (true) {
            try {
                Thread.sleep(Long.MAX_VALUE);
            } catch (InterruptedException e) {
                // The machine stops when all hooks are done: wait on.
            }
        }
    }
}
