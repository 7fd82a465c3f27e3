package io.rowledger.log.source;

import io.rowledger.bench.BenchJob;
import io.rowledger.log.LogReader;
import io.rowledger.log.header.LogOptions;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.List;
import java.util.concurrent.TimeUnit;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVParser;
import org.apache.commons.csv.CSVRecord;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.OutputTimeUnit;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.Setup;
import org.openjdk.jmh.annotations.State;

/** Reading the log against a bare pass of the CSV library over the same file that parses every number. */
@State(Scope.Benchmark)
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.MILLISECONDS)
public class LogReadingBenchmark {
    private Path log;
    private LogOptions options;

    /** Finds the log. */
    @Setup
    public void prepare() {
        log = BenchJob.log();
        options = BenchJob.options();
    }

    /** The yardstick. */
    @Benchmark
    public double barePass() throws IOException {
        double sum = 0;
        try (CSVParser parser = CSVParser.parse(log, StandardCharsets.UTF_8, CSVFormat.DEFAULT)) {
            boolean header = true;
            for (CSVRecord record : parser) {
                for (int i = 1; !header && i < record.size(); i++) {
                    sum += Double.parseDouble(record.get(i));
                }
                header = false;
            }
        }
        return sum;
    }

    /** The program's reader: checks, units, cleaning, columns. */
    @Benchmark
    public int read() {
        return LogReader.read(List.of(log), options).table().records();
    }
}
