package io.rowledger.sim;

import java.util.List;

/**
 * The receiver and the logger. Errors per axis, 1 sigma; drift is a first-order Gauss-Markov process. Sizes are from
 * memory of what receivers of each kind do; RTK is the project's own specification (1.2 cm).
 *
 * @param rateHz records a second: 1, 2, 4, 5, 10 or 20
 * @param fix NMEA 0183 quality: 1 autonomous, 2 differential, 4 RTK fixed, 5 RTK float
 * @param whiteM white noise of each fix
 * @param driftM slow drift
 * @param driftTauS its time constant
 * @param leftOutShare share of records missing at random
 * @param repeatedShare share of records written twice
 * @param speedNoiseMps white noise of the logged speed
 * @param courseNoiseRad white noise of the logged course
 * @param jumps fixes that lie elsewhere
 * @param spells stretches with another fix type (0: none)
 */
public record GnssModel(
        double rateHz,
        int fix,
        double whiteM,
        double driftM,
        double driftTauS,
        double leftOutShare,
        double repeatedShare,
        double speedNoiseMps,
        double courseNoiseRad,
        List<Jump> jumps,
        List<Spell> spells) {
    /** From {@code atS} on, {@code records} records lie so far off. */
    public record Jump(double atS, double eastM, double northM, int records) {}

    /** A stretch with another fix type. */
    public record Spell(double startS, double endS, int fix) {}

    private static GnssModel of(double rateHz, int fix, double whiteM, double driftM, double tauS) {
        return new GnssModel(rateHz, fix, whiteM, driftM, tauS, 0, 0, 0.02, Math.toRadians(0.3), List.of(), List.of());
    }

    /** No error at all. */
    public static GnssModel perfect(double rateHz) {
        return new GnssModel(rateHz, 4, 0, 0, 300, 0, 0, 0, 0, List.of(), List.of());
    }

    /** RTK fixed: 1.2 cm white. */
    public static GnssModel rtk(double rateHz) {
        return of(rateHz, 4, 0.012, 0, 600);
    }

    /** RTK fixed with a slow drift of 1 cm besides. */
    public static GnssModel rtkDrifting(double rateHz) {
        return of(rateHz, 4, 0.012, 0.01, 600);
    }

    /** RTK float. */
    public static GnssModel rtkFloat(double rateHz) {
        return of(rateHz, 5, 0.03, 0.15, 180);
    }

    /** Differential corrections: 3 cm white, 20 cm drift over minutes. */
    public static GnssModel differential(double rateHz) {
        return of(rateHz, 2, 0.03, 0.2, 240);
    }

    /** Autonomous: 8 cm white, 1.2 m drift over minutes. */
    public static GnssModel autonomous(double rateHz) {
        return of(rateHz, 1, 0.08, 1.2, 300);
    }

    /** The same with other noise. */
    public GnssModel withNoise(double white, double drift, double tauS) {
        return new GnssModel(
                rateHz,
                fix,
                white,
                drift,
                tauS,
                leftOutShare,
                repeatedShare,
                speedNoiseMps,
                courseNoiseRad,
                jumps,
                spells);
    }

    /** The same with records missing and repeated at random. */
    public GnssModel withLosses(double leftOut, double repeated) {
        return new GnssModel(
                rateHz,
                fix,
                whiteM,
                driftM,
                driftTauS,
                leftOut,
                repeated,
                speedNoiseMps,
                courseNoiseRad,
                jumps,
                spells);
    }

    /** The same with jumps. */
    public GnssModel withJumps(List<Jump> newJumps) {
        return new GnssModel(
                rateHz,
                fix,
                whiteM,
                driftM,
                driftTauS,
                leftOutShare,
                repeatedShare,
                speedNoiseMps,
                courseNoiseRad,
                List.copyOf(newJumps),
                spells);
    }

    /** The same with stretches of other fix types; their noise is that fix type's. */
    public GnssModel withSpells(List<Spell> newSpells) {
        return new GnssModel(
                rateHz,
                fix,
                whiteM,
                driftM,
                driftTauS,
                leftOutShare,
                repeatedShare,
                speedNoiseMps,
                courseNoiseRad,
                jumps,
                List.copyOf(newSpells));
    }

    static GnssModel typical(int fix) {
        return switch (fix) {
            case 4 -> rtk(1);
            case 5 -> rtkFloat(1);
            case 2 -> differential(1);
            default -> autonomous(1);
        };
    }
}
