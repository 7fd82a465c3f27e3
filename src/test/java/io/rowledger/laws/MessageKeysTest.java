package io.rowledger.laws;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import io.rowledger.coverage.CoverageDefect;
import io.rowledger.diagnose.setup.SetupParameter;
import io.rowledger.document.text.Messages;
import io.rowledger.finding.FindingKind;
import io.rowledger.finding.RefusalKind;
import io.rowledger.report.compare.RowVerdict;
import io.rowledger.report.findings.FindingFacts;
import io.rowledger.report.record.RecordField;
import io.rowledger.report.record.RecordFields;
import io.rowledger.report.record.RecordRule;
import io.rowledger.report.season.BatchOutcome;
import io.rowledger.units.UnitFormat;
import io.rowledger.units.UnitSystem;
import java.io.IOException;
import java.io.StringReader;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collection;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Properties;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;

/**
 * Every key of a message bundle is used, and every key that is used stands in its bundle.
 *
 * <p>A use is a string literal in {@code src/main/java} that begins with the name of a bundle and a dot, or a tag
 * {@code t.KEY} in a template. A literal that ends with a dot begins a family of keys: the rest comes from an enum, and
 * {@link #FAMILIES} lists which.
 */
class MessageKeysTest {
    private static final Path BUNDLES = Path.of("src/main/resources/io/rowledger/text");

    /** Scripts and templates of the review page and the workbench. */
    private static final Path WEB = Path.of("src/main/resources/io/rowledger/web");

    /** A key of the page's or the workbench's bundle in a script. */
    private static final Pattern SCRIPT_KEY = Pattern.compile("'((?:page|workbench)\\.[A-Za-z0-9_.]+)'");

    /** Families of keys by prefix, as it stands in the code: the keys' last parts. */
    private static final Map<String, Collection<String>> FAMILIES = Map.ofEntries(
            Map.entry(
                    "compare.verdict.",
                    Arrays.stream(RowVerdict.values()).map(RowVerdict::name).toList()),
            Map.entry(
                    "page.cause.",
                    Arrays.stream(CoverageDefect.Cause.values())
                            .map(cause -> cause.name().toLowerCase(Locale.ROOT))
                            .toList()),
            Map.entry("page.fix.", List.of("0", "1", "2", "4", "5")),
            Map.entry(
                    "page.layer.",
                    List.of(
                            "backdrop",
                            "strips",
                            "skips",
                            "doubtful",
                            "overlaps",
                            "findings",
                            "boundary",
                            "setbacks",
                            "zones")),
            Map.entry("page.mode.", List.of("target", "applied", "peers", "speed", "fix", "time")),
            Map.entry(
                    "season.result.",
                    Arrays.stream(BatchOutcome.Result.values()).map(Enum::name).toList()),
            Map.entry(
                    "record.field.",
                    RecordFields.all().stream().map(RecordField::key).toList()),
            Map.entry(
                    "record.rule.",
                    Arrays.stream(RecordRule.values())
                            .flatMap(rule -> Stream.of("place", "citation", "read", "period", "note")
                                    .map(part -> rule.name() + "." + part))
                            .toList()),
            Map.entry(
                    "findings.metersTitle.",
                    Stream.of(FindingKind.values())
                            .filter(kind -> !FindingFacts.onlySetup(kind))
                            .map(FindingKind::jsonName)
                            .toList()),
            Map.entry(
                    "findings.title.",
                    Stream.of(FindingKind.values()).map(FindingKind::jsonName).toList()),
            Map.entry("notes.column.order.", List.of("MONTH_DAY_YEAR", "DAY_MONTH_YEAR", "YEAR_MONTH_DAY")),
            Map.entry("notes.totals.", List.of("volume.less", "volume.more", "area")),
            Map.entry(
                    "refusals.at.",
                    List.of(
                            "Nowhere",
                            "File",
                            "FileLine",
                            "FileLineColumn",
                            "FileColumn",
                            "Line",
                            "LineColumn",
                            "Column")),
            Map.entry("refusals.figure.", List.of("LENGTH", "DENSITY", "RATE", "TEMPERATURE")),
            Map.entry(
                    "refusals.key.",
                    List.of(
                            "rig",
                            "name",
                            "hitch",
                            "antenna",
                            "pin",
                            "wheels",
                            "drop",
                            "rows",
                            "spacing",
                            "outside",
                            "product",
                            "density",
                            "analysis",
                            "time",
                            "lat",
                            "lon")),
            Map.entry(
                    "refusals.kind.",
                    Stream.concat(
                                    Stream.of("OTHER"),
                                    Arrays.stream(RefusalKind.values()).map(Enum::name))
                            .toList()),
            Map.entry("review.parameter.", lowerCase(SetupParameter.values())),
            Map.entry("words.cause.", lowerCase(CoverageDefect.Cause.values())),
            Map.entry("words.fix.", List.of("0", "1", "2", "3", "4", "5", "6", "7", "8", "9")),
            Map.entry("words.lookAt.", lowerCase(CoverageDefect.Cause.values())));

    private static final Pattern LITERAL = Pattern.compile("\"((?:[^\"\\\\\n]|\\\\.)*)\"");
    private static final Pattern TAG = Pattern.compile("\\{\\{[#/^]?\\s*t\\.([A-Za-z0-9_.]+)\\s*}}");
    private static final Pattern KEY = Pattern.compile("[a-z]+\\.[A-Za-z0-9_.]*");
    /** Keys of the rig file that look like keys of a bundle. */
    private static final Set<String> RIG_KEYS = Set.of("rows.count", "rows.outer_share", "rows.spacing");
    /** Names of files, such as rows.csv, that look like keys. */
    private static final Pattern FILE_NAME =
            Pattern.compile(".*\\.(css|csv|js|json|html|pdf|xhtml|geojson|gpkg|gpx|tif|zip)");

    @Test
    void every_key_that_is_used_stands_in_a_bundle() throws IOException {
        Set<String> missing = new TreeSet<>(uses());
        missing.removeAll(keys().keySet());
        assertEquals(Set.of(), missing);
    }

    @Test
    void every_key_of_a_bundle_is_used() throws IOException {
        Set<String> unused = new TreeSet<>(keys().keySet());
        unused.removeAll(uses());
        assertEquals(Set.of(), unused);
    }

    @Test
    void every_family_is_used() throws IOException {
        assertEquals(FAMILIES.keySet().stream().collect(Collectors.toCollection(TreeSet::new)), prefixes());
    }

    @Test
    void a_key_begins_with_the_name_of_its_bundle_and_stands_there_once() throws IOException {
        for (Path file : bundleFiles()) {
            String bundle = bundle(file);
            Set<String> seen = new TreeSet<>();
            for (String key : keysInOrder(file)) {
                assertTrue(key.startsWith(bundle + ".") && KEY.matcher(key).matches(), file + ": " + key);
                assertTrue(seen.add(key), file + " has " + key + " twice");
            }
        }
    }

    @Test
    void every_pattern_can_be_read() throws IOException {
        Messages messages = Messages.english(new UnitFormat(UnitSystem.US, ZoneOffset.UTC));
        for (String key : keys().keySet()) {
            assertTrue(messages.has(key), key);
        }
    }

    private static Set<String> uses() throws IOException {
        Set<String> uses = new TreeSet<>();
        for (String text : candidates()) {
            if (!text.endsWith(".")) {
                uses.add(text);
            }
        }
        FAMILIES.forEach((prefix, rest) -> rest.forEach(last -> uses.add(prefix + last)));
        return uses;
    }

    private static Set<String> prefixes() throws IOException {
        return candidates().stream().filter(text -> text.endsWith(".")).collect(Collectors.toCollection(TreeSet::new));
    }

    /** What looks like a key of a bundle, in code and templates. */
    private static Set<String> candidates() throws IOException {
        Set<String> bundles =
                bundleFiles().stream().map(MessageKeysTest::bundle).collect(Collectors.toSet());
        Set<String> found = new TreeSet<>();
        for (Path file : files(Path.of("src/main/java"), ".java")) {
            Matcher literal = LITERAL.matcher(withoutComments(Files.readString(file)));
            while (literal.find()) {
                String text = literal.group(1);
                boolean key = KEY.matcher(text).matches()
                        && !FILE_NAME.matcher(text).matches()
                        && !RIG_KEYS.contains(text)
                        && bundles.contains(text.substring(0, text.indexOf('.')));
                if (key) {
                    found.add(text);
                }
            }
        }
        for (Path file : templates()) {
            Matcher tag = TAG.matcher(Files.readString(file));
            while (tag.find()) {
                found.add(tag.group(1));
            }
        }
        for (Path file : files(WEB, ".js")) {
            Matcher word = SCRIPT_KEY.matcher(Files.readString(file));
            while (word.find()) {
                found.add(word.group(1));
            }
        }
        return found;
    }

    private static List<Path> templates() throws IOException {
        List<Path> templates = new ArrayList<>(files(Path.of("report-templates"), ".xhtml"));
        templates.addAll(files(WEB, ".html"));
        return templates;
    }

    private static String withoutComments(String java) {
        return java.replaceAll("(?s)/\\*.*?\\*/", "").replaceAll("(?m)^\\s*//.*$", "");
    }

    private static Map<String, String> keys() throws IOException {
        Map<String, String> keys = new TreeMap<>();
        for (Path file : bundleFiles()) {
            Properties properties = new Properties();
            properties.load(new StringReader(Files.readString(file)));
            properties.stringPropertyNames().forEach(key -> keys.put(key, properties.getProperty(key)));
        }
        return keys;
    }

    /** Keys as they stand in the file, twice where they stand there twice. */
    private static List<String> keysInOrder(Path file) throws IOException {
        String joined = Files.readString(file).replaceAll("\\\\\n\\s*", "");
        return joined.lines()
                .filter(line -> !line.isBlank() && !line.startsWith("#"))
                .map(line -> line.substring(0, line.indexOf('=')).strip())
                .toList();
    }

    private static List<Path> bundleFiles() throws IOException {
        return files(BUNDLES, ".properties");
    }

    /** {@code findings} for {@code findings.properties} and {@code findings_es.properties}. */
    private static String bundle(Path file) {
        return file.getFileName().toString().replaceAll("(_[a-z]{2})?\\.properties$", "");
    }

    private static List<Path> files(Path folder, String ending) throws IOException {
        try (Stream<Path> files = Files.walk(folder)) {
            return files.filter(file -> file.toString().endsWith(ending))
                    .sorted()
                    .toList();
        }
    }

    private static List<String> lowerCase(Enum<?>[] constants) {
        return Stream.of(constants)
                .map(each -> each.name().toLowerCase(Locale.ROOT))
                .toList();
    }
}
