package io.rowledger.bench;

import io.rowledger.analysis.Analysis;
import io.rowledger.analysis.JobFiles;
import io.rowledger.analysis.Pipeline;
import io.rowledger.analysis.Progress;
import io.rowledger.document.pdf.Paper;
import io.rowledger.output.Reports;
import io.rowledger.report.common.Audience;
import io.rowledger.report.common.ReportOptions;
import io.rowledger.units.UnitSystem;
import java.nio.file.Path;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Locale;

/**
 * Does what {@code report} does, once, in a fresh process, and prints what each stage took: a line of strips, then stage
 * and seconds between tabs.
 */
public final class Stages {
    private Stages() {}

    /** Arguments: folder with log.csv, rig.yaml and boundary.geojson; folder to write into. */
    public static void main(String[] args) {
        Path in = Path.of(args[0]);
        int threads = Runtime.getRuntime().availableProcessors();
        Clock clock = new Clock();
        JobFiles files =
                new JobFiles(List.of(in.resolve("log.csv")), in.resolve("rig.yaml"), in.resolve("boundary.geojson"));
        Analysis analysis = Pipeline.analyze(files, threads, clock);
        clock.begins("writing the reports", "");
        ReportOptions options = new ReportOptions(UnitSystem.US, Paper.LETTER, ZoneOffset.UTC, null, "benchmark");
        Reports.write(
                analysis,
                options,
                Path.of(args[1]),
                EnumSet.of(Audience.APPLICATOR, Audience.DEALER),
                files.all(),
                threads);
        clock.begins("", "");
        long strips =
                (long) analysis.strips().poses().steps() * analysis.strips().rows();
        System.out.println("strips\t" + strips);
        clock.print();
    }

    private static final class Clock implements Progress {
        private final List<String> names = new ArrayList<>();
        private final List<Long> starts = new ArrayList<>();

        @Override
        public void begins(String phase, String detail) {
            names.add(phase);
            starts.add(System.nanoTime());
        }

        void print() {
            for (int i = 0; i + 1 < names.size(); i++) {
                double seconds = (starts.get(i + 1) - starts.get(i)) * 1e-9;
                System.out.printf(Locale.ROOT, "%s\t%.3f%n", names.get(i), seconds);
            }
        }
    }
}
