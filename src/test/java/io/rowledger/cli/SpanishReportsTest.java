package io.rowledger.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.io.StringReader;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.Properties;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.text.PDFTextStripper;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What {@code --language es} prints of a sample, page by page: no word that only English has. */
@Tag("slow")
class SpanishReportsTest {
    private static final Path SAMPLE = Path.of("sample-logs/plugged-row");
    private static final Path BUNDLES = Path.of("src/main/resources/io/rowledger/text");
    private static final List<String> TRANSLATED =
            List.of("cautions", "compare", "findings", "notes", "page", "review", "rows", "words");

    /** Words of the command line and of the names of files that were handed in, which stay as they are. */
    private static final Set<String> NAMES = Set.of("apply", "check", "setup", "boundary", "log", "rig");

    private static final Pattern LETTERS = Pattern.compile("[^\\p{L}]+");

    @Test
    void no_english_is_left_on_the_pages_and_they_say_their_language(@TempDir Path folder) throws IOException {
        Path out = folder.resolve("results");
        Calls call = Calls.of(
                "report",
                SAMPLE.resolve("log.csv"),
                "--rig",
                SAMPLE.resolve("rig.yaml"),
                "--boundary",
                SAMPLE.resolve("boundary.geojson"),
                "--language",
                "es",
                "--for",
                "applicator,dealer",
                "--quiet",
                "--out",
                out);
        assertEquals(0, call.status(), call.err());
        assertTrue(call.out().contains("No, por los medidores"), call.out());
        Set<String> english = words(bundles(""));
        english.removeAll(words(bundles("_es")));
        english.removeAll(words(Files.readString(SAMPLE.resolve("rig.yaml"))));
        english.removeAll(NAMES);
        assertTrue(english.contains("skipped") && english.contains("applied"), "words that only English has");
        for (String file : List.of("pass-review.pdf", "row-diagnosis.pdf")) {
            assertEquals(Set.of(), common(pdf(out.resolve(file)), english), file);
        }
        String page = Files.readString(out.resolve("review.html"));
        String shown =
                page.substring(page.indexOf("<body>"), page.indexOf("<footer>")).replaceAll("<[^>]*>", " ");
        assertEquals(Set.of(), common(shown, english), "review.html");
        assertEquals(
                Set.of(),
                common(
                        Files.readString(out.resolve("layers/places.gpx"))
                                .replaceAll("<type>[^<]*</type>|<[^>]*>", " "),
                        english),
                "places.gpx");
        Path again = folder.resolve("again");
        try (Stream<Path> files = Files.walk(out)) {
            for (Path file : files.toList()) {
                Files.copy(file, again.resolve(out.relativize(file)));
            }
        }
        Path compared = folder.resolve("compared");
        call = Calls.of("compare", out, again, "--language", "es", "--quiet", "--out", compared);
        assertEquals(0, call.status(), call.err());
        assertTrue(
                call.out().startsWith("No sirvió: de 2 hallazgos de antes, 2 siguen; no se ve nada nuevo."),
                call.out());
        // What a job's results keep of its findings is English, and the comparison says so before it.
        english.removeAll(words(Files.readString(out.resolve("diagnosis.json"))));
        String printed = pdf(compared.resolve("comparison.pdf")).replaceAll("\\s+", " ");
        assertEquals(Set.of(), common(printed, english), "comparison.pdf");
        assertTrue(printed.contains("En el archivo, en inglés: Row 7 gave"), printed);
    }

    private static Set<String> common(String text, Set<String> english) {
        Set<String> left = words(text);
        left.retainAll(english);
        return left;
    }

    private static String pdf(Path file) throws IOException {
        try (PDDocument document = Loader.loadPDF(file.toFile())) {
            assertEquals("es-US", document.getDocumentCatalog().getLanguage());
            return new PDFTextStripper().getText(document);
        }
    }

    private static String bundles(String suffix) throws IOException {
        StringBuilder all = new StringBuilder();
        for (String bundle : TRANSLATED) {
            Properties properties = new Properties();
            properties.load(new StringReader(Files.readString(BUNDLES.resolve(bundle + suffix + ".properties"))));
            properties.values().forEach(value -> all.append(value).append(' '));
        }
        return all.toString();
    }

    /** Words of three letters or more, in lower case. */
    private static Set<String> words(String text) {
        Set<String> words = new TreeSet<>();
        for (String word : LETTERS.split(text, -1)) {
            if (word.length() > 2) {
                words.add(word.toLowerCase(Locale.ROOT));
            }
        }
        return words;
    }
}
