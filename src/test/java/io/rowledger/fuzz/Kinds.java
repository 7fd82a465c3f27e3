package io.rowledger.fuzz;

import io.rowledger.analysis.JobFiles;
import io.rowledger.analysis.Pipeline;
import io.rowledger.analysis.Progress;
import io.rowledger.document.pdf.Paper;
import io.rowledger.field.BoundaryReader;
import io.rowledger.field.KeepOutReader;
import io.rowledger.field.PrescriptionReader;
import io.rowledger.finding.UnusableInputException;
import io.rowledger.geo.LocalPlane;
import io.rowledger.log.AreaLog;
import io.rowledger.log.LogReader;
import io.rowledger.log.header.LogHints;
import io.rowledger.log.header.LogOptions;
import io.rowledger.log.taskdata.TaskData;
import io.rowledger.report.common.ReportOptions;
import io.rowledger.report.compare.ComparisonReport;
import io.rowledger.report.findings.SavedDiagnosis;
import io.rowledger.report.season.SeasonBuilder;
import io.rowledger.results.DiagnosisReader;
import io.rowledger.results.SummaryReader;
import io.rowledger.rig.PrescriptionColumns;
import io.rowledger.rig.Product;
import io.rowledger.rig.RigReader;
import io.rowledger.units.Dimension;
import io.rowledger.units.Unit;
import io.rowledger.units.UnitSystem;
import java.nio.file.Path;
import java.time.LocalDate;
import java.time.ZoneId;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.Set;
import java.util.function.UnaryOperator;
import org.locationtech.jts.geom.Envelope;

/** Every kind of file the program reads, how it is damaged and who reads it. */
final class Kinds {
    private static final LocalPlane PLANE = new LocalPlane(41.5, -93.5);
    private static final Envelope DRIVEN = new Envelope(-100, 100, -100, 100);
    private static final String[] ODD_NAMES = {
        "../a.csv", "/a.kml", "C:\\a.shp", "a/../../b.json", "", "\u00e4.csv", "a.csv"
    };

    private final Corpus corpus;

    Kinds(Corpus corpus) {
        this.corpus = corpus;
    }

    List<Kind> all() {
        List<Kind> all = new ArrayList<>();
        all.addAll(logs());
        all.addAll(maps());
        all.addAll(shapefiles());
        all.addAll(taskData());
        List<Path> good = new ArrayList<>(Corpus.cases(".*/good-log/.*/rig\\.yaml"));
        good.add(corpus.job.resolve("rig.yaml"));
        good.add(Path.of("sample-logs/clean/rig.yaml"));
        List<Path> rigs = half(good, Corpus.cases(".*/bad-input/rig-.*/rig\\.yaml"));
        all.add(new Kind(
                "rig file",
                200,
                one(rigs, "rig.yaml", Words.RIG, false),
                (path, random) -> RigReader.read(path),
                this::wholeRig));
        all.add(results(
                "summary.json",
                20,
                path -> SeasonBuilder.build(List.of(SummaryReader.figures(path).job()))));
        SavedDiagnosis before = DiagnosisReader.read(corpus.job.resolve("out"));
        ReportOptions options = new ReportOptions(UnitSystem.US, Paper.LETTER, ZoneOffset.UTC, null, "test");
        all.add(results(
                "diagnosis.json", 20, path -> ComparisonReport.of(before, DiagnosisReader.read(path), options)));
        return all;
    }

    /** A file under the same name whatever it is made of: names must not help. */
    private static Kind.Maker one(List<Path> seeds, String name, List<String> words, boolean binary) {
        return packed(seeds, name, words, binary, bytes -> bytes);
    }

    /** The same, packed after it was damaged; now and then the pack is damaged too. */
    private static Kind.Maker packed(
            List<Path> seeds, String name, List<String> words, boolean binary, UnaryOperator<byte[]> pack) {
        return random -> {
            Path from = any(seeds, random);
            byte[] bytes =
                    new Mutator(random, words).damaged(Corpus.bytes(from), Corpus.bytes(any(seeds, random)), binary);
            return Input.of(from.toString(), name, bytes).with(name, pack.apply(bytes));
        };
    }

    /** As many of these, said again and again, as of the others. */
    private static List<Path> half(List<Path> these, List<Path> others) {
        List<Path> all = new ArrayList<>(others);
        for (int i = 0; i < Math.max(others.size(), these.size()); i++) {
            all.add(these.get(i % these.size()));
        }
        return all;
    }

    private static <T> T any(List<T> list, Random random) {
        return list.get(random.nextInt(list.size()));
    }

    private static byte[] raw(byte[] packed, Random random) {
        return new Mutator(random, Words.BINARY).damaged(packed, packed, true);
    }

    private List<Kind> logs() {
        List<Path> plain = half(
                Corpus.cases(".*/(good-log|coarse-log)/.*\\.(csv|tsv)"), Corpus.cases(".*/bad-input/.*\\.(csv|tsv)"));
        List<Path> gz = Corpus.cases(".*/good-log/.*\\.gz");
        List<Path> zip = Corpus.cases(".*/good-log/.*\\.zip");
        List<Path> json = Corpus.cases(".*/good-log/.*\\.geojson");
        List<Path> gpkg = Corpus.cases(".*/good-log/.*\\.gpkg");
        List<Path> kml = Corpus.cases(".*/good-log/.*\\.kml");
        List<Path> areas = Corpus.cases(".*/(bad-input/log-|good-areas/)polygons[^/]*/.*\\.geojson");
        List<Path> shapes = Corpus.cases(".*/good-log/points-shapefile[^/]*/.*\\.zip");
        LogOptions namedColumns = RigReader.read(
                        Path.of("src/test/resources/cases/good-log/points-shapefile-zip/rig.yaml"))
                .rig()
                .logOptions();
        List<Path> workbooks = Corpus.cases(".*/good-log/.*\\.xlsx");
        Kind.Maker gzip = packed(plain, "log.csv.gz", Words.LOG, false, Corpus::gzip);
        return List.of(
                new Kind("log, CSV", 205, one(plain, "log.csv", Words.LOG, false), Kinds::readLog, this::wholeLog),
                new Kind(
                        "log, gzip",
                        25,
                        random -> random.nextBoolean()
                                ? gzip.make(random)
                                : Input.of("gzip", "log.csv.gz", raw(Corpus.bytes(any(gz, random)), random)),
                        Kinds::readLog,
                        this::wholeLog),
                new Kind(
                        "log, zip",
                        25,
                        random -> archive("log.zip", Corpus.unzip(any(zip, random)), Words.LOG, false, random),
                        Kinds::readLog,
                        this::wholeLog),
                new Kind("log, GeoJSON", 15, one(json, "log", Words.JSON, false), Kinds::readLog, this::wholeLog),
                new Kind("log, KML", 10, one(kml, "log", Words.XML, false), Kinds::readLog, this::wholeLog),
                new Kind("log, polygons", 15, one(areas, "log", Words.JSON, false), Kinds::readLog, this::wholeLog),
                new Kind(
                        "log, shapefile",
                        10,
                        random -> archive("log", Corpus.unzip(any(shapes, random)), Words.BINARY, true, random),
                        (path, random) -> LogReader.read(List.of(path), namedColumns),
                        this::wholeLog),
                new Kind("log, GeoPackage", 15, one(gpkg, "log", Words.BINARY, true), Kinds::readLog, this::wholeLog),
                new Kind(
                        "log, workbook",
                        30,
                        random -> archive("log", Corpus.unzip(any(workbooks, random)), Words.XML, false, random),
                        Kinds::readLog,
                        this::wholeLog));
    }

    /** A zip of files one of which is damaged, or is called otherwise, or of which the zip itself is damaged. */
    private static Input archive(
            String name, Map<String, byte[]> files, List<String> words, boolean binary, Random random) {
        Map<String, byte[]> inside = new LinkedHashMap<>(files);
        String which = any(List.copyOf(inside.keySet()), random);
        byte[] good = inside.getOrDefault(which, new byte[0]);
        int how = random.nextInt(10);
        if (how < 6) {
            inside.put(which, new Mutator(random, words).damaged(good, good, binary));
        } else if (how == 6) {
            inside.put(ODD_NAMES[random.nextInt(ODD_NAMES.length)], good);
        } else if (how == 7) {
            inside.remove(which);
        }
        byte[] zip = Corpus.zip(inside);
        return Input.of("zip of " + files.keySet(), name, how < 8 ? zip : raw(zip, random));
    }

    private static void readLog(Path path, Random random) {
        LogOptions options =
                switch (random.nextInt(8)) {
                    case 0 -> hinted();
                    case 1, 2, 3 -> new LogOptions(Map.of(), List.of("uan"), 3);
                    default -> LogOptions.unknownRig();
                };
        if (!TaskData.is(path) && AreaLog.is(path)) {
            AreaLog.read(List.of(path), options);
        } else {
            LogReader.read(List.of(path), options);
        }
    }

    /** Everything a rig file can say about a log. */
    private static LogOptions hinted() {
        LogHints hints = new LogHints(
                ZoneId.of("America/Chicago"),
                LocalDate.of(2026, 11, 1),
                LogHints.DateOrder.DAY_MONTH_YEAR,
                2418,
                LogHints.Counts.TOTAL,
                700,
                Unit.find("gal/min", Dimension.FLOW).orElseThrow(),
                Set.of("speed"));
        return new LogOptions(Map.of("lat[ddmm.mmmm]", "lat"), List.of("uan"), 3, hints);
    }

    private void wholeLog(Path path, Random random) {
        analyze(new JobFiles(List.of(path), corpus.job.resolve("rig.yaml"), null));
    }

    private void wholeRig(Path path, Random random) {
        analyze(new JobFiles(List.of(corpus.job.resolve("log.csv")), path, null));
    }

    private static void analyze(JobFiles files) {
        Pipeline.analyze(files, 1, Progress.SILENT);
    }

    private List<Kind> maps() {
        List<Path> json = Corpus.cases(".*\\.geojson");
        List<Path> kml = Corpus.cases(".*\\.kml");
        List<Path> kmz = Corpus.cases(".*\\.kmz");
        List<Path> gpkg = Corpus.cases(".*\\.gpkg");
        return List.of(
                map("GeoJSON", 125, one(json, "map", Words.JSON, false)),
                map("KML", 75, one(kml, "map", Words.XML, false)),
                map("KMZ", 25, random -> archive("map", Corpus.unzip(any(kmz, random)), Words.XML, false, random)),
                map("GeoPackage", 40, one(gpkg, "map", Words.BINARY, true)));
    }

    private Kind map(String name, int perMille, Kind.Maker maker) {
        return new Kind(name, perMille, maker, this::readMap, this::wholeMap);
    }

    /** As each of the three maps it may be given as; the message of the last, where it can be none of them. */
    private void readMap(Path path, Random random) {
        List<Product> products =
                RigReader.read(corpus.job.resolve("rig.yaml")).rig().products();
        List<Runnable> uses = List.of(
                () -> BoundaryReader.read(path, PLANE, DRIVEN),
                () -> KeepOutReader.read(path, PLANE, DRIVEN, Double.NaN),
                () -> PrescriptionReader.read(path, PLANE, DRIVEN, products, PrescriptionColumns.NONE));
        UnusableInputException message = null;
        int read = 0;
        for (Runnable use : uses) {
            try {
                use.run();
                read++;
            } catch (UnusableInputException e) {
                message = e;
            }
        }
        if (read == 0 && message != null) {
            throw message;
        }
    }

    private void wholeMap(Path path, Random random) {
        int use = random.nextInt(3);
        analyze(new JobFiles(
                List.of(corpus.job.resolve("log.csv")),
                corpus.job.resolve("rig.yaml"),
                use == 0 ? path : null,
                use == 1 ? path : null,
                use == 2 ? path : null,
                Double.NaN));
    }

    private List<Kind> shapefiles() {
        List<Path> folders = Corpus.folders(Corpus.cases(".*\\.shp"));
        return List.of(
                map("shapefile", 75, random -> {
                    Path folder = any(folders, random);
                    Map<String, byte[]> parts = parts(folder);
                    String which = any(List.copyOf(parts.keySet()), random);
                    byte[] good = parts.getOrDefault(which, new byte[0]);
                    byte[] other = parts(any(folders, random)).getOrDefault(which, good);
                    boolean binary = which.endsWith("shp") || which.endsWith("dbf");
                    byte[] bad = new Mutator(random, Words.BINARY).damaged(good, other, binary);
                    return new Input(folder.toString(), "map.shp", parts).with(which, bad);
                }),
                map(
                        "shapefile, zip",
                        25,
                        random -> archive("map", parts(any(folders, random)), Words.BINARY, true, random)));
    }

    private static Map<String, byte[]> parts(Path folder) {
        Map<String, byte[]> parts = new LinkedHashMap<>();
        Corpus.folder(folder, ".*\\.(shp|dbf|prj|cpg)")
                .forEach((name, bytes) -> parts.put("map" + name.substring(name.lastIndexOf('.')), bytes));
        return parts;
    }

    private List<Kind> taskData() {
        Map<String, byte[]> good = Corpus.folder(corpus.job.resolve("TASKDATA"), ".*(XML|BIN)");
        List<String> names = List.copyOf(good.keySet());
        return List.of(
                new Kind(
                        "task data",
                        35,
                        random -> {
                            String which = any(names, random);
                            boolean binary = which.endsWith("BIN");
                            byte[] bytes = good.getOrDefault(which, new byte[0]);
                            byte[] bad = new Mutator(random, binary ? Words.BINARY : Words.XML)
                                    .damaged(bytes, bytes, binary);
                            return new Input(which, "", good).with(which, bad);
                        },
                        Kinds::readLog,
                        this::wholeLog),
                new Kind(
                        "task data, zip",
                        10,
                        random -> archive("job.zip", good, Words.XML, false, random),
                        Kinds::readLog,
                        this::wholeLog));
    }

    private interface Folder {
        void read(Path folder);
    }

    /** What {@code season} and {@code compare} read: results that somebody may have edited. */
    private Kind results(String name, int perMille, Folder reader) {
        List<Path> seeds = List.of(corpus.job.resolve("out").resolve(name));
        Kind.Reader all = (path, random) -> reader.read(path.getParent());
        return new Kind(name, perMille, one(seeds, name, Words.JSON, false), all, all);
    }
}
