package io.rowledger.analysis;

import io.rowledger.diagnose.Diagnoses;
import io.rowledger.diagnose.Diagnosis;
import io.rowledger.finding.UnusableInputException;
import io.rowledger.log.LogReader;
import io.rowledger.log.LogReading;
import io.rowledger.log.LogTable;
import io.rowledger.log.Metering;
import io.rowledger.log.header.BarLayout;
import io.rowledger.log.header.LogOptions;
import io.rowledger.rate.Delivery;
import io.rowledger.rate.DeliveryBuilder;
import io.rowledger.rig.Band;
import io.rowledger.rig.BarLengths;
import io.rowledger.rig.Job;
import io.rowledger.rig.Product;
import io.rowledger.rig.Rig;
import io.rowledger.strip.Strips;
import io.rowledger.text.Argument;
import io.rowledger.text.Message;
import io.rowledger.track.Track;
import io.rowledger.track.TrackBuilder;
import io.rowledger.track.TrackOptions;
import io.rowledger.units.QuantityKind;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Map;

/**
 * The row diagnosis without a rig file: rows are compared with each other at the same instant, which needs no lengths. The
 * bar is taken as mounted at the antenna, its rows as equally wide.
 *
 * @param reading the logs as read
 * @param rows number of rows
 * @param spacingM row spacing, m
 * @param workingS time in work, s
 * @param rig the bar as assumed
 * @param track poses and passes of that bar
 * @param delivery what left each outlet in each step
 * @param diagnosis the findings; volumes are of the logs, nitrogen is unknown
 */
public record RowCheck(
        LogReading reading,
        int rows,
        double spacingM,
        double workingS,
        Rig rig,
        Track track,
        Delivery delivery,
        Diagnosis diagnosis) {
    /** Row spacing if the call gives none, m: 30 in. */
    public static final double DEFAULT_SPACING_M = BarLayout.DEFAULT_WIDTH_M;

    /** Fewest rows that can be compared: of two that differ, neither is known to be right. */
    private static final int MIN_ROWS = 3;

    /** Returns true if the log shows what single rows did. */
    public boolean comparesRows() {
        LogTable log = reading.table();
        return rows >= MIN_ROWS && log.isTimed() && log.metering() != Metering.WHOLE_BAR;
    }

    /**
     * Diagnoses the rows of logs.
     *
     * @param rows number of rows; 0 for as many as the logs have flow columns
     * @param spacingM row spacing, m
     * @throws io.rowledger.finding.UnusableInputException if the logs can't be used
     */
    public static RowCheck of(List<Path> logs, int rows, double spacingM, int threads) {
        return of(logs, new LogOptions(Map.of(), List.of(), rows), spacingM, threads);
    }

    /**
     * Diagnoses the rows of logs whose columns are settled.
     *
     * @param columns what a rig file tells of the columns; its number of rows is 0 for as many as the logs have flow columns
     * @param spacingM row spacing, m
     * @throws io.rowledger.finding.UnusableInputException if the logs can't be used
     */
    public static RowCheck of(List<Path> logs, LogOptions columns, double spacingM, int threads) {
        int rows = columns.rowsExpected();
        List<Double> widthsM = Collections.nCopies(Math.max(rows, 200), spacingM);
        BarLayout bar = new BarLayout(widthsM, List.of(), List.of(), List.of());
        LogReading reading = read(logs, columns, rows, bar);
        LogTable log = reading.table();
        Rig rig = rig(log, spacingM);
        Track track = TrackBuilder.build(log, rig, TrackOptions.defaults().withThreads(threads));
        Strips strips = new Strips(track.poses(), rig.bands());
        Delivery delivery = DeliveryBuilder.build(log, rig, strips);
        double workingS = track.passes().stream()
                .mapToDouble(pass -> pass.endS() - pass.startS())
                .sum();
        return new RowCheck(
                reading,
                rig.rows(),
                spacingM,
                workingS,
                rig,
                track,
                delivery,
                Diagnoses.of(log, rig, track, strips, delivery, 1));
    }

    /** Reads the logs; a number of rows that they do not have is refused as that of the call: there is no rig file. */
    private static LogReading read(List<Path> logs, LogOptions columns, int rows, BarLayout bar) {
        try {
            return LogReader.read(logs, new LogOptions(columns.columns(), List.of(), rows, columns.hints(), bar));
        } catch (UnusableInputException e) {
            int logged = rows == 0 ? 0 : logged(logs, columns, bar);
            if (logged == 0 || logged == rows) {
                throw e;
            }
            throw UnusableInputException.found("--rows " + rows + ", and flow columns for " + logged + " in the log")
                    .inFile(logs.get(0).toString())
                    .expected("as many rows as the log has flow columns")
                    .hint("leave --rows out, or write --rows " + logged);
        }
    }

    /** Returns the number of rows with a flow column of their own; 0 if there are none, or if the logs can't be read either way. */
    private static int logged(List<Path> logs, LogOptions columns, BarLayout bar) {
        try {
            LogTable log = LogReader.read(logs, new LogOptions(columns.columns(), List.of(), 0, columns.hints(), bar))
                    .table();
            return log.metering() == Metering.PER_ROW ? log.outlets() : 0;
        } catch (UnusableInputException e) {
            return 0;
        }
    }

    /** What was compared: rows, their spacing and, where the log has times, how long they worked. */
    public Message what() {
        Argument spacing = Message.value(QuantityKind.SMALL_LENGTH, spacingM);
        if (!reading.table().isTimed()) {
            return Message.of("check.what.untimed", rows, spacing);
        }
        Argument working = Message.duration(workingS);
        return comparesRows()
                ? Message.of("check.what", rows, spacing, working)
                : Message.of("check.what.notCompared", rows, working);
    }

    private static Rig rig(LogTable log, double spacingM) {
        int rows = Math.max(1, log.outlets());
        List<Band> bands = new ArrayList<>();
        for (int row = 1; row <= rows; row++) {
            double leftM = (row - 1 - rows / 2.0) * spacingM;
            bands.add(new Band(row, leftM + spacingM / 2, leftM, leftM + spacingM, 1, null));
        }
        List<Product> products = new ArrayList<>();
        double unknown = Double.NaN;
        for (String key : log.products()) {
            products.add(new Product(
                    key, key.isEmpty() ? "liquid" : key, unknown, unknown, unknown, unknown, unknown, unknown, 0));
        }
        return Rig.of("bar", BarLengths.mounted(0, 0, 0), bands, products, Job.NONE);
    }
}
