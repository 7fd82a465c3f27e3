package io.rowledger.report.record;

import io.rowledger.analysis.InputFile;
import io.rowledger.coverage.Coverage;
import io.rowledger.document.text.TextTruncation;
import io.rowledger.finding.Finding;
import io.rowledger.finding.RegularFile;
import io.rowledger.log.source.LogSource;
import io.rowledger.rate.Nutrients;
import io.rowledger.rate.Rates.PassTotals;
import io.rowledger.report.common.JobTimes;
import io.rowledger.report.findings.FindingFacts;
import io.rowledger.report.findings.FindingUncertainty;
import io.rowledger.report.sections.CoveragePhrases;
import io.rowledger.report.sections.QualitySection;
import io.rowledger.report.sections.SetbackSection;
import io.rowledger.report.sections.ZoneSection;
import io.rowledger.rig.Job;
import io.rowledger.rig.Rig;
import io.rowledger.setback.Setbacks;
import io.rowledger.text.Message;
import io.rowledger.track.Pass;
import io.rowledger.uncertainty.Intervals;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * What the nitrogen record takes from an analysis.
 *
 * @param rig machine, products and job block
 * @param work when and where the work was done
 * @param coverage covered ground, skips and overlaps
 * @param nutrients of the job, and of what came before it
 * @param outsideWorkL volume metered outside of the work, L, per product
 * @param ground what each cell of the received grid got
 * @param plan the ground compared with plan or target
 * @param intervals uncertainty of areas, volumes and nitrogen
 * @param setupContradicted true if the log contradicts the rig file
 * @param findings that cost something, the costliest first
 * @param costs uncertainty of each finding's ground, liquid and nitrogen, in the same order
 * @param setbacks what was applied within setbacks; null if no keep-out file was given
 * @param files logs, other files and notes of the analysis
 * @param sections parts that other documents print too
 */
record RecordInput(
        Rig rig,
        Work work,
        Coverage coverage,
        Nutrients nutrients,
        List<Double> outsideWorkL,
        NitrogenGrid ground,
        PlanComparison plan,
        Intervals intervals,
        boolean setupContradicted,
        List<Finding> findings,
        List<FindingUncertainty> costs,
        @Nullable Setbacks setbacks,
        Files files,
        Sections sections) {
    RecordInput {
        outsideWorkL = List.copyOf(outsideWorkL);
        findings = List.copyOf(findings);
        costs = List.copyOf(costs);
    }

    /** What a finding cost, in a clause. */
    Message cost(Finding finding) {
        return FindingFacts.cost(finding, costs.get(findings.indexOf(finding)));
    }

    /**
     * When and where the work was done.
     *
     * @param times start and end
     * @param passes in time order
     * @param totals areas and volumes of the passes
     */
    record Work(JobTimes times, List<Pass> passes, List<PassTotals> totals) {
        Work {
            passes = List.copyOf(passes);
            totals = List.copyOf(totals);
        }
    }

    /**
     * Logs, the other files handed in, and the notes of the analysis.
     *
     * @param warnings notes that put the amounts in question
     */
    record Files(List<LogSource> logs, List<InputFile> others, List<String> notes, List<String> warnings) {
        Files {
            logs = List.copyOf(logs);
            others = List.copyOf(others);
            notes = List.copyOf(notes);
            warnings = List.copyOf(warnings);
        }

        /** A note with paths replaced by file names: the same files in another folder make the same record. */
        String withoutFolders(String note) {
            String text = note;
            for (LogSource source : logs) {
                text = text.replace(source.file(), RegularFile.name(source.file()));
            }
            for (InputFile other : others) {
                text = text.replace(other.file(), RegularFile.name(other.file()));
            }
            return text;
        }
    }

    /**
     * Parts that other documents print too.
     *
     * @param skips skipped ground
     * @param overlap ground covered more than once
     * @param setbacks null if no keep-out file was given
     * @param zones empty without a prescription
     * @param quality data quality
     * @param positions receiver, fix types and noise in a sentence
     * @param reservations what makes the figures uncertain, one sentence each
     */
    record Sections(
            CoveragePhrases skips,
            CoveragePhrases overlap,
            @Nullable SetbackSection setbacks,
            ZoneSection zones,
            QualitySection quality,
            String positions,
            List<String> reservations) {
        Sections {
            reservations = List.copyOf(reservations);
        }
    }

    Job job() {
        return rig.job();
    }

    /** True if the log is a map of areas without a path. */
    boolean areas() {
        return work.passes().isEmpty() && coverage.coveredAreaM2() > 0;
    }

    /** True if the controller's own totals contradict the amounts: then none is held against a plan or a target. */
    boolean amountsInQuestion() {
        return !files.warnings().isEmpty();
    }

    /** True if any ground was covered. */
    boolean anythingApplied() {
        return coverage.coveredAreaM2() > 0;
    }

    /** True if the nitrogen of every product that was applied is known. */
    boolean nitrogenKnown() {
        return Double.isFinite(nutrients.jobKg().nitrogenKg());
    }

    /** True if the user entered earlier applications or credits. */
    boolean hasEarlierNitrogen() {
        return !job().earlier().isEmpty() || !job().credits().isEmpty();
    }

    /** Findings about the machine; the others are about the rig file. */
    List<Finding> machineFindings() {
        return findings.stream()
                .filter(finding -> !FindingFacts.onlySetup(finding.kind()))
                .toList();
    }

    /** Name of a product, cut to its place. */
    String product(int p) {
        return TextTruncation.name(rig.products().get(p).name());
    }
}
