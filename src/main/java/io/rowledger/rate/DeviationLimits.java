package io.rowledger.rate;

/**
 * Deviations of a rate from its target at which the program changes what it says, as fractions (1). Every share, color class
 * and mark takes them from here.
 *
 * <p>5 %: outlet limit of Alberta Agriculture, Agdex 606-1 p. 17, and of the University of Idaho boom worksheet. 10 %: limit
 * at which state publications tell people to replace an outlet. 20 %: common practice, no source.
 */
public final class DeviationLimits {
    /** On target within this; beyond it, watch. */
    public static final double WATCH = 0.05;
    /** Beyond this, act. */
    public static final double ACT = 0.10;
    /** Beyond this, far off. */
    public static final double FAR = 0.20;

    private DeviationLimits() {}
}
