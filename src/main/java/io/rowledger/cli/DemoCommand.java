package io.rowledger.cli;

import io.rowledger.analysis.Analysis;
import io.rowledger.analysis.JobFiles;
import io.rowledger.analysis.Pipeline;
import io.rowledger.document.pdf.Paper;
import io.rowledger.finding.UnusableInputException;
import io.rowledger.report.common.Audience;
import io.rowledger.units.UnitSystem;
import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.util.EnumSet;
import java.util.List;
import java.util.Locale;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;

/** {@code rowledger demo}: unpacks the sample logs from the jar and runs the main job on them. */
@Command(
        name = "demo",
        mixinStandardHelpOptions = true,
        description = "Unpacks the sample logs and runs report on each.")
@SuppressWarnings("NullAway.Init")
final class DemoCommand implements Callable<Integer> {
    /** The samples in the jar: folder, log, boundary or null. */
    static final List<Sample> SAMPLES = List.of(
            new Sample("clean", "log.csv.gz", "boundary.geojson"),
            new Sample("plugged-row", "log.csv", "boundary.geojson"),
            new Sample("contour", "log.csv", null));

    @Option(
            names = "--out",
            paramLabel = "DIR",
            defaultValue = "rowledger-demo",
            description = "Where samples and results go (default: ${DEFAULT-VALUE}).")
    private Path out;

    private final Console console;

    DemoCommand(Console console) {
        this.console = console;
    }

    /** One sample field. */
    record Sample(String name, String log, @Nullable String boundary) {}

    @Override
    public Integer call() {
        Results results =
                new Results(UnitSystem.US, Paper.LETTER, null, null, EnumSet.allOf(Audience.class), Locale.ENGLISH);
        for (Sample sample : SAMPLES) {
            Path folder = out.resolve("logs").resolve(sample.name());
            Path log = unpack(sample, sample.log(), folder);
            Path rig = unpack(sample, "rig.yaml", folder);
            Path boundary = sample.boundary() == null ? null : unpack(sample, sample.boundary(), folder);
            JobFiles files = new JobFiles(List.of(log), rig, boundary);
            Analysis analysis = Pipeline.analyse(files, results.threadCount(), console.progress(false));
            console.out().println(sample.name() + ":");
            results.write(analysis, files, out.resolve(sample.name()), console.out());
        }
        return Main.DONE;
    }

    private static Path unpack(Sample sample, String file, Path folder) {
        String resource = "/sample-logs/" + sample.name() + "/" + file;
        try (InputStream in = DemoCommand.class.getResourceAsStream(resource)) {
            if (in == null) {
                throw new IllegalStateException("the jar lacks " + resource);
            }
            Files.createDirectories(folder);
            Path path = folder.resolve(file);
            Files.copy(in, path, StandardCopyOption.REPLACE_EXISTING);
            return path;
        } catch (IOException e) {
            throw UnusableInputException.found("that the sample can't be written: " + e.getMessage())
                    .inFile(folder.toString())
                    .expected("a folder that can be written")
                    .hint("name another with --out");
        }
    }
}
