package io.rowledger.diagnose.signal;

import io.rowledger.bench.BenchJob;
import java.util.concurrent.TimeUnit;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.OutputTimeUnit;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.Setup;
import org.openjdk.jmh.annotations.State;

/** Every row's flow against the median of the other rows, records times rows. */
@State(Scope.Benchmark)
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.MILLISECONDS)
public class FlowRatiosBenchmark {
    private BenchJob job;
    private LogLimits limits;
    private WorkingSamples work;
    private EvaluationMask evaluated;

    /** Reads the job and finds where rows can be evaluated. */
    @Setup
    public void prepare() {
        job = BenchJob.read();
        limits = LogLimits.of(job.table, 0, job.strips.rows());
        work = WorkingSamples.of(job.track, job.strips, limits.smearS());
        evaluated = EvaluationMask.of(job.table, work, job.strips, job.delivery, limits.smearS());
    }

    /** The matrix of flows and that of ratios. */
    @Benchmark
    public float[][] ratios() {
        FlowRatios ratios = new FlowRatios(0, work, job.rig, evaluated, job.delivery, limits);
        ratios.computeRatios();
        return ratios.ratio;
    }
}
