package io.rowledger.diagnose;

import io.rowledger.diagnose.detect.CaseFilter;
import io.rowledger.diagnose.detect.ChannelsSwappedDetector;
import io.rowledger.diagnose.detect.Detector;
import io.rowledger.diagnose.detect.EarlyOffDetector;
import io.rowledger.diagnose.detect.HuntingDetector;
import io.rowledger.diagnose.detect.IntermittentDetector;
import io.rowledger.diagnose.detect.LateOnDetector;
import io.rowledger.diagnose.detect.LeakingDetector;
import io.rowledger.diagnose.detect.MeterDropoutDetector;
import io.rowledger.diagnose.detect.MeterScaleDetector;
import io.rowledger.diagnose.detect.MeterStuckDetector;
import io.rowledger.diagnose.detect.NoTurnCompensationDetector;
import io.rowledger.diagnose.detect.OutsideShareDetector;
import io.rowledger.diagnose.detect.PluggedDetector;
import io.rowledger.diagnose.detect.RanEmptyDetector;
import io.rowledger.diagnose.detect.RestrictedDetector;
import io.rowledger.diagnose.detect.SlowResponseDetector;
import io.rowledger.diagnose.detect.SupplyFailingDetector;
import io.rowledger.diagnose.detect.SupplyLimitedDetector;
import io.rowledger.diagnose.detect.ValveStuckOpenDetector;
import io.rowledger.diagnose.signal.Baselines;
import io.rowledger.diagnose.signal.Case;
import io.rowledger.diagnose.signal.EvaluationMask;
import io.rowledger.diagnose.signal.Evidence;
import io.rowledger.diagnose.signal.FlowRatios;
import io.rowledger.diagnose.signal.LogLimits;
import io.rowledger.diagnose.signal.RowBaseline;
import io.rowledger.diagnose.signal.RowTime;
import io.rowledger.diagnose.signal.SwitchingDelays;
import io.rowledger.diagnose.signal.TurnShares;
import io.rowledger.diagnose.signal.WorkingSamples;
import io.rowledger.finding.Finding;
import io.rowledger.finding.FindingKind;
import io.rowledger.log.LogTable;
import io.rowledger.log.Metering;
import io.rowledger.rate.Delivery;
import io.rowledger.rig.Rig;
import io.rowledger.strip.Strips;
import io.rowledger.text.Message;
import io.rowledger.track.Track;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.EnumSet;
import java.util.List;
import java.util.Set;
import java.util.stream.IntStream;

/** Runs every detector on a job. */
public final class Diagnoses {
    /**
     * In this order, after crossed channels and stuck meters: what only the meter does is taken out of the evaluation first, then come
     * levels (the whole-bar pattern before single rows), then timing and the bar as a whole.
     */
    private static final List<Detector> DETECTORS = List.of(
            new ValveStuckOpenDetector(),
            new RanEmptyDetector(),
            new IntermittentDetector(),
            new MeterDropoutDetector(),
            new OutsideShareDetector(),
            new PluggedDetector(),
            new MeterScaleDetector(),
            new RestrictedDetector(),
            new LeakingDetector(),
            new LateOnDetector(),
            new EarlyOffDetector(),
            new NoTurnCompensationDetector(),
            new SupplyFailingDetector(),
            new SupplyLimitedDetector(),
            new SlowResponseDetector(),
            new HuntingDetector());

    /** Kinds that compare rows within one meter. */
    private static final Set<FindingKind> NEEDS_A_METER_PER_ROW =
            EnumSet.of(FindingKind.NO_TURN_COMPENSATION, FindingKind.OUTSIDE_SHARE, FindingKind.CHANNELS_SWAPPED);

    /** Kinds that one meter for the bar can show. */
    private static final Set<FindingKind> OF_THE_BAR = EnumSet.of(
            FindingKind.SUPPLY_LIMITED,
            FindingKind.SUPPLY_FAILING,
            FindingKind.RAN_EMPTY,
            FindingKind.SLOW_RESPONSE,
            FindingKind.HUNTING,
            FindingKind.VALVE_STUCK_OPEN,
            FindingKind.LATE_ON,
            FindingKind.EARLY_OFF);

    /** Kinds that move liquid to other rows or times, so that their cost may be negligible. */
    private static final Set<FindingKind> MOVING =
            EnumSet.of(FindingKind.SLOW_RESPONSE, FindingKind.HUNTING, FindingKind.LATE_ON, FindingKind.EARLY_OFF);

    /** A cause less likely than this is not told (1): the row is then off without a recognized cause, if it is off. */
    private static final double MIN_TOLD = 0.4;

    /** Share of the job's liquid up to which such a cost is negligible (1). */
    private static final double MIN_COST = 0.003;

    /**
     * Share of the worked ground that missing turn compensation must put off by more than 10 % to be a finding to act on (1):
     * as much as starts, stops and headland turns leave off in a usual job. Common practice, no source.
     */
    private static final double MIN_OFF_GROUND = 0.02;

    /** Order of findings: by cost, the largest first; those of next to no cost last. */
    private static final Comparator<Placed> RANKING = Comparator.comparing(Placed::alsoNoticed)
            .thenComparingDouble(x -> -Math.abs(x.finding.volumeL()))
            .thenComparingDouble(x -> -x.found.confidence());

    private Diagnoses() {}

    private static List<Case> surestFirst(List<Case> cases) {
        return cases.stream()
                .sorted(Comparator.comparingDouble((Case x) -> -x.confidence()))
                .toList();
    }

    /** A case of a product with its finding and window. */
    private record Placed(Case found, Finding finding, OnsetWindow window, boolean alsoNoticed) {
        /** The same cause in another product: its liquid and nitrogen added. */
        Placed with(Finding other) {
            Finding sum = new Finding(
                    finding.kind(),
                    finding.rows(),
                    Math.min(finding.fromS(), other.fromS()),
                    Math.max(finding.toS(), other.toS()),
                    Math.max(finding.confidence(), other.confidence()),
                    finding.areaM2(),
                    finding.volumeL() + other.volumeL(),
                    finding.nitrogenKg() + other.nitrogenKg(),
                    finding.latDeg(),
                    finding.lonDeg(),
                    finding.evidence(),
                    finding.alternative(),
                    finding.check(),
                    finding.meters());
            return new Placed(found, sum, window, alsoNoticed);
        }
    }

    /**
     * Evaluates every row against its other rows and its own past.
     *
     * @param threads threads to use; the result is the same for any number
     * @return findings with their windows, the picture of deviation and what healthy rows are like; no findings where
     *     nothing is wrong
     */
    public static Diagnosis of(LogTable log, Rig rig, Track track, Strips strips, Delivery delivery, int threads) {
        return of(log, rig, track, strips, delivery, Calibration.fitted(), threads);
    }

    /** The same with confidences by another calibration. */
    static Diagnosis of(
            LogTable log,
            Rig rig,
            Track track,
            Strips strips,
            Delivery delivery,
            Calibration calibration,
            int threads) {
        if (log.isOffScale()) {
            return Diagnosis.notEvaluated(Message.of("findings.note.offScale"));
        }
        List<LogLimits> limits = IntStream.range(0, delivery.products())
                .mapToObj(p -> LogLimits.of(log, p, strips.rows(), threads))
                .toList();
        double smearS = limits.stream().mapToDouble(LogLimits::smearS).max().orElse(0);
        WorkingSamples work = WorkingSamples.of(track, strips, smearS);
        EvaluationMask evaluated = EvaluationMask.of(log, work, strips, delivery, smearS);
        List<RowTime> pictures = new ArrayList<>();
        List<RowBaseline> baselines = new ArrayList<>();
        List<Placed> placed = new ArrayList<>();
        List<Deviation> unexplained = new ArrayList<>();
        for (int p = 0; p < delivery.products(); p++) {
            FlowRatios ratios = new FlowRatios(p, work, rig, evaluated, delivery, limits.get(p), threads);
            Evidence evidence = evidence(log, strips, delivery, ratios);
            Metering metering = log.metering(p);
            boolean showsRows = metering != Metering.WHOLE_BAR && log.isTimed();
            pictures.add(showsRows ? evidence.picture() : RowTime.nothing(strips.rows()));
            if (log.isTimed()) {
                evidence = detect(evidence, metering);
            }
            Costs costs = new Costs(evidence, track, rig.products().get(p).nitrogenKgPerL());
            SharedMeters shared = new SharedMeters(metering == Metering.SHARED ? log.meterRows(p) : new int[0][]);
            double[] form = Calibration.form(limits.get(p), log.hasDown());
            List<Case> cases = CaseFilter.of(shared.of(evidence.cases())).stream()
                    .map(found -> calibration.of(found, form))
                    .filter(found -> found.confidence() >= MIN_TOLD)
                    .toList();
            if (showsRows) {
                baselines.addAll(Baselines.of(evidence, cases));
            }
            unexplained.addAll(shared.deviations(costs.unexplained(cases)));
            for (Case found : surestFirst(cases)) {
                Finding finding = shared.named(costs.finding(found));
                placed.add(new Placed(found, finding, costs.window(found), !costly(found, finding, costs)));
            }
        }
        placed = oncePerCause(placed);
        placed.sort(RANKING);
        return new Diagnosis(
                placed.stream().map(Placed::finding).toList(),
                placed.stream().map(Placed::window).toList(),
                placed.stream().map(x -> x.found.figures()).toList(),
                placed.stream().map(Placed::alsoNoticed).toList(),
                unexplained,
                log.isTimed() ? limits.get(0).sentences() : List.of(),
                resolvable(log, limits, work),
                pictures,
                baselines,
                notes(log, work, delivery, DrivenWithoutFlow.longestS(track.poses(), work.usualSpeedMps())));
    }

    /** Returns the evidence with the cases of all detectors. */
    private static Evidence detect(Evidence first, Metering metering) {
        Evidence evidence = withoutMisleading(first, metering);
        for (Detector detector : DETECTORS) {
            evidence.add(tellable(detector.find(evidence), metering, evidence.log));
        }
        return evidence;
    }

    /** True if a case cost enough to be acted on; else it is also noticed. */
    private static boolean costly(Case found, Finding finding, Costs costs) {
        if (found.kind() == FindingKind.NO_TURN_COMPENSATION) {
            // It moves liquid between rows, so that its volume is near 0 however much ground it puts off.
            return finding.areaM2() > MIN_OFF_GROUND * costs.totalM2();
        }
        return !MOVING.contains(found.kind())
                || Math.max(Math.abs(finding.volumeL()), costs.misplacedL(found)) > MIN_COST * costs.totalL();
    }

    /**
     * Looks for rows that mislead about the others: crossed rows look like turns taken wrongly, and rows whose meters are stuck
     * look alike in turns. What the others do is evaluated again without them.
     */
    private static Evidence withoutMisleading(Evidence first, Metering metering) {
        Evidence evidence = first;
        List<Case> found = new ArrayList<>();
        for (Detector detector : List.of(new ChannelsSwappedDetector(), new MeterStuckDetector())) {
            List<Case> cases = tellable(detector.find(evidence), metering, evidence.log);
            if (!cases.isEmpty()) {
                found.addAll(cases);
                for (Case misleading : cases) {
                    misleading
                            .rows()
                            .forEach(r -> first.ratios.excludeFromPeers(r, misleading.fromS(), misleading.toS()));
                }
                evidence = evidence(first.log, first.strips, first.delivery, first.ratios);
                evidence.add(found);
            }
        }
        return evidence;
    }

    /**
     * Returns the smallest deviation of a row that the log can show, as a fraction; 1 if it shows no rows. Between two records of a
     * sparse log all rows may be late in every pass.
     */
    private static double resolvable(LogTable log, List<LogLimits> limits, WorkingSamples work) {
        if (log.metering() == Metering.WHOLE_BAR || !log.isTimed()) {
            return 1;
        }
        double rounding =
                limits.stream().mapToDouble(LogLimits::resolutionOfMean).max().orElse(0);
        double hiddenS = limits.stream()
                .mapToDouble(of -> SwitchingDelays.hiddenS(of, work.passes()))
                .max()
                .orElse(0);
        double passS = Arrays.stream(work.durationS, 0, work.n).sum() / Math.max(1, work.passes());
        return Math.min(1, Deviation.limit(rounding + hiddenS / passS));
    }

    /**
     * Returns the cases that a log with such meters can show: one meter tells of a row only what its own command tells, and a
     * total in coarse steps, evened out over several seconds, does not tell swings of some seconds.
     */
    static List<Case> tellable(List<Case> cases, Metering metering, LogTable log) {
        return cases.stream()
                .filter(found -> !(log.evenedS() > 0 && found.kind() == FindingKind.HUNTING))
                .filter(found -> switch (metering) {
                    case PER_ROW -> true;
                    case SHARED -> !NEEDS_A_METER_PER_ROW.contains(found.kind());
                    case WHOLE_BAR ->
                        OF_THE_BAR.contains(found.kind())
                                && found.rows().stream().allMatch(r -> log.on(r, 0) >= 0);
                })
                .toList();
    }

    /** A cause that shows in several products is one finding: the first product's, with the liquid of all. */
    private static List<Placed> oncePerCause(List<Placed> all) {
        List<Placed> once = new ArrayList<>();
        for (Placed next : all) {
            int same = -1;
            for (int i = 0; i < once.size(); i++) {
                Finding before = once.get(i).finding;
                boolean other = once.get(i).window.product() != next.window.product();
                if (other
                        && before.kind() == next.finding.kind()
                        && before.rows().equals(next.finding.rows())
                        && before.fromS() < next.finding.toS()
                        && next.finding.fromS() < before.toS()) {
                    same = i;
                }
            }
            if (same < 0) {
                once.add(next);
            } else {
                once.set(same, once.get(same).with(next.finding));
            }
        }
        return once;
    }

    private static Evidence evidence(LogTable log, Strips strips, Delivery delivery, FlowRatios ratios) {
        List<TurnShares.Block> turns = TurnShares.fill(ratios);
        ratios.computeRatios();
        return new Evidence(log, strips, delivery, ratios, turns);
    }

    private static List<Message> notes(LogTable log, WorkingSamples work, Delivery delivery, double idleS) {
        List<Message> notes = new ArrayList<>();
        if (work.rows() < FlowRatios.MIN_PEERS) {
            notes.add(Message.of("findings.note.fewRows", work.rows()));
        }
        if (log.metering() == Metering.WHOLE_BAR) {
            notes.add(Message.of("findings.note.oneMeter"));
        } else if (log.metering() == Metering.SHARED) {
            notes.add(Message.of("findings.note.sharedMeters"));
        }
        if (!log.isTimed()) {
            notes.add(Message.of("findings.note.noTimes"));
        }
        if (!log.hasDown()) {
            notes.add(Message.of("findings.note.noWorkState"));
            if (idleS > DrivenWithoutFlow.MIN_S) {
                notes.add(Message.of(Diagnosis.DRIVEN_WITHOUT_FLOW, Message.duration(idleS)));
            }
        }
        if (work.coarse && Double.isNaN(log.records() == 0 ? Double.NaN : log.speedMps(log.records() / 2))) {
            notes.add(Message.of("findings.note.coarseFixes"));
        }
        boolean target = false;
        for (int p = 0; p < delivery.products(); p++) {
            target |= work.n > 0 && !Double.isNaN(delivery.targetLPerM2(p, 0, work.step[0]));
        }
        if (!target) {
            notes.add(Message.of("findings.note.noTarget"));
        }
        return notes;
    }
}
