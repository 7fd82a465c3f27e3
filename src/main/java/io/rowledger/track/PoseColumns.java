package io.rowledger.track;

/**
 * Mutable columns of {@link Poses}: the first block has one value per pose, the second one per step. Units and meaning are
 * those of the accessors of {@link Poses}.
 */
public final class PoseColumns {
    public double[] timeS = {};
    public double[] antennaEastM = {};
    public double[] antennaNorthM = {};
    public double[] headingRad = {};
    public double[] hitchEastM = {};
    public double[] hitchNorthM = {};
    public double[] barHeadingRad = {};
    public double[] barSin = {};
    public double[] barCos = {};
    public double[] dropEastM = {};
    public double[] dropNorthM = {};

    public int[] record = {};
    public int[] pass = {};
    public boolean[] unsettled = {};
    public boolean[] backing = {};
    public boolean[] lowered = {};
}
