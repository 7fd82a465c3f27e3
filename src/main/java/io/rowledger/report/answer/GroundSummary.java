package io.rowledger.report.answer;

import io.rowledger.coverage.Coverage;
import io.rowledger.coverage.grid.ReceivedStatistics;
import io.rowledger.document.text.Messages;
import io.rowledger.report.common.JobView;
import io.rowledger.report.common.Limits;
import io.rowledger.report.sections.CoveragePhrases;
import io.rowledger.report.sections.CoverageSectionBuilder;
import io.rowledger.text.Message;
import java.util.ArrayList;
import java.util.List;

/** What the ground received: how much of it is on rate, skipped, and covered twice. */
final class GroundSummary {
    private final Coverage coverage;
    private final boolean flowUnknown;
    private final boolean offScale;
    private final CoveragePhrases skips;
    private final CoveragePhrases overlaps;

    GroundSummary(JobView job, Messages messages) {
        coverage = job.coverage();
        boolean unknown = false;
        for (int p = 0; p < job.rig().products().size(); p++) {
            unknown |= job.rates().unknownAreaM2(p) > 0;
        }
        flowUnknown = unknown;
        offScale = job.log().isOffScale();
        skips = CoverageSectionBuilder.skips(coverage, job.intervals(), messages);
        overlaps = CoverageSectionBuilder.overlap(coverage, job.intervals(), messages);
    }

    /** The worst of on rate, skips and overlap. */
    Grade grade() {
        if (coverage.coveredAreaM2() <= 0) {
            return Grade.FINE;
        }
        Grade worst = skipGrade();
        worst = overlapGrade().compareTo(worst) > 0 ? overlapGrade() : worst;
        return rateGrade().compareTo(worst) > 0 ? rateGrade() : worst;
    }

    private Grade skipGrade() {
        double fieldM2 = Double.isNaN(coverage.boundaryAreaM2())
                ? coverage.coveredAreaM2() + coverage.skipAreaM2()
                : coverage.boundaryAreaM2();
        double skippedM2 = coverage.skipAreaM2() - coverage.doubtfulSkipAreaM2();
        return Grade.of(100 * skippedM2 / fieldM2, Limits.SKIPPED_WATCH_PCT, Limits.SKIPPED_ACT_PCT);
    }

    private Grade overlapGrade() {
        return Grade.of(
                100 * coverage.overlapAreaM2() / coverage.coveredAreaM2(),
                Limits.OVERLAP_WATCH_PCT,
                Limits.OVERLAP_ACT_PCT);
    }

    private Grade rateGrade() {
        return hasOnRate()
                ? Grade.of(100 - onRatePct(), Limits.OFF_RATE_WATCH_PCT, Limits.OFF_RATE_ACT_PCT)
                : Grade.FINE;
    }

    /** The ground on rate is told for one product, whose rates are on the target's scale; several have a section each. */
    private boolean hasOnRate() {
        List<ReceivedStatistics> received = coverage.received();
        return received.size() == 1 && !offScale && !Double.isNaN(onRatePct());
    }

    private double onRatePct() {
        return coverage.received().get(0).within10Pct();
    }

    /** The ground in one paragraph, the worst first. */
    Message paragraph() {
        if (coverage.coveredAreaM2() <= 0) {
            return flowUnknown
                    ? Message.of("words.summary.unknownCovered")
                    : Message.of("words.summary.nothingCovered");
        }
        if (!hasOnRate()) {
            return places();
        }
        Message onRate =
                Message.of("words.summary.onRate", Message.percent(onRatePct()), Limits.wholePct(Limits.ACT_PCT));
        List<Message> sentences = new ArrayList<>(List.of(onRate, places()));
        if (grade().compareTo(rateGrade()) > 0) {
            sentences.add(sentences.remove(0));
        }
        return Message.of("words.sentences", sentences);
    }

    /** Skips and overlaps; the overlap first where it is worse and nothing was skipped. */
    private Message places() {
        if (skips.none() && overlapGrade() != Grade.FINE) {
            return Message.of("words.summary.groundOverlap", overlaps.overlap());
        }
        Message noSkip =
                Message.of(coverage.boundary() == null ? "words.summary.noSkipEnclosed" : "words.summary.noSkipInside");
        return Message.of(
                "words.summary.ground",
                skips.none() ? noSkip : skips.skipped(),
                overlaps.none() ? Message.of("words.summary.noOverlap") : overlaps.overlap());
    }
}
