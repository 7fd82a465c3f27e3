package io.rowledger.zones;

import io.rowledger.field.Prescription;
import io.rowledger.rate.Delivery;
import io.rowledger.rate.PrescribedRates;
import io.rowledger.strip.Strips;
import io.rowledger.text.Message;
import io.rowledger.track.Pass;
import io.rowledger.track.Poses;
import io.rowledger.zones.ZoneChanges.Pair;
import io.rowledger.zones.ZoneChanges.Timing;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.TreeMap;
import java.util.function.ToDoubleFunction;
import org.jspecify.annotations.Nullable;
import org.locationtech.jts.geom.Coordinate;

/** Finds where the bar crossed lines between zones and how late the rate changed there: see {@link ZoneChanges}. */
final class ZoneLines {
    /** Smallest relative difference of planned rates that is evaluated; smaller ones are near the error of a meter. */
    private static final double MIN_STEP = 0.1;
    /** Largest width of a strip without a zone between two zones that counts as one line, m. */
    private static final double MAX_GAP_M = 1.0;
    /**
     * Longest time within which rows that cross the same line are one crossing of the bar, s; the bar may be oblique to
     * the line.
     */
    private static final double MAX_CROSSING_S = 20;
    /** Halvings from half a meter to a millimeter. */
    private static final int HALVINGS = 9;
    /** Time after lowering and before lifting in which the flow depends on valves, s. */
    private static final double VALVE_S = 2;

    private final List<Pass> passes;
    private final Strips strips;
    private final Poses poses;
    private final Delivery delivery;
    private final PrescribedRates prescribed;
    private final ZoneFinder finder;
    private final Prescription prescription;

    ZoneLines(
            List<Pass> passes,
            Strips strips,
            Delivery delivery,
            PrescribedRates prescribed,
            ZoneFinder finder,
            Prescription prescription) {
        this.passes = passes;
        this.strips = strips;
        this.poses = strips.poses();
        this.delivery = delivery;
        this.prescribed = prescribed;
        this.finder = finder;
        this.prescription = prescription;
    }

    /** A row's stay in a zone, and the position of the line that it entered over. */
    private record Stay(int zone, int firstStep, int endStep, double enteredShare) {}

    /** One row's crossing of a line; the step is null if it can't be evaluated. */
    private record RowCrossing(
            int row,
            int from,
            int to,
            double timeS,
            @Nullable RateStep step,
            double lateM,
            double settledM) {}

    /** The bar's crossing of a line: medians of its rows, NaN if too few could be evaluated. */
    private record Crossing(int from, int to, double lateM, double lateS, double settledM, boolean unfollowed) {}

    ZoneChanges changes(int p) {
        List<Crossing> crossings = new ArrayList<>();
        for (Pass pass : passes) {
            List<RowCrossing> rows = new ArrayList<>();
            for (int r = 0; r < strips.rows(); r++) {
                row(p, r, pass, rows);
            }
            bar(rows, crossings);
        }
        TreeMap<Long, List<Crossing>> byPair = new TreeMap<>();
        for (Crossing crossing : crossings) {
            long key = ((long) crossing.from << 32) + crossing.to;
            byPair.computeIfAbsent(key, k -> new ArrayList<>()).add(crossing);
        }
        List<Pair> pairs = new ArrayList<>();
        for (List<Crossing> of : byPair.values()) {
            pairs.add(new Pair(of.get(0).from + 1, of.get(0).to + 1, timing(of)));
        }
        Timing all = timing(crossings);
        return new ZoneChanges(pairs, all, why(p, all));
    }

    /** Why the timing of all crossings is unknown; null if it is known. */
    private @Nullable Message why(int p, Timing all) {
        if (all.known()) {
            return null;
        }
        double min = Double.POSITIVE_INFINITY;
        double max = Double.NEGATIVE_INFINITY;
        for (Prescription.Zone zone : prescription.zones()) {
            double rate = zone.rateLPerM2()[p];
            min = Double.isNaN(rate) ? min : Math.min(min, rate);
            max = Double.isNaN(rate) ? max : Math.max(max, rate);
        }
        if (!(max - min >= MIN_STEP * max)) {
            return Message.of("notes.zone_changes.rates_alike", Message.percent(100 * MIN_STEP));
        }
        if (all.crossings() == 0) {
            return Message.of("notes.zone_changes.no_crossing", Message.percent(100 * MIN_STEP));
        }
        if (all.unfollowed() > all.crossings() / 2) {
            return Message.of("notes.zone_changes.not_followed", all.unfollowed(), all.crossings());
        }
        if (all.evaluated() == all.crossings()) {
            return Message.of("notes.zone_changes.too_few", all.evaluated());
        }
        return Message.of("notes.zone_changes.not_evaluated", all.evaluated(), all.crossings());
    }

    private void row(int p, int r, Pass pass, List<RowCrossing> out) {
        List<Stay> stays = stays(r, pass);
        if (stays.size() < 2) {
            return;
        }
        RowTrail trail = null;
        for (int i = 1; i < stays.size(); i++) {
            Stay before = stays.get(i - 1);
            Stay after = stays.get(i);
            if (!comparable(p, before.zone, after.zone)) {
                continue;
            }
            if (trail == null) {
                trail = new RowTrail(strips, delivery, p, r, pass.firstStep(), pass.endStep());
            }
            out.add(crossing(p, r, stays, i, trail));
        }
    }

    private boolean comparable(int p, int from, int to) {
        if (from == PrescribedRates.NO_ZONE || to == PrescribedRates.NO_ZONE) {
            return false;
        }
        double a = rate(p, from);
        double b = rate(p, to);
        return Math.abs(a - b) >= MIN_STEP * Math.max(a, b) && a != b;
    }

    private double rate(int p, int zone) {
        return prescription.zones().get(zone).rateLPerM2()[p];
    }

    private RowCrossing crossing(int p, int r, List<Stay> stays, int i, RowTrail trail) {
        Stay before = stays.get(i - 1);
        Stay after = stays.get(i);
        double lineS = trail.timeS(after.firstStep, after.enteredShare);
        double lineM = trail.distanceM(after.firstStep, after.enteredShare);
        // Half of a stay belongs to each of its ends, so that a change at one end is not taken for the other's.
        double cameS = poses.timeS(before.firstStep);
        double fromS = i == 1 ? cameS + VALVE_S : (cameS + lineS) / 2;
        double leftS = poses.timeS(after.endStep);
        double toS = i == stays.size() - 1 ? leftS - VALVE_S : (lineS + leftS) / 2;
        RateStep step =
                RateStep.at(trail, new RateStep.Line(lineS, fromS, toS, rate(p, before.zone), rate(p, after.zone)));
        if (step == null || !step.followed()) {
            return new RowCrossing(r, before.zone, after.zone, lineS, step, Double.NaN, Double.NaN);
        }
        double lateM = trail.distanceAtM(step.changeS()) - lineM;
        double settledM = Double.isNaN(step.settledS()) ? Double.NaN : trail.distanceAtM(step.settledS()) - lineM;
        return new RowCrossing(r, before.zone, after.zone, lineS, step, lateM, settledM);
    }

    /** Returns the zones that a row went through in a pass; a thin gap between two is divided between them. */
    private List<Stay> stays(int r, Pass pass) {
        double y = (strips.leftM(r) + strips.rightM(r)) / 2;
        List<Stay> all = allStays(r, y, pass);
        List<Stay> stays = new ArrayList<>();
        for (int i = 0; i < all.size(); i++) {
            Stay stay = all.get(i);
            boolean gap = stay.zone == PrescribedRates.NO_ZONE && i > 0 && i + 1 < all.size();
            if (gap && entry(stay, y).distance(entry(all.get(i + 1), y)) < MAX_GAP_M) {
                all.set(i + 1, fromMiddleOf(stay, all.get(i + 1)));
            } else {
                stays.add(stay);
            }
        }
        return stays;
    }

    private List<Stay> allStays(int r, double y, Pass pass) {
        List<Stay> stays = new ArrayList<>();
        int start = pass.firstStep();
        double share = 0;
        for (int k = start + 1; k <= pass.endStep(); k++) {
            if (k < pass.endStep() && prescribed.zone(r, k) == prescribed.zone(r, k - 1)) {
                continue;
            }
            int zone = prescribed.zone(r, k - 1);
            stays.add(new Stay(zone, start, k, share));
            share = k < pass.endStep() ? lineShare(k, y, zone) : 0;
            start = k;
        }
        return stays;
    }

    /** Returns where a row crossed the line into a zone. */
    private Coordinate entry(Stay stay, double y) {
        Coordinate a = ZoneFinder.middle(poses, stay.firstStep - 1, y);
        Coordinate b = ZoneFinder.middle(poses, stay.firstStep, y);
        return new Coordinate(a.x + stay.enteredShare * (b.x - a.x), a.y + stay.enteredShare * (b.y - a.y));
    }

    /** Returns the next stay as if it had begun in the middle of the gap before it. */
    private static Stay fromMiddleOf(Stay gap, Stay next) {
        double middle = (gap.firstStep + gap.enteredShare + next.firstStep + next.enteredShare) / 2;
        int step = (int) middle;
        return new Stay(next.zone, step, next.endStep, middle - step);
    }

    /** Returns where between the middles of steps k − 1 and k a row leaves its zone, as a fraction of the distance. */
    private double lineShare(int k, double y, int zone) {
        Coordinate a = ZoneFinder.middle(poses, k - 1, y);
        Coordinate b = ZoneFinder.middle(poses, k, y);
        double low = 0;
        double high = 1;
        for (int i = 0; i < HALVINGS; i++) {
            double u = (low + high) / 2;
            if (finder.at(a.x + u * (b.x - a.x), a.y + u * (b.y - a.y)) == zone) {
                low = u;
            } else {
                high = u;
            }
        }
        return (low + high) / 2;
    }

    /** Groups the crossings of rows to crossings of the bar. */
    private static void bar(List<RowCrossing> rows, List<Crossing> out) {
        List<RowCrossing> sorted = new ArrayList<>(rows);
        sorted.sort(Comparator.comparingInt(RowCrossing::from)
                .thenComparingInt(RowCrossing::to)
                .thenComparingDouble(RowCrossing::timeS)
                .thenComparingInt(RowCrossing::row));
        int i = 0;
        while (i < sorted.size()) {
            RowCrossing first = sorted.get(i);
            List<RowCrossing> group = new ArrayList<>();
            while (i < sorted.size() && together(first, sorted.get(i))) {
                group.add(sorted.get(i++));
            }
            out.add(median(group));
        }
    }

    private static boolean together(RowCrossing first, RowCrossing next) {
        return next.from == first.from && next.to == first.to && next.timeS - first.timeS < MAX_CROSSING_S;
    }

    private static Crossing median(List<RowCrossing> group) {
        List<RowCrossing> placed =
                group.stream().filter(c -> c.step != null && c.step.followed()).toList();
        long unfollowed =
                group.stream().filter(c -> c.step != null && !c.step.followed()).count();
        RowCrossing first = group.get(0);
        if (2 * placed.size() < group.size()) {
            boolean max = 2 * unfollowed > group.size();
            return new Crossing(first.from, first.to, Double.NaN, Double.NaN, Double.NaN, max);
        }
        return new Crossing(
                first.from,
                first.to,
                median(placed, RowCrossing::lateM),
                median(placed, c -> c.step == null ? Double.NaN : c.step.changeS() - c.timeS),
                median(placed, RowCrossing::settledM),
                false);
    }

    private static Timing timing(List<Crossing> crossings) {
        List<Crossing> evaluated =
                crossings.stream().filter(c -> !Double.isNaN(c.lateM)).toList();
        int unfollowed = (int) crossings.stream().filter(Crossing::unfollowed).count();
        if (evaluated.size() < ZoneChanges.MIN_CROSSINGS) {
            double no = Double.NaN;
            return new Timing(crossings.size(), evaluated.size(), unfollowed, no, no, no, no, no);
        }
        return new Timing(
                crossings.size(),
                evaluated.size(),
                unfollowed,
                median(evaluated, Crossing::lateM),
                evaluated.stream().mapToDouble(Crossing::lateM).min().orElse(Double.NaN),
                evaluated.stream().mapToDouble(Crossing::lateM).max().orElse(Double.NaN),
                median(evaluated, Crossing::lateS),
                median(evaluated, Crossing::settledM));
    }

    /** Returns the median of the known values. */
    private static <T> double median(List<T> of, ToDoubleFunction<T> figure) {
        double[] known =
                of.stream().mapToDouble(figure).filter(v -> !Double.isNaN(v)).toArray();
        return RateStep.median(known, 0, known.length);
    }
}
