package io.rowledger.report.answer;

import io.rowledger.document.text.Messages;
import io.rowledger.report.common.JobView;
import io.rowledger.report.sections.SetbackSection;
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

    /**
     * The answer, paragraph by paragraph, the worst first: a plain yes stands only where rows, ground, skips, overlap and log
     * leave nothing to ask.
     */
    public List<Message> paragraphs() {
        if (job.rates().sweptAreaM2() <= 0) {
            return List.of(Message.of("words.summary.noPass"));
        }
        GroundSummary ground = new GroundSummary(job, messages);
        List<RowsSummary> products = new ArrayList<>();
        Grade rows = Grade.FINE;
        for (int p = 0; p < job.rig().products().size(); p++) {
            RowsSummary product = new RowsSummary(job, p, reservations.manyDropped());
            products.add(product);
            rows = product.grade().compareTo(rows) > 0 ? product.grade() : rows;
        }
        List<Message> paragraphs = new ArrayList<>();
        boolean groundFirst = ground.grade().compareTo(rows) > 0;
        if (groundFirst) {
            paragraphs.add(Message.of(
                    ground.grade() == Grade.OFF ? "words.summary.isNo" : "words.summary.isNearly", ground.paragraph()));
        }
        for (int p = 0; p < products.size(); p++) {
            Message paragraph = products.get(p).paragraph(groundFirst);
            paragraphs.add(
                    products.size() > 1
                            ? Message.of(
                                    "words.summary.ofProduct",
                                    job.rig().products().get(p).name(),
                                    paragraph)
                            : paragraph);
        }
        if (!groundFirst) {
            paragraphs.add(ground.paragraph());
        }
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
}
