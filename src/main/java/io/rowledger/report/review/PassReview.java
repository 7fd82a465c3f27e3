package io.rowledger.report.review;

import io.rowledger.report.common.CoverageSection;
import io.rowledger.report.common.Fact;
import io.rowledger.report.common.QualitySection;
import io.rowledger.report.common.ReportHeader;
import io.rowledger.report.common.SetbackSection;
import io.rowledger.report.common.ZoneSection;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * What the pass review says: figures already rounded, labelled and in the reader's units, with the raw SI figure beside
 * where a chart draws it. Everything a template can print is here; nothing in a template is computed.
 *
 * @param head title and particulars
 * @param verdict the answer to "did every row get its rate?", sentence by sentence
 * @param figures the headline figures
 * @param products per product, in rig order
 * @param turns turn error per row
 * @param turnSummary turn error of the whole bar in a sentence, or empty
 * @param passes per pass
 * @param hasGround true where any ground was covered, so that there is something to map
 * @param ground skips, doubles and shut-offs
 * @param zones the prescription against what was done; without tables where none was given
 * @param findings what is probably wrong; empty says nothing about the machine's health
 * @param setup what the log says about the setup
 * @param quality what the figures rest on
 * @param cautions in the order they are printed
 * @param setbacks what was applied within setbacks, or null where no keep-out file was given
 * @param whatIf the same drive with other machinery or another speed
 */
public record PassReview(
        ReportHeader head,
        List<String> verdict,
        List<Figure> figures,
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
        @Nullable SetbackSection setbacks,
        WhatIfSection whatIf) {
    /** Copies the lists. */
    public PassReview {
        verdict = List.copyOf(verdict);
        figures = List.copyOf(figures);
        products = List.copyOf(products);
        turns = List.copyOf(turns);
        passes = List.copyOf(passes);
        findings = List.copyOf(findings);
        cautions = List.copyOf(cautions);
    }

    /** True where a keep-out file was given. */
    public boolean hasSetbacks() {
        return setbacks != null;
    }

    /** True where several maps must share the first page. */
    public boolean severalProducts() {
        return products.size() > 1;
    }

    /** True if the headline figures have bounds that need a note. */
    public boolean hasBounds() {
        return hasGround && !quality.sure().isEmpty();
    }

    /** True where the findings are worth a heading. */
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
     * @param hasTarget false where nobody gave a target
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
     * @param targetVolume asked for
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

    /** One thing that is probably wrong. */
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
     * The setup held against the log.
     *
     * @param summary in a sentence or two
     * @param told measures the log has an answer to
     * @param untold what the log can't tell, and what driving would let it
     * @param sides skipped and doubled ground by the rig file and by the log's setup; empty without a second run
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

        /** True where the setup was looked at. */
        public boolean hasMeasures() {
            return !told.isEmpty() || !untold.isEmpty();
        }

        /** True where the log has an answer to something. */
        public boolean hasTold() {
            return !told.isEmpty();
        }

        /** True where something can't be told. */
        public boolean hasUntold() {
            return !untold.isEmpty();
        }

        /** True where the ground was laid out a second time. */
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
     * @param alternative what else would look the same
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

    /** A figure by the rig file as it is and by the corrected one, and what the wrong measures made of it. */
    public record SetupSide(String what, String before, String after, String made) {}
}
