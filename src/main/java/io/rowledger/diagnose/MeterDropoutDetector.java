package io.rowledger.diagnose;

import io.rowledger.finding.FindingKind;
import java.util.ArrayList;
import java.util.BitSet;
import java.util.List;

/** Zeros that come and go at once while the siblings and the total don't move: a meter or its wiring. */
final class MeterDropoutDetector implements Detector {
    /** A spell of zeros longer than this is no dropout, s. */
    private static final double LONGEST_SPELL_S = 12;

    private static final int LEAST_SPELLS = 3;

    /** Zeros belong together while no more good work than this lies between them, s. */
    private static final double LONGEST_PAUSE_S = 90;

    private static final double ZERO = 0.03;
    private static final double GOOD = 0.4;

    /** Zeros in a row: entries from (inclusive) to end (exclusive). */
    private record Spell(int from, int end) {}

    @Override
    public List<Case> find(Evidence e) {
        List<Case> cases = new ArrayList<>();
        for (int r = 0; r < e.rows(); r++) {
            List<Spell> spells = spells(e, r);
            List<Spell> kept = new ArrayList<>();
            int first = 0;
            while (first < spells.size()) {
                int last = first;
                while (last + 1 < spells.size()
                        && workBetween(e.work, spells.get(last).end, spells.get(last + 1).from) < LONGEST_PAUSE_S) {
                    last++;
                }
                if (last - first + 1 >= LEAST_SPELLS) {
                    kept.addAll(spells.subList(first, last + 1));
                }
                first = last + 1;
            }
            if (!kept.isEmpty()) {
                cases.add(caseOf(e, r, kept));
            }
        }
        return cases;
    }

    private static double workBetween(Work work, int after, int before) {
        double sum = 0;
        for (int j = after; j < before; j++) {
            sum += work.durationS[j];
        }
        return sum;
    }

    private static List<Spell> spells(Evidence e, int r) {
        List<Spell> spells = new ArrayList<>();
        Work work = e.work;
        BitSet shut = e.signals.judged.shut(r);
        int j = 1;
        while (j < work.n) {
            if (zero(e, r, j) && good(e, r, j - 1) && work.pass[j] == work.pass[j - 1]) {
                int end = j;
                while (end < work.n && work.pass[end] == work.pass[j] && !good(e, r, end)) {
                    end++;
                }
                boolean inside = end < work.n && work.pass[end] == work.pass[j];
                if (inside && work.timeS[end] - work.timeS[j] <= LONGEST_SPELL_S && !shut.get(j)) {
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
        double implied = e.signals.impliedLPerS(r, j);
        return !e.signals.unsteady(j) && e.signals.flowLPerS[r][j] < ZERO * implied;
    }

    private static boolean good(Evidence e, int r, int j) {
        return e.signals.flowLPerS[r][j] > GOOD * e.signals.impliedLPerS(r, j);
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
        e.forget(r, zeros);
        int from = spells.get(0).from;
        int last = spells.get(spells.size() - 1).end;
        double worked = workBetween(e.work, from, last);
        double confidence = spells.size() >= 8 ? 0.97 : spells.size() >= 5 ? 0.92 : 0.75;
        List<Integer> rows = List.of(r);
        double mismatch = e.meterAgainstTotal(r, e.work.timeS[from], e.work.timeS[last]);
        String evidence = Said.capital(Said.rows(rows)) + " read zero " + spells.size() + " times in "
                + Said.time(worked) + " of work, " + Said.pct(zeroS / worked)
                + " of it, each time at once and back at once, while the siblings held"
                + Said.meterAgainstTotal(mismatch, -zeroS / worked) + ".";
        String rival =
                "A valve that shuts by itself would lose liquid, slower and with the total meter following; a plugged"
                        + " row stays down.";
        String check =
                "Watch the reading while someone moves the meter's cable with the bar standing and shut; look at the"
                        + " plug for water or corrosion; swap the plug with a neighbour's and see whether the zeros move along.";
        return new Case(
                FindingKind.METER_DROPOUT,
                rows,
                e.work.timeS[from],
                e.work.timeS[last],
                confidence,
                new Case.Words(evidence, rival, check),
                List.of(new Figure("share of the time at zero", zeroS / worked, "1")));
    }
}
