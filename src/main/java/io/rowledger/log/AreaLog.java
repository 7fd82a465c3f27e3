package io.rowledger.log;

import io.rowledger.digest.Sha256;
import io.rowledger.finding.RefusalKind;
import io.rowledger.finding.UnusableInputException;
import io.rowledger.log.clean.FileChecks;
import io.rowledger.log.clean.RateConversion;
import io.rowledger.log.header.ColumnName;
import io.rowledger.log.header.LogOptions;
import io.rowledger.log.header.LogPreview;
import io.rowledger.log.header.LogQuantity;
import io.rowledger.log.header.RowMapping;
import io.rowledger.log.read.ColumnMeaning;
import io.rowledger.log.read.DropReason;
import io.rowledger.log.read.FileLog;
import io.rowledger.log.read.LogFileReader;
import io.rowledger.log.read.LogGlance;
import io.rowledger.log.read.RawLog;
import io.rowledger.log.source.LogFile;
import io.rowledger.log.source.LogSource;
import io.rowledger.log.source.LoggedPolygons;
import io.rowledger.log.source.NumberParser;
import io.rowledger.log.taskdata.ReadFile;
import io.rowledger.log.taskdata.TaskData;
import io.rowledger.maps.MapShape;
import io.rowledger.text.Message;
import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.EnumSet;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.IntStream;

/**
 * Polygons of covered ground with one rate per area each, handed in as a log: a shapefile, GeoPackage, GeoJSON or KML. Times
 * may be cut to the minute or missing. There is no path, so nothing is said of rows, speeds, passes or flows.
 *
 * @param reading the table has one record for each area, at the middle of its box; its flows are unknown
 * @param areas in the order of the records
 */
public record AreaLog(LogReading reading, List<Area> areas) {
    /** Questions that come down to which attribute is the rate. */
    private static final Set<RefusalKind> OF_RATE =
            EnumSet.of(RefusalKind.FLOW_COLUMN, RefusalKind.FLOW_OR_RATE_UNIT, RefusalKind.FLOW_UNIT);

    private static final Set<LogQuantity> PLACE = EnumSet.of(LogQuantity.LAT, LogQuantity.LON, LogQuantity.TIME);
    /** Attributes that a refusal shows. */
    private static final int MAX_SHOWN = 8;

    /** Copies the areas. */
    public AreaLog {
        areas = List.copyOf(areas);
    }

    /**
     * One polygon, or several that the file holds as one.
     *
     * @param shapes polygons in degrees
     * @param rateLPerM2 per product, L/m²; NaN if it is unknown. Shared, read only.
     * @param targetLPerM2 per product, L/m²; NaN if the file has none. Shared, read only.
     */
    public record Area(List<MapShape> shapes, double[] rateLPerM2, double[] targetLPerM2) {
        /** Copies the list of shapes. */
        public Area {
            shapes = List.copyOf(shapes);
        }
    }

    /** An area with its time and place. */
    private record Timed(double timeS, double latDeg, double lonDeg, Area area) {}

    /** Returns true if a log holds polygons; task data never does, its time logs hold points. */
    public static boolean is(Path log) {
        return !TaskData.is(log) && LoggedPolygons.are(log);
    }

    /**
     * Reads the polygons of one job.
     *
     * @throws UnusableInputException if a file holds no polygons, can't be read, or is given twice
     */
    public static AreaLog read(List<Path> logs, LogOptions options) {
        List<FileLog> files = new ArrayList<>();
        List<ReadFile> beside = new ArrayList<>();
        List<Timed> areas = new ArrayList<>();
        for (Path log : logs) {
            FileLog file = file(log, options);
            requirePolygons(log, file);
            FileChecks.beforeCleaning(file);
            requireWhole(file);
            requireOnce(file, files);
            files.add(file);
            areas.addAll(areas(file, log));
            for (Path part : LogFile.parts(log)) {
                beside.add(new ReadFile(part.toString(), digest(part)));
            }
        }
        areas.sort(Comparator.comparingDouble(Timed::timeS));
        List<ColumnMeaning> meanings = new ArrayList<>();
        List<Message> notes = new ArrayList<>();
        for (FileLog file : files) {
            meanings.addAll(file.columnMeanings());
            notes.addAll(notes(file));
        }
        List<LogSource> sources = files.stream().map(FileLog::source).toList();
        LogColumns columns = columns(areas, files.get(0));
        columns.days = Columns.days(files);
        columns.zoneAssumed = Columns.zoneAssumed(files);
        LogTable table = new LogTable(columns, sources);
        return new AreaLog(
                new LogReading(table, meanings, notes, beside, List.of()),
                areas.stream().map(Timed::area).toList());
    }

    private static FileLog file(Path log, LogOptions options) {
        try {
            return LogFileReader.read(log, options);
        } catch (UnusableInputException e) {
            boolean ofRate = is(log) && e.kind() != null && OF_RATE.contains(e.kind());
            throw ofRate
                    ? withoutRate(LogGlance.of(log, options).preview(), e.kind() == RefusalKind.FLOW_COLUMN, options)
                    : e;
        }
    }

    /**
     * Returns the questions about a file of polygons: they need no time, and the one thing to know of them is which attribute is
     * the rate, in which unit.
     */
    static List<UnusableInputException> questions(
            LogPreview preview, List<UnusableInputException> all, LogOptions options) {
        List<UnusableInputException> questions = new ArrayList<>();
        for (UnusableInputException question : all) {
            RefusalKind kind = question.kind();
            if (kind != null && OF_RATE.contains(kind)) {
                questions.add(withoutRate(preview, kind == RefusalKind.FLOW_COLUMN, options));
            } else if (kind != RefusalKind.COLUMN
                    || !LogQuantity.TIME.canonical().equals(question.about())) {
                questions.add(question);
            }
        }
        return questions;
    }

    private static UnusableInputException withoutRate(LogPreview preview, boolean unknown, LogOptions options) {
        String key = options.productKeys().size() > 1 ? options.productKeys().get(0) + "." : "";
        List<String> attributes = new ArrayList<>();
        String example = "";
        List<String> headers = preview.plan().headers();
        for (int i = 0; i < headers.size(); i++) {
            List<String> texts = preview.texts(i);
            Optional<ColumnName> name = ColumnName.of(headers.get(i));
            boolean place = name.isPresent() && PLACE.contains(name.get().role().quantity());
            boolean number = !texts.isEmpty() && !Double.isNaN(NumberParser.parse(texts.get(0), preview.mark()));
            if (!place && number) {
                attributes.add(headers.get(i).strip() + " (" + texts.get(0) + ")");
                boolean rate = name.isPresent() && name.get().role().quantity().isRate();
                boolean better = rate || (example.isEmpty() && RowMapping.mayBeRate(headers.get(i)));
                example = better ? headers.get(i).strip() : example;
            }
        }
        String among = attributes.isEmpty()
                ? ""
                : " among " + String.join(", ", attributes.subList(0, Math.min(MAX_SHOWN, attributes.size())));
        return UnusableInputException.found(
                        unknown
                                ? "polygons without an attribute that is plainly a rate" + among
                                : "polygons with a rate, but not its unit" + (among.isEmpty() ? "" : ",") + among)
                .kind(RefusalKind.FLOW_COLUMN)
                .inFile(preview.file())
                .expected("the attribute that holds the rate per area of each polygon, and its unit")
                .hint(
                        attributes.isEmpty()
                                ? "export the polygons with the rate that each of them got"
                                : "write columns: {\"" + key + "rate[gal/ac]\": \""
                                        + (example.isEmpty() ? "its name" : example)
                                        + "\"} into the rig file, with the attribute that is the rate and the unit that it is in: "
                                        + "gal/ac or L/ha, or nitrogen_rate[lb/ac] if it is nitrogen");
    }

    /** Returns the assumptions made about one file. */
    static List<Message> notes(FileLog file) {
        List<Message> notes = new ArrayList<>();
        for (Message note : LogReader.notes(file)) {
            notes.add(
                    note.key().equals("notes.log.untimed")
                            ? Message.of("notes.areas.untimed", file.shortName())
                            : note);
        }
        return notes;
    }

    private static void requirePolygons(Path log, FileLog file) {
        if (!is(log)) {
            throw UnusableInputException.found("records beside polygons of another file")
                    .inFile(file.name())
                    .expected("either logs with a record for each position, or polygons with a rate each")
                    .hint("give only one of the two forms: both show the same work");
        }
    }

    /** A polygon that is left out would make the job smaller than it was. */
    private static void requireWhole(FileLog file) {
        int unreadable = file.drops().count(DropReason.UNREADABLE);
        if (unreadable > 0) {
            throw UnusableInputException.found(unreadable + (unreadable == 1 ? " polygon" : " polygons")
                            + " with a time or a rate that can't be read, the first as feature "
                            + (file.drops().firstLine(DropReason.UNREADABLE)
                                    - file.plan().headerLine()))
                    .inFile(file.name())
                    .expected("a rate for each polygon, and a time for each or for none")
                    .hint("correct these features, or leave their rate blank where it isn't known");
        }
    }

    private static void requireOnce(FileLog file, List<FileLog> before) {
        for (FileLog other : before) {
            if (other.source().sha256().equals(file.source().sha256())) {
                throw UnusableInputException.found("the same file as " + other.name())
                        .inFile(file.name())
                        .expected("each file once")
                        .hint("take one of the two out of the call");
            }
        }
    }

    /** Returns the areas of a file; a polygon that repeats another to the last digit counts once. */
    private static List<Timed> areas(FileLog file, Path log) {
        List<List<MapShape>> shapes = LoggedPolygons.of(log);
        double[][] rates = RateConversion.ratesLPerM2(file);
        int products = rates.length;
        double[][] targets = new double[products][];
        for (int p = 0; p < products; p++) {
            targets[p] = targets(file, file.plan().products().get(p));
        }
        RawLog raw = file.log();
        boolean[] kept = new boolean[raw.records];
        Map<Integer, List<Integer>> seen = new HashMap<>();
        List<Timed> areas = new ArrayList<>();
        for (int i = 0; i < raw.records; i++) {
            List<MapShape> polygons = shapes.get(raw.line[i] - file.plan().headerLine() - 1);
            List<Integer> alike = seen.computeIfAbsent(hash(polygons), key -> new ArrayList<>());
            int record = i;
            kept[i] = alike.stream()
                    .noneMatch(j -> (file.plan().isUntimed() || raw.timeS[j] == raw.timeS[record])
                            && same(shapes.get(raw.line[j] - file.plan().headerLine() - 1), polygons));
            alike.add(i);
            if (!kept[i]) {
                file.drops().addRepeated(raw.line[i]);
                continue;
            }
            double[] rate = IntStream.range(0, products)
                    .mapToDouble(p -> rates[p][record])
                    .toArray();
            double[] target = IntStream.range(0, products)
                    .mapToDouble(p -> targets[p].length == 0 ? Double.NaN : targets[p][record])
                    .toArray();
            double timeS = file.plan().isUntimed() ? i : raw.timeS[i];
            areas.add(new Timed(timeS, raw.latDeg[i], raw.lonDeg[i], new Area(polygons, rate, target)));
        }
        raw.keep(kept);
        if (areas.isEmpty()) {
            throw UnusableInputException.found("no polygon with a place")
                    .inFile(file.name())
                    .expected("polygons with a rate each")
                    .hint("export the file again");
        }
        return areas;
    }

    private static double[] targets(FileLog file, String product) {
        for (int k = 0; k < file.reader().numberColumns().size(); k++) {
            var role = file.reader().numberColumns().get(k).role();
            if (role.quantity() == LogQuantity.TARGET && role.product().equals(product)) {
                return file.log().numbers[k];
            }
        }
        return new double[0];
    }

    private static int hash(List<MapShape> polygons) {
        int hash = 1;
        for (MapShape polygon : polygons) {
            for (double[] ring : polygon.parts()) {
                hash = 31 * hash + Arrays.hashCode(ring);
            }
        }
        return hash;
    }

    private static boolean same(List<MapShape> a, List<MapShape> b) {
        boolean same = a.size() == b.size();
        for (int s = 0; same && s < a.size(); s++) {
            List<double[]> one = a.get(s).parts();
            List<double[]> other = b.get(s).parts();
            same = one.size() == other.size();
            for (int r = 0; same && r < one.size(); r++) {
                same = Arrays.equals(one.get(r), other.get(r));
            }
        }
        return same;
    }

    /** The table of the areas: places and times; everything else is unknown. */
    private static LogColumns columns(List<Timed> areas, FileLog first) {
        int n = areas.size();
        int rows = first.plan().outlets();
        int products = first.plan().products().size();
        LogColumns c = new LogColumns();
        c.areas = true;
        c.timed = !first.plan().isUntimed();
        c.products = first.plan().products();
        c.timeS = areas.stream().mapToDouble(Timed::timeS).toArray();
        c.latDeg = areas.stream().mapToDouble(Timed::latDeg).toArray();
        c.lonDeg = areas.stream().mapToDouble(Timed::lonDeg).toArray();
        c.breakBefore = new boolean[n];
        double[] unknown = new double[n];
        Arrays.fill(unknown, Double.NaN);
        c.flowLPerS = new double[products][rows][];
        c.meterRows = new int[products][1][];
        c.meterFlowLPerS = new double[products][1][];
        c.targetLPerM2 = new double[products][0];
        c.totalLPerS = new double[products][0];
        for (int p = 0; p < products; p++) {
            Arrays.fill(c.flowLPerS[p], unknown);
            c.meterRows[p][0] = IntStream.range(0, rows).toArray();
            c.meterFlowLPerS[p][0] = unknown;
        }
        return c;
    }

    private static String digest(Path part) {
        try {
            return Sha256.of(part);
        } catch (IOException e) {
            throw LogFile.damaged(part.toString(), e, 0);
        }
    }
}
