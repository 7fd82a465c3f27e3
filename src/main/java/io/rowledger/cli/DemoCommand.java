package io.rowledger.cli;

import io.rowledger.analysis.Analysis;
import io.rowledger.analysis.JobFiles;
import io.rowledger.analysis.Pipeline;
import io.rowledger.document.pdf.Paper;
import io.rowledger.finding.RegularFile;
import io.rowledger.finding.UnusableInputException;
import io.rowledger.output.NewFiles;
import io.rowledger.report.common.Audience;
import io.rowledger.units.UnitSystem;
import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
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
        requireRoom();
        try (NewFiles made = new NewFiles()) {
            for (Sample sample : SAMPLES) {
                Path folder = out.resolve("logs").resolve(sample.name());
                made.willMake(out.resolve(sample.name()));
                Path log = unpack(sample, sample.log(), folder, made);
                Path rig = unpack(sample, "rig.yaml", folder, made);
                Path boundary = sample.boundary() == null ? null : unpack(sample, sample.boundary(), folder, made);
                JobFiles files = new JobFiles(List.of(log), rig, boundary);
                Analysis analysis = Pipeline.analyze(files, results.threadCount(), console.progress(false));
                console.out().println(sample.name() + ":");
                results.write(analysis, files, out.resolve(sample.name()), console.out());
            }
            made.keep();
        }
        return Main.DONE;
    }

    private void requireRoom() {
        if (out.toString().isEmpty()) {
            throw UnusableInputException.found("an empty name")
                    .atColumn("--out")
                    .expected("a folder for samples and results")
                    .hint("leave --out out to use rowledger-demo");
        }
    }

    private static Path unpack(Sample sample, String file, Path folder, NewFiles made) {
        String resource = "/sample-logs/" + sample.name() + "/" + file;
        try (InputStream in = DemoCommand.class.getResourceAsStream(resource)) {
            if (in == null) {
                throw new IllegalStateException("the jar lacks " + resource);
            }
            Path path = folder.resolve(file);
            byte[] bytes = in.readAllBytes();
            if (Files.exists(path)) {
                requireSample(path, bytes);
            }
            made.willMake(path);
            Files.createDirectories(folder);
            Files.write(path, bytes);
            return path;
        } catch (IOException e) {
            String reason = RegularFile.reason(e);
            throw UnusableInputException.found("that the sample can't be written (" + reason + ")")
                    .inFile(folder.toString())
                    .expected("a folder that can be written, with room for the samples and their results")
                    .hint("make room or allow writing there, or name another folder with --out");
        }
    }

    /** A file that is neither this sample nor the beginning of it, as a killed run may leave it, is somebody's own. */
    private static void requireSample(Path path, byte[] sample) throws IOException {
        byte[] there = RegularFile.bytes(path, sample.length, "a sample of this program, or nothing");
        if (!Arrays.equals(there, Arrays.copyOf(sample, there.length))) {
            throw UnusableInputException.found("a file that isn't the sample of that name")
                    .inFile(path.toString())
                    .expected("a new folder, or that of an earlier demo")
                    .hint("name another folder with --out; the file is as it was");
        }
    }
}
