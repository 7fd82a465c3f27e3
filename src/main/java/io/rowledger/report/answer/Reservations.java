package io.rowledger.report.answer;

import io.rowledger.coverage.Coverage;
import io.rowledger.coverage.grid.ReceivedStatistics;
import io.rowledger.log.source.LogSource;
import io.rowledger.report.common.JobView;
import io.rowledger.report.common.Limits;
import io.rowledger.text.Message;
import java.util.ArrayList;
import java.util.List;

/**
 * What makes the figures of a job uncertain beyond their bounds: it belongs beside the figures, not on the last page alone.
 *
 * @param setupContradicted true if the log contradicts the rig file
 */
record Reservations(JobView job, boolean setupContradicted) {
    /** Sentence by sentence; empty if there is nothing. */
    List<Message> sentences() {
        List<Message> sentences = new ArrayList<>();
        for (ReceivedStatistics received : job.coverage().received()) {
            if (!(Math.abs(received.conservationError()) * 100 <= Limits.CONSERVATION_PCT)) {
                sentences.add(Message.of("words.reservation.mapTotal"));
                break;
            }
        }
        if (setupContradicted) {
            sentences.add(Message.of("words.reservation.setup"));
        }
        addUnsureRows(sentences);
        addMissingFlows(sentences);
        addShares(sentences);
        return sentences;
    }

    /** Rows can't be called on target if their meters and ground are not known well enough. */
    private void addUnsureRows(List<Message> sentences) {
        for (int p = 0; p < products(); p++) {
            double bestPct = RowsSummary.bestKnownPct(job, p);
            if (bestPct > Limits.WATCH_PCT) {
                sentences.add(ofProduct(
                        p,
                        Message.of(
                                "words.reservation.unsureRows",
                                Message.percent(bestPct),
                                Limits.wholePct(Limits.WATCH_PCT))));
            } else if (!RowsSummary.unsure(job, p).isEmpty()) {
                sentences.add(ofProduct(
                        p,
                        Message.of(
                                "words.reservation.unsureMeters",
                                RowsSummary.unsure(job, p),
                                Limits.wholePct(Limits.WATCH_PCT))));
            }
        }
    }

    private void addMissingFlows(List<Message> sentences) {
        for (int p = 0; p < products(); p++) {
            List<Integer> rows = new ArrayList<>();
            for (int r = 0; r < job.rig().rows(); r++) {
                if (job.log().missingFlowShare(p, r) * 100 > Limits.DROPPED_PCT) {
                    rows.add(r + 1);
                }
            }
            if (!rows.isEmpty()) {
                sentences.add(ofProduct(
                        p, Message.of("words.reservation.missingFlow", Limits.wholePct(Limits.DROPPED_PCT), rows)));
            }
        }
    }

    private void addShares(List<Message> sentences) {
        Coverage c = job.coverage();
        double outsidePct = c.boundary() == null ? 0 : c.outsideBoundaryM2() / c.coveredAreaM2() * 100;
        if (outsidePct > Limits.OUTSIDE_PCT) {
            sentences.add(Message.of("words.reservation.outside", Message.percent(outsidePct)));
        }
        if (manyDropped()) {
            sentences.add(Message.of("words.reservation.dropped", Message.percent(droppedPct())));
        }
        double unsettledPct = job.rates().unsettledAreaM2() / job.rates().sweptAreaM2() * 100;
        if (unsettledPct > Limits.UNSETTLED_PCT) {
            sentences.add(Message.of("words.reservation.unsettled", Message.percent(unsettledPct)));
        }
    }

    /** True if so many records could not be used that the log tells only of a part of the work. */
    boolean manyDropped() {
        return droppedPct() > Limits.DROPPED_PCT;
    }

    private double droppedPct() {
        long records = 0;
        long used = 0;
        for (LogSource source : job.log().sources()) {
            records += source.records();
            // A receiver slower than the logger repeats positions; the flow of those records counts at the next one.
            used += source.used() + source.dropped().frozen() + source.repeated();
        }
        return records > 0 ? 100.0 * (records - used) / records : 0;
    }

    private int products() {
        return job.rig().products().size();
    }

    private Message ofProduct(int p, Message message) {
        return products() > 1
                ? Message.of(
                        "words.summary.ofProduct", job.rig().products().get(p).name(), message)
                : message;
    }
}
