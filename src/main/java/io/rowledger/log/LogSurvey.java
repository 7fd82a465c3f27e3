package io.rowledger.log;

import io.rowledger.finding.UnusableInputException;
import io.rowledger.geo.LocalPlane;
import io.rowledger.log.clean.LogCleaning;
import io.rowledger.log.header.LogOptions;
import io.rowledger.log.header.LogPreview;
import io.rowledger.log.header.LogQuantity;
import io.rowledger.log.read.ColumnMeaning;
import io.rowledger.log.read.FileLog;
import io.rowledger.log.read.LogFileReader;
import io.rowledger.log.read.LogSample;
import io.rowledger.log.read.RawLog;
import io.rowledger.log.taskdata.TaskData;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.stream.IntStream;

/**
 * One log as a person sees it before a rig file says what it holds: columns with their values, its path, its time, and every
 * question at once.
 *
 * @param file the file as given
 * @param form packing, character set and delimiter in words
 * @param records number of records
 * @param used number of records that can be used; 0 while there are questions
 * @param columns every column, in the order of the file
 * @param problems the questions; empty if the log can be used as it is
 * @param timeS times of the path, epoch seconds; empty while the times or places can't be read
 * @param latDeg latitudes of the path
 * @param lonDeg longitudes of the path
 * @param flowing true where liquid flowed at a place of the path; empty while the flows are not known
 * @param gaps number of silences that a report does not bridge
 * @param flowingM distance with liquid flowing, m; NaN while the flows are not known
 * @param rows number of rows with a flow; 0 while they are not known
 * @param zone time zone proposed from the position; empty if none is
 * @param usualMps usual speed by the positions, m/s; NaN if unknown
 * @param zoneless true if the times are written without a time zone
 */
public record LogSurvey(
        String file,
        String form,
        int records,
        int used,
        List<SurveyColumn> columns,
        List<UnusableInputException> problems,
        double[] timeS,
        double[] latDeg,
        double[] lonDeg,
        boolean[] flowing,
        int gaps,
        double flowingM,
        int rows,
        String zone,
        double usualMps,
        boolean zoneless) {
    /** Samples of a trace and a path: more than a small picture shows. */
    private static final int MAX_SAMPLES = 1200;

    /** Shortest silence that is counted, s: longer than a report bridges. */
    private static final double MIN_SILENT_S = 5;

    /** Copies the lists. */
    public LogSurvey {
        columns = List.copyOf(columns);
        problems = List.copyOf(problems);
    }

    /**
     * A column.
     *
     * @param meaning how it is understood
     * @param first its first values as written
     * @param trace its values at evenly spaced lines, as written; NaN where there is no number
     * @param withSpeed correlation with the speed by the positions, −1 to 1; NaN if it holds no changing numbers
     * @param usual its usual value while the machine moves, as written; NaN if it holds no positive numbers
     * @param readings what its usual value comes to in each unit of flow or rate; empty if it can't be a flow
     */
    public record SurveyColumn(
            ColumnMeaning meaning,
            List<String> first,
            double[] trace,
            double withSpeed,
            double usual,
            List<UnitReading> readings) {
        /** Copies the lists. */
        public SurveyColumn {
            first = List.copyOf(first);
            readings = List.copyOf(readings);
        }
    }

    /**
     * What a unit makes of a column's usual value.
     *
     * @param unit symbol
     * @param rateLPerM2 rate on the ground of one row, L/m²
     * @param speedMps speed that it was computed with, m/s
     */
    public record UnitReading(String unit, double rateLPerM2, double speedMps) {}

    /**
     * Surveys a log.
     *
     * @param options what a rig file tells of the columns
     * @param spacingM row spacing for the readings, m
     * @throws UnusableInputException if the file has no header or no record
     */
    public static LogSurvey of(Path log, LogOptions options, double spacingM) {
        if (TaskData.is(log)) {
            return ofTaskData(log, options);
        }
        LogSample sample = LogSample.of(log, options, MAX_SAMPLES);
        List<UnusableInputException> problems =
                new ArrayList<>(InspectionBuilder.oncePerKind(sample.glance().questions()));
        FileLog file = null;
        if (problems.isEmpty()) {
            try {
                file = LogCleaning.clean(LogFileReader.read(log, options));
            } catch (UnusableInputException e) {
                problems.add(e);
            }
        }
        List<ColumnMeaning> meanings = file == null ? sample.glance().columnMeanings() : file.columnMeanings();
        LogPreview preview = sample.glance().preview();
        double[] speedMps = speed(sample);
        List<SurveyColumn> columns = new ArrayList<>();
        for (int c = 0; c < meanings.size(); c++) {
            double[] values = sample.values().get(c);
            List<String> texts = preview.texts(c);
            columns.add(new SurveyColumn(
                    meanings.get(c),
                    texts.subList(0, Math.min(3, texts.size())),
                    values,
                    UnitReadings.correlation(values, speedMps),
                    UnitReadings.usual(values, speedMps),
                    isNeverFlow(meanings.get(c)) ? List.of() : UnitReadings.of(values, speedMps, spacingM)));
        }
        return file == null
                ? unread(log, sample, columns, problems, speedMps)
                : read(log, sample.glance().form(), sample.records(), columns, problems, file, speedMps);
    }

    private static boolean isNeverFlow(ColumnMeaning meaning) {
        return List.of("lat", "lon", "time", "speed", "course", "fix", "hdop", "down")
                .contains(meaning.quantity());
    }

    private static LogSurvey ofTaskData(Path log, LogOptions options) {
        List<FileLog> files = TaskDataLogs.read(log, options).logs();
        if (files.isEmpty()) {
            throw UnusableInputException.found("task data without a log")
                    .inFile(log.toString())
                    .expected("time logs with flows")
                    .hint("export the task again");
        }
        LogSurvey all = ofTimeLog(log, files.get(0));
        for (FileLog file : files.subList(1, files.size())) {
            all = all.and(ofTimeLog(log, file));
        }
        return all;
    }

    private static LogSurvey ofTimeLog(Path log, FileLog file) {
        List<SurveyColumn> columns = new ArrayList<>();
        for (ColumnMeaning meaning : file.columnMeanings()) {
            columns.add(new SurveyColumn(
                    meaning, List.of(meaning.example()), new double[0], Double.NaN, Double.NaN, List.of()));
        }
        int records = file.source().records();
        return read(log, file.form(), records, columns, List.of(), file, new double[0]);
    }

    /** This time log and a later one of the same task. */
    private LogSurvey and(LogSurvey next) {
        return new LogSurvey(
                file,
                form,
                records + next.records,
                used + next.used,
                columns,
                problems,
                joined(timeS, next.timeS),
                joined(latDeg, next.latDeg),
                joined(lonDeg, next.lonDeg),
                joined(working(), next.working()),
                gaps + next.gaps,
                Double.isNaN(flowingM) ? next.flowingM : flowingM + (Double.isNaN(next.flowingM) ? 0 : next.flowingM),
                Math.max(rows, next.rows),
                zone,
                usualMps,
                zoneless || next.zoneless);
    }

    /** True for each place of the path with a flow; for all where no flow is known. */
    private boolean[] working() {
        boolean[] working = flowing.clone();
        if (working.length < latDeg.length) {
            working = new boolean[latDeg.length];
            Arrays.fill(working, true);
        }
        return working;
    }

    private static double[] joined(double[] a, double[] b) {
        double[] all = Arrays.copyOf(a, a.length + b.length);
        System.arraycopy(b, 0, all, a.length, b.length);
        return all;
    }

    private static boolean[] joined(boolean[] a, boolean[] b) {
        boolean[] all = Arrays.copyOf(a, a.length + b.length);
        System.arraycopy(b, 0, all, a.length, b.length);
        return all;
    }

    /** The survey of a log that can't be read yet: its path is that of the sample. */
    private static LogSurvey unread(
            Path log,
            LogSample sample,
            List<SurveyColumn> columns,
            List<UnusableInputException> problems,
            double[] speedMps) {
        SampledPath at = SampledPath.of(sample);
        String zone = at.latDeg.length == 0 ? "" : ZoneProposal.of(at.latDeg[0], at.lonDeg[0]);
        return new LogSurvey(
                log.toString(),
                sample.glance().form(),
                sample.records(),
                0,
                columns,
                problems,
                at.timeS,
                at.latDeg,
                at.lonDeg,
                new boolean[0],
                0,
                Double.NaN,
                0,
                zone,
                UnitReadings.usualMps(speedMps),
                false);
    }

    private static LogSurvey read(
            Path path,
            String form,
            int records,
            List<SurveyColumn> columns,
            List<UnusableInputException> problems,
            FileLog file,
            double[] speedMps) {
        RawLog log = file.log();
        int every = Math.max(1, log.records / MAX_SAMPLES);
        int samples = (log.records + every - 1) / every;
        double[] timeS = new double[file.plan().isUntimed() ? 0 : samples];
        double[] latDeg = new double[samples];
        double[] lonDeg = new double[samples];
        List<double[]> flows = flows(file);
        boolean[] flowing = new boolean[flows.isEmpty() ? 0 : samples];
        for (int i = 0; i < samples; i++) {
            int at = i * every;
            if (timeS.length > 0) {
                timeS[i] = log.timeS[Math.min(log.records - 1, i == samples - 1 ? log.records - 1 : i * every)];
            }
            latDeg[i] = log.latDeg[at];
            lonDeg[i] = log.lonDeg[at];
            if (flowing.length > 0) {
                flowing[i] = flows.stream().anyMatch(flow -> flow[at] > 0);
            }
        }
        return new LogSurvey(
                path.toString(),
                form,
                records,
                file.source().used(),
                columns,
                problems,
                timeS,
                latDeg,
                lonDeg,
                flowing,
                gaps(file),
                flowingM(file),
                file.plan().outlets(),
                ZoneProposal.of(log.latDeg[0], log.lonDeg[0]),
                UnitReadings.usualMps(speedMps),
                file.reader().zonelessTimes() > 0);
    }

    private static int gaps(FileLog file) {
        RawLog log = file.log();
        double least = Math.max(MIN_SILENT_S, 2.5 * log.intervalS());
        int gaps = 0;
        for (int i = 1; !file.plan().isUntimed() && i < log.records; i++) {
            gaps += log.timeS[i] - log.timeS[i - 1] > least ? 1 : 0;
        }
        return gaps;
    }

    /** Flows by record, one column for each row or meter. */
    private static List<double[]> flows(FileLog file) {
        List<double[]> flows = new ArrayList<>();
        for (int k = 0; k < file.reader().numberColumns().size(); k++) {
            if (file.reader().numberColumns().get(k).role().quantity() == LogQuantity.FLOW) {
                flows.add(file.log().numbers[k]);
            }
        }
        return flows;
    }

    /** Distance over which any flow was above zero, m; NaN without flows. */
    private static double flowingM(FileLog file) {
        RawLog log = file.log();
        List<double[]> flows = flows(file);
        if (flows.isEmpty() || log.records < 2) {
            return Double.NaN;
        }
        LocalPlane plane = new LocalPlane(log.latDeg[0], log.lonDeg[0]);
        double[] here = new double[2];
        double[] before = new double[2];
        double sumM = 0;
        for (int i = 0; i < log.records; i++) {
            int at = i;
            plane.forward(log.latDeg[i], log.lonDeg[i], here);
            if (i > 0 && flows.stream().anyMatch(flow -> flow[at] > 0)) {
                sumM += Math.hypot(here[0] - before[0], here[1] - before[1]);
            }
            before[0] = here[0];
            before[1] = here[1];
        }
        return sumM;
    }

    /** Speeds at the samples by their positions and times, m/s; NaN where one of them is unknown. */
    private static double[] speed(LogSample sample) {
        int n = sample.latDeg().length;
        double[] speedMps = new double[n];
        Arrays.fill(speedMps, Double.NaN);
        int first = IntStream.range(0, n)
                .filter(i -> Double.isFinite(sample.latDeg()[i]))
                .findFirst()
                .orElse(n);
        if (first == n) {
            return speedMps;
        }
        LocalPlane plane = new LocalPlane(sample.latDeg()[first], sample.lonDeg()[first]);
        double[] a = new double[2];
        double[] b = new double[2];
        for (int i = 1; i + 1 < n; i++) {
            double seconds = sample.timeS()[i + 1] - sample.timeS()[i - 1];
            plane.forward(sample.latDeg()[i - 1], sample.lonDeg()[i - 1], a);
            plane.forward(sample.latDeg()[i + 1], sample.lonDeg()[i + 1], b);
            speedMps[i] = seconds > 0 ? Math.hypot(b[0] - a[0], b[1] - a[1]) / seconds : Double.NaN;
        }
        return speedMps;
    }

    /** Times and places of the samples that have both. */
    private record SampledPath(double[] timeS, double[] latDeg, double[] lonDeg) {
        static SampledPath of(LogSample sample) {
            int[] there = IntStream.range(0, sample.latDeg().length)
                    .filter(i -> Double.isFinite(sample.latDeg()[i]))
                    .toArray();
            double[] timeS = Arrays.stream(there)
                    .mapToDouble(i -> sample.timeS()[i])
                    .filter(Double::isFinite)
                    .toArray();
            return new SampledPath(
                    timeS.length == there.length ? timeS : new double[0],
                    Arrays.stream(there).mapToDouble(i -> sample.latDeg()[i]).toArray(),
                    Arrays.stream(there).mapToDouble(i -> sample.lonDeg()[i]).toArray());
        }
    }
}
