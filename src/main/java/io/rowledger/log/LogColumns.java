package io.rowledger.log;

import java.time.LocalDate;
import java.util.List;

/**
 * The arrays behind a {@link LogTable}. The fields are public because this class is only the hand-over from a reader to
 * the table. Every column has one entry per record; a column that the logs don't have is empty (length 0).
 */
public final class LogColumns {
    private static final double[] NONE = {};

    public List<String> products = List.of();
    public double[] timeS = NONE;
    public double[] latDeg = NONE;
    public double[] lonDeg = NONE;
    public boolean[] breakBefore = {};
    /** See {@link LogTable#downBefore}; empty if unknown. */
    public boolean[] downBefore = {};

    public byte[] fix = {};
    public double[] hdop = NONE;
    public double[] speedMps = NONE;
    public double[] courseRad = NONE;
    public double[] yawRateRadPerS = NONE;
    public double[] rollRad = NONE;
    public byte[] down = {};
    /** [outlet] → column or empty; the outer array is empty where no outlet has one. */
    public byte[][] on = {};
    /** [product][outlet][record], L/s. */
    public double[][][] flowLPerS = {};
    /** [product][meter] → rows (from 0) that share the meter; the middle array is empty if each row has its own meter. */
    public int[][][] meterRows = {};
    /** [product][meter][record], L/s; empty where meterRows is. */
    public double[][][] meterFlowLPerS = {};
    /** Logged working width, m. */
    public double[] widthM = NONE;
    /** [product] → column or empty, L/m². */
    public double[][] targetLPerM2 = {};
    /** [product] → column or empty, L/s. */
    public double[][] totalLPerS = {};

    /** False for points in driving order without times. */
    public boolean timed = true;

    /** Time over which totals in coarse steps were evened out, s; 0 if none were. */
    public double evenedS;

    /** First and last day of a log without times; empty if it has no days either. */
    public List<LocalDate> days = List.of();

    /** True if times were written without a zone and taken as UTC because nothing said otherwise. */
    public boolean zoneAssumed;

    /** True if the controller's own totals are on another scale than the flows. */
    public boolean offScale;

    /** True if the controller's own total of a volume differs from what its flows add up to. */
    public boolean contradicted;

    /** True if a record is an area with one rate and no place on a path. */
    public boolean areas;

    public double[] pressurePa = NONE;
    /** [outlet] → column or empty; the outer array is empty where no outlet has one. */
    public double[][] rowPressurePa = {};
}
