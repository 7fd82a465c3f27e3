package io.rowledger.diagnose.setup;

import io.rowledger.log.LogTable;
import io.rowledger.rig.Rig;
import io.rowledger.text.Message;
import io.rowledger.track.Track;
import io.rowledger.units.QuantityKind;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * Distance from hitch pin to drop line: passes of both directions start and stop along one line if it is right.
 *
 * <p>A bar that is lowered and lifted late by t moves an end by v·t along the direction of travel, exactly as a drop line set up
 * v·t too far forward does. Both are fitted together over the speeds driven ({@link HeadlandEstimate}). The length contradicts
 * the rig file only if the log itself has told them apart; otherwise both explanations are given, with their plausibility.
 */
final class DropOffset {
    static final String KEY = "rig.hitch_to_drop";

    /** Smallest number of headland crossings. */
    private static final int MIN_CROSSINGS = 5;

    /**
     * Half the difference between the distances at which a person lowers early and lifts late, with what a bend at the end
     * adds, 1 sigma, m; common practice, no source.
     */
    private static final double HABIT_SIGMA_M = 0.05;

    /** Smallest difference that counts, m: less depends on where the tape is held. */
    private static final double MIN_M = 0.15;

    /** Ends farther than this from the fit are rejected, m. */
    private static final double REJECT_M = 0.8;

    /** Half distance between records, m, from which on the bounds of the records are fitted: about the ends' own scatter. */
    private static final double COARSE_M = 0.2;

    /**
     * Sigmas from which on a length contradicts the rig file beside a habit: by chance in two of a hundred right setups, as many
     * as may be. Fewer than for other parameters, because the habit beside it takes most of the power.
     */
    private static final double SIGNIFICANT_LENGTH = 2.3;

    /** Largest standard deviation of a length that the log has told apart from a habit, m. */
    private static final double PARTED_M = 0.25;

    /**
     * Smallest standard deviation of the ends' speeds over their mean that counts as several speeds: less is a swing that the
     * error of the speeds themselves would turn into false precision.
     */
    private static final double MIN_SPREAD = 0.03;

    private final Rig rig;
    private final List<PassEnd> ends;
    private final List<Contrast> contrasts;
    private final double givenM;
    private final double speedMps;
    private final boolean severalSpeeds;

    private DropOffset(LogTable log, Rig rig, Track track) {
        this.rig = rig;
        this.givenM = rig.hitchToDropM();
        this.ends = PassEnds.of(log, track);
        this.contrasts = OutlierRejection.of(PassEnds.contrasts(ends, rig.widthM()), REJECT_M);
        // Per contrast, the speed at which one habit for all ends would act on it.
        double[] speeds = contrasts.stream()
                .mapToDouble(c -> -c.habitEffect() / c.effect())
                .toArray();
        double sum = 0;
        double squares = 0;
        for (double speed : speeds) {
            sum += speed;
            squares += speed * speed;
        }
        speedMps = speeds.length == 0 ? 0 : sum / speeds.length;
        double variance = speeds.length == 0 ? 0 : squares / speeds.length - speedMps * speedMps;
        severalSpeeds = Math.sqrt(Math.max(0, variance)) > MIN_SPREAD * speedMps;
    }

    /**
     * Returns the drop line's place.
     *
     * @param antenna the antenna's place: the ends determine only the sum of both, so what it changes is taken off here
     */
    static SetupMeasurement of(LogTable log, Rig rig, Track track, SetupMeasurement antenna) {
        if (track.quality().workStateDerived()) {
            return undetermined(rig.hitchToDropM(), Message.of("findings.setup.drop.unlogged"));
        }
        DropOffset offset = new DropOffset(log, rig, track);
        HeadlandEstimate estimate = offset.estimate();
        if (estimate == null) {
            return undetermined(
                    rig.hitchToDropM(), Message.of("findings.setup.drop.few", offset.contrasts.size(), MIN_CROSSINGS));
        }
        return offset.measurement(estimate, antenna.differs() ? antenna.change() : 0);
    }

    private @Nullable HeadlandEstimate estimate() {
        double halfM = ends.stream().mapToDouble(PassEnd::halfM).average().orElse(0);
        // The place of an end is uniform over the distance between its two records.
        HeadlandEstimate byMiddles =
                DriftFit.together(atSpeeds(contrasts), PassEnds.times(ends), MIN_CROSSINGS, halfM / Math.sqrt(3));
        if (byMiddles == null || halfM < COARSE_M) {
            return byMiddles;
        }
        List<Contrast> lines = OutlierRejection.of(
                atSpeeds(PassEnds.lines(ends, rig.widthM())), byMiddles.errorM(), byMiddles.habitS(), REJECT_M);
        return HeadlandFit.together(ends, lines);
    }

    /** With one speed, error and habit are made exactly indistinguishable. */
    private List<Contrast> atSpeeds(List<Contrast> of) {
        return severalSpeeds ? of : of.stream().map(c -> c.atSpeed(speedMps)).toList();
    }

    private SetupMeasurement measurement(HeadlandEstimate e, double aheadM) {
        Estimate length = new Estimate(givenM - e.errorM() - aheadM, Math.hypot(e.errorSigmaM(), HABIT_SIGMA_M), MIN_M);
        Estimate onTime = new Estimate(
                givenM - e.mismatchM(speedMps) - aheadM, Math.hypot(e.mismatchSigmaM(speedMps), HABIT_SIGMA_M), MIN_M);
        boolean parted = e.errorSigmaM() <= PARTED_M;
        boolean mismatch = onTime.differsFrom(givenM);
        if (contradicted(length) || (parted && (habitual(e) || !mismatch))) {
            return determined(
                    length, contradicted(length), parted(e), Message.of("findings.setup.drop.alternative.length"));
        }
        if (mismatch) {
            return undetermined(givenM, either(e, onTime));
        }
        return determined(
                onTime,
                false,
                Message.of("findings.setup.drop.ontime", basis(), Message.value(QuantityKind.SPEED, speedMps)),
                Message.of("findings.setup.drop.alternative.habit"));
    }

    /** True if the log contradicts the length whatever the habit was. */
    private boolean contradicted(Estimate length) {
        return Math.abs(length.value() - givenM) > Math.max(MIN_M, SIGNIFICANT_LENGTH * length.sigma());
    }

    private SetupMeasurement determined(Estimate length, boolean differs, Message basis, Message alternative) {
        SetupMeasurement of =
                SetupMeasurement.of(SetupParameter.DROP_OFFSET, -1, KEY, givenM, length, basis, alternative);
        return of.withDiffers(differs);
    }

    private Message basis() {
        long starts = contrasts.stream().filter(c -> ends.get(c.of()).start()).count();
        return Message.of("findings.setup.drop.basis", contrasts.size(), starts, contrasts.size() - starts);
    }

    private Message parted(HeadlandEstimate e) {
        double min = ends.stream().mapToDouble(PassEnd::speedMps).min().orElse(0);
        double max = ends.stream().mapToDouble(PassEnd::speedMps).max().orElse(0);
        return Message.of(
                "findings.setup.drop.parted",
                basis(),
                Message.value(QuantityKind.SPEED, min),
                Message.value(QuantityKind.SPEED, max),
                habitual(e) ? habit(e.habitS()) : Message.of("findings.setup.drop.punctual"));
    }

    /** True if the log shows a habit, whatever the length. */
    private static boolean habitual(HeadlandEstimate e) {
        return Math.abs(e.habitS()) > Estimate.SIGNIFICANT * e.habitSigmaS();
    }

    private static Message habit(double seconds) {
        return seconds < 0
                ? Message.of("findings.setup.drop.early", Message.decimal(-seconds, 1))
                : Message.of("findings.setup.drop.late", Message.decimal(seconds, 1));
    }

    private Message either(HeadlandEstimate e, Estimate onTime) {
        double mismatchM = e.mismatchM(speedMps);
        double chance = TapeErrors.chanceBeyond(MIN_M, e.errorM(), e.errorSigmaM());
        return Message.of(
                "findings.setup.drop.either",
                Message.value(QuantityKind.LENGTH, 2 * Math.abs(mismatchM)),
                Message.value(QuantityKind.DIMENSION, onTime.value()),
                Message.value(QuantityKind.DIMENSION, givenM),
                habit(-mismatchM / speedMps),
                Message.value(QuantityKind.SPEED, speedMps),
                Message.percent(100 * chance));
    }

    private static SetupMeasurement undetermined(double givenM, Message why) {
        return SetupMeasurement.undetermined(SetupParameter.DROP_OFFSET, -1, KEY, givenM, why);
    }
}
