package io.rowledger.log.clean;

import io.rowledger.finding.UnusableInputException;
import io.rowledger.log.header.BarLayout;
import io.rowledger.log.header.ColumnPlan;
import io.rowledger.log.header.LogQuantity;
import io.rowledger.log.header.RowMapping;
import io.rowledger.log.read.FileLog;
import io.rowledger.log.read.RawLog;
import io.rowledger.log.taskdata.TaskLog;
import io.rowledger.text.Message;
import io.rowledger.units.QuantityKind;
import java.util.Arrays;
import java.util.List;

/**
 * Converts rates per area to flows: flow = rate × width × speed, for nitrogen divided by nitrogen per volume.
 *
 * <p>The width is that of the row, of the meter's rows, or of the bar; rows that are off don't count, and a logged width
 * replaces the bar's. The speed is the logged one, because a controller states its rate by it; where there is none or the
 * path contradicts it, the speed of the path.
 */
public final class RateConversion {
    /** The speed of the path is taken over this long to either side of a record, s. */
    private static final double HALF_WINDOW_S = 1;

    private final FileLog file;
    private final RawLog log;
    private final RowMapping rows;
    private final BarLayout bar;
    private final byte[][] on;
    private final double[] loggedWidthM;

    private RateConversion(FileLog file) {
        this.file = file;
        this.log = file.log();
        this.rows = file.plan().rows();
        this.bar = file.preview().options().bar();
        this.on = new byte[rows.rows()][];
        for (int row = 1; row <= on.length; row++) {
            on[row - 1] = file.states(LogQuantity.ON, rows.sectionOf(row));
        }
        this.loggedWidthM = file.numbers(LogQuantity.WIDTH);
    }

    /** Converts every rate column of the file in place. */
    static void convert(FileLog file) {
        List<ColumnPlan.Column> columns = file.reader().numberColumns();
        if (columns.stream().noneMatch(column -> column.written().isRate())) {
            return;
        }
        RateConversion conversion = new RateConversion(file);
        double[] speedMps = conversion.speedMps();
        for (int k = 0; k < columns.size(); k++) {
            if (columns.get(k).written().isRate()) {
                conversion.noteStanding(file.log().numbers[k], speedMps);
                conversion.convert(columns.get(k), file.log().numbers[k], speedMps);
            }
        }
    }

    /** Notes rates where the position repeats itself to the last digit: standing, or a receiver that hangs. */
    private void noteStanding(double[] rates, double[] speedMps) {
        int applied = 0;
        int standing = 0;
        for (int i = 0; i < log.records; i++) {
            applied += rates[i] > 0 ? 1 : 0;
            standing += rates[i] > 0 && speedMps[i] == 0 ? 1 : 0;
        }
        Message note = Message.of("notes.log.rates.standing", file.shortName(), standing);
        if (standing > TaskLog.MIN_STANDING_SHARE * applied
                && !file.plan().isUntimed()
                && file.notes().stream().noneMatch(other -> other.key().equals(note.key()))) {
            file.notes().add(note);
        }
    }

    /**
     * Returns the rates of the whole bar without a conversion to flows, for a log of areas instead of records: by product of
     * the plan, then record, L/m²; NaN where a rate is unknown.
     *
     * @throws UnusableInputException if a product has a flow, or a rate for each row
     */
    public static double[][] ratesLPerM2(FileLog file) {
        RateConversion conversion = new RateConversion(file);
        List<String> products = file.plan().products();
        double[][] rates = new double[products.size()][file.log().records];
        for (double[] each : rates) {
            Arrays.fill(each, Double.NaN);
        }
        List<ColumnPlan.Column> columns = file.reader().numberColumns();
        for (int k = 0; k < columns.size(); k++) {
            ColumnPlan.Column column = columns.get(k);
            if (column.role().quantity() == LogQuantity.FLOW) {
                requireBarRate(file, column);
                int product = Math.max(0, products.indexOf(column.role().product()));
                double perVolume = column.written().isNitrogenRate() ? conversion.nitrogenKgPerL(column, product) : 1;
                for (int i = 0; i < rates[product].length; i++) {
                    double rate = file.log().numbers[k][i] / perVolume;
                    rates[product][i] = rate >= 0 ? rate : Double.NaN;
                }
            }
        }
        return rates;
    }

    private static void requireBarRate(FileLog file, ColumnPlan.Column column) {
        boolean ofARow = column.role().row() > 0 && file.plan().outlets() > 1;
        if (column.written().isRate() && !ofARow) {
            return;
        }
        throw UnusableInputException.found(
                        ofARow ? "a rate for each row in a file of polygons" : "a flow in a file of polygons")
                .inFile(file.name())
                .atLine(file.plan().headerLine())
                .atColumn(column.header())
                .expected("one rate per area for each polygon, such as rate[gal/ac]")
                .hint(
                        "name the attribute that holds the rate under columns in the rig file, such as columns: {\"rate[gal/ac]\":"
                                + " \"its name\"}, or export the points that the console logged");
    }

    private void convert(ColumnPlan.Column column, double[] values, double[] speedMps) {
        int product = Math.max(0, file.plan().products().indexOf(column.role().product()));
        List<Integer> served = rows.rowsOfMeter(product, column.role().row());
        boolean wholeBar = served.size() == rows.rows() && served.size() > 1;
        double perVolume = column.written().isNitrogenRate() ? nitrogenKgPerL(column, product) : 1;
        for (int i = 0; i < log.records; i++) {
            values[i] = values[i] * widthM(served, wholeBar, i) * speedMps[i] / perVolume;
        }
    }

    private double nitrogenKgPerL(ColumnPlan.Column column, int product) {
        double kgPerL = bar.nitrogenKgPerL(product);
        boolean rig = !bar.nitrogenKgPerL().isEmpty();
        if (rig && !(kgPerL > 0)) {
            throw UnusableInputException.found("a rate of nitrogen for a product without density or analysis")
                    .inFile(file.name())
                    .atLine(file.plan().headerLine())
                    .atColumn(column.header())
                    .expected("the density and analysis of the product, which turn nitrogen into volume")
                    .hint(
                            "write density: and analysis: under the product in the rig file, such as density: 11.06 lb/gal and "
                                    + "analysis: 32-0-0");
        }
        return rig ? kgPerL : Double.NaN;
    }

    /** Returns the width that a meter serves in record i, m. */
    private double widthM(List<Integer> served, boolean wholeBar, int i) {
        if (wholeBar && loggedWidthM.length > 0 && loggedWidthM[i] >= 0) {
            return loggedWidthM[i];
        }
        double allM = 0;
        double onM = 0;
        for (int row : served) {
            byte[] states = on[row - 1];
            allM += bar.widthM(row);
            onM += states.length > 0 && states[i] == 0 ? 0 : bar.widthM(row);
        }
        return onM > 0 ? onM : allM;
    }

    /** Returns the speed of each record, m/s. */
    private double[] speedMps() {
        double[] logged = file.numbers(LogQuantity.SPEED);
        boolean usable = !file.plan().isUntimed()
                && Arrays.stream(logged).limit(log.records).anyMatch(v -> v >= 0);
        double[] speed = new double[log.records];
        for (int i = 0; i < speed.length; i++) {
            speed[i] = usable && logged[i] >= 0 ? logged[i] : pathMps(i);
        }
        if (!file.plan().isUntimed()) {
            file.notes().add(note(usable));
        }
        return speed;
    }

    private Message note(boolean logged) {
        ColumnPlan.Column column = file.plan().find(LogQuantity.SPEED);
        Message usual = Message.of(
                "notes.log.rates.usualWidth", Message.value(QuantityKind.SMALL_LENGTH, BarLayout.DEFAULT_WIDTH_M));
        Message given = bar.widthsM().isEmpty() ? usual : Message.of("notes.log.rates.rigWidth");
        Message width = loggedWidthM.length > 0 ? Message.of("notes.log.rates.loggedWidth") : given;
        return logged && column != null
                ? Message.of("notes.log.rates.loggedSpeed", file.shortName(), width, column.header())
                : Message.of("notes.log.rates.pathSpeed", file.shortName(), width);
    }

    private double pathMps(int i) {
        int from = i;
        while (from > 0 && !log.gapBefore[from] && log.timeS[i] - log.timeS[from] < HALF_WINDOW_S) {
            from--;
        }
        int to = i;
        while (to + 1 < log.records && !log.gapBefore[to + 1] && log.timeS[to] - log.timeS[i] < HALF_WINDOW_S) {
            to++;
        }
        double distanceM =
                PositionOutliers.distanceM(log.latDeg[from], log.lonDeg[from], log.latDeg[to], log.lonDeg[to]);
        return to > from ? distanceM / (log.timeS[to] - log.timeS[from]) : 0;
    }
}
