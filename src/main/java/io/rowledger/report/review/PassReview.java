package io.rowledger.report.review;

import io.rowledger.report.answer.NextActions;
import io.rowledger.report.common.Fact;
import io.rowledger.report.common.GeoLink;
import io.rowledger.report.common.ReportHeader;
import io.rowledger.report.sections.CoverageSection;
import io.rowledger.report.sections.QualitySection;
import io.rowledger.report.sections.SetbackSection;
import io.rowledger.report.sections.ZoneSection;
import io.rowledger.units.UnitFormat;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * The content of the pass review: values rounded, labeled and in the reader's units, with the raw value beside where a chart
 * draws it. A template prints these values and computes nothing.
 *
 * @param head title and particulars
 * @param verdict the answer to "did every row get its rate?", sentence by sentence
 * @param next what to do, most costly first
 * @param figures the four or five figures of the first page
 * @param otherFigures the other figures of the whole job
 * @param days the days of work, if there are several; else empty
 * @param products per product, in rig order
 * @param turns turn error per row
 * @param turnSummary turn error of the whole bar in a sentence, or empty
 * @param passes per pass
 * @param hasGround true if any ground was covered
 * @param ground skips, overlaps and rows shut off alone
 * @param zones the prescription compared with the work; without tables if there is none
 * @param findings findings of the diagnosis
 * @param worst the worst places, each with a picture
 * @param setup the rig file compared with the log
 * @param quality records, checks and notes
 * @param cautions before any step at the machine
 * @param scope what the report is not
 * @param setbacks what was applied within setbacks; null without a keep-out file
 * @param whatIf the same drive with other machinery or another speed
 */
public record PassReview(
        ReportHeader head,
        List<String> verdict,
        NextActions next,
        List<Figure> figures,
        List<Figure> otherFigures,
        List<DayLine> days,
        List<ProductReview> products,
        List<TurnLine> turns,
        String turnSummary,
        List<PassLine> passes,
        boolean hasGround,
        CoverageSection ground,
        ZoneSection zones,
        List<FindingLine> findings,
        List<WorstPlace> worst,
        Setup setup,
        QualitySection quality,
        List<String> cautions,
        List<String> scope,
        @Nullable SetbackSection setbacks,
        WhatIfSection whatIf) {
    /** Letters in a line of the verdict and of an action, about. */
    private static final int VERDICT_LETTERS = 88;

    private static final int ACTION_LETTERS = 105;
    /** Lines of verdict and actions up to which a tall map fits below them, and a middle one. */
    private static final int TALL_LINES = 6;

    private static final int MIDDLE_LINES = 11;

    /** Passes up to which their table takes no more than a third of a page, and is not split. */
    private static final int MAX_PASSES_KEPT = 14;

    /** Copies the lists. */
    public PassReview {
        verdict = List.copyOf(verdict);
        figures = List.copyOf(figures);
        otherFigures = List.copyOf(otherFigures);
        days = List.copyOf(days);
        products = List.copyOf(products);
        turns = List.copyOf(turns);
        passes = List.copyOf(passes);
        findings = List.copyOf(findings);
        worst = List.copyOf(worst);
        cautions = List.copyOf(cautions);
        scope = List.copyOf(scope);
    }

    /** True if the work took several days. */
    public boolean severalDays() {
        return !days.isEmpty();
    }

    /** True if the bars of rows and turns share a line: several products each have a chart of rows. */
    public boolean oneProduct() {
        return products.size() == 1;
    }

    /** True if the log has times: without them no pass has a start, a duration or a speed. */
    public boolean timed() {
        return UnitFormat.isKnown(head.endS());
    }

    /** True if a person entered more than the name of the field. */
    public boolean hasEntered() {
        return head.hasFacts();
    }

    /** What a person entered, two facts a line; an odd last line ends with an empty one. */
    public List<List<Fact>> enteredPairs() {
        List<List<Fact>> pairs = new ArrayList<>();
        List<Fact> facts = head.facts();
        for (int i = 0; i < facts.size(); i += 2) {
            pairs.add(List.of(facts.get(i), i + 1 < facts.size() ? facts.get(i + 1) : new Fact("", "")));
        }
        return pairs;
    }

    /** True if what the report is not stands at its end. */
    public boolean hasScope() {
        return !scope.isEmpty();
    }

    /** The product whose map stands on the first page: the one that got its rate on the least ground. */
    public List<ProductReview> firstProduct() {
        return products.stream()
                .min(Comparator.comparingDouble(ProductReview::onRatePct))
                .map(List::of)
                .orElse(List.of());
    }

    /** The products whose maps stand further on. */
    public List<ProductReview> otherProducts() {
        return products.stream().filter(each -> !firstProduct().contains(each)).toList();
    }

    /** CSS class of the first map: the more words stand above it, the lower it is, so that it stays on the first page. */
    public String mapSize() {
        double linesUsed = lines(verdict, VERDICT_LETTERS)
                + lines(
                        next.actions().stream()
                                .map(each -> each.title() + each.text())
                                .toList(),
                        ACTION_LETTERS)
                + lines(next.alsoFound(), ACTION_LETTERS)
                + days.size() / 2.0;
        return linesUsed <= TALL_LINES ? "map-tall" : linesUsed <= MIDDLE_LINES ? "map-middle" : "map-low";
    }

    private static double lines(List<String> paragraphs, int lettersALine) {
        return paragraphs.stream()
                .mapToDouble(text -> Math.ceil((double) text.length() / lettersALine))
                .sum();
    }

    /** True if there are places with pictures. */
    public boolean hasWorst() {
        return !worst.isEmpty();
    }

    /** The worst places, two beside each other. */
    public List<Pair> worstPairs() {
        List<Pair> pairs = new ArrayList<>();
        for (int i = 0; i < worst.size(); i += 2) {
            pairs.add(new Pair(worst.subList(i, Math.min(worst.size(), i + 2))));
        }
        return pairs;
    }

    /** One or two places beside each other. */
    public record Pair(List<WorstPlace> places) {
        /** Copies the list. */
        public Pair {
            places = List.copyOf(places);
        }

        /** True if half of the line stays empty. */
        public boolean single() {
            return places.size() == 1;
        }
    }

    /** True if the first page lists actions. */
    public boolean hasActions() {
        return !next.actions().isEmpty();
    }

    /** True if a keep-out file was given. */
    public boolean hasSetbacks() {
        return setbacks != null;
    }

    /** True if skips and overlaps begin a page: nothing stands between the first page and them. */
    public boolean groundOnNewPage() {
        return !hasFindings() && !hasWorst();
    }

    /** True if the headline figures have bounds that need a note. */
    public boolean hasBounds() {
        return hasGround && !quality.sure().isEmpty();
    }

    /** True if the table of passes is short enough to stand on one page. */
    public boolean fewPasses() {
        return passes.size() <= MAX_PASSES_KEPT;
    }

    /** True if the log has a path. */
    public boolean hasPasses() {
        return !passes.isEmpty();
    }

    /** True if the findings are worth a heading. */
    public boolean hasFindings() {
        return !findings.isEmpty();
    }

    /**
     * A headline figure.
     *
     * @param label what it is
     * @param value the figure with its unit
     * @param note a few words below it, or empty
     * @param strong true for a figure that asks for a look
     */
    public record Figure(String label, String value, String note, boolean strong) {}

    /**
     * One product over the job.
     *
     * @param key its key in the rig file
     * @param name its name
     * @param passHead its name where columns of several products must be told apart, else empty
     * @param summary volume, rate and nitrogen in a sentence
     * @param basis what {@link RowRate#deviationPct} is a deviation from
     * @param rows per row
     * @param received what the ground received, as facts
     * @param histogram covered area per class of received ÷ target, 5 % each, m²
     * @param onRatePct share of the covered ground within 10 % of target, percent; 100 without a target
     * @param hasTarget false without a target rate
     */
    public record ProductReview(
            String key,
            String name,
            String passHead,
            String summary,
            String basis,
            List<RowRate> rows,
            List<Fact> received,
            List<Double> histogram,
            double onRatePct,
            boolean hasTarget) {
        /** Copies the lists. */
        public ProductReview {
            rows = List.copyOf(rows);
            received = List.copyOf(received);
            histogram = List.copyOf(histogram);
        }

        /** True if the log tells rows, or meters of several rows, apart. */
        public boolean hasRows() {
            return !rows.isEmpty();
        }
    }

    /**
     * One row and one product.
     *
     * @param row number of the row, or of the meter that several rows share, from 1 at the left
     * @param label the row, or the rows of the meter
     * @param swept area
     * @param applied area while delivering
     * @param volume metered
     * @param targetVolume target × area, less what was rightly left off
     * @param rate volume ÷ applied area
     * @param deviation against the target volume, or the mean of the rows where there is no target
     * @param deviationPct raw, NaN unknown
     * @param mark how far off: empty, "watch" beyond 5 %, "act" beyond 10 %
     */
    public record RowRate(
            int row,
            String label,
            String swept,
            String applied,
            String volume,
            String targetVolume,
            String rate,
            String deviation,
            double deviationPct,
            String mark) {}

    /**
     * Turn error of one row: what uniform flow would do, and what was left of it. Raw fractions for the chart.
     *
     * @param row from 1 at the left
     * @param seen mean size with uniform flow
     * @param seenOver largest over
     * @param seenUnder largest under
     * @param left mean size that remained in the metered flows
     * @param leftOver largest over
     * @param leftUnder largest under
     * @param beyond5 share of the row's ground with more than 5 % left
     * @param beyond10 share of the row's ground with more than 10 % left
     * @param seenPct raw
     * @param leftPct raw
     */
    public record TurnLine(
            int row,
            String seen,
            String seenOver,
            String seenUnder,
            String left,
            String leftOver,
            String leftUnder,
            String beyond5,
            String beyond10,
            double seenPct,
            double leftPct) {}

    /** One pass; {@code trace} names its small chart, the list holds one entry a product. */
    public record PassLine(
            int pass,
            String start,
            String duration,
            String length,
            String heading,
            String speed,
            String area,
            String trace,
            List<PassRate> products) {
        /** Copies the products. */
        public PassLine {
            products = List.copyOf(products);
        }
    }

    /** One product in one pass. */
    public record PassRate(String volume, String rate, String deviation, String mark) {}

    /**
     * One day of work.
     *
     * @param date local
     * @param hours from the first pass to the last
     * @param passes their numbers
     * @param area worked
     * @param text area and hours in words
     * @param volumes metered while working, one a product
     */
    public record DayLine(String date, String hours, String passes, String area, String text, List<String> volumes) {
        /** Copies the volumes. */
        public DayLine {
            volumes = List.copyOf(volumes);
        }
    }

    /**
     * A place with a picture of its rows.
     *
     * @param chart name of the picture
     * @param number its number in the lists of skips and overlaps; empty for a finding, whose text names its rows
     * @param text what is to be seen, with the product if there are several
     * @param where where to drive
     */
    public record WorstPlace(String chart, String number, String text, GeoLink where) {
        /** True for a skip or an overlap. */
        public boolean numbered() {
            return !number.isEmpty();
        }
    }

    /** A finding. */
    public record FindingLine(
            String title,
            String sure,
            String when,
            GeoLink where,
            String cost,
            String evidence,
            String alternative,
            String check) {}

    /**
     * The setup compared with the log.
     *
     * @param summary in a sentence or two
     * @param told measures that the log can tell
     * @param untold measures that the log can't tell, and the driving that would let it
     * @param sides skips and overlap by the rig file and by the log's setup; empty without a second run
     * @param sidesSummary what the second run is and where its rig file is
     */
    public record Setup(
            String summary, List<SetupLine> told, List<Fact> untold, List<SetupSide> sides, String sidesSummary) {
        /** Copies the lists. */
        public Setup {
            told = List.copyOf(told);
            untold = List.copyOf(untold);
            sides = List.copyOf(sides);
        }

        /** True if the setup was checked. */
        public boolean hasMeasures() {
            return !told.isEmpty() || !untold.isEmpty();
        }

        /** True if the log can tell a measure. */
        public boolean hasTold() {
            return !told.isEmpty();
        }

        /** True if there are measures that the log can't tell. */
        public boolean hasUntold() {
            return !untold.isEmpty();
        }

        /** True if coverage was computed a second time. */
        public boolean hasSides() {
            return !sides.isEmpty();
        }
    }

    /**
     * One measure.
     *
     * @param name what is measured, from where to where
     * @param was in the rig file
     * @param is by the log
     * @param between 90 % interval
     * @param verdict agrees or differs
     * @param mark empty, or "act" where it differs
     * @param change the line of the rig file and its new figure, or empty
     * @param basis what it rests on
     * @param alternative the next best explanation
     * @param key of the measure in the rig file
     */
    public record SetupLine(
            String name,
            String was,
            String is,
            String between,
            String verdict,
            String mark,
            String change,
            String basis,
            String alternative,
            String key) {}

    /** A value by the rig file and by the corrected one, and the difference. */
    public record SetupSide(String what, String before, String after, String made) {}
}
