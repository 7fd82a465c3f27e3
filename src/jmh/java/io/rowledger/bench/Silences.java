package io.rowledger.bench;

import io.rowledger.analysis.JobFiles;
import io.rowledger.analysis.Pipeline;
import io.rowledger.analysis.Progress;
import io.rowledger.sim.StretchyLogs;
import java.lang.management.ManagementFactory;
import java.lang.management.ThreadMXBean;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;

/**
 * Prints the processor time per record of the analysis, on one thread, for logs of the same path with 0 to 400 silences: a log in
 * short stretches should cost no more per record than a plain one.
 */
public final class Silences {
    private static final int[] SILENCES = {0, 1, 10, 50, 150, 400};
    private static final int RUNS = 4;
    private static final ThreadMXBean CPU = ManagementFactory.getThreadMXBean();

    private Silences() {}

    /** Arguments: number of records (4240 without one), seconds between records (1 without). */
    public static void main(String[] args) {
        int records = args.length > 0 ? Integer.parseInt(args[0]) : 4240;
        double intervalS = args.length > 1 ? Double.parseDouble(args[1]) : 1;
        System.out.printf(Locale.ROOT, "| silences | processor ms per run | us per record |%n| ---: | ---: | ---: |%n");
        for (int silences : SILENCES) {
            Path folder = Path.of("target", "bench", "silences-" + silences);
            StretchyLogs.write(folder, records, silences, intervalS);
            JobFiles files = new JobFiles(List.of(folder.resolve("log.csv")), folder.resolve("rig.yaml"), null);
            long best = Long.MAX_VALUE;
            for (int run = 0; run < RUNS; run++) {
                long start = CPU.getCurrentThreadCpuTime();
                Pipeline.analyze(files, 1, Progress.SILENT);
                best = Math.min(best, CPU.getCurrentThreadCpuTime() - start);
            }
            System.out.printf(Locale.ROOT, "| %d | %.0f | %.0f |%n", silences, best * 1e-6, best * 1e-3 / records);
        }
    }
}
