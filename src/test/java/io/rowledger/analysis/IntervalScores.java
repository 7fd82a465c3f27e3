package io.rowledger.analysis;

import io.rowledger.sim.Truth;
import io.rowledger.uncertainty.Interval;
import io.rowledger.uncertainty.Intervals;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import org.jspecify.annotations.Nullable;

/** How often intervals held the truth, by figure and kind of job. */
final class IntervalScores {
    /** Seeds of one run lie this far apart, so that runs share no job. */
    private static final long STRIDE = 10_007;

    /** Nitrogen of UAN 32-0-0 and of ATS 12-0-0-26S, by mass. */
    private static final double[] NITROGEN = {0.32, 0.12};

    private static final String ALL = "all";
    private static final List<String> GROUPS =
            List.of(ALL, "RTK", "differential", "drove true", "steered", "two liquids", "1 Hz", "rounded");

    /** By figure, then by group. */
    private final Map<String, Map<String, Count>> counts = new LinkedHashMap<>();

    /** Of one figure. */
    private static final class Count {
        private int held;
        private int below;
        private int above;
        private double widthPct;

        int all() {
            return held + below + above;
        }

        double pct() {
            return 100.0 * held / all();
        }
    }

    static IntervalScores score(Path folder, long seed, int jobs) {
        return score(folder, seed, jobs, false);
    }

    /** The same for jobs with faulty meters. */
    static IntervalScores score(Path folder, long seed, int jobs, boolean faultyMeters) {
        IntervalScores scores = new IntervalScores();
        for (int i = 0; i < jobs; i++) {
            MismeasuredJob job = MismeasuredJob.draw(seed * STRIDE + i, faultyMeters);
            Path own = folder.resolve("job" + i);
            job.result().writeTo(own);
            Path boundary = own.resolve("boundary.geojson");
            Analysis a = Pipeline.analyze(
                    new JobFiles(
                            List.of(own.resolve("log.csv")),
                            own.resolve("rig.yaml"),
                            Files.exists(boundary) ? boundary : null),
                    2,
                    Progress.SILENT);
            scores.add(job, a.intervals());
        }
        System.out.println(scores.table(title(seed, jobs)));
        return scores;
    }

    static String title(long seed, int jobs) {
        return "Intervals against simulator truth, " + jobs + " jobs, seed " + seed;
    }

    private void add(MismeasuredJob job, Intervals in) {
        Truth truth = job.result().truth();
        Truth.Ground ground = truth.ground();
        int products = in.products().size();
        List<String> groups = new ArrayList<>(
                List.of(ALL, job.rtk() ? "RTK" : "differential", job.steered() ? "steered" : "drove true"));
        if (products > 1) {
            groups.add("two liquids");
        }
        if (job.oneHertz()) {
            groups.add("1 Hz");
        }
        if (job.rounded()) {
            groups.add("rounded");
        }
        put("swept area", groups, in.sweptAreaM2(), truth.sweptAreaM2());
        put("covered area", groups, in.coveredAreaM2(), ground.coveredM2());
        put("overlap area", groups, in.overlapAreaM2(), ground.overlapM2());
        put("skip area", groups, in.skipAreaM2(), ground.skipM2());
        double allKg = 0;
        for (int p = 0; p < products; p++) {
            double volumeL = truth.volumeL()[p];
            double kg = volumeL * job.trueDensityKgPerL().get(p) * NITROGEN[p];
            allKg += kg;
            Intervals.OfProduct product = in.products().get(p);
            put("volume", groups, product.volumeL(), volumeL);
            put("mean rate", groups, product.meanRateLPerM2(), volumeL / ground.coveredM2());
            put("nitrogen", groups, product.nitrogenKg(), kg);
            put("nitrogen per area", groups, product.nitrogenKgPerM2(), kg / ground.coveredM2());
        }
        put("all nitrogen", groups, in.nitrogenKg(), allKg);
        put("all nitrogen per area", groups, in.nitrogenKgPerM2(), allKg / ground.coveredM2());
        passes(job, in, groups);
        for (Truth.Row row : truth.rows()) {
            Intervals.OfRow of = in.rows().get(row.row() - 1);
            put("row: swept area", groups, of.sweptAreaM2(), row.sweptAreaM2());
            put("row: applied area", groups, of.appliedAreaM2(), row.appliedAreaM2());
            for (int p = 0; p < products; p++) {
                Intervals.OfRowProduct product = of.products().get(p);
                double rowL = row.volumeL()[p];
                put("row: volume", groups, product.volumeL(), rowL);
                put("row: mean rate", groups, product.meanRateLPerM2(), rowL / row.appliedAreaM2());
                put("row: deviation", groups, product.deviationPct(), (rowL / row.targetL()[p] - 1) * 100);
            }
        }
    }

    private void passes(MismeasuredJob job, Intervals in, List<String> groups) {
        List<Truth.Pass> passes = job.result().truth().passes();
        if (passes.size() != in.passes().size()) {
            throw new AssertionError(in.passes().size() + " passes of " + passes.size());
        }
        for (int i = 0; i < passes.size(); i++) {
            Truth.Pass pass = passes.get(i);
            Intervals.OfPass of = in.passes().get(i);
            put("pass: swept area", groups, of.sweptAreaM2(), pass.sweptAreaM2());
            for (int p = 0; p < of.products().size(); p++) {
                Intervals.OfPassProduct product = of.products().get(p);
                double targetL = job.targetsLPerM2().get(p) * pass.sweptAreaM2();
                put("pass: volume", groups, product.volumeL(), pass.volumeL()[p]);
                put("pass: deviation", groups, product.deviationPct(), (pass.volumeL()[p] / targetL - 1) * 100);
            }
        }
    }

    private void put(String figure, List<String> groups, Interval interval, double truth) {
        if (Double.isNaN(truth)) {
            return;
        }
        if (!interval.known()) {
            throw new AssertionError(figure + " has no interval");
        }
        double unit = figure.contains("deviation") ? 100 : truth;
        for (String group : groups) {
            Count count =
                    counts.computeIfAbsent(figure, k -> new LinkedHashMap<>()).computeIfAbsent(group, k -> new Count());
            count.held += interval.holds(truth) ? 1 : 0;
            count.below += truth < interval.low() ? 1 : 0;
            count.above += truth > interval.high() ? 1 : 0;
            count.widthPct += unit == 0 ? 0 : (interval.high() - interval.low()) / 2 / unit * 100;
        }
    }

    /** Percent of the intervals of a figure that held the truth, over all jobs. */
    double pct(String figure) {
        return counts.get(figure).getOrDefault(ALL, new Count()).pct();
    }

    /** Figures of which, over all jobs, less or more than these percent of the intervals held the truth. */
    List<String> outside(double least, double most) {
        List<String> out = new ArrayList<>();
        counts.forEach((figure, of) -> {
            double pct = of.getOrDefault(ALL, new Count()).pct();
            if (!(pct >= least && pct <= most)) {
                out.add(figure + String.format(Locale.ROOT, " %.1f", pct));
            }
        });
        return out;
    }

    /** Percent held by group, how often the truth lay below and above, half widths in percent of the truth. */
    String table(String title) {
        StringBuilder b = new StringBuilder(title).append('\n');
        b.append(String.format(Locale.ROOT, "%-22s %6s", "figure", "cases"));
        GROUPS.forEach(group -> b.append(String.format(Locale.ROOT, " %12s", group)));
        b.append("  below  above  \u00b1RTK %  \u00b1diff %\n");
        counts.forEach((figure, of) -> {
            b.append(String.format(Locale.ROOT, "%-22s %6d", figure, of.get(ALL).all()));
            GROUPS.forEach(group -> b.append(String.format(Locale.ROOT, " %12s", held(of.get(group)))));
            b.append(String.format(
                    Locale.ROOT,
                    "  %5d  %5d  %6.2f  %7.2f%n",
                    of.get(ALL).below,
                    of.get(ALL).above,
                    width(of.get("RTK")),
                    width(of.get("differential"))));
        });
        return b.toString();
    }

    private static String held(@Nullable Count count) {
        return count == null ? "\u2013" : String.format(Locale.ROOT, "%.1f", count.pct());
    }

    private static double width(@Nullable Count count) {
        return count == null ? Double.NaN : count.widthPct / count.all();
    }
}
