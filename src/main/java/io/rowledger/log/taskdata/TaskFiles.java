package io.rowledger.log.taskdata;

import io.rowledger.digest.Sha256;
import io.rowledger.finding.RegularFile;
import io.rowledger.finding.UnusableInputException;
import java.io.BufferedInputStream;
import java.io.FilterInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.DigestInputStream;
import java.security.MessageDigest;
import java.util.ArrayList;
import java.util.Enumeration;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.TreeMap;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import java.util.zip.ZipEntry;
import java.util.zip.ZipException;
import java.util.zip.ZipFile;
import org.jspecify.annotations.Nullable;

/**
 * The files of one set of task data: a folder, or a folder in a zip file, which is read in place and never unpacked to the
 * disk. Names are found in any case of letters, because they went through cards and sticks that know only one. Each file is
 * digested as it is read.
 */
final class TaskFiles implements AutoCloseable {
    static final String MAIN = "taskdata.xml";

    private static final Pattern TIME_LOG = Pattern.compile("(tlg\\d{5})\\.(xml|bin)");
    private static final int BUFFER_BYTES = 1 << 16;
    /** More files than any card of task data has. */
    private static final int MAX_ENTRIES = 20_000;
    /** Below this size no file does harm, however well it was packed. */
    private static final long HARMLESS_BYTES = 16L << 20;
    /** Kept as a tree; the task data of a season has a few. */
    private static final long MAX_XML_BYTES = 64L << 20;
    /** Time logs pack to a third or so; nothing honest comes near this. */
    private static final long MAX_RATIO = 200;

    private final String given;
    private final String shown;
    private final Map<String, Path> paths;
    private final Map<String, ZipEntry> entries;
    private final @Nullable ZipFile zip;
    private final String wanted;
    private final List<ReadFile> read = new ArrayList<>();

    private TaskFiles(
            String given,
            String shown,
            Map<String, Path> paths,
            Map<String, ZipEntry> entries,
            @Nullable ZipFile zip,
            String wanted) {
        this.given = given;
        this.shown = shown;
        this.paths = paths;
        this.entries = entries;
        this.zip = zip;
        this.wanted = wanted;
    }

    /** Reads a stream to its end or throws. */
    interface Use<T> {
        T of(String name, InputStream in) throws IOException;
    }

    /** More bytes than task data has. */
    static final class SwollenException extends IOException {
        private static final long serialVersionUID = 1L;
    }

    /** True for a folder or a zip file with task data in it, a TASKDATA.XML or one of its time logs. */
    static boolean isTaskData(Path path) {
        try {
            if (Files.isDirectory(path)) {
                return !folders(path).isEmpty();
            }
            String name = lower(String.valueOf(path.getFileName()));
            if (name.equals(MAIN) || TIME_LOG.matcher(name).matches()) {
                return true;
            }
            if (!isZip(path)) {
                return false;
            }
            try (ZipFile zip = new ZipFile(path.toFile(), StandardCharsets.ISO_8859_1)) {
                return zip.stream()
                        .anyMatch(entry ->
                                lower(RegularFile.name(entry.getName())).equals(MAIN));
            }
        } catch (IOException | UncheckedIOException e) {
            // Whoever reads it as a log will say what is wrong with it.
            return false;
        }
    }

    static TaskFiles open(Path path) {
        try {
            if (Files.isDirectory(path)) {
                return ofFolder(path, path.toString(), "");
            }
            String name = lower(String.valueOf(path.getFileName()));
            boolean log = TIME_LOG.matcher(name).matches();
            if (log || name.equals(MAIN)) {
                if (!Files.exists(path)) {
                    throw UnusableInputException.found("no such file")
                            .inFile(path.toString())
                            .expected("a TASKDATA.XML or a time log beside one")
                            .hint("check the name and the folder");
                }
                Path parent = path.toAbsolutePath().getParent();
                Path folder = path.getParent() == null ? Path.of("") : path.getParent();
                return ofFolder(parent == null ? folder : parent, folder.toString(), log ? name.substring(0, 8) : "");
            }
            return ofZip(path);
        } catch (IOException e) {
            throw unreadable(path.toString(), e);
        } catch (UncheckedIOException e) {
            throw unreadable(path.toString(), new IOException(e.getMessage(), e));
        }
    }

    private static TaskFiles ofFolder(Path folder, String shown, String wanted) throws IOException {
        List<Path> folders = wanted.isEmpty() ? folders(folder) : List.of(folder);
        if (folders.size() != 1) {
            throw several(shown, folders.stream().map(Path::toString).toList());
        }
        Map<String, Path> paths = new TreeMap<>();
        try (Stream<Path> list = Files.list(folders.get(0))) {
            list.filter(Files::isRegularFile)
                    .sorted()
                    .forEach(file -> paths.putIfAbsent(lower(RegularFile.name(file.toString())), file));
        }
        if (!paths.containsKey(MAIN)) {
            throw UnusableInputException.found("a time log without a TASKDATA.XML beside it")
                    .inFile(shown)
                    .expected("the task data it belongs to: the device description stands there")
                    .hint("copy the whole folder from the terminal");
        }
        boolean here = folders.get(0).equals(folder);
        String name = here
                ? shown
                : Path.of(shown, RegularFile.name(folders.get(0).toString())).toString();
        return new TaskFiles(shown, name, paths, Map.of(), null, wanted);
    }

    private static TaskFiles ofZip(Path path) throws IOException {
        // ISO 8859-1 has a character for every byte: names in an old code page must not make the others unreadable.
        ZipFile zip = new ZipFile(path.toFile(), StandardCharsets.ISO_8859_1);
        try {
            if (zip.size() > MAX_ENTRIES) {
                throw UnusableInputException.found("a zip file of " + zip.size() + " files")
                        .inFile(path.toString())
                        .expected("the task data of one job")
                        .hint("put the folder with the TASKDATA.XML alone into a zip file");
            }
            Map<String, ZipEntry> all = new TreeMap<>();
            List<String> folders = new ArrayList<>();
            for (Enumeration<? extends ZipEntry> each = zip.entries(); each.hasMoreElements(); ) {
                ZipEntry entry = each.nextElement();
                String name = inside(path, entry.getName());
                String file = lower(RegularFile.name(name));
                if (!entry.isDirectory() && !name.startsWith("__MACOSX/")) {
                    all.put(
                            name.substring(
                                            0,
                                            name.length()
                                                    - RegularFile.name(name).length())
                                    + file,
                            entry);
                    if (file.equals(MAIN)) {
                        folders.add(name.substring(0, name.length() - MAIN.length()));
                    }
                }
            }
            if (folders.size() != 1) {
                throw several(
                        path.toString(),
                        folders.stream().map(f -> f.isEmpty() ? "." : f).toList());
            }
            Map<String, ZipEntry> entries = new TreeMap<>();
            all.forEach((name, entry) -> {
                if (name.startsWith(folders.get(0))) {
                    entries.put(name.substring(folders.get(0).length()), entry);
                }
            });
            return new TaskFiles(path.toString(), path.toString(), Map.of(), entries, zip, "");
        } catch (RuntimeException e) {
            zip.close();
            throw e;
        }
    }

    private static String inside(Path zip, String entry) {
        String name = entry.replace('\\', '/');
        if (name.startsWith("/")
                || name.matches("^[A-Za-z]:.*")
                || List.of(name.split("/", -1)).contains("..")) {
            throw UnusableInputException.found("a zip file with the path " + entry + " in it")
                    .inFile(zip.toString())
                    .expected("paths inside the archive")
                    .hint("don't trust this file; ask whoever sent it for the task data alone");
        }
        return name;
    }

    private static UnusableInputException several(String shown, List<String> folders) {
        if (folders.isEmpty()) {
            return UnusableInputException.found("no TASKDATA.XML")
                    .inFile(shown)
                    .expected("a folder or a zip file with the task data of one job")
                    .hint("copy the whole folder from the terminal");
        }
        return UnusableInputException.found(folders.size() + " sets of task data: " + String.join(", ", folders))
                .inFile(shown)
                .expected("one TASKDATA.XML")
                .hint("give the folder of the one that is meant");
    }

    /** The folder itself, or the ones in it, that hold a TASKDATA.XML. */
    private static List<Path> folders(Path folder) throws IOException {
        if (hasMain(folder)) {
            return List.of(folder);
        }
        List<Path> found = new ArrayList<>();
        try (Stream<Path> list = Files.list(folder)) {
            for (Path path : list.filter(Files::isDirectory).sorted().toList()) {
                if (Files.isReadable(path) && hasMain(path)) {
                    found.add(path);
                }
            }
        }
        return found;
    }

    private static boolean hasMain(Path folder) throws IOException {
        try (Stream<Path> list = Files.list(folder)) {
            return list.anyMatch(
                    path -> lower(RegularFile.name(path.toString())).equals(MAIN));
        }
    }

    private static boolean isZip(Path path) throws IOException {
        if (!Files.isRegularFile(path)) {
            return false;
        }
        try (InputStream in = Files.newInputStream(path)) {
            byte[] first = in.readNBytes(4);
            return first.length == 4 && first[0] == 'P' && first[1] == 'K' && first[2] == 3 && first[3] == 4;
        }
    }

    /** What was handed in. */
    String given() {
        return given;
    }

    /** The one time log that was handed in, such as "tlg00001"; empty where it was the whole task data. */
    String wanted() {
        return wanted;
    }

    /** True where it all comes out of a zip file. */
    boolean isPacked() {
        return zip != null;
    }

    /** The files read so far, in that order. */
    List<ReadFile> read() {
        return List.copyOf(read);
    }

    boolean has(String name) {
        return paths.containsKey(lower(name)) || entries.containsKey(lower(name));
    }

    /** What a message calls a file of the set. */
    String shown(String name) {
        Path path = paths.get(lower(name));
        ZipEntry entry = entries.get(lower(name));
        String real = path != null
                ? RegularFile.name(path.toString())
                : entry != null ? RegularFile.name(entry.getName()) : name;
        return shown.isEmpty() ? real : Path.of(shown, real).toString();
    }

    /** Reads one file of the set to its end. */
    <T> T read(String name, Use<T> use) {
        String called = shown(name);
        MessageDigest digest = Sha256.digest();
        try (InputStream raw = stream(lower(name));
                InputStream in = new BufferedInputStream(new DigestInputStream(raw, digest), BUFFER_BYTES)) {
            T result = use.of(called, in);
            in.transferTo(OutputStream.nullOutputStream());
            read.add(new ReadFile(called, Sha256.hex(digest)));
            return result;
        } catch (IOException e) {
            throw unreadable(called, e);
        }
    }

    private InputStream stream(String name) throws IOException {
        Path path = paths.get(name);
        boolean xml = name.endsWith(".xml");
        if (path != null) {
            RegularFile.requireRegular(path, "a file of task data");
            return new Measured(Files.newInputStream(path), xml ? MAX_XML_BYTES : Long.MAX_VALUE);
        }
        ZipEntry entry = entries.get(name);
        InputStream in = entry == null || zip == null ? null : zip.getInputStream(entry);
        if (in == null || entry == null) {
            throw new java.io.FileNotFoundException(name);
        }
        // The sizes stated in a zip file may be false; an entry's packed size is at most the size of the zip file.
        long packed = Math.min(entry.getCompressedSize(), Files.size(Path.of(given)));
        long most = Math.max(HARMLESS_BYTES, MAX_RATIO * packed);
        return new Measured(in, xml ? Math.min(most, MAX_XML_BYTES) : most);
    }

    /** A stream that ends with a fault where it has more bytes than anybody needs. */
    private static final class Measured extends FilterInputStream {
        private final long most;
        private long bytes;

        Measured(InputStream in, long most) {
            super(in);
            this.most = most;
        }

        @Override
        public int read() throws IOException {
            int value = super.read();
            count(value < 0 ? 0 : 1);
            return value;
        }

        @Override
        public int read(byte[] into, int from, int length) throws IOException {
            int count = super.read(into, from, length);
            count(Math.max(count, 0));
            return count;
        }

        private void count(int more) throws IOException {
            bytes += more;
            if (bytes > most) {
                throw new SwollenException();
            }
        }
    }

    private static UnusableInputException unreadable(String name, IOException e) {
        if (e instanceof SwollenException) {
            return UnusableInputException.found(
                            "XML of more than 64 MB, or a packed file that unpacks to more than 200 times its size")
                    .inFile(name)
                    .expected("task data")
                    .hint("look at what is in it, and ask where it comes from");
        }
        String what = e instanceof ZipException || e instanceof java.io.EOFException
                ? "a damaged zip file"
                : "a file that can't be read";
        return UnusableInputException.found(what + " (" + e.getMessage() + ")")
                .inFile(name)
                .expected("the task data of one job: a TASKDATA.XML with its time logs")
                .hint("copy the whole folder from the terminal again");
    }

    static String lower(String name) {
        return name.toLowerCase(Locale.ROOT);
    }

    @Override
    public void close() {
        if (zip != null) {
            try {
                zip.close();
            } catch (IOException e) {
                throw unreadable(given, e);
            }
        }
    }
}
