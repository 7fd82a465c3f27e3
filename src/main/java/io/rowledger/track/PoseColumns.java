package io.rowledger.track;

/** The bare arrays behind {@link Poses}: the first block has one entry a pose, the second one a step. */
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
}
