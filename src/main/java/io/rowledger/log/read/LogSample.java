package io.rowledger.log.read;

import io.rowledger.finding.UnusableInputException;
import io.rowledger.log.header.LogOptions;
import io.rowledger.log.header.Questions;
import io.rowledger.log.source.Line;
import io.rowledger.log.source.NumberParser;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * A log before its columns are settled: what {@link LogGlance} tells, and every n-th of its lines and the last one as numbers, columns that
 * are not understood included.
 *
 * @param glance header, first records and questions
 * @param records number of lines below the header
 * @param values numbers by column and sample, as written; NaN where a field holds no number
 * @param timeS times of the samples, epoch seconds; NaN where they can't be read
 * @param latDeg latitudes of the samples; NaN where there is no position
 * @param lonDeg longitudes of the samples; NaN where there is no position
 */
public record LogSample(
        LogGlance glance, int records, List<double[]> values, double[] timeS, double[] latDeg, double[] lonDeg) {
    /** Copies the list. */
    public LogSample {
        values = List.copyOf(values);
    }

    /**
     * Reads a log from end to end and keeps at most so many lines, evenly spaced, and the last one.
     *
     * @throws io.rowledger.finding.UnusableInputException if it has no header or no record
     */
    public static LogSample of(Path path, LogOptions options, int max) {
        Questions questions = Questions.collected();
        Sampler sampler = new Sampler(max);
        LogFileReader.Beginning beginning = LogFileReader.lines(path, options, questions, sampler::take);
        sampler.end();
        LogGlance glance = LogGlance.of(beginning, questions);
        List<double[]> values = new ArrayList<>();
        for (int c = 0; c < glance.preview().plan().headers().size(); c++) {
            double[] column = new double[sampler.kept.size()];
            for (int i = 0; i < column.length; i++) {
                String[] fields = sampler.kept.get(i).fields();
                column[i] = c < fields.length
                        ? NumberParser.parse(fields[c].strip(), glance.preview().mark())
                        : Double.NaN;
            }
            values.add(column);
        }
        LogSample sample =
                new LogSample(glance, sampler.seen, values, unknown(sampler), unknown(sampler), unknown(sampler));
        sample.place(sampler.kept);
        return sample;
    }

    private static double[] unknown(Sampler sampler) {
        double[] values = new double[sampler.kept.size()];
        Arrays.fill(values, Double.NaN);
        return values;
    }

    /** Reads times and positions where the header and the first records leave no question about them. */
    private void place(List<Line> lines) {
        RawLog log;
        try {
            RecordReader reader = new RecordReader(glance.preview(), new DropCount());
            lines.forEach(line -> reader.read(line.fields(), line.number()));
            log = reader.log();
        } catch (UnusableInputException | IllegalStateException e) {
            // A question is open, and the glance has it.
            return;
        }
        boolean timed = !glance.preview().plan().isUntimed();
        for (int i = 0, k = 0; i < log.records; i++) {
            while (lines.get(k).number() != log.line[i]) {
                k++;
            }
            timeS[k] = timed ? log.timeS[i] : Double.NaN;
            latDeg[k] = log.latDeg[i];
            lonDeg[k] = log.lonDeg[i];
        }
    }

    /** Keeps every n-th line, and every 2n-th whenever there are too many. */
    private static final class Sampler {
        private final int max;
        private final List<Line> kept = new ArrayList<>();
        private int every = 1;
        private int seen;
        private @Nullable Line last;

        Sampler(int max) {
            this.max = max;
        }

        void take(Line line) {
            if (seen++ % every != 0) {
                last = new Line(line.fields().clone(), line.number());
                return;
            }
            last = null;
            kept.add(new Line(line.fields().clone(), line.number()));
            if (kept.size() >= max) {
                for (int i = 0; 2 * i < kept.size(); i++) {
                    kept.set(i, kept.get(2 * i));
                }
                kept.subList((kept.size() + 1) / 2, kept.size()).clear();
                every *= 2;
            }
        }

        /** Keeps the last line too: it tells when and where the log ends. */
        void end() {
            if (last != null) {
                kept.add(last);
            }
        }
    }
}
