package io.rowledger.report.common;

import io.rowledger.log.Metering;
import io.rowledger.rate.RowTotals;
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

    /** A row, or the rows of one meter, and the deviation, percent. */
    private record Deviation(List<Integer> rows, double pct) {
        Message named() {
            return Message.of("words.summary.row", rows, Message.percent(pct));
        }

        static int count(List<Deviation> all) {
            return all.stream().mapToInt(each -> each.rows.size()).sum();
        }
    }

    private final JobView job;
    private final int product;
    private final boolean hasTarget;
    /** Rows whose flow the log lacks for a part of the work. */
    private final List<Integer> unknown = new ArrayList<>();

    private final List<Deviation> all = new ArrayList<>();
    private final List<Deviation> act = new ArrayList<>();
    private final List<Deviation> watch = new ArrayList<>();

    RowsSummary(JobView job, int product) {
        this.job = job;
        this.product = product;
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
                if (Math.abs(pct) > Limits.ACT_PCT) {
                    act.add(deviation);
                } else if (Math.abs(pct) > Limits.WATCH_PCT) {
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

    /** The answer in one paragraph. */
    Message paragraph() {
        if (job.log().isOffScale()) {
            return Message.of(
                    "words.summary.offScale",
                    Message.value(QuantityKind.VOLUME, job.rates().volumeL(product)));
        }
        boolean bar = job.log().metering(product) == Metering.WHOLE_BAR;
        if (bar && job.rates().volumeL(product) > 0) {
            return bar();
        }
        if (all.isEmpty()) {
            return unknown.isEmpty()
                    ? Message.of("words.summary.noFlow")
                    : Message.of("words.summary.unknownFlow", unknown);
        }
        if (act.isEmpty() && watch.isEmpty()) {
            return allOnTarget();
        }
        List<Message> sentences = new ArrayList<>();
        if (!act.isEmpty()) {
            sentences.add(Message.of(
                    hasTarget ? "words.summary.actTarget" : "words.summary.actMean",
                    Deviation.count(act),
                    Deviation.count(all),
                    Limits.wholePct(Limits.ACT_PCT),
                    named(act)));
        }
        if (!watch.isEmpty()) {
            sentences.add(watch());
        }
        int fine = Deviation.count(all) - Deviation.count(act) - Deviation.count(watch);
        if (fine > 0) {
            sentences.add(Message.of("words.summary.others", fine, Limits.wholePct(Limits.WATCH_PCT)));
        }
        return Message.of(act.isEmpty() ? "words.summary.nearly" : "words.summary.no", sentences);
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
    private Message allOnTarget() {
        if (!unknown.isEmpty()) {
            return Message.of(
                    hasTarget ? "words.summary.partTarget" : "words.summary.partMean",
                    Limits.wholePct(Limits.WATCH_PCT),
                    all.get(0).rows,
                    Message.percent(all.get(0).pct),
                    unknown);
        }
        boolean known = !(bestKnownPct(job, product) > Limits.WATCH_PCT);
        String key = hasTarget
                ? (known ? "words.summary.yesTarget" : "words.summary.readsTarget")
                : (known ? "words.summary.yesMean" : "words.summary.readsMean");
        return Message.of(key, Limits.wholePct(Limits.WATCH_PCT), all.get(0).rows, Message.percent(all.get(0).pct));
    }

    private Message watch() {
        String key = !act.isEmpty()
                ? "words.summary.watchMore"
                : hasTarget ? "words.summary.watchTarget" : "words.summary.watchMean";
        return Message.of(
                key,
                Deviation.count(watch),
                Deviation.count(all),
                Limits.wholePct(Limits.WATCH_PCT),
                Limits.wholePct(Limits.ACT_PCT),
                named(watch));
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
