package io.rowledger.log.source;

import io.rowledger.digest.Sha256;
import io.rowledger.finding.RefusalKind;
import io.rowledger.finding.RegularFile;
import io.rowledger.finding.UnusableInputException;
import java.io.BufferedInputStream;
import java.io.EOFException;
import java.io.IOException;
import java.io.InputStream;
import java.io.InputStreamReader;
import java.io.Reader;
import java.nio.charset.Charset;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.security.DigestInputStream;
import java.security.MessageDigest;
import java.util.List;
import java.util.Locale;
import java.util.zip.GZIPInputStream;
import java.util.zip.ZipEntry;
import java.util.zip.ZipException;
import java.util.zip.ZipInputStream;
import org.apache.commons.csv.CSVException;
import org.jspecify.annotations.Nullable;

/**
 * A log file as text. Unpacks .gz and .zip (detected by content, not by name), decodes, and computes the SHA-256 digest
 * in the same pass.
 */
public final class LogFile implements AutoCloseable {
    private static final int BUFFER_BYTES = 1 << 16;

    private final String name;
    private final InputStream raw;
    private final MessageDigest digest;
    private final RecordGuard text;
    private final String form;
    private final boolean plain;
    private final ExpansionGuard.ExpansionCounter swelling = new ExpansionGuard.ExpansionCounter(() -> packedBytes());
    private long packed;
    private @Nullable ZipInputStream zip;

    public LogFile(Path path) throws IOException {
        name = path.toString();
        digest = Sha256.digest();
        raw = open(path);
        try {
            LogContainer container = LogContainer.of(path);
            if (container != null) {
                form = container.form();
                plain = false;
                text = new RecordGuard(container.text(path));
                return;
            }
            BufferedInputStream bytes = new BufferedInputStream(raw, BUFFER_BYTES);
            int[] first = peek(bytes, 4);
            requireNoOldWorkbook(first);
            if (first[0] < 0) {
                throw UnusableInputException.found("an empty file")
                        .kind(RefusalKind.DAMAGED)
                        .inFile(name)
                        .expected("a log in CSV that starts with a line of column names")
                        .hint("export the log again");
            }
            InputStream content = bytes;
            String packing = "plain";
            if (first[0] == 0x1f && first[1] == 0x8b) {
                content = new ExpansionGuard(new GZIPInputStream(bytes, BUFFER_BYTES), swelling);
                packing = "gzip";
            } else if (first[0] == 'P' && first[1] == 'K' && first[2] == 3 && first[3] == 4) {
                content = entry(bytes);
                packing = "zip";
            }
            BufferedInputStream unpacked = new BufferedInputStream(content, BUFFER_BYTES);
            Charset charset = TextEncoding.of(unpacked);
            form = packing + ", " + charset.name();
            plain = content == bytes && !charset.name().startsWith("UTF-16");
            text = new RecordGuard(new InputStreamReader(unpacked, charset));
        } catch (IOException | RuntimeException e) {
            raw.close();
            throw e;
        }
    }

    /** The files beside a log that it is read from too: the other parts of a shapefile. */
    public static List<Path> parts(Path log) {
        return LogContainer.files(log).stream()
                .filter(part -> !part.equals(log))
                .toList();
    }

    /** The file as given. */
    public String name() {
        return name;
    }

    /** Packing and character set, such as "gzip, UTF-8". */
    public String form() {
        return form;
    }

    /** Returns true for text that is neither packed nor UTF-16: a byte of a line end is nothing else. */
    public boolean isPlain() {
        return plain;
    }

    /** The text, after any byte order mark. */
    public Reader text() {
        return text;
    }

    /** A record of the text has ended: a longer one than any log has is refused. */
    public void recordEnded() {
        text.ended();
    }

    /** Reads the rest and returns the SHA-256 of all bytes on disk, lower-case hex. */
    public String finish() throws IOException {
        if (zip != null) {
            for (ZipEntry more = next(zip); more != null; more = next(zip)) {
                refuseClimbing(more);
                if (holdsLog(more)) {
                    throw UnusableInputException.found("more than one file in the zip, such as " + more.getName())
                            .inFile(name)
                            .expected("one CSV file in a zip")
                            .hint("unpack it and give the logs one by one");
                }
            }
        }
        raw.transferTo(java.io.OutputStream.nullOutputStream());
        return Sha256.hex(digest);
    }

    @Override
    public void close() throws IOException {
        text.close();
        raw.close();
    }

    /** Returns the refusal for a file that is truncated, damaged or unreadable. */
    public static UnusableInputException damaged(String name, @Nullable Throwable e, long line) {
        String words = e == null || e.getMessage() == null ? "no reason given" : e.getMessage();
        UnusableInputException message;
        if (e instanceof ExpansionGuard.ExpansionException) {
            message = UnusableInputException.found("a packed file that unpacks to more than 200 times its size")
                    .kind(RefusalKind.DECOMPRESSION_BOMB)
                    .expected("a log")
                    .hint("unpack it, look at what is in it, and find out where it comes from");
            return message.inFile(name);
        }
        if (e instanceof RecordGuard.EndlessRecordException) {
            message = UnusableInputException.found(
                            "a line or a quoted field far longer than any log has, or one that does not end")
                    .expected("a log in CSV, a record a line")
                    .hint("look at that line in a text editor, or export the log again");
            return message.inFile(name).atLine((int) Math.min(line, Integer.MAX_VALUE));
        }
        if (e instanceof EOFException) {
            message = UnusableInputException.found("a truncated packed file")
                    .kind(RefusalKind.DAMAGED)
                    .expected("a whole .gz or .zip file")
                    .hint("copy or export the file again");
        } else if (e instanceof ZipException) {
            message = UnusableInputException.found("a packed file that is damaged (" + words + ")")
                    .kind(RefusalKind.DAMAGED)
                    .expected("a whole .gz or .zip file")
                    .hint("copy or export the file again");
        } else if (e instanceof CSVException) {
            String what = words.contains("encapsulated token")
                    ? "a quote that does not end where its field ends"
                    : "a line that is no CSV (" + words + ")";
            message = UnusableInputException.found(what)
                    .expected("CSV fields as in RFC 4180, with every quote closed")
                    .hint("look at that line in a text editor, or export the log again");
        } else {
            message = UnusableInputException.found("a file that can't be read (" + words + ")")
                    .expected("a log in CSV")
                    .hint("copy or export the file again");
        }
        return message.inFile(name).atLine((int) Math.min(line, Integer.MAX_VALUE));
    }

    private InputStream open(Path path) throws IOException {
        if (Files.isDirectory(path)) {
            throw UnusableInputException.found("a folder")
                    .inFile(name)
                    .expected("a log file")
                    .hint("name the CSV files in it");
        }
        RegularFile.requireRegular(path, "a log file");
        try {
            return new DigestInputStream(Files.newInputStream(path), digest) {
                @Override
                public int read() throws IOException {
                    int value = super.read();
                    packed += value < 0 ? 0 : 1;
                    return value;
                }

                @Override
                public int read(byte[] into, int from, int length) throws IOException {
                    int count = super.read(into, from, length);
                    packed += Math.max(count, 0);
                    return count;
                }
            };
        } catch (NoSuchFileException e) {
            throw UnusableInputException.found("no such file")
                    .inFile(name)
                    .expected("a log in CSV")
                    .hint("check the name and the folder");
        } catch (java.nio.file.AccessDeniedException e) {
            throw UnusableInputException.found("a file without read permission")
                    .inFile(name)
                    .expected("a log in CSV")
                    .hint("change its permissions so that you can read it");
        }
    }

    private void requireNoOldWorkbook(int[] first) {
        if (first[0] == 0xd0 && first[1] == 0xcf && first[2] == 0x11 && first[3] == 0xe0) {
            throw UnusableInputException.found("a workbook in the old form, .xls")
                    .kind(RefusalKind.NOT_A_LOG)
                    .inFile(name)
                    .expected("a log in CSV, or a workbook in the form .xlsx")
                    .hint("open it and save it as .xlsx or CSV");
        }
    }

    private InputStream entry(InputStream bytes) throws IOException {
        // Skipping an entry unpacks it too, through this same method.
        ZipInputStream entries = new ZipInputStream(bytes, StandardCharsets.ISO_8859_1) {
            @Override
            public int read(byte[] into, int from, int length) throws IOException {
                int count = super.read(into, from, length);
                swelling.add(count);
                return count;
            }
        };
        zip = entries;
        for (ZipEntry entry = next(entries); entry != null; entry = next(entries)) {
            refuseClimbing(entry);
            if (holdsLog(entry)) {
                return entries;
            }
        }
        throw UnusableInputException.found("a zip without a CSV file")
                .kind(RefusalKind.NOT_A_LOG)
                .inFile(name)
                .expected("one file ending in .csv, .tsv or .txt in the zip")
                .hint("zip the log itself");
    }

    /** Returns the next entry; turns the JDK's IllegalArgumentException for a malformed name into a ZipException. */
    private static @Nullable ZipEntry next(ZipInputStream entries) throws IOException {
        try {
            return entries.getNextEntry();
        } catch (IllegalArgumentException e) {
            throw new ZipException("an entry name that is no text");
        }
    }

    private long packedBytes() {
        return packed;
    }

    /** Refuses entry names that point outside the folder. Nothing is written from a zip, but such a file is suspect. */
    private void refuseClimbing(ZipEntry entry) {
        String path = entry.getName().replace('\\', '/');
        boolean climbs = path.startsWith("/")
                || path.matches("[A-Za-z]:.*")
                || List.of(path.split("/", -1)).contains("..");
        if (climbs) {
            throw UnusableInputException.found("a zip with an entry outside its folder, " + entry.getName())
                    .inFile(name)
                    .expected("a zip with the log in it")
                    .hint("zip the log again, and find out where this file comes from");
        }
    }

    private static boolean holdsLog(ZipEntry entry) {
        String path = entry.getName().toLowerCase(Locale.ROOT);
        String file = path.substring(path.lastIndexOf('/') + 1);
        boolean hidden = path.startsWith("__macosx/") || file.startsWith(".");
        return !hidden && (file.endsWith(".csv") || file.endsWith(".tsv") || file.endsWith(".txt"));
    }

    /** Returns the next bytes without consuming them; −1 past the end. */
    private static int[] peek(BufferedInputStream bytes, int count) throws IOException {
        int[] values = new int[count];
        bytes.mark(count);
        for (int i = 0; i < count; i++) {
            values[i] = bytes.read();
        }
        bytes.reset();
        return values;
    }
}
