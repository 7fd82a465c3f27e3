package io.rowledger.report.common;

import io.rowledger.coverage.Coverage;
import io.rowledger.coverage.grid.ReceivedStatistics;
import io.rowledger.document.text.Messages;
import io.rowledger.text.Message;
import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * The answer of a job in words: did every row put on its rate, is there a skip or overlap, and what makes the figures
 * uncertain? It tells what the meters show, never what may be wrong with the machine.
 */
public final class ReviewSummary {
    private final JobView job;
    private final @Nullable SetbackSection setbacks;
    private final Messages messages;
    private final Reservations reservations;

    /**
     * The summary of a job.
     *
     * @param setupContradicted true if the log contradicts the rig file
     * @param setbacks what was applied within setbacks; null if no keep-out file was given
     */
    public ReviewSummary(JobView job, boolean setupContradicted, @Nullable SetbackSection setbacks, Messages messages) {
        this.job = job;
        this.setbacks = setbacks;
        this.messages = messages;
        this.reservations = new Reservations(job, setupContradicted);
    }

    /** The answer, paragraph by paragraph. */
    public List<Message> paragraphs() {
        if (job.rates().sweptAreaM2() <= 0) {
            return List.of(Message.of("words.summary.noPass"));
        }
        List<Message> paragraphs = new ArrayList<>();
        int products = job.rig().products().size();
        for (int p = 0; p < products; p++) {
            Message rows = new RowsSummary(job, p).paragraph();
            paragraphs.add(
                    products > 1
                            ? Message.of(
                                    "words.summary.ofProduct",
                                    job.rig().products().get(p).name(),
                                    rows)
                            : rows);
        }
        paragraphs.add(ground());
        if (setbacks != null) {
            paragraphs.add(Message.of("words.text", setbacks.summary()));
        }
        paragraphs.addAll(reservations.sentences());
        return paragraphs;
    }

    /** What makes the figures uncertain beyond their bounds, sentence by sentence. */
    public List<Message> reservations() {
        return reservations.sentences();
    }

    private Message ground() {
        Coverage c = job.coverage();
        if (c.coveredAreaM2() <= 0) {
            boolean unknown = false;
            for (int p = 0; p < job.rig().products().size(); p++) {
                unknown |= job.rates().unknownAreaM2(p) > 0;
            }
            return unknown ? Message.of("words.summary.unknownCovered") : Message.of("words.summary.nothingCovered");
        }
        CoveragePhrases skips = CoverageSectionBuilder.skips(c, job.intervals(), messages);
        CoveragePhrases overlaps = CoverageSectionBuilder.overlap(c, job.intervals(), messages);
        Message noSkip =
                Message.of(c.boundary() == null ? "words.summary.noSkipEnclosed" : "words.summary.noSkipInside");
        Message ground = Message.of(
                "words.summary.ground",
                skips.none() ? noSkip : skips.skipped(),
                overlaps.none() ? Message.of("words.summary.noOverlap") : overlaps.overlap());
        ReceivedStatistics first = c.received().get(0);
        if (Double.isNaN(first.within10Pct()) || c.received().size() > 1) {
            return ground;
        }
        Message onRate = Message.of(
                "words.summary.onRate", Message.percent(first.within10Pct()), Limits.wholePct(Limits.ACT_PCT));
        return Message.of("words.sentences", List.of(onRate, ground));
    }
}
