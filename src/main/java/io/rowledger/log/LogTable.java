package io.rowledger.log;

import io.rowledger.log.source.LogSource;
import java.time.LocalDate;
import java.util.List;

/**
 * The usable records of a job's logs as columns, in time order, in SI. Immutable.
 *
 * <p>Record {@code i} runs from 0 to {@link #records()} − 1, outlet {@code r} from 0 at the left, product {@code p} in
 * the order of {@link #products()}. A quantity the logs don't have is NaN (numbers) or −1 (states).
 */
public final class LogTable {
    private final LogColumns c;
    private final List<LogSource> sources;

    /** Wraps the columns without copying; the caller must not change them afterward. */
    public LogTable(LogColumns columns, List<LogSource> sources) {
        this.c = columns;
        this.sources = List.copyOf(sources);
    }

    /** Number of usable records. */
    public int records() {
        return c.timeS.length;
    }

    /** Number of outlets that have a flow column. */
    public int outlets() {
        return c.flowLPerS.length == 0 ? 0 : c.flowLPerS[0].length;
    }

    /** Product keys as in the rig file. */
    public List<String> products() {
        return c.products;
    }

    /** The files the records came from, with their digests and counts. */
    public List<LogSource> sources() {
        return sources;
    }

    /** Seconds since the Unix epoch, strictly rising. */
    public double timeS(int i) {
        return c.timeS[i];
    }

    /** Latitude, degrees WGS 84. */
    public double latDeg(int i) {
        return c.latDeg[i];
    }

    /** Longitude, degrees WGS 84. */
    public double lonDeg(int i) {
        return c.lonDeg[i];
    }

    /**
     * Returns true if the path is broken before record i: the first record, the first of a file that does not continue
     * directly, or a record after others that were left out (no fix, jump, unreadable).
     */
    public boolean breakBefore(int i) {
        return c.breakBefore[i];
    }

    /**
     * Returns true if records were left out directly before record i (no fix, jump, frozen) and the bar was down in all of
     * them: work without a position, not a pause.
     */
    public boolean downBefore(int i) {
        return c.downBefore.length > 0 && c.downBefore[i];
    }

    /** NMEA 0183 quality digit, −1 unknown. */
    public int fix(int i) {
        return c.fix.length == 0 ? -1 : c.fix[i];
    }

    /** Horizontal dilution of precision, NaN unknown. */
    public double hdop(int i) {
        return at(c.hdop, i);
    }

    /** Logged ground speed, m/s, NaN unknown. */
    public double speedMps(int i) {
        return at(c.speedMps, i);
    }

    /** Logged course, rad clockwise from north, NaN unknown. */
    public double courseRad(int i) {
        return at(c.courseRad, i);
    }

    /** Logged yaw rate, rad/s clockwise, NaN unknown. */
    public double yawRateRadPerS(int i) {
        return at(c.yawRateRadPerS, i);
    }

    /** Logged roll, rad, NaN unknown. */
    public double rollRad(int i) {
        return at(c.rollRad, i);
    }

    /** Work state as logged: 1 lowered, 0 lifted, −1 unknown. */
    public int down(int i) {
        return c.down.length == 0 ? -1 : c.down[i];
    }

    /** True where the logs have a work state column. */
    public boolean hasDown() {
        return c.down.length > 0;
    }

    /** Whether outlet r was commanded on: 1, 0, −1 unknown. */
    public int on(int r, int i) {
        return c.on.length == 0 || c.on[r].length == 0 ? -1 : c.on[r][i];
    }

    /** Metered flow of outlet r, L/s; NaN where the field was empty. */
    public double flowLPerS(int p, int r, int i) {
        return c.flowLPerS[p][r][i];
    }

    /** Returns how rows and meters belong together, for all products: the coarsest of them. */
    public Metering metering() {
        Metering metering = Metering.PER_ROW;
        for (int p = 0; p < c.meterRows.length; p++) {
            Metering other = metering(p);
            metering = other.compareTo(metering) > 0 ? other : metering;
        }
        return metering;
    }

    /** Returns how rows and meters of a product belong together. */
    public Metering metering(int p) {
        if (c.meterRows.length == 0 || c.meterRows[p].length == 0) {
            return Metering.PER_ROW;
        }
        return c.meterRows[p].length == 1 ? Metering.WHOLE_BAR : Metering.SHARED;
    }

    /** Returns the rows (from 0) of each meter of a product; empty if each row has its own meter. Read only. */
    public int[][] meterRows(int p) {
        return c.meterRows.length == 0 ? new int[0][] : c.meterRows[p];
    }

    /** Returns the flow column of a shared meter, L/s. The array is shared: do not write to it. */
    public double[] meterColumn(int p, int meter) {
        return c.meterFlowLPerS[p][meter];
    }

    /** Returns the logged working width, m; NaN if unknown. */
    public double widthM(int i) {
        return at(c.widthM, i);
    }

    /** Returns true if the log has times; if false, times are only an order of the records. */
    public boolean isTimed() {
        return c.timed;
    }

    /**
     * Returns true if a record is an area with one rate: there is no path, no flow and nothing of single rows. Times, if
     * there are any, are those of the areas, and two areas may have the same.
     */
    public boolean isAreas() {
        return c.areas;
    }

    /**
     * Returns true if the controller's own totals are on another scale than the flows: which of the two is right must be
     * known before a row or the bar is held against its target.
     */
    public boolean isOffScale() {
        return c.offScale;
    }

    /** Share of the records without a flow figure for outlet r, 0 to 1; 0 for areas, whose flows are no part of the log. */
    public double missingFlowShare(int p, int r) {
        if (c.areas) {
            return 0;
        }
        double[] column = c.flowLPerS[p][r];
        int missing = 0;
        for (double flow : column) {
            missing += Double.isNaN(flow) ? 1 : 0;
        }
        return column.length == 0 ? 0 : (double) missing / column.length;
    }

    /** Returns the flow column of an outlet, L/s. The array is shared: do not write to it. */
    public double[] flowColumn(int p, int r) {
        return c.flowLPerS[p][r];
    }

    /** Logged target rate of product p, L/m², NaN unknown. */
    public double targetLPerM2(int p, int i) {
        return at(c.targetLPerM2[p], i);
    }

    /** True where the logs have a target column for product p. */
    public boolean hasTarget(int p) {
        return c.targetLPerM2[p].length > 0;
    }

    /** Time over which flows are even because they come from totals in coarse steps, s; 0 for all others. */
    public double evenedS() {
        return c.evenedS;
    }

    /** First and last day of a log that has days and no times; empty for all others. */
    public List<LocalDate> days() {
        return c.days;
    }

    /** True if the controller's own total of a volume differs from what its flows add up to: no bounds of volumes hold then. */
    public boolean isContradicted() {
        return c.contradicted;
    }

    /** True if times were written without a zone and taken as UTC because nothing said otherwise. */
    public boolean isZoneAssumed() {
        return c.zoneAssumed;
    }

    /** For each product, whether the logs have a target column for it. */
    public boolean[] hasTargets() {
        boolean[] has = new boolean[c.targetLPerM2.length];
        for (int p = 0; p < has.length; p++) {
            has[p] = hasTarget(p);
        }
        return has;
    }

    /** True where the logs have a total meter for product p. */
    public boolean hasTotal(int p) {
        return p < c.totalLPerS.length && c.totalLPerS[p].length > 0;
    }

    /** Total meter of product p, L/s, NaN unknown. */
    public double totalLPerS(int p, int i) {
        return at(c.totalLPerS[p], i);
    }

    /** Supply pressure, Pa, NaN unknown. */
    public double pressurePa(int i) {
        return at(c.pressurePa, i);
    }

    /** Pressure at outlet r, Pa, NaN unknown. */
    public double rowPressurePa(int r, int i) {
        return c.rowPressurePa.length == 0 ? Double.NaN : at(c.rowPressurePa[r], i);
    }

    private static double at(double[] column, int i) {
        return column.length == 0 ? Double.NaN : column[i];
    }
}
