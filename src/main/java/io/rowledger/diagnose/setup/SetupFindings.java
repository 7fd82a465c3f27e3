package io.rowledger.diagnose.setup;

import io.rowledger.diagnose.Diagnosis;
import io.rowledger.diagnose.OnsetWindow;
import io.rowledger.diagnose.signal.Figure;
import io.rowledger.finding.Finding;
import io.rowledger.finding.FindingKind;
import io.rowledger.rate.Delivery;
import io.rowledger.rig.Rig;
import io.rowledger.text.Message;
import io.rowledger.track.Pass;
import io.rowledger.track.Poses;
import io.rowledger.track.Track;
import io.rowledger.units.Factor;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.stream.IntStream;

/** Measures that the log contradicts, as findings among those of the rows. */
public final class SetupFindings {
    /** Beyond any doubt about chance; what else could look the same remains. */
    private static final double SURE = 0.96;

    private static final double LIKELY = 0.9;

    /** This many half intervals away a measure is beyond doubt. */
    private static final double CLEAR = 4;

    /** The chart shows the first start of a pass: so long before and after, s. */
    private static final double BEFORE_S = 20;

    private static final double AFTER_S = 40;

    private static final double INCHES_PER_M = 1 / Factor.METRES_PER_INCH;

    private final Rig rig;
    private final Track track;
    private final Delivery delivery;

    private SetupFindings(Rig rig, Track track, Delivery delivery) {
        this.rig = rig;
        this.track = track;
        this.delivery = delivery;
    }

    /** A finding with what belongs to it. */
    private record Placed(Finding finding, OnsetWindow window, List<Figure> figures) {}

    /**
     * The diagnosis with a finding for every contradicted length, lag or side. Where a lag is wrong, what it makes the whole
     * bar look like (late, slow) is left out and said so in a note: it can't be judged before the lag is right.
     */
    public static Diagnosis into(Diagnosis d, SetupCheck check, Rig rig, Track track, Delivery delivery) {
        SetupFindings made = new SetupFindings(rig, track, delivery);
        List<Placed> placed = new ArrayList<>();
        List<String> notes = new ArrayList<>(d.notes());
        for (SetupMeasurement measure : check.differing()) {
            if (kind(measure.parameter()) != null && !track.passes().isEmpty()) {
                placed.add(made.placed(measure));
            }
        }
        int left = 0;
        for (int i = 0; i < d.findings().size(); i++) {
            Finding finding = d.findings().get(i);
            if (lookedLate(finding, d.windows().get(i).product(), check)) {
                left++;
            } else {
                placed.add(new Placed(finding, d.windows().get(i), d.figures().get(i)));
            }
        }
        if (left > 0) {
            notes.add(
                    "The flow lag in the rig file looks wrong; whether the whole bar also answers slowly or comes on late"
                            + " can't be judged before it is right.");
        }
        placed.sort(Comparator.comparingDouble(p -> -p.finding.confidence()));
        return new Diagnosis(
                placed.stream().map(Placed::finding).toList(),
                placed.stream().map(Placed::window).toList(),
                placed.stream().map(Placed::figures).toList(),
                d.pictures(),
                d.baselines(),
                notes);
    }

    private static boolean lookedLate(Finding finding, int product, SetupCheck check) {
        boolean late = finding.kind() == FindingKind.LATE_ON
                || finding.kind() == FindingKind.EARLY_OFF
                || finding.kind() == FindingKind.SLOW_RESPONSE;
        return late
                && finding.rows().isEmpty()
                && check.differing().stream()
                        .anyMatch(m -> m.parameter() == SetupParameter.FLOW_LAG && m.product() == product);
    }

    /** The kind of finding a contradicted measure is; null where the rows' own detectors make it. */
    private static @org.jspecify.annotations.Nullable FindingKind kind(SetupParameter what) {
        return switch (what) {
            case FLOW_LAG -> FindingKind.FLOW_LAG;
            case DROP_OFFSET -> FindingKind.DROP_OFFSET;
            case SIDE_OFFSET -> FindingKind.SIDE_OFFSET;
            default -> null;
        };
    }

    private Placed placed(SetupMeasurement m) {
        FindingKind kind = kind(m.parameter());
        if (kind == null) {
            throw new IllegalArgumentException("no finding of " + m.parameter());
        }
        List<Pass> passes = track.passes();
        Pass first = passes.get(0);
        double[] place = new double[2];
        track.plane()
                .inverse(
                        track.poses().dropEastM(first.firstStep()),
                        track.poses().dropNorthM(first.firstStep()),
                        place);
        double half = (m.high() - m.low()) / 2;
        boolean clear = Math.abs(m.change()) > CLEAR * half;
        Finding finding = new Finding(
                kind,
                List.of(),
                first.startS(),
                passes.get(passes.size() - 1).endS(),
                clear ? SURE : LIKELY,
                areaM2(m),
                0,
                0,
                place[0],
                place[1],
                Message.of("findings.text", evidence(m, half)),
                Message.of("findings.text", m.alternative()),
                Message.of("findings.text", check(m.parameter())));
        String unit = m.parameter() == SetupParameter.FLOW_LAG ? "s" : "m";
        List<Figure> figures = List.of(
                new Figure("in the rig file", m.given(), unit),
                new Figure("what the log says", m.estimate(), unit),
                new Figure("90 % sure it is above", m.low(), unit),
                new Figure("and below", m.high(), unit));
        return new Placed(finding, window(Math.max(0, m.product()), first), figures);
    }

    /** Ground that is put in the wrong place: at every end of a pass, or along every pass. */
    private double areaM2(SetupMeasurement m) {
        double sum = 0;
        for (Pass pass : track.passes()) {
            double seconds = pass.endS() - pass.startS();
            double off = Math.abs(m.change());
            sum += switch (m.parameter()) {
                case FLOW_LAG -> seconds > 0 ? 2 * off * pass.lengthM() / seconds * rig.widthM() : 0;
                case DROP_OFFSET -> 2 * off * rig.widthM();
                default -> 2 * off * pass.lengthM();
            };
        }
        return sum;
    }

    private static String evidence(SetupMeasurement m, double half) {
        boolean time = m.parameter() == SetupParameter.FLOW_LAG;
        String figures = time
                ? "The rig file says " + FlowLag.seconds(m.given()) + ", the log " + FlowLag.seconds(m.estimate())
                        + ", give or take " + FlowLag.seconds(half)
                : "The rig file says " + place(m, m.given()) + ", the log " + place(m, m.estimate()) + ", give or take "
                        + length(half);
        return figures + " (9 times in 10). " + m.basis();
    }

    private static String place(SetupMeasurement m, double si) {
        String size = length(Math.abs(si));
        boolean aside = m.parameter() == SetupParameter.SIDE_OFFSET && !size.equals(length(0));
        return aside ? size + (si < 0 ? " to the left" : " to the right") : size;
    }

    private static String length(double m) {
        return String.format(Locale.ROOT, "%.2f m (%.1f in)", m, m * INCHES_PER_M);
    }

    private static String check(SetupParameter what) {
        return switch (what) {
            case FLOW_LAG ->
                "Look up the flow_lag in the rig file and what the maker of the meters or the log's program says of its delay;"
                        + " stand still with the bar lowered over a place where it may flow, with the system as the"
                        + " operator's manual has it for a catch test, switch the rows on and off and count the seconds"
                        + " until the logged flow follows.";
            case DROP_OFFSET ->
                "Measure with a tape from the pin to the knife before changing anything; then from the axle to the pin and"
                        + " from the axle to the antenna; only if all three are right, look at where the bar is lowered"
                        + " and lifted, and how late the log shows it.";
            default ->
                "Measure with a tape from the tractor's middle to the antenna before changing anything; then from the hitch"
                        + " pin's line to the middle of the bar; if both are right, look at the ground for wide and narrow"
                        + " gaps in turn.";
        };
    }

    /** The bar's flow around the start of the first pass. */
    private OnsetWindow window(int product, Pass first) {
        Poses poses = track.poses();
        int[] steps = IntStream.range(0, poses.steps())
                .filter(k -> poses.record(k) >= 0)
                .filter(k -> k == 0 || poses.record(k) != poses.record(k - 1))
                .filter(k -> poses.timeS(k) >= first.startS() - BEFORE_S && poses.timeS(k) <= first.startS() + AFTER_S)
                .toArray();
        double[][] c = new double[5][steps.length];
        for (int i = 0; i < steps.length; i++) {
            int k = steps[i];
            c[0][i] = (poses.timeS(k) + poses.timeS(k + 1)) / 2;
            double wayM = Math.hypot(
                    poses.dropEastM(k + 1) - poses.dropEastM(k), poses.dropNorthM(k + 1) - poses.dropNorthM(k));
            c[4][i] = poses.durationS(k) > 0 ? wayM / poses.durationS(k) : 0;
            c[2][i] = Double.NaN;
            for (int r = 0; r < delivery.rows(); r++) {
                c[1][i] += delivery.flowLPerS(product, r, k);
            }
            double asked = delivery.meanTargetLPerM2(product, 0, delivery.rows(), k) * rig.widthM() * c[4][i];
            c[3][i] = poses.working(k) ? asked : 0;
        }
        return new OnsetWindow(product, 0, first.startS(), c[0], c[1], c[2], c[3], c[4]);
    }
}
