package io.rowledger.report.review;

import io.rowledger.report.common.CoverageSection;
import io.rowledger.report.common.Fact;
import io.rowledger.report.common.NextActions;
import io.rowledger.report.common.QualitySection;
import io.rowledger.report.common.ReportHeader;
import io.rowledger.report.common.SetbackSection;
import io.rowledger.report.common.ZoneSection;
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
        Setup setup,
        QualitySection quality,
        List<String> cautions,
        List<String> scope,
        @Nullable SetbackSection setbacks,
        WhatIfSection whatIf) {
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
        cautions = List.copyOf(cautions);
        scope = List.copyOf(scope);
    }

    /** True if the work took several days. */
    public boolean severalDays() {
        return !days.isEmpty();
    }

    /** True if the first page lists actions. */
    public boolean hasActions() {
        return !next.actions().isEmpty();
    }

    /** True if a keep-out file was given. */
    public boolean hasSetbacks() {
        return setbacks != null;
    }

    /** True if several maps must share the first page. */
    public boolean severalProducts() {
        return products.size() > 1;
    }

    /** True if the headline figures have bounds that need a note. */
    public boolean hasBounds() {
        return hasGround && !quality.sure().isEmpty();
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
            boolean hasTarget) {
        /** Copies the lists. */
        public ProductReview {
            rows = List.copyOf(rows);
            received = List.copyOf(received);
            histogram = List.copyOf(histogram);
        }
    }

    /**
     * One row and one product.
     *
     * @param row from 1 at the left
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

    /** One pass; the lists hold one entry a product. */
    public record PassLine(
            int pass,
            String start,
            String duration,
            String length,
            String heading,
            String speed,
            String area,
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
     * @param volumes metered while working, one a product
     */
    public record DayLine(String date, String hours, String passes, String area, List<String> volumes) {
        /** Copies the volumes. */
        public DayLine {
            volumes = List.copyOf(volumes);
        }
    }

    /** A finding. */
    public record FindingLine(
            String title,
            String sure,
            String when,
            String where,
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
            String alternative) {}

    /** A value by the rig file and by the corrected one, and the difference. */
    public record SetupSide(String what, String before, String after, String made) {}
}
