package io.rowledger.bench;

import io.rowledger.site.SitePage;
import java.util.Collection;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import org.openjdk.jmh.results.Result;
import org.openjdk.jmh.results.RunResult;
import org.openjdk.jmh.runner.Runner;
import org.openjdk.jmh.runner.RunnerException;
import org.openjdk.jmh.runner.options.Options;
import org.openjdk.jmh.runner.options.OptionsBuilder;
import org.openjdk.jmh.runner.options.TimeValue;

/** Runs the kernels' benchmarks and prints, as rows of a table, milliseconds a run and seconds per million strips. */
public final class Kernels {
    private Kernels() {}

    /** Arguments: a pattern of benchmark names; all without one. */
    public static void main(String[] args) throws RunnerException {
        long strips = BenchJob.read().stripCount();
        Options options = new OptionsBuilder()
                .include(args.length > 0 ? args[0] : ".*")
                .forks(1)
                .warmupIterations(3)
                .warmupTime(TimeValue.seconds(2))
                .measurementIterations(5)
                .measurementTime(TimeValue.seconds(2))
                .build();
        Collection<RunResult> runs = new Runner(options).run();
        print(
                runs.stream()
                        .sorted(Comparator.comparing(run -> run.getParams().getBenchmark()))
                        .toList(),
                strips);
    }

    private static void print(List<RunResult> runs, long strips) {
        StringBuilder table =
                new StringBuilder("| kernel | ms | ± ms | s per million strips |\n| --- | ---: | ---: | ---: |\n");
        for (RunResult run : runs) {
            Result<?> result = run.getPrimaryResult();
            String[] name = run.getParams().getBenchmark().split("\\.", -1);
            table.append(String.format(
                    Locale.ROOT,
                    "| %s.%s | %.1f | %.1f | %.4f |%n",
                    name[name.length - 2],
                    name[name.length - 1],
                    result.getScore(),
                    result.getScoreError(),
                    result.getScore() * 1e-3 / (strips / 1e6)));
        }
        System.out.printf(Locale.ROOT, "%n%.2f million strips (steps x rows)%n%n%s", strips / 1e6, table);
        SitePage.write("speed", "kernels", table.toString());
    }
}
