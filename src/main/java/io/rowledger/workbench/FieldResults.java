package io.rowledger.workbench;

import com.fasterxml.jackson.databind.JsonNode;
import io.rowledger.batch.FieldFiles;
import io.rowledger.finding.UnusableInputException;
import io.rowledger.page.ReviewPage;
import io.rowledger.report.season.BatchFigures;
import io.rowledger.report.season.SeasonJob;
import io.rowledger.results.ResultFile;
import io.rowledger.results.SummaryReader;
import io.rowledger.units.UnitSystem;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.Path;
import java.nio.file.attribute.FileTime;
import java.util.ArrayList;
import java.util.Base64;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.concurrent.ConcurrentHashMap;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import java.util.zip.InflaterInputStream;
import org.jspecify.annotations.Nullable;

/** What the results folder of a field says, in the words that its pages have. */
final class FieldResults {
    /** The review page's text before its data, bytes: what is looked at. */
    private static final int HEAD_BYTES = 1 << 20;

    /** The reader whom results of the workbench are written for; their pages hold the words for others too. */
    private static final Reader OWN = new Reader(Locale.ENGLISH, UnitSystem.US);

    private static final Pattern VERDICT = Pattern.compile("<p class=\"verdict\">([^<]*)</p>");
    private static final Pattern PICTURE =
            Pattern.compile("<svg class=\"picture\" viewBox=\"0 0 (\\d+) (\\d+)\".*?</svg>", Pattern.DOTALL);
    private static final Pattern TEXTS = Pattern.compile("id=\"job-texts\">([A-Za-z0-9+/=]*)<");
    private static final Pattern ACTION = Pattern.compile("<li><strong>([^<]*)\\.</strong> ([^<]*)<");
    /** Texts of a page in all languages and units, unpacked, bytes: a hundred times the largest that was seen. */
    private static final int MAX_TEXTS_BYTES = 1 << 24;

    private static final Pattern SHAPE =
            Pattern.compile("<path class=\"([a-z]+)\" fill-rule=\"evenodd\" d=\"([MLZmlz0-9. -]*)\"/>");

    private final SeasonFolder folder;
    /** Read once, each when it is asked for: a season may have 200 fields. */
    private final Cache<Result> own = new Cache<>();

    private final Map<Reader, Cache<Result>> others = new ConcurrentHashMap<>();
    private final Cache<Picture> pictures = new Cache<>();

    FieldResults(SeasonFolder folder) {
        this.folder = folder;
    }

    /** What was read from results folders, with the times of the files that it was read from. */
    private static final class Cache<T> {
        private final Map<Path, Timed<T>> kept = new ConcurrentHashMap<>();

        private record Timed<T>(FileTime time, T value) {}

        /** Reads from a results folder. */
        private interface Reading<T> {
            T of(Path place, Path summary) throws IOException;
        }

        /** Returns what was read before from the same file, or reads it; null where there are no results. */
        @Nullable
        T get(Path place, Reading<T> reading) {
            Path summary = place.resolve(ResultFile.SUMMARY.fileName());
            try {
                if (!Files.isRegularFile(summary, LinkOption.NOFOLLOW_LINKS)) {
                    return null;
                }
                FileTime time = Files.getLastModifiedTime(summary);
                Timed<T> before = kept.get(place);
                if (before != null && before.time.equals(time)) {
                    return before.value;
                }
                T value = reading.of(place, summary);
                kept.put(place, new Timed<>(time, value));
                return value;
            } catch (IOException | UnusableInputException e) {
                return null;
            }
        }
    }

    /**
     * The results of a field.
     *
     * @param startS start of work, epoch seconds; null if unknown
     * @param zone time zone of the field
     * @param coveredM2 covered ground, m²
     * @param skipM2 skipped ground, m²
     * @param overlapM2 overlap, m²
     * @param volumeL liquid, L; null if unknown
     * @param nitrogenKg nitrogen, kg; null if unknown
     * @param verdict sentences
     * @param actions what to do
     * @param files names of the result files
     */
    record Result(
            @Nullable Double startS,
            String zone,
            @Nullable Double coveredM2,
            @Nullable Double skipM2,
            @Nullable Double overlapM2,
            @Nullable Double volumeL,
            @Nullable Double nitrogenKg,
            List<String> verdict,
            List<Action> actions,
            List<String> files) {
        private Result in(List<String> otherVerdict, List<Action> otherActions) {
            return new Result(
                    startS, zone, coveredM2, skipM2, overlapM2, volumeL, nitrogenKg, otherVerdict, otherActions, files);
        }
    }

    /** What to do next. */
    record Action(String title, String text) {}

    /**
     * A small map.
     *
     * @param width of the picture
     * @param height of the picture
     * @param shapes areas
     */
    record Picture(int width, int height, List<Shape> shapes) {}

    /** An area: covered, boundary, skip or overlap, and its SVG path. */
    record Shape(String kind, String path) {}

    /** The folder of a field's results. */
    Path folder(String field) {
        List<String> parts = new ArrayList<>(List.of(SeasonFolder.RESULTS));
        parts.addAll(FieldNames.parts(field));
        return folder.inside(parts);
    }

    /** Returns the results of a field as a person reads them, or null while there are none. */
    @Nullable
    Result of(String field, Reader reader) {
        return reader.equals(OWN)
                ? own.get(folder(field), FieldResults::own)
                : others.computeIfAbsent(reader, each -> new Cache<>())
                        .get(folder(field), (place, summary) -> in(reader, place));
    }

    /** True if a file of the field is newer than its results. */
    boolean isOld(FieldFiles field) throws IOException {
        Path summary = folder(field.name()).resolve(ResultFile.SUMMARY.fileName());
        if (!Files.exists(summary)) {
            return false;
        }
        List<Path> files = new ArrayList<>(field.logs());
        for (Path file : new Path[] {field.rig(), field.boundary(), field.prescription(), field.keepOut()}) {
            if (file != null) {
                files.add(file);
            }
        }
        FileTime made = Files.getLastModifiedTime(summary);
        for (Path file : files) {
            if (Files.getLastModifiedTime(file).compareTo(made) > 0) {
                return true;
            }
        }
        return false;
    }

    /** Returns the map of a field's results; without shapes while there are none. */
    Picture picture(String field) {
        Picture picture =
                pictures.get(folder(field), (place, summary) -> pictureIn(head(place.resolve(ReviewPage.FILE))));
        return picture == null ? new Picture(1, 1, List.of()) : picture;
    }

    private static Result own(Path place, Path summary) throws IOException {
        BatchFigures figures = SummaryReader.figures(place);
        SeasonJob job = figures.job();
        List<Action> actions = new ArrayList<>();
        for (JsonNode action : Json.tree(summary).path("actions")) {
            actions.add(new Action(
                    action.path("title").asText(), action.path("text").asText()));
        }
        return new Result(
                orNull(job.startS()),
                job.zone().getId(),
                orNull(job.coveredM2()),
                orNull(figures.skipM2()),
                orNull(figures.overlapM2()),
                orNull(figures.volumeL()),
                orNull(job.nitrogenKg()),
                verdict(head(place.resolve(ReviewPage.FILE))),
                actions,
                files(place));
    }

    private Result in(Reader reader, Path place) throws IOException {
        Result result = own.get(place, FieldResults::own);
        if (result == null) {
            throw new IOException("the results have just been replaced");
        }
        String words = text(head(place.resolve(ReviewPage.FILE)), reader.key());
        return words.isEmpty() ? result : result.in(verdict(words), actions(words));
    }

    /** The page's body for another reader, which it holds packed; empty if it has none. */
    private static String text(String page, String name) throws IOException {
        Matcher texts = TEXTS.matcher(page);
        if (!texts.find()) {
            return "";
        }
        byte[] packed = Base64.getDecoder().decode(texts.group(1));
        try (InputStream in = new InflaterInputStream(new ByteArrayInputStream(packed))) {
            return Json.tree(in.readNBytes(MAX_TEXTS_BYTES))
                    .path("bodies")
                    .path(name)
                    .asText("");
        }
    }

    private static List<Action> actions(String body) {
        List<Action> actions = new ArrayList<>();
        int begin = body.indexOf("<ol class=\"actions\">");
        if (begin < 0) {
            return actions;
        }
        Matcher action = ACTION.matcher(body.substring(begin, body.indexOf("</ol>", begin)));
        while (action.find()) {
            actions.add(
                    new Action(plain(action.group(1)), plain(action.group(2)).strip()));
        }
        return actions;
    }

    private static String plain(String html) {
        return html.replace("&lt;", "<")
                .replace("&gt;", ">")
                .replace("&quot;", "\"")
                .replace("&#39;", "'")
                .replace("&amp;", "&");
    }

    private static List<String> verdict(String page) {
        List<String> sentences = new ArrayList<>();
        Matcher verdict = VERDICT.matcher(page);
        while (verdict.find()) {
            sentences.add(plain(verdict.group(1)));
        }
        return sentences;
    }

    private static Picture pictureIn(String page) {
        Matcher picture = PICTURE.matcher(page);
        List<Shape> shapes = new ArrayList<>();
        if (!picture.find()) {
            return new Picture(1, 1, shapes);
        }
        Matcher shape = SHAPE.matcher(picture.group());
        while (shape.find()) {
            shapes.add(new Shape(shape.group(1), shape.group(2)));
        }
        return new Picture(Integer.parseInt(picture.group(1)), Integer.parseInt(picture.group(2)), shapes);
    }

    private static String head(Path page) throws IOException {
        if (!Files.isRegularFile(page, LinkOption.NOFOLLOW_LINKS)) {
            return "";
        }
        try (InputStream in = Files.newInputStream(page)) {
            return new String(in.readNBytes(HEAD_BYTES), StandardCharsets.UTF_8);
        }
    }

    private static List<String> files(Path place) throws IOException {
        try (Stream<Path> files = Files.walk(place)) {
            return files.filter(file -> Files.isRegularFile(file, LinkOption.NOFOLLOW_LINKS))
                    .map(file -> place.relativize(file).toString().replace('\\', '/'))
                    .sorted()
                    .toList();
        }
    }

    private static @Nullable Double orNull(double value) {
        return Double.isFinite(value) ? value : null;
    }
}
