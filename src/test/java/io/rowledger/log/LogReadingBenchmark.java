package io.rowledger.log;

import java.io.BufferedWriter;
import java.io.IOException;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Random;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVParser;
import org.apache.commons.csv.CSVRecord;

/**
 * Reading a log of 144,000 records and 24 outlets against a bare Commons CSV pass over the same file that parses every
 * number. Run by hand: {@code java -cp target/test-classes:target/classes:... io.rowledger.log.LogReadingBenchmark}.
 */
public final class LogReadingBenchmark {
    private static final int RECORDS = 144_000;
    private static final int OUTLETS = 24;
    private static final int ROUNDS = 8;

    private LogReadingBenchmark() {}

    /** Prints megabytes a second for both, round by round. */
    public static void main(String[] arguments) throws IOException {
        Path log = Files.createTempFile("rowledger-benchmark", ".csv");
        try {
            write(log);
            double megabytes = Files.size(log) / 1e6;
            PrintStream out = System.out;
            out.printf(Locale.ROOT, "%.1f MB, %d records, %d outlets%n", megabytes, RECORDS, OUTLETS);
            LogOptions options = new LogOptions(Map.of(), List.of("uan"), OUTLETS);
            for (int round = 0; round < ROUNDS; round++) {
                long start = System.nanoTime();
                double bare = barePass(log);
                long middle = System.nanoTime();
                int records = LogReader.read(List.of(log), options).table().records();
                long end = System.nanoTime();
                double bareS = (middle - start) * 1e-9;
                double readS = (end - middle) * 1e-9;
                out.printf(
                        Locale.ROOT,
                        "bare %.2f s (%.0f MB/s), read %.2f s (%.0f MB/s), ratio %.2f; %d records, sum %.3g%n",
                        bareS,
                        megabytes / bareS,
                        readS,
                        megabytes / readS,
                        readS / bareS,
                        records,
                        bare);
            }
        } finally {
            Files.delete(log);
        }
    }

    private static double barePass(Path log) throws IOException {
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

    private static void write(Path log) throws IOException {
        Random random = new Random(7);
        try (BufferedWriter out = Files.newBufferedWriter(log)) {
            out.write("time,lat,lon,fix,hdop,speed[mph],course[deg],down,target[gal/ac]");
            for (int row = 1; row <= OUTLETS; row++) {
                out.write(String.format(Locale.ROOT, ",flow_%02d[gal/min]", row));
            }
            out.write('\n');
            Instant start = Instant.parse("2026-05-14T10:00:00Z");
            StringBuilder line = new StringBuilder();
            for (int i = 0; i < RECORDS; i++) {
                line.setLength(0);
                Instant time = start.plusMillis(i * 100L);
                line.append(time.toString(), 0, 19).append('.').append(i % 10).append('Z');
                line.append(String.format(Locale.ROOT, ",%.8f,%.8f,4,0.8", 41.7 + i * 2e-6, -88.1 + (i % 7) * 1e-8));
                line.append(",5.")
                        .append(random.nextInt(90) + 10)
                        .append(",359.")
                        .append(random.nextInt(90) + 10);
                line.append(",1,42.0");
                for (int row = 0; row < OUTLETS; row++) {
                    line.append(",0.").append(4000 + random.nextInt(999));
                }
                out.append(line).append('\n');
            }
        }
    }
}
