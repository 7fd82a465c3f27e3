package io.rowledger.report.season;

import io.rowledger.document.text.Messages;
import io.rowledger.text.Message;
import io.rowledger.uncertainty.Interval;
import io.rowledger.units.QuantityKind;
import io.rowledger.units.UnitFormat;
import io.rowledger.units.UnitSystem;
import java.util.Collection;
import java.util.Collections;
import java.util.Comparator;
import java.util.List;

/** Headings and cells that ledger and batch summary have in common. */
record LedgerCells(Messages messages) {
    /** What a cell holds if there is nothing. */
    static final String NONE = "\u2013";

    ColumnUnits units() {
        UnitFormat f = messages.units();
        return new ColumnUnits(
                f.unit(QuantityKind.AREA),
                f.unit(QuantityKind.VOLUME),
                messages.text(f.system() == UnitSystem.US ? "season.unit.pounds" : "season.unit.kilograms"),
                f.unit(QuantityKind.NITROGEN_RATE));
    }

    /** First and last day of jobs, each in its own time zone, or the one day; a sign for none if no job has a time. */
    String days(Collection<SeasonJob> jobs) {
        List<SeasonJob> timed =
                jobs.stream().filter(job -> Double.isFinite(job.startS())).toList();
        if (timed.isEmpty()) {
            return messages.units().day(Double.NaN);
        }
        SeasonJob first = Collections.min(timed, Comparator.comparingDouble(SeasonJob::startS));
        SeasonJob last = Collections.max(timed, Comparator.comparingDouble(SeasonJob::endS));
        String from = day(first, first.startS());
        String to = day(last, last.endS());
        return from.equals(to) ? from : messages.text("season.days", from, to);
    }

    /** A day in the time zone of a job. */
    String day(SeasonJob job, double epochS) {
        return new UnitFormat(
                        messages.units().system(), job.zone(), messages.units().language())
                .day(epochS);
    }

    /** The figure, or that it is not known. */
    String number(QuantityKind kind, double si) {
        return messages.units().number(kind, si);
    }

    /** The figure, or a dash for 0. */
    String numberOrNone(QuantityKind kind, double si) {
        return si == 0 ? NONE : number(kind, si);
    }

    /** Nitrogen and covered ground with their bounds in a sentence. */
    Message bounds(Interval nitrogenKg, Interval coveredM2) {
        return Message.of(
                "season.answer.bounds",
                Message.within(QuantityKind.NITROGEN, nitrogenKg.value(), nitrogenKg.low(), nitrogenKg.high()),
                Message.within(QuantityKind.AREA, coveredM2.value(), coveredM2.low(), coveredM2.high()));
    }
}
