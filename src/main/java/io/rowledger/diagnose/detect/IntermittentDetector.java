package io.rowledger.diagnose.detect;

import io.rowledger.diagnose.signal.Case;
import io.rowledger.diagnose.signal.Evidence;
import io.rowledger.diagnose.signal.Figure;
import io.rowledger.diagnose.signal.FindingMessages;
import io.rowledger.diagnose.signal.WorkingSamples;
import io.rowledger.finding.FindingKind;
import io.rowledger.text.Message;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.BitSet;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * A row that gives almost nothing in spells of a few seconds or more and comes back each time: air, trash in a strainer, a
 * loose valve connector. Spells of a second or two are left to {@link MeterDropoutDetector}, and so are spells in which the
 * total meter did not move; a spell that a neighboring row shares is a section's; one confined to the end of a pass is the
 * valve's. A row that is off for whole passes may have been shut: at least one spell begins or ends well inside a pass.
 */
public final class IntermittentDetector implements Detector {
    /** Flow ratio below which the row gives almost nothing, and from which it is back (1). */
    private static final double LOW = 0.2;

    private static final double BACK = 0.5;

    /** The same in a log of averages, where a short spell doesn't reach zero and readings recover slowly (1). */
    private static final double LOW_AVERAGED = 0.4;

    private static final double BACK_AVERAGED = 0.6;

    /** A spell this near the start or end of its pass may be the valve's, s. */
    private static final double EDGE_S = 8;

    /** Shortest spell, s. */
    private static final double MIN_SPELL_S = 1;

    /** Half of the low time lies in spells longer than this: meters drop out for less, s. */
    private static final double MIN_TYPICAL_S = 4.5;

    /** Median length of the spells, unless half of the low time lies in long ones, s. */
    private static final double MIN_MEDIAN_S = 2.8;

    private static final int MIN_SPELLS = 3;

    /** Two spells are enough when each lasts this long, s. */
    private static final double LONG_S = 8;

    private static final double MIN_TOTAL_S = 10;

    /** A spell longer than this is a plugged row's, s of work. */
    private static final double MAX_SPELL_S = 150;

    /** Row meters less total meter, over what the row should give, below which only the meter failed (1). */
    private static final double TOTAL_STILL = -0.5;

    /** Seconds of flow that may lack for each second of low readings in a log of means (1). */
    private static final double MAX_LACKING = 1.6;

    /** Working entries from (inclusive) to end (exclusive) of low flow, possibly over several passes. */
    private record Spell(int from, int end, double lowS) {}

    @Override
    public List<Case> find(Evidence e) {
        List<Case> cases = new ArrayList<>();
        BitSet[] low = e.ofRows(r -> low(e, r)).toArray(BitSet[]::new);
        for (int r = 0; r < e.rows(); r++) {
            Case found = crossed(e, r) ? null : ofRow(e, r, low);
            if (found != null) {
                cases.add(found);
            }
        }
        return cases;
    }

    /** True for a row that shuts off with another row's place. */
    private static boolean crossed(Evidence e, int r) {
        return e.cases().stream().anyMatch(x -> x.kind() == FindingKind.CHANNELS_SWAPPED && x.concerns(r));
    }

    /** Entries in which row r should deliver and gives almost nothing. */
    private static BitSet low(Evidence e, int r) {
        BitSet low = new BitSet(e.work.n);
        double limit = low(e);
        for (int j = 0; j < e.work.n; j++) {
            low.set(j, e.ratios.flowLPerS[r][j] < limit * e.ratios.impliedLPerS(r, j) && known(e, r, j));
        }
        return low;
    }

    private static double low(Evidence e) {
        return e.limits.averagingS() > 0 ? LOW_AVERAGED : LOW;
    }

    private static double back(Evidence e) {
        return e.limits.averagingS() > 0 ? BACK_AVERAGED : BACK;
    }

    private static boolean known(Evidence e, int r, int j) {
        double implied = e.ratios.impliedLPerS(r, j);
        return implied > 0
                && e.limits.zeroIsNothing(r, implied)
                && e.work.speedMps[j] > 0.5
                && !e.ratios.evaluated.shut(r).get(j)
                && e.ratios.rowSpeedShare(r, j) > LOW;
    }

    private static @Nullable Case ofRow(Evidence e, int r, BitSet[] low) {
        List<Spell> spells = new ArrayList<>();
        double totalS = 0;
        double mismatch = 0;
        boolean metered = false;
        boolean inside = false;
        for (Spell spell : spells(e, r, low[r])) {
            if (spell.lowS >= MIN_SPELL_S
                    && spell.lowS <= MAX_SPELL_S
                    && !confinedToAnEnd(e.work, spell)
                    && !shared(low, r, spell)) {
                double now = e.meterAgainstTotal(r, e.work.timeS[spell.from], e.work.timeS[spell.end - 1]);
                metered |= !Double.isNaN(now);
                mismatch += Double.isNaN(now) ? 0 : now * spell.lowS;
                spells.add(spell);
                totalS += spell.lowS;
                inside |= insideAPass(e.work, spell);
            }
        }
        double[] lengths = spells.stream().mapToDouble(Spell::lowS).sorted().toArray();
        boolean often = lengths.length >= MIN_SPELLS || (lengths.length == 2 && lengths[0] >= LONG_S);
        boolean onlyMeter = metered && mismatch / totalS < TOTAL_STILL;
        if (!often || !inside || totalS < MIN_TOTAL_S || brief(e, lengths) || onlyMeter) {
            return null;
        }
        if (e.limits.averagingS() > 0 && !metered && blurred(e, r, spells)) {
            e.markBlurred(r);
            return null;
        }
        return caseOf(e, r, spells, lengths, totalS, metered ? mismatch / totalS : Double.NaN);
    }

    /** True if the spells may all have been as short as a meter's dropouts: n records may last one interval less than they stand for. */
    private static boolean brief(Evidence e, double[] lengths) {
        double[] atLeast = Arrays.stream(lengths)
                .map(s -> Math.max(0, s - e.limits.intervalS()))
                .toArray();
        double typicalS = typicalS(atLeast, Arrays.stream(atLeast).sum());
        return typicalS < MIN_TYPICAL_S || (typicalS < LONG_S && atLeast[atLeast.length / 2] < MIN_MEDIAN_S);
    }

    /**
     * True if means hide how long a row gave nothing. A spell of L seconds in means over W lacks L seconds of flow and reads below
     * {@value #LOW_AVERAGED} for L − W/5, if it is as long as the means; a meter's dropouts, shorter than that, lack much and read low
     * seldom.
     */
    private static boolean blurred(Evidence e, int r, List<Spell> spells) {
        double lowS = 0;
        double lackingS = 0;
        int end = spells.get(spells.size() - 1).end;
        for (int j = spells.get(0).from; j < end; j++) {
            if (known(e, r, j)) {
                double share = e.ratios.flowLPerS[r][j] / e.ratios.impliedLPerS(r, j);
                lowS += share < LOW_AVERAGED ? e.work.durationS[j] : 0;
                lackingS += Math.max(0, 1 - share) * e.work.durationS[j];
            }
        }
        return lackingS > MAX_LACKING * lowS;
    }

    /** The spell length that half of the low time lies in spells shorter than. */
    private static double typicalS(double[] lengths, double totalS) {
        double sum = 0;
        for (double length : lengths) {
            sum += length;
            if (sum >= totalS / 2) {
                return length;
            }
        }
        return 0;
    }

    private static List<Spell> spells(Evidence e, int r, BitSet low) {
        List<Spell> spells = new ArrayList<>();
        int j = low.nextSetBit(0);
        boolean cameBack = true;
        while (j >= 0) {
            int last = j;
            double lowS = 0;
            int k = j;
            for (; k < e.work.n; k++) {
                if (low.get(k)) {
                    last = k;
                    lowS += e.work.durationS[k];
                } else if (known(e, r, k) && e.ratios.flowLPerS[r][k] > back(e) * e.ratios.impliedLPerS(r, k)) {
                    break;
                }
            }
            if (k < e.work.n || cameBack) {
                spells.add(new Spell(j, last + 1, lowS));
            }
            cameBack = true;
            j = k < e.work.n ? low.nextSetBit(k) : -1;
        }
        return spells;
    }

    /** True if the spell begins or ends well inside a pass. */
    private static boolean insideAPass(WorkingSamples work, Spell spell) {
        return inside(work, spell.from) || inside(work, spell.end - 1);
    }

    /** True if the spell lies within {@link #EDGE_S} of the start or of the end of its pass. */
    private static boolean confinedToAnEnd(WorkingSamples work, Spell spell) {
        int first = work.pass[spell.from] - 1;
        int last = work.pass[spell.end - 1] - 1;
        return first == last
                && (work.timeS[spell.end - 1] - work.timeS[work.passFrom[first]] <= EDGE_S
                        || work.timeS[work.passFrom[last + 1] - 1] - work.timeS[spell.from] <= EDGE_S);
    }

    private static boolean inside(WorkingSamples work, int j) {
        int q = work.pass[j] - 1;
        return work.timeS[j] - work.timeS[work.passFrom[q]] > EDGE_S
                && work.timeS[work.passFrom[q + 1] - 1] - work.timeS[j] > EDGE_S;
    }

    private static boolean shared(BitSet[] low, int r, Spell spell) {
        for (int other = Math.max(0, r - 1); other <= Math.min(low.length - 1, r + 1); other++) {
            if (other != r) {
                int same = low[other].get(spell.from, spell.end).cardinality();
                if (2 * same > low[r].get(spell.from, spell.end).cardinality()) {
                    return true;
                }
            }
        }
        return false;
    }

    private static Case caseOf(
            Evidence e, int r, List<Spell> spells, double[] lengths, double totalS, double mismatch) {
        BitSet entries = new BitSet();
        boolean zero = true;
        for (Spell spell : spells) {
            entries.set(Math.max(0, spell.from - 1), Math.min(e.work.n, spell.end + 1));
            for (int j = spell.from; j < spell.end; j++) {
                zero &= e.ratios.flowLPerS[r][j] <= 0 || j == spell.from || j == spell.end - 1;
            }
        }
        e.exclude(r, entries);
        int from = spells.get(0).from;
        int last = spells.get(spells.size() - 1).end - 1;
        double worked = 0;
        for (int j = from; j <= last; j++) {
            worked += e.work.durationS[j];
        }
        int n = spells.size();
        double confidence = n >= 6 ? 0.96 : n >= 4 ? 0.93 : n >= 3 ? 0.9 : 0.75;
        Message evidence = Message.of(
                "findings.intermittent.evidence",
                FindingMessages.rows(List.of(r)),
                n,
                Message.duration(lengths[0]),
                Message.duration(lengths[n - 1]),
                FindingMessages.percent(Math.min(1, totalS / worked)),
                Message.duration(worked),
                FindingMessages.total(mismatch, -1));
        Message alternative = Message.of(
                zero && Double.isNaN(mismatch)
                        ? "findings.intermittent.alternative.zero"
                        : "findings.intermittent.alternative.flow");
        return new Case(
                FindingKind.INTERMITTENT,
                List.of(r),
                e.work.timeS[from],
                e.work.timeS[last],
                zero && Double.isNaN(mismatch) ? Math.min(0.9, confidence) : confidence,
                new Case.Words(evidence, alternative, Message.of("findings.intermittent.check")),
                List.of(Figure.of("findings.figure.almostNothingTime", Math.min(1, totalS / worked), "1")));
    }
}
