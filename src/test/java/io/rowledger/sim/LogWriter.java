package io.rowledger.sim;

import java.io.IOException;
import java.time.Instant;
import java.time.ZoneOffset;
import java.time.format.DateTimeFormatter;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.SplittableRandom;

/** Writes records as CSV (RFC 4180, LF), one at a time. */
final class LogWriter {
    private static final double L_PER_GAL = 231 * 0.016387064;
    private static final double MPS_PER_MPH = 0.44704;
    private static final double PA_PER_PSI = 0.45359237 * 9.80665 / (0.0254 * 0.0254);
    private static final DateTimeFormatter ISO = DateTimeFormatter.ofPattern(
                    "uuuu-MM-dd'T'HH:mm:ss.SSS'Z'", Locale.ROOT)
            .withZone(ZoneOffset.UTC);

    private final LogFormat format;
    private final long startEpochS;
    private final List<Field> fields = new ArrayList<>();
    private final StringBuilder line = new StringBuilder(1024);
    private final Appendable out;

    /** One column. */
    private record Field(String header, Cell cell) {}

    /** Writes one value. */
    private interface Cell {
        void write(StringBuilder line, SimRecord record);
    }

    /** Writes the header at once. */
    LogWriter(Scenario scenario, Appendable out) throws IOException {
        this.format = scenario.format();
        this.startEpochS = scenario.site().startEpochS();
        this.out = out;
        position();
        states(scenario);
        List<SimProduct> products = scenario.products();
        for (int p = 0; p < products.size(); p++) {
            product(
                    products.size() > 1 ? products.get(p).key() + "." : "",
                    p,
                    scenario.rig().rows());
        }
        if (format.shuffleSeed() != 0) {
            shuffle(new SplittableRandom(format.shuffleSeed()));
        }
        for (int i = 0; i < fields.size(); i++) {
            out.append(i == 0 ? "" : ",").append(fields.get(i).header());
        }
        out.append('\n');
    }

    private void shuffle(SplittableRandom random) {
        for (int i = fields.size() - 1; i > 0; i--) {
            int j = random.nextInt(i + 1);
            Field kept = fields.get(i);
            fields.set(i, fields.get(j));
            fields.set(j, kept);
        }
    }

    private void add(String header, Cell cell) {
        fields.add(new Field(header, cell));
    }

    private void position() {
        if (format.isoTime()) {
            add(
                    "time",
                    (b, r) -> ISO.formatTo(Instant.ofEpochMilli(startEpochS * 1000 + Math.round(r.timeS * 1000)), b));
        } else {
            add("epoch_s", (b, r) -> fixed(b, startEpochS + r.timeS, 2));
        }
        add("lat", (b, r) -> fixed(b, r.latDeg, 9));
        add("lon", (b, r) -> fixed(b, r.lonDeg, 9));
    }

    private void states(Scenario scenario) {
        boolean us = format.customary();
        if (format.has(LogFormat.Column.SPEED)) {
            double unit = us ? MPS_PER_MPH : 1 / 3.6;
            add(us ? "speed[mph]" : "speed[km/h]", (b, r) -> fixed(b, r.speedMps / unit, 2));
        }
        if (format.has(LogFormat.Column.COURSE)) {
            add("course[deg]", (b, r) -> fixed(b, degrees(r.courseRad), 1));
        }
        if (format.has(LogFormat.Column.YAW_RATE)) {
            add("yaw_rate[deg/s]", (b, r) -> fixed(b, Math.toDegrees(r.yawRateRadPerS), 2));
        }
        if (format.has(LogFormat.Column.FIX)) {
            add("fix", (b, r) -> b.append(r.fix));
        }
        if (format.has(LogFormat.Column.HDOP)) {
            add("hdop", (b, r) -> fixed(b, r.hdop, 1));
        }
        if (format.has(LogFormat.Column.DOWN)) {
            add("down", (b, r) -> b.append(r.down ? '1' : '0'));
        }
        int rows = scenario.rig().rows();
        if (format.has(LogFormat.Column.ON)) {
            for (int i = 0; i < rows; i++) {
                int row = i;
                add("on_" + number(i), (b, r) -> b.append(r.on[row] ? '1' : '0'));
            }
        }
        double pressure = us ? PA_PER_PSI : 1000;
        String unit = us ? "[psi]" : "[kPa]";
        if (format.has(LogFormat.Column.PRESSURE)) {
            add("pressure" + unit, (b, r) -> fixed(b, r.pressurePa / pressure, 1));
        }
        if (format.has(LogFormat.Column.ROW_PRESSURE)) {
            for (int i = 0; i < rows; i++) {
                int row = i;
                add("pressure_" + number(i) + unit, (b, r) -> fixed(b, r.rowPressurePa[row] / pressure, 1));
            }
        }
    }

    private void product(String prefix, int p, int rows) {
        boolean us = format.customary();
        double perMinute = 60 / (us ? L_PER_GAL : 1);
        String flowUnit = us ? "[gal/min]" : "[L/min]";
        if (format.has(LogFormat.Column.TARGET)) {
            double unit = us ? SimProduct.L_PER_M2_IN_GAL_PER_AC : 1e-4;
            add(
                    prefix + "target" + (us ? "[gal/ac]" : "[L/ha]"),
                    (b, r) -> fixed(b, r.targetLPerM2[p] / unit, us ? 2 : 1));
        }
        for (int i = 0; i < rows; i++) {
            int row = i;
            add(
                    prefix + "flow_" + number(i) + flowUnit,
                    (b, r) -> fixed(b, r.flowLPerS[p][row] * perMinute, us ? 4 : 3));
        }
        if (format.has(LogFormat.Column.TOTAL)) {
            add(prefix + "flow_total" + flowUnit, (b, r) -> fixed(b, r.totalLPerS[p] * perMinute, us ? 3 : 2));
        }
    }

    static String number(int row0) {
        return (row0 < 9 ? "0" : "") + (row0 + 1);
    }

    private static double degrees(double rad) {
        double deg = Math.toDegrees(rad) % 360;
        deg = deg < 0 ? deg + 360 : deg;
        return deg >= 359.95 ? 0 : deg;
    }

    void write(SimRecord record) throws IOException {
        line.setLength(0);
        for (int i = 0; i < fields.size(); i++) {
            if (i > 0) {
                line.append(',');
            }
            fields.get(i).cell().write(line, record);
        }
        out.append(line.append('\n'));
    }

    /** A number with a fixed count of decimals, nothing for NaN. Same bytes in every locale. */
    static void fixed(StringBuilder out, double value, int decimals) {
        if (Double.isNaN(value)) {
            return;
        }
        long scale = 1;
        for (int i = 0; i < decimals; i++) {
            scale *= 10;
        }
        long scaled = Math.round(Math.abs(value) * scale);
        if (value < 0 && scaled != 0) {
            out.append('-');
        }
        out.append(scaled / scale);
        if (decimals == 0) {
            return;
        }
        out.append('.');
        long rest = scaled % scale;
        for (long digit = scale / 10; digit >= 1; digit /= 10) {
            out.append((char) ('0' + rest / digit % 10));
        }
    }
}
