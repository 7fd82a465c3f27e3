package io.rowledger.run;

import io.rowledger.interval.Interval;
import io.rowledger.interval.Intervals;
import io.rowledger.report.Analysis;
import io.rowledger.sim.Truth;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;

/** How often intervals held the truth, per figure and receiver. */
final class IntervalScores {
    /** Seeds of one run lie this far apart, so that runs share no job. */
    private static final long STRIDE = 10_007;

    private static final String BOTH = "both";

    private final Map<String, Count> counts = new LinkedHashMap<>();

    /** Of one figure. */
    private static final class Count {
        private int held;
        private int below;
        private int above;
        private double widthPct;
        private double biasPct;

        int all() {
            return held + below + above;
        }

        double pct() {
            return 100.0 * held / all();
        }
    }

    static IntervalScores score(Path folder, long seed, int jobs) {
        IntervalScores scores = new IntervalScores();
        for (int i = 0; i < jobs; i++) {
            MismeasuredJob job = MismeasuredJob.draw(seed * STRIDE + i);
            Path own = folder.resolve("job" + i);
            job.result().writeTo(own);
            Path boundary = own.resolve("boundary.geojson");
            Analysis a = Pipeline.analyse(
                    new JobFiles(
                            List.of(own.resolve("log.csv")),
                            own.resolve("rig.yaml"),
                            Files.exists(boundary) ? boundary : null),
                    2,
                    Progress.SILENT);
            scores.add(job, a.intervals());
        }
        System.out.println(scores.table("Intervals against simulator truth, " + jobs + " jobs, seed " + seed));
        return scores;
    }

    private void add(MismeasuredJob job, Intervals in) {
        Truth truth = job.result().truth();
        String by = job.rtk() ? "RTK" : "differential";
        Truth.Ground ground = truth.ground();
        double volumeL = truth.volumeL()[0];
        double nitrogenKg = volumeL * job.trueDensityKgPerL() * 0.32;
        Intervals.OfProduct product = in.products().get(0);
        put("swept area", by, in.sweptAreaM2(), truth.sweptAreaM2());
        put("covered area", by, in.coveredAreaM2(), ground.coveredM2());
        put("doubled area", by, in.overlapAreaM2(), ground.overlapM2());
        put("missed area", by, in.missedAreaM2(), ground.missedM2());
        put("volume", by, product.volumeL(), volumeL);
        put("mean rate", by, product.meanRateLPerM2(), volumeL / ground.coveredM2());
        put("nitrogen", by, product.nitrogenKg(), nitrogenKg);
        put("nitrogen per area", by, product.nitrogenKgPerM2(), nitrogenKg / ground.coveredM2());
        for (Truth.Row row : truth.rows()) {
            Intervals.OfRow of = in.rows().get(row.row() - 1);
            Intervals.OfRowProduct p = of.products().get(0);
            double rowL = row.volumeL()[0];
            put("row: swept area", by, of.sweptAreaM2(), row.sweptAreaM2());
            put("row: volume", by, p.volumeL(), rowL);
            put("row: mean rate", by, p.meanRateLPerM2(), rowL / row.appliedAreaM2());
            put("row: deviation", by, p.deviationPct(), (rowL / row.targetL()[0] - 1) * 100);
        }
    }

    private void put(String figure, String receiver, Interval interval, double truth) {
        if (Double.isNaN(truth)) {
            return;
        }
        if (!interval.known()) {
            throw new AssertionError(figure + " has no interval");
        }
        count(figure, receiver, interval, truth);
        count(figure, BOTH, interval, truth);
    }

    private void count(String figure, String receiver, Interval interval, double truth) {
        Count count =
                counts.computeIfAbsent(String.format(Locale.ROOT, "%-18s %12s", figure, receiver), k -> new Count());
        count.held += interval.holds(truth) ? 1 : 0;
        count.below += truth < interval.low() ? 1 : 0;
        count.above += truth > interval.high() ? 1 : 0;
        double unit = figure.contains("deviation") ? 100 : truth;
        count.widthPct += unit == 0 ? 0 : (interval.high() - interval.low()) / 2 / unit * 100;
        count.biasPct += unit == 0 ? 0 : (truth - interval.value()) / unit * 100;
    }

    /**
     * Figures of which, over both receivers, less or more than these percent of the intervals held the truth. Intervals on
     * drawn ground allow for the worse of two cases of which a simulated job is one, so they may hold more.
     */
    List<String> outside(double least, double most) {
        List<String> out = new ArrayList<>();
        counts.forEach((figure, count) -> {
            boolean twoCases =
                    figure.startsWith("covered") || figure.startsWith("doubled") || figure.startsWith("missed");
            boolean tooOften = !twoCases && count.pct() > most;
            if (figure.endsWith(BOTH) && (tooOften || count.pct() < least)) {
                out.add(figure + String.format(Locale.ROOT, " %.1f", count.pct()));
            }
        });
        return out;
    }

    String table(String title) {
        StringBuilder b = new StringBuilder(title).append('\n');
        b.append("figure                 receiver  cases  held %  truth below  above  half width %  mean error %\n");
        counts.forEach((figure, c) -> b.append(String.format(
                Locale.ROOT,
                "%s  %5d  %6.1f  %11d  %5d  %12.2f  %12.2f%n",
                figure,
                c.all(),
                c.pct(),
                c.below,
                c.above,
                c.widthPct / c.all(),
                c.biasPct / c.all())));
        return b.toString();
    }
}
