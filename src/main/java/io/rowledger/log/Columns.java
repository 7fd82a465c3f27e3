package io.rowledger.log;

import io.rowledger.log.header.BarLayout;
import io.rowledger.log.header.ColumnPlan;
import io.rowledger.log.header.LogQuantity;
import io.rowledger.log.header.Role;
import io.rowledger.log.read.FileLog;
import io.rowledger.log.read.RawLog;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.List;
import org.jspecify.annotations.Nullable;

/** Assembles the columns of one or more files into the table's layout: by quantity, product and outlet. */
final class Columns {
    private static final double[] NONE = {};

    private final List<FileLog> files;
    private final int @Nullable [] fileOf;
    private final int @Nullable [] recordOf;

    private Columns(List<FileLog> files, int @Nullable [] fileOf, int @Nullable [] recordOf) {
        this.files = files;
        this.fileOf = fileOf;
        this.recordOf = recordOf;
    }

    /** Returns the columns of a table whose record i is record {@code recordOf[i]} of file {@code fileOf[i]}; both null for one whole file. */
    static LogColumns of(List<FileLog> files, int @Nullable [] fileOf, int @Nullable [] recordOf) {
        return new Columns(files, fileOf, recordOf).build();
    }

    /** Returns true if times without a zone were taken as UTC. */
    static boolean zoneAssumed(List<FileLog> files) {
        return files.stream().anyMatch(file -> file.reader().zonelessTimes() > 0);
    }

    /** Returns the first and the last day of files without times; empty if one of them has no days. */
    static List<LocalDate> days(List<FileLog> files) {
        List<LocalDate> all = new ArrayList<>();
        for (FileLog file : files) {
            if (file.reader().days().isEmpty()) {
                return List.of();
            }
            all.addAll(file.reader().days());
        }
        return List.of(Collections.min(all), Collections.max(all));
    }

    private LogColumns build() {
        LogColumns c = new LogColumns();
        ColumnPlan plan = files.get(0).plan();
        int outlets = plan.outlets();
        c.products = plan.products();
        c.timeS = gather(file -> file.log().timeS);
        c.latDeg = gather(file -> file.log().latDeg);
        c.lonDeg = gather(file -> file.log().lonDeg);
        c.breakBefore = flags(c.timeS.length, log -> log.gapBefore);
        c.downBefore = flags(c.timeS.length, log -> log.downBefore);
        c.fix = states(new Role(LogQuantity.FIX, "", 0));
        c.hdop = numbers(new Role(LogQuantity.HDOP, "", 0));
        c.speedMps = numbers(new Role(LogQuantity.SPEED, "", 0));
        c.courseRad = numbers(new Role(LogQuantity.COURSE, "", 0));
        c.yawRateRadPerS = numbers(new Role(LogQuantity.YAW_RATE, "", 0));
        c.rollRad = numbers(new Role(LogQuantity.ROLL, "", 0));
        c.widthM = numbers(new Role(LogQuantity.WIDTH, "", 0));
        c.timed = !plan.isUntimed();
        c.days = days(files);
        c.evenedS = files.stream().mapToDouble(FileLog::evenedS).max().orElse(0);
        c.zoneAssumed = zoneAssumed(files);
        c.down = states(new Role(LogQuantity.DOWN, "", 0));
        c.pressurePa = numbers(new Role(LogQuantity.PRESSURE, "", 0));
        byte[][] on = new byte[outlets][];
        double[][] pressure = new double[outlets][];
        for (int r = 0; r < outlets; r++) {
            on[r] = states(new Role(LogQuantity.ON, "", plan.rows().sectionOf(r + 1)));
            pressure[r] = numbers(new Role(LogQuantity.PRESSURE, "", r + 1));
        }
        c.on = Arrays.stream(on).allMatch(column -> column.length == 0) ? new byte[0][] : on;
        c.rowPressurePa = Arrays.stream(pressure).allMatch(column -> column.length == 0) ? new double[0][] : pressure;
        int products = c.products.size();
        c.flowLPerS = new double[products][outlets][];
        c.meterRows = new int[products][][];
        c.meterFlowLPerS = new double[products][][];
        c.targetLPerM2 = new double[products][];
        c.totalLPerS = new double[products][];
        for (int p = 0; p < products; p++) {
            String key = c.products.get(p);
            c.targetLPerM2[p] = numbers(new Role(LogQuantity.TARGET, key, 0));
            c.totalLPerS[p] = numbers(new Role(LogQuantity.FLOW_TOTAL, key, 0));
            flows(c, p, plan);
        }
        return c;
    }

    private void flows(LogColumns c, int p, ColumnPlan plan) {
        String key = c.products.get(p);
        List<List<Integer>> meters = plan.rows().meters().get(p);
        int records = c.timeS.length;
        if (meters.isEmpty()) {
            for (int r = 0; r < plan.outlets(); r++) {
                double[] flow = numbers(new Role(LogQuantity.FLOW, key, r + 1));
                boolean bar = flow.length == 0 && plan.outlets() == 1;
                flow = bar ? numbers(new Role(LogQuantity.FLOW, key, 0)) : flow;
                c.flowLPerS[p][r] = flow.length == 0 ? unknown(records) : flow;
            }
            c.meterRows[p] = new int[0][];
            c.meterFlowLPerS[p] = new double[0][];
            return;
        }
        c.meterRows[p] = new int[meters.size()][];
        c.meterFlowLPerS[p] = new double[meters.size()][];
        Arrays.setAll(c.flowLPerS[p], r -> unknown(records));
        for (int m = 0; m < meters.size(); m++) {
            int[] rows = meters.get(m).stream().mapToInt(row -> row - 1).toArray();
            double[] flow = numbers(new Role(LogQuantity.FLOW, key, m + 1));
            flow = flow.length == 0 ? numbers(new Role(LogQuantity.FLOW, key, 0)) : flow;
            flow = flow.length == 0 ? unknown(records) : flow;
            c.meterRows[p][m] = rows;
            c.meterFlowLPerS[p][m] = flow;
            share(
                    c,
                    c.flowLPerS[p],
                    rows,
                    flow,
                    files.get(0).preview().options().bar());
        }
    }

    /** Divides a meter's flow among its rows that are on, by width; among all if every one is off. */
    private static void share(LogColumns c, double[][] flowLPerS, int[] rows, double[] meterLPerS, BarLayout bar) {
        for (int i = 0; i < meterLPerS.length; i++) {
            double onM = 0;
            double allM = 0;
            for (int r : rows) {
                allM += bar.widthM(r + 1);
                onM += isOff(c, r, i) ? 0 : bar.widthM(r + 1);
            }
            for (int r : rows) {
                double widthM = onM > 0 && isOff(c, r, i) ? 0 : bar.widthM(r + 1);
                flowLPerS[r][i] = widthM == 0 ? 0 : meterLPerS[i] * widthM / (onM > 0 ? onM : allM);
            }
        }
    }

    private static boolean isOff(LogColumns c, int r, int i) {
        return c.on.length > 0 && c.on[r].length > 0 && c.on[r][i] == 0;
    }

    private interface ColumnOf {
        double[] in(FileLog file);
    }

    private double[] gather(ColumnOf column) {
        if (fileOf == null || recordOf == null) {
            return column.in(files.get(0));
        }
        double[][] from = new double[files.size()][];
        boolean any = false;
        for (int f = 0; f < from.length; f++) {
            from[f] = column.in(files.get(f));
            any |= from[f].length > 0;
        }
        if (!any) {
            return NONE;
        }
        double[] to = new double[fileOf.length];
        for (int i = 0; i < to.length; i++) {
            double[] source = from[fileOf[i]];
            to[i] = source.length == 0 ? Double.NaN : source[recordOf[i]];
        }
        return to;
    }

    private double[] numbers(Role role) {
        return gather(file -> {
            int k = place(file.reader().numberColumns(), role);
            return k < 0 ? NONE : file.log().numbers[k];
        });
    }

    private byte[] states(Role role) {
        byte[][] from = new byte[files.size()][];
        boolean any = false;
        for (int f = 0; f < from.length; f++) {
            int k = place(files.get(f).reader().stateColumns(), role);
            from[f] = k < 0 ? new byte[0] : files.get(f).log().states[k];
            any |= k >= 0;
        }
        if (!any || fileOf == null || recordOf == null) {
            return from[0];
        }
        byte[] to = new byte[fileOf.length];
        for (int i = 0; i < to.length; i++) {
            byte[] source = from[fileOf[i]];
            to[i] = source.length == 0 ? -1 : source[recordOf[i]];
        }
        return to;
    }

    private interface FlagsOf {
        boolean[] in(RawLog log);
    }

    private boolean[] flags(int records, FlagsOf of) {
        if (fileOf == null || recordOf == null) {
            return of.in(files.get(0).log());
        }
        boolean[] flags = new boolean[records];
        for (int i = 0; i < records; i++) {
            flags[i] = of.in(files.get(fileOf[i]).log())[recordOf[i]];
        }
        return flags;
    }

    private static int place(List<ColumnPlan.Column> columns, Role role) {
        for (int k = 0; k < columns.size(); k++) {
            if (columns.get(k).role().equals(role)) {
                return k;
            }
        }
        return -1;
    }

    private static double[] unknown(int records) {
        double[] column = new double[records];
        Arrays.fill(column, Double.NaN);
        return column;
    }
}
