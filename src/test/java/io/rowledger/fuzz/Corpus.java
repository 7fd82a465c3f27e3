package io.rowledger.fuzz;

import io.rowledger.analysis.Analysis;
import io.rowledger.analysis.JobFiles;
import io.rowledger.analysis.Pipeline;
import io.rowledger.analysis.Progress;
import io.rowledger.document.pdf.Paper;
import io.rowledger.output.Reports;
import io.rowledger.report.common.ReportOptions;
import io.rowledger.sim.GnssModel;
import io.rowledger.sim.LogFormat;
import io.rowledger.sim.PassPlan;
import io.rowledger.sim.Scenario;
import io.rowledger.sim.SimResult;
import io.rowledger.sim.SimRig;
import io.rowledger.sim.TaskDataWriter;
import io.rowledger.units.UnitSystem;
import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.Stream;
import java.util.zip.GZIPOutputStream;
import java.util.zip.ZipEntry;
import java.util.zip.ZipInputStream;
import java.util.zip.ZipOutputStream;

/** What is damaged: the cases of the other tests, and a small simulated job in every form. */
final class Corpus {
    private static final Path CASES = Path.of("src/test/resources/cases");
    /** Larger cases are there for their size alone. */
    private static final long MAX_BYTES = 130_000;

    /** A job that reads without fault: log.csv, rig.yaml, boundary.geojson and out/ with what report writes. */
    final Path job;

    Corpus(Path folder) {
        job = folder;
        SimRig rig = SimRig.drawn(3);
        SimResult result = new Scenario(3, rig, PassPlan.rectangle(40, 2, 0, rig.widthM()))
                .gnss(GnssModel.rtk(1))
                .format(LogFormat.customaryUnits().with(LogFormat.Column.ON, LogFormat.Column.TOTAL))
                .withoutGround()
                .run()
                .writeTo(folder);
        TaskDataWriter.of(result).writeTo(folder.resolve("TASKDATA"));
        Analysis analysis = Pipeline.analyze(
                new JobFiles(List.of(folder.resolve("log.csv")), folder.resolve("rig.yaml"), null), 1, Progress.SILENT);
        ReportOptions options = new ReportOptions(UnitSystem.US, Paper.LETTER, ZoneOffset.UTC, null, "test");
        Reports.write(analysis, options, folder.resolve("out"), Set.of(), List.of(), 1);
    }

    /** Files among the cases whose path matches, small ones. */
    static List<Path> cases(String pattern) {
        try (Stream<Path> walk = Files.walk(CASES)) {
            List<Path> found = walk.filter(
                            path -> path.toString().replace('\\', '/').matches(pattern))
                    .filter(path -> path.toFile().isFile() && path.toFile().length() <= MAX_BYTES)
                    .sorted()
                    .toList();
            if (found.isEmpty()) {
                throw new IllegalStateException("no case " + pattern);
            }
            return found;
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    /** All files of a folder that are part of a map, by name. */
    static Map<String, byte[]> folder(Path folder, String pattern) {
        Map<String, byte[]> out = new LinkedHashMap<>();
        try (Stream<Path> list = Files.list(folder)) {
            for (Path path : list.sorted().toList()) {
                String name = path.getFileName().toString();
                if (name.matches(pattern)) {
                    out.put(name, Files.readAllBytes(path));
                }
            }
            return out;
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    static byte[] bytes(Path file) {
        try {
            return Files.readAllBytes(file);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    static byte[] zip(Map<String, byte[]> files) {
        ByteArrayOutputStream packed = new ByteArrayOutputStream();
        try (ZipOutputStream out = new ZipOutputStream(packed, StandardCharsets.UTF_8)) {
            for (Map.Entry<String, byte[]> file : files.entrySet()) {
                out.putNextEntry(new ZipEntry(file.getKey()));
                out.write(file.getValue());
            }
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        return packed.toByteArray();
    }

    static byte[] gzip(byte[] bytes) {
        ByteArrayOutputStream packed = new ByteArrayOutputStream();
        try (GZIPOutputStream out = new GZIPOutputStream(packed)) {
            out.write(bytes);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        return packed.toByteArray();
    }

    static Map<String, byte[]> unzip(Path file) {
        Map<String, byte[]> out = new LinkedHashMap<>();
        try (ZipInputStream in = new ZipInputStream(new ByteArrayInputStream(bytes(file)))) {
            for (ZipEntry entry = in.getNextEntry(); entry != null; entry = in.getNextEntry()) {
                out.put(entry.getName(), in.readAllBytes());
            }
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        return out;
    }

    /** Each folder of these files once. */
    static List<Path> folders(List<Path> files) {
        return new ArrayList<>(files.stream().map(Path::getParent).distinct().toList());
    }
}
