package io.rowledger.diagnose.detect;

import io.rowledger.diagnose.signal.Case;
import io.rowledger.diagnose.signal.EpisodeClusters;
import io.rowledger.diagnose.signal.Evidence;
import io.rowledger.diagnose.signal.Figure;
import io.rowledger.diagnose.signal.FindingMessages;
import io.rowledger.diagnose.signal.FlowRatios;
import io.rowledger.diagnose.signal.LevelShifts;
import io.rowledger.diagnose.signal.WorkingSamples;
import io.rowledger.finding.FindingKind;
import io.rowledger.text.Message;
import java.util.ArrayList;
import java.util.BitSet;
import java.util.List;

/**
 * Zeros that come and go at once while the other rows and the total don't move, or that stay while the total doesn't move: a
 * meter or its wiring. Without a total meter nothing tells a meter that died from a row that plugged.
 */
public final class MeterDropoutDetector implements Detector {
    /** A spell of zeros longer than this is no dropout, s. */
    private static final double MAX_SPELL_S = 12;

    private static final int MIN_SPELLS = 3;

    /** Zeros belong together while no more good work than this lies between them, s. */
    private static final double MAX_PAUSE_S = 90;

    private static final double ZERO = 0.03;
    private static final double GOOD = 0.4;

    /** Of what a row should give, the meters' sum must have lost this against the total meter for its own to be dead. */
    private static final double LOST = 0.5;

    /** Zeros in a row: entries from (inclusive) to end (exclusive). */
    private record Spell(int from, int end) {}

    @Override
    public List<Case> find(Evidence e) {
        List<Case> cases = new ArrayList<>();
        List<List<Spell>> ofRows = e.ofRows(r -> spells(e, r));
        for (int r = 0; r < e.rows(); r++) {
            if (comesAndGoes(e, r)) {
                continue;
            }
            List<Spell> spells = ofRows.get(r);
            List<Spell> kept = new ArrayList<>();
            int first = 0;
            while (first < spells.size()) {
                int last = first;
                while (last + 1 < spells.size()
                        && workBetween(e.work, spells.get(last).end, spells.get(last + 1).from) < MAX_PAUSE_S) {
                    last++;
                }
                if (last - first + 1 >= MIN_SPELLS) {
                    kept.addAll(spells.subList(first, last + 1));
                }
                first = last + 1;
            }
            if (!kept.isEmpty()) {
                cases.add(caseOf(e, r, kept));
            }
        }
        cases.addAll(dead(e));
        return cases;
    }

    /** True where longer spells were found already: the short ones among them have the same cause. */
    private static boolean comesAndGoes(Evidence e, int r) {
        return e.cases().stream().anyMatch(x -> x.kind() == FindingKind.INTERMITTENT && x.concerns(r));
    }

    /** Rows that read nothing any more while the total meter lost nothing. */
    private static List<Case> dead(Evidence e) {
        List<LevelShifts.Episode> nothing = e.unexplained().stream()
                .filter(x -> x.level() < FlowRatios.PLUGGED)
                .toList();
        List<Case> cases = new ArrayList<>();
        for (List<LevelShifts.Episode> group : EpisodeClusters.grouped(e, nothing)) {
            LevelShifts.Episode first = group.get(0);
            double lost = e.meterLeftTotal(first.row(), first.fromS(), first.toS()) / group.size();
            if (lost < -LOST) {
                e.explain(group);
                group.forEach(x -> e.exclude(x.row(), x.fromS(), x.toS()));
                cases.add(deadCase(e, group, lost));
            }
        }
        return cases;
    }

    private static Case deadCase(Evidence e, List<LevelShifts.Episode> group, double lost) {
        LevelShifts.Episode first = group.get(0);
        List<Integer> rows = EpisodeClusters.rows(group);
        boolean sure = first.evaluatedS() >= 2.5 * LevelShifts.MIN_S && lost < -0.8 && lost > -1.2;
        Message evidence = Message.of(
                "findings.meter_dropout.evidence.dead",
                FindingMessages.rows(rows),
                FindingMessages.percent(first.level()),
                Message.duration(first.evaluatedS()),
                first.fromStart() ? Message.of("findings.meter_dropout.started") : FindingMessages.none(),
                FindingMessages.percent(-lost),
                rows.size(),
                FindingMessages.shared(e, rows));
        Message alternative = Message.of("findings.meter_dropout.alternative.dead");
        Message check = Message.of("findings.meter_dropout.check.dead");
        return new Case(
                FindingKind.METER_DROPOUT,
                rows,
                first.fromS(),
                group.stream().mapToDouble(LevelShifts.Episode::toS).max().orElse(first.toS()),
                sure ? 0.95 : 0.75,
                new Case.Words(evidence, alternative, check),
                List.of(Figure.of("findings.figure.peerShare", first.level(), "1")));
    }

    private static double workBetween(WorkingSamples work, int after, int before) {
        double sum = 0;
        for (int j = after; j < before; j++) {
            sum += work.durationS[j];
        }
        return sum;
    }

    private static List<Spell> spells(Evidence e, int r) {
        List<Spell> spells = new ArrayList<>();
        WorkingSamples work = e.work;
        BitSet shut = e.ratios.evaluated.shut(r);
        int j = 1;
        while (j < work.n) {
            if (zero(e, r, j) && good(e, r, j - 1) && work.pass[j] == work.pass[j - 1]) {
                int end = j;
                while (end < work.n && work.pass[end] == work.pass[j] && !good(e, r, end)) {
                    end++;
                }
                boolean inside = end < work.n && work.pass[end] == work.pass[j];
                if (inside && work.timeS[end] - work.timeS[j] <= MAX_SPELL_S && !shut.get(j)) {
                    spells.add(new Spell(j, end));
                }
                j = end;
            } else {
                j++;
            }
        }
        return spells;
    }

    private static boolean zero(Evidence e, int r, int j) {
        double implied = e.ratios.impliedLPerS(r, j);
        return e.ratios.flowLPerS[r][j] < ZERO * implied && !e.ratios.unsteady(j) && e.limits.zeroIsNothing(r, implied);
    }

    private static boolean good(Evidence e, int r, int j) {
        return e.ratios.flowLPerS[r][j] > GOOD * e.ratios.impliedLPerS(r, j);
    }

    private static Case caseOf(Evidence e, int r, List<Spell> spells) {
        BitSet zeros = new BitSet();
        double zeroS = 0;
        for (Spell spell : spells) {
            zeros.set(spell.from, spell.end);
            // The records beside a gap may be means over a part of it.
            zeros.set(Math.max(0, spell.from - 1), Math.min(e.work.n, spell.end + 1));
            zeroS += e.work.timeS[spell.end] - e.work.timeS[spell.from];
        }
        e.exclude(r, zeros);
        int from = spells.get(0).from;
        int last = spells.get(spells.size() - 1).end;
        double worked = workBetween(e.work, from, last);
        double confidence = spells.size() >= 8 ? 0.97 : spells.size() >= 5 ? 0.92 : 0.75;
        List<Integer> rows = List.of(r);
        double mismatch = e.meterAgainstTotal(r, e.work.timeS[from], e.work.timeS[last]);
        Message evidence = Message.of(
                "findings.meter_dropout.evidence.spells",
                FindingMessages.rows(rows),
                spells.size(),
                Message.duration(worked),
                FindingMessages.percent(zeroS / worked),
                FindingMessages.total(mismatch, -zeroS / worked));
        Message alternative = Message.of("findings.meter_dropout.alternative.spells");
        Message check = Message.of("findings.meter_dropout.check.spells");
        return new Case(
                FindingKind.METER_DROPOUT,
                rows,
                e.work.timeS[from],
                e.work.timeS[last],
                confidence,
                new Case.Words(evidence, alternative, check),
                List.of(Figure.of("findings.figure.zeroTime", zeroS / worked, "1")));
    }
}
