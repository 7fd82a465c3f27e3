package io.rowledger.report.answer;

import io.rowledger.log.Metering;
import io.rowledger.rate.RowTotals;
import io.rowledger.report.common.JobView;
import io.rowledger.report.common.Limits;
import io.rowledger.report.common.ProductSums;
import io.rowledger.text.Argument;
import io.rowledger.text.Message;
import io.rowledger.uncertainty.Interval;
import io.rowledger.units.QuantityKind;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;

/** Whether every row put on its target volume of one product; without a target, whether the rows are alike. */
final class RowsSummary {
    /** How far the best known row of product p is known, percent of its target; NaN without bounds. */
    static double bestKnownPct(JobView job, int p) {
        return job.intervals().rows().stream()
                .map(row -> row.products().get(p).deviationPct())
                .filter(Interval::known)
                .mapToDouble(off -> (off.high() - off.low()) / 2)
                .min()
                .orElse(Double.NaN);
    }

    /** Rows, from 1, of which product p is known worse than within {@link Limits#WATCH_PCT} of the target. */
    static List<Integer> unsure(JobView job, int p) {
        List<Integer> rows = new ArrayList<>();
        for (int r = 0; r < job.intervals().rows().size(); r++) {
            Interval off = job.intervals().rows().get(r).products().get(p).deviationPct();
            if (off.known() && (off.high() - off.low()) / 2 > Limits.WATCH_PCT) {
                rows.add(r + 1);
            }
        }
        return rows;
    }

    /** A row, or the rows of one meter, and the deviation, percent. */
    private record Deviation(List<Integer> rows, double pct) {
        Message named() {
            return Message.of("words.summary.row", rows, Message.percent(pct));
        }
    }

    /** Fewest rows or meters that can be off together: of two, one may be right. */
    private static final int MIN_TOGETHER = 3;
    /** Difference that a percentage with one decimal does not show, percent. */
    private static final double ALIKE_PCT = 0.1;

    private final JobView job;
    private final int product;
    private final boolean manyDropped;
    private final boolean hasTarget;
    /** Rows whose flow the log lacks for a part of the work. */
    private final List<Integer> unknown = new ArrayList<>();

    private final List<Deviation> all = new ArrayList<>();
    private final List<Deviation> act = new ArrayList<>();
    private final List<Deviation> watch = new ArrayList<>();

    /**
     * The rows of a product.
     *
     * @param manyDropped true if a large part of the log could not be used: then no answer is a plain yes
     */
    RowsSummary(JobView job, int product, boolean manyDropped) {
        this.job = job;
        this.product = product;
        this.manyDropped = manyDropped;
        ProductSums sums = ProductSums.of(job.rates(), job.coverage(), product);
        this.hasTarget = sums.hasTarget();
        for (RowTotals row : job.rates().rows()) {
            if (row.products().get(product).unknownAreaM2() * 100 > Limits.DROPPED_PCT * row.sweptAreaM2()) {
                unknown.add(row.row());
            }
        }
        for (MeteredRows part : MeteredRows.of(job, product)) {
            double pct = part.deviationPct();
            if (!Double.isNaN(pct)) {
                Deviation deviation = new Deviation(part.rows(), pct);
                all.add(deviation);
                if (Math.abs(Limits.printed(pct)) > Limits.ACT_PCT) {
                    act.add(deviation);
                } else if (Math.abs(Limits.printed(pct)) > Limits.WATCH_PCT) {
                    watch.add(deviation);
                }
            }
        }
        Comparator<Deviation> largestFirst = Comparator.comparingDouble((Deviation each) -> -Math.abs(each.pct))
                .thenComparingInt(each -> each.rows.get(0));
        all.sort(largestFirst);
        act.sort(largestFirst);
        watch.sort(largestFirst);
    }

    /** How far the row farthest off is off; of one meter for the bar, how far the bar is; FINE where no flow is known. */
    Grade grade() {
        if (job.log().isOffScale()) {
            return Grade.FINE;
        }
        if (isBar()) {
            double barPct = ProductSums.of(job.rates(), job.coverage(), product).deviationPct();
            return Grade.of(Math.abs(barPct), Limits.WATCH_PCT, Limits.ACT_PCT);
        }
        return !act.isEmpty() ? Grade.OFF : !watch.isEmpty() ? Grade.NEARLY : Grade.FINE;
    }

    /** True if a meter serves several rows: then the figures are of meters, and single rows are not known. */
    private boolean isShared() {
        return job.log().metering(product) == Metering.SHARED;
    }

    private Message one() {
        return Message.of(isShared() ? "words.summary.one.meter" : "words.summary.one.row");
    }

    private Message many() {
        return Message.of(isShared() ? "words.summary.many.meter" : "words.summary.many.row");
    }

    private boolean isBar() {
        return job.log().metering(product) == Metering.WHOLE_BAR && job.rates().volumeL(product) > 0;
    }

    /**
     * The answer in one paragraph.
     *
     * @param plain true if another answer stands before this one: then without yes, nearly or no
     */
    Message paragraph(boolean plain) {
        return isShared() && !all.isEmpty() ? Message.of("words.summary.shared", answer(plain)) : answer(plain);
    }

    private Message answer(boolean plain) {
        if (job.log().isOffScale()) {
            return Message.of(
                    "words.summary.offScale",
                    Message.value(QuantityKind.VOLUME, job.rates().volumeL(product)));
        }
        if (isBar()) {
            return plain || grade() == Grade.FINE
                    ? bar()
                    : Message.of(grade() == Grade.OFF ? "words.summary.isNo" : "words.summary.isNearly", bar());
        }
        if (all.isEmpty()) {
            return unknown.isEmpty()
                    ? Message.of("words.summary.noFlow")
                    : Message.of("words.summary.unknownFlow", unknown);
        }
        if (act.isEmpty() && watch.isEmpty()) {
            return allOnTarget(plain);
        }
        List<Message> sentences = isTogether() ? List.of(together()) : sentences();
        return Message.of(
                plain ? "words.summary.plain" : act.isEmpty() ? "words.summary.nearly" : "words.summary.no", sentences);
    }

    /** Rows beyond the limits by name, then how many are within. */
    private List<Message> sentences() {
        List<Message> sentences = new ArrayList<>();
        if (!act.isEmpty()) {
            sentences.add(Message.of(
                    hasTarget ? "words.summary.actTarget" : "words.summary.actMean",
                    act.size(),
                    all.size(),
                    Limits.wholePct(Limits.ACT_PCT),
                    named(act),
                    many()));
        }
        if (!watch.isEmpty()) {
            sentences.add(watch());
        }
        int fine = all.size() - act.size() - watch.size();
        if (fine > 0) {
            sentences.add(Message.of("words.summary.others", fine, Limits.wholePct(Limits.WATCH_PCT)));
        }
        return sentences;
    }

    /** True if every row is off the target, to the same side, and near the others: the bar is off, not a row. */
    private boolean isTogether() {
        double min = all.stream().mapToDouble(Deviation::pct).min().orElse(0);
        double max = all.stream().mapToDouble(Deviation::pct).max().orElse(0);
        return hasTarget
                && all.size() >= MIN_TOGETHER
                && act.size() + watch.size() == all.size()
                && min * max > 0
                && max - min <= Limits.WATCH_PCT;
    }

    private Message together() {
        double barPct = ProductSums.of(job.rates(), job.coverage(), product).deviationPct();
        double leastPct = all.get(all.size() - 1).pct;
        double mostPct = all.get(0).pct;
        int rows = all.size();
        return Math.abs(mostPct - leastPct) < ALIKE_PCT
                ? Message.of("words.summary.alike", rows, Message.percent(barPct), many())
                : Message.of(
                        "words.summary.together",
                        rows,
                        Message.percent(barPct),
                        Message.percent(leastPct),
                        Message.percent(mostPct),
                        many());
    }

    /** What the one meter of the bar shows; it says nothing about single rows. */
    private Message bar() {
        ProductSums sums = ProductSums.of(job.rates(), job.coverage(), product);
        Argument volume = Message.value(QuantityKind.VOLUME, sums.volumeL());
        if (job.log().isAreas()) {
            return hasTarget
                    ? Message.of("words.summary.areasTarget", volume, Message.percent(sums.deviationPct()))
                    : Message.of("words.summary.areasMean", volume);
        }
        return hasTarget
                ? Message.of("words.summary.barTarget", volume, Message.percent(sums.deviationPct()))
                : Message.of("words.summary.barMean", volume);
    }

    /** Never a plain yes if the bounds of the rows are wider than the limit; a reservation tells how wide they are. */
    private Message allOnTarget(boolean plain) {
        if (!unknown.isEmpty()) {
            return Message.of(
                    hasTarget ? "words.summary.partTarget" : "words.summary.partMean",
                    Limits.wholePct(Limits.WATCH_PCT),
                    all.get(0).rows,
                    Message.percent(all.get(0).pct),
                    unknown,
                    one());
        }
        boolean known = unsure(job, product).isEmpty() && !manyDropped && !plain;
        String key = hasTarget
                ? (known ? "words.summary.yesTarget" : "words.summary.readsTarget")
                : (known ? "words.summary.yesMean" : "words.summary.readsMean");
        return Message.of(
                key, Limits.wholePct(Limits.WATCH_PCT), all.get(0).rows, Message.percent(all.get(0).pct), one());
    }

    private Message watch() {
        String key = !act.isEmpty()
                ? "words.summary.watchMore"
                : hasTarget ? "words.summary.watchTarget" : "words.summary.watchMean";
        return Message.of(
                key,
                watch.size(),
                all.size(),
                Limits.wholePct(Limits.WATCH_PCT),
                Limits.wholePct(Limits.ACT_PCT),
                named(watch),
                many());
    }

    private static Message named(List<Deviation> rows) {
        int named = Math.min(Limits.ROWS_IN_A_SENTENCE, rows.size());
        List<Message> names =
                rows.subList(0, named).stream().map(Deviation::named).toList();
        return rows.size() > named
                ? Message.of("words.summary.rowsAndMore", names, rows.size() - named)
                : Message.of("words.summary.rows", names);
    }
}
