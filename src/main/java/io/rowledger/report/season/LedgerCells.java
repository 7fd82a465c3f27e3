package io.rowledger.report.season;

import io.rowledger.document.text.Messages;
import io.rowledger.text.Message;
import io.rowledger.uncertainty.Interval;
import io.rowledger.units.QuantityKind;
import io.rowledger.units.UnitFormat;
import io.rowledger.units.UnitSystem;

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

    /** First and last day of the printed time zone, or the one day. */
    String days(double startS, double endS) {
        UnitFormat f = messages.units();
        return f.date(startS).equals(f.date(endS))
                ? f.day(startS)
                : messages.text("season.days", Message.time(startS), Message.time(endS));
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
