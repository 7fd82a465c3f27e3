package io.rowledger.output;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.util.ArrayDeque;
import java.util.Deque;
import java.util.List;
import java.util.Set;
import java.util.stream.Stream;

/**
 * Exchanges some files of a folder for new ones by renaming: first all old ones away, then all new ones in, so that old and
 * new never stand beside one another. Several renames are not one: killed among them, some files lack until {@link #recover}
 * puts the old ones back or, once all of them are away, the new ones in place.
 */
final class FileSwap {
    private static final String NEW = "new";
    private static final String OLD = "old";
    /** Marks that all old files are moved away: from then on recovery moves the new files in. */
    private static final String AWAY = "away";

    private final Path work;
    private final Path folder;
    private final Deque<Move> moves = new ArrayDeque<>();

    /** A rename that has been done. */
    private record Move(Path from, Path to) {}

    /** Exchanges files of a folder with a work folder on the same disk. */
    FileSwap(Path work, Path folder) {
        this.work = work;
        this.folder = folder;
    }

    /** Makes the folder that the new files are written into. */
    Path newFiles() throws IOException {
        return Files.createDirectory(work.resolve(NEW));
    }

    /**
     * Moves the old files of these names away, and all new files in.
     *
     * @throws WorkFolder.UnsettledException where a rename failed and those before it could not be taken back
     * @throws IOException where a rename failed; then all files are where they were
     */
    void run(Set<String> names) throws IOException {
        try {
            for (String name : names) {
                if (Files.exists(folder.resolve(name))) {
                    move(folder.resolve(name), work.resolve(OLD).resolve(name));
                }
            }
            Files.createFile(work.resolve(AWAY));
            for (String name : files(work.resolve(NEW))) {
                move(work.resolve(NEW).resolve(name), folder.resolve(name));
            }
        } catch (IOException e) {
            undo(e);
            throw e;
        }
    }

    private void undo(IOException why) throws WorkFolder.UnsettledException {
        try {
            Files.deleteIfExists(work.resolve(AWAY));
            for (Move move : moves) {
                Files.move(move.to, move.from, StandardCopyOption.ATOMIC_MOVE);
            }
        } catch (IOException e) {
            why.addSuppressed(e);
            throw new WorkFolder.UnsettledException(why);
        }
    }

    /**
     * Puts right what a killed run left in the work folder.
     *
     * @throws WorkFolder.UnsettledException where a rename failed
     */
    void recover() throws IOException {
        boolean away = Files.exists(work.resolve(AWAY));
        Path from = work.resolve(away ? NEW : OLD);
        try {
            for (String name : files(from)) {
                if (!Files.exists(folder.resolve(name))) {
                    move(from.resolve(name), folder.resolve(name));
                }
            }
        } catch (IOException e) {
            throw new WorkFolder.UnsettledException(e);
        }
    }

    private void move(Path from, Path to) throws IOException {
        Files.createDirectories(Outputs.parent(to));
        Files.move(from, to, StandardCopyOption.ATOMIC_MOVE);
        moves.push(new Move(from, to));
    }

    /** Names of the files in a folder, {@code /} between folders; none where it doesn't exist. */
    private static List<String> files(Path folder) throws IOException {
        if (!Files.exists(folder)) {
            return List.of();
        }
        try (Stream<Path> files = Files.walk(folder)) {
            return files.filter(Files::isRegularFile)
                    .map(file -> folder.relativize(file).toString().replace('\\', '/'))
                    .sorted()
                    .toList();
        }
    }
}
