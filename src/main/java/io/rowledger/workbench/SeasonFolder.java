package io.rowledger.workbench;

import io.rowledger.digest.Sha256;
import io.rowledger.finding.UnusableInputException;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.file.FileSystemException;
import java.nio.file.FileVisitOption;
import java.nio.file.Files;
import java.nio.file.InvalidPathException;
import java.nio.file.LinkOption;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.time.LocalDateTime;
import java.time.ZoneId;
import java.time.format.DateTimeFormatter;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.concurrent.ConcurrentHashMap;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;

/**
 * The season folder: the only place that the workbench reads and writes. Names come as parts without separators, each
 * part is checked, and no link is followed, so that no name leads out of the folder. A file changes whole, by renaming; what was there before
 * goes to a dated folder under {@code .replaced}.
 */
final class SeasonFolder {
    /** Longest name of a file or folder, characters: what every file system takes, with room for a suffix. */
    static final int MAX_NAME = 120;

    /** The folder of the results inside the season folder. */
    static final String RESULTS = "results";

    private static final String WORK = ".rowledger";
    private static final String REPLACED = ".replaced";
    private static final DateTimeFormatter STAMP = DateTimeFormatter.ofPattern("yyyy-MM-dd-HHmmss", Locale.ROOT);

    /** Names that Windows keeps for devices, with any ending. */
    private static final Set<String> DEVICES = Set.of(
            "con", "prn", "aux", "nul", "com1", "com2", "com3", "com4", "com5", "com6", "com7", "com8", "com9", "lpt1",
            "lpt2", "lpt3", "lpt4", "lpt5", "lpt6", "lpt7", "lpt8", "lpt9");

    private static final String FORBIDDEN = "/\\:*?\"<>|";

    private final Path root;
    /** Digests of what this workbench wrote last, by file: its own half-way versions are not kept. */
    private final Map<Path, String> written = new ConcurrentHashMap<>();

    /** Writes a file's content. */
    @FunctionalInterface
    interface Content {
        /** Writes everything to the stream. */
        void writeTo(OutputStream out) throws IOException;
    }

    private SeasonFolder(Path root) {
        this.root = root;
    }

    /**
     * Opens the folder.
     *
     * @throws UnusableInputException if it doesn't exist or is no folder
     */
    static SeasonFolder of(Path folder) {
        try {
            Path real = folder.toRealPath();
            if (Files.isDirectory(real)) {
                return new SeasonFolder(real);
            }
        } catch (IOException e) {
            throw UnusableInputException.found("no such folder")
                    .inFile(folder.toString())
                    .expected("the folder of a season, which may be empty")
                    .hint("make the folder first, or name another");
        }
        throw UnusableInputException.found("a file")
                .inFile(folder.toString())
                .expected("the folder of a season")
                .hint("name the folder that the file is in");
    }

    Path root() {
        return root;
    }

    /** The folder of the results. */
    Path results() {
        return root.resolve(RESULTS);
    }

    /** The program's own files: the lock and files that are being written. */
    Path work() {
        return root.resolve(WORK);
    }

    /**
     * Returns a path inside the folder; nothing need be there.
     *
     * @param parts names from the folder down
     * @throws HttpRefusal if a name is not allowed or a link is on the way
     */
    Path inside(List<String> parts) {
        Path path = root;
        for (String part : parts) {
            path = path.resolve(requireName(part));
            if (Files.isSymbolicLink(path)) {
                throw new HttpRefusal(HttpRefusal.FORBIDDEN, "refusals.link", part);
            }
        }
        if (!path.normalize().startsWith(root)) {
            throw new HttpRefusal(HttpRefusal.FORBIDDEN, "refusals.outside");
        }
        return path;
    }

    /** Returns a name that every file system takes and that leads nowhere else. */
    static String requireName(String name) {
        boolean plain = !name.isBlank()
                && name.length() <= MAX_NAME
                && !name.startsWith(".")
                && !name.endsWith(".")
                && name.equals(name.strip())
                && name.chars().noneMatch(c -> c < ' ' || c == 0x7f || FORBIDDEN.indexOf(c) >= 0);
        int dot = name.indexOf('.');
        String stem = (dot < 0 ? name : name.substring(0, dot)).toLowerCase(Locale.ROOT);
        if (!plain || DEVICES.contains(stem.strip()) || !isPath(name)) {
            throw new HttpRefusal(HttpRefusal.BAD_REQUEST, "refusals.name", printable(name));
        }
        return name;
    }

    private static boolean isPath(String name) {
        try {
            return Path.of(name).getNameCount() == 1;
        } catch (InvalidPathException e) {
            return false;
        }
    }

    private static String printable(String name) {
        String text = name.replaceAll("[^\\x20-\\x7e]", "?");
        return text.length() > 60 ? text.substring(0, 60) + "..." : text;
    }

    /**
     * Returns the first link below a folder, which the analysis would follow; null if there is none.
     *
     * @param parts the folder, empty for the whole season
     */
    @Nullable
    Path firstLink(List<String> parts) throws IOException {
        Path top = inside(parts);
        if (!Files.isDirectory(top, LinkOption.NOFOLLOW_LINKS)) {
            return null;
        }
        try (Stream<Path> all = Files.walk(top, new FileVisitOption[0])) {
            return all.filter(Files::isSymbolicLink).findFirst().orElse(null);
        }
    }

    /**
     * Writes a file whole or not at all. A file that was there goes to the dated folder, unless this workbench wrote it and
     * nobody changed it since: of all the versions of a form that is being filled in, the last one is kept.
     *
     * @return the file
     */
    Path write(List<String> parts, Content content) throws IOException {
        return write(parts, content, false);
    }

    /** Writes a file whole or not at all. A file that was there goes to the dated folder, whoever wrote it. */
    Path replace(List<String> parts, Content content) throws IOException {
        return write(parts, content, true);
    }

    private Path write(List<String> parts, Content content, boolean keepsOwn) throws IOException {
        Path target = inside(parts);
        Files.createDirectories(parent(target));
        inside(parts);
        Path fresh = temporary();
        try {
            try (OutputStream out = Files.newOutputStream(fresh)) {
                content.writeTo(out);
            }
            if (keepsOwn || !isOwn(target)) {
                keep(target);
            }
            written.put(target, Sha256.of(fresh));
            Files.move(fresh, target, StandardCopyOption.ATOMIC_MOVE);
        } finally {
            Files.deleteIfExists(fresh);
        }
        return target;
    }

    private boolean isOwn(Path target) throws IOException {
        String digest = written.get(target);
        return digest != null
                && Files.isRegularFile(target, LinkOption.NOFOLLOW_LINKS)
                && digest.equals(Sha256.of(target));
    }

    /** Moves what is there to the dated folder; nothing happens if nothing is there. */
    void putAway(Path target) throws IOException {
        if (!Files.exists(target, LinkOption.NOFOLLOW_LINKS)) {
            return;
        }
        Files.move(target, away(target), StandardCopyOption.ATOMIC_MOVE);
    }

    /**
     * Puts a second name of a file into the dated folder, so that at no moment the file has no name at all: the program may be
     * killed before the new file takes its place. Where the disk has no second names the file is moved.
     */
    private void keep(Path target) throws IOException {
        if (Files.isRegularFile(target, LinkOption.NOFOLLOW_LINKS)) {
            try {
                Files.createLink(away(target), target);
                return;
            } catch (UnsupportedOperationException | FileSystemException e) {
                // Such as a memory stick's FAT: moved below.
            }
        }
        putAway(target);
    }

    /** A free place in the dated folder, its folders made. */
    private Path away(Path target) throws IOException {
        String stamp = STAMP.format(LocalDateTime.now(ZoneId.systemDefault()));
        Path place = root.resolve(REPLACED).resolve(stamp).resolve(root.relativize(target));
        for (int n = 2; Files.exists(place, LinkOption.NOFOLLOW_LINKS); n++) {
            place = root.resolve(REPLACED).resolve(stamp + "-" + n).resolve(root.relativize(target));
        }
        Files.createDirectories(parent(place));
        return place;
    }

    /** A new file in the program's own folder. */
    Path temporary() throws IOException {
        Files.createDirectories(work());
        return Files.createTempFile(work(), "part-", ".tmp");
    }

    private static Path parent(Path path) {
        Path parent = path.getParent();
        if (parent == null) {
            throw new IllegalStateException("no folder around " + path);
        }
        return parent;
    }
}
