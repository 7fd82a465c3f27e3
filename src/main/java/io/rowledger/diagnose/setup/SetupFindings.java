package io.rowledger.diagnose.setup;

import io.rowledger.diagnose.Diagnosis;
import io.rowledger.diagnose.OnsetWindow;
import io.rowledger.diagnose.signal.Figure;
import io.rowledger.finding.Finding;
import io.rowledger.finding.FindingKind;
import io.rowledger.rate.Delivery;
import io.rowledger.rig.Rig;
import io.rowledger.text.Argument;
import io.rowledger.text.Message;
import io.rowledger.track.Pass;
import io.rowledger.track.Poses;
import io.rowledger.track.Track;
import io.rowledger.units.QuantityKind;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.stream.IntStream;

/** Setup parameters that the log contradicts, as findings among those of the rows. */
public final class SetupFindings {
    /** Confidence of a difference that is not by chance; the alternatives remain (1). */
    private static final double HIGH_CONFIDENCE = 0.96;

    /** Confidence of the others (1). */
    private static final double CONFIDENCE = 0.9;

    /** Number of half intervals from which on a difference is not by chance. */
    private static final double CLEAR = 4;

    /** Time before and after the first start of a pass that the chart shows, s. */
    private static final double BEFORE_S = 20;

    private static final double AFTER_S = 40;

    private final Rig rig;
    private final Track track;
    private final Delivery delivery;

    private SetupFindings(Rig rig, Track track, Delivery delivery) {
        this.rig = rig;
        this.track = track;
        this.delivery = delivery;
    }

    /** A finding with what belongs to it. */
    private record Placed(Finding finding, OnsetWindow window, List<Figure> figures, boolean alsoNoticed) {}

    /**
     * Returns the diagnosis with a finding for every contradicted length, lag or side offset. With a wrong lag the whole bar
     * looks late or slow: these findings are left out, and a note says so.
     */
    public static Diagnosis into(Diagnosis d, SetupCheck check, Rig rig, Track track, Delivery delivery) {
        SetupFindings made = new SetupFindings(rig, track, delivery);
        List<Placed> placed = new ArrayList<>();
        List<Message> notes = new ArrayList<>(d.notes());
        for (SetupMeasurement m : check.differing()) {
            if (kind(m.parameter()) != null && !track.passes().isEmpty()) {
                placed.add(made.placed(m));
            }
        }
        int leftOut = 0;
        for (int i = 0; i < d.findings().size(); i++) {
            Finding finding = d.findings().get(i);
            if (causedByLag(finding, d.windows().get(i).product(), check)) {
                leftOut++;
            } else {
                placed.add(new Placed(
                        finding,
                        d.windows().get(i),
                        d.figures().get(i),
                        d.alsoNoticed().get(i)));
            }
        }
        if (leftOut > 0) {
            notes.add(Message.of("findings.note.flowLag"));
        }
        placed.sort(Comparator.comparing(Placed::alsoNoticed)
                .thenComparingDouble(p -> -Math.abs(p.finding.volumeL()))
                .thenComparingDouble(p -> -p.finding.confidence()));
        return new Diagnosis(
                placed.stream().map(Placed::finding).toList(),
                placed.stream().map(Placed::window).toList(),
                placed.stream().map(Placed::figures).toList(),
                placed.stream().map(Placed::alsoNoticed).toList(),
                d.unexplained(),
                d.limits(),
                d.resolvable(),
                d.pictures(),
                d.baselines(),
                notes);
    }

    private static boolean causedByLag(Finding finding, int product, SetupCheck check) {
        boolean late = finding.kind() == FindingKind.LATE_ON
                || finding.kind() == FindingKind.EARLY_OFF
                || finding.kind() == FindingKind.SLOW_RESPONSE;
        return late
                && finding.rows().isEmpty()
                && check.differing().stream()
                        .anyMatch(m -> m.parameter() == SetupParameter.FLOW_LAG && m.product() == product);
    }

    /** The kind of finding of a contradicted parameter; null if the row detectors make it. */
    private static @org.jspecify.annotations.Nullable FindingKind kind(SetupParameter parameter) {
        return switch (parameter) {
            case FLOW_LAG -> FindingKind.FLOW_LAG;
            case DROP_OFFSET -> FindingKind.DROP_OFFSET;
            case SIDE_OFFSET -> FindingKind.SIDE_OFFSET;
            default -> null;
        };
    }

    private Placed placed(SetupMeasurement m) {
        FindingKind kind = kind(m.parameter());
        if (kind == null) {
            throw new IllegalArgumentException("no finding for " + m.parameter());
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
                clear ? HIGH_CONFIDENCE : CONFIDENCE,
                areaM2(m),
                0,
                0,
                place[0],
                place[1],
                evidence(m, half),
                m.alternative(),
                check(m.parameter()),
                List.of());
        String unit = m.parameter() == SetupParameter.FLOW_LAG ? "s" : "m";
        List<Figure> figures = List.of(
                Figure.of("findings.figure.given", m.given(), unit),
                Figure.of("findings.figure.estimate", m.estimate(), unit),
                Figure.of("findings.figure.low", m.low(), unit),
                Figure.of("findings.figure.high", m.high(), unit));
        return new Placed(finding, window(Math.max(0, m.product()), first), figures, false);
    }

    /** Ground that lies elsewhere than the rig file puts it: at every end of a pass, or along every pass, m². */
    private double areaM2(SetupMeasurement m) {
        double sum = 0;
        for (Pass pass : track.passes()) {
            double seconds = pass.endS() - pass.startS();
            double deviation = Math.abs(m.change());
            sum += switch (m.parameter()) {
                case FLOW_LAG -> seconds > 0 ? 2 * deviation * pass.lengthM() / seconds * rig.widthM() : 0;
                case DROP_OFFSET -> 2 * deviation * rig.widthM();
                default -> 2 * deviation * pass.lengthM();
            };
        }
        return sum;
    }

    private static Message evidence(SetupMeasurement m, double half) {
        return switch (m.parameter()) {
            case FLOW_LAG ->
                Message.of(
                        "findings.setup.evidence.seconds",
                        FlowLag.seconds(m.given()),
                        FlowLag.seconds(m.estimate()),
                        FlowLag.seconds(half),
                        m.basis());
            case SIDE_OFFSET ->
                Message.of(
                        "findings.setup.evidence.length",
                        side(m.given()),
                        side(m.estimate()),
                        Message.value(QuantityKind.DIMENSION, half),
                        m.basis());
            default ->
                Message.of(
                        "findings.setup.evidence.length",
                        Message.value(QuantityKind.DIMENSION, m.given()),
                        Message.value(QuantityKind.DIMENSION, m.estimate()),
                        Message.value(QuantityKind.DIMENSION, half),
                        m.basis());
        };
    }

    private static Message side(double m) {
        Argument size = Message.value(QuantityKind.DIMENSION, Math.abs(m));
        return m < 0 ? Message.of("findings.setup.left", size) : Message.of("findings.setup.right", size);
    }

    private static Message check(SetupParameter parameter) {
        return switch (parameter) {
            case FLOW_LAG -> Message.of("findings.setup.lag.check");
            case DROP_OFFSET -> Message.of("findings.setup.drop.check");
            default -> Message.of("findings.setup.side.check");
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
            double distanceM = Math.hypot(
                    poses.dropEastM(k + 1) - poses.dropEastM(k), poses.dropNorthM(k + 1) - poses.dropNorthM(k));
            c[4][i] = poses.durationS(k) > 0 ? distanceM / poses.durationS(k) : 0;
            c[2][i] = Double.NaN;
            for (int r = 0; r < delivery.rows(); r++) {
                c[1][i] += delivery.flowLPerS(product, r, k);
            }
            double targetLPerS = delivery.meanTargetLPerM2(product, 0, delivery.rows(), k) * rig.widthM() * c[4][i];
            c[3][i] = poses.working(k) ? targetLPerS : 0;
        }
        return new OnsetWindow(product, 0, first.startS(), c[0], c[1], c[2], c[3], c[4]);
    }
}
