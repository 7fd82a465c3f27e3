package io.rowledger.report.record;

import static org.junit.jupiter.api.Assertions.assertEquals;

import io.rowledger.coverage.CoverageDefect;
import io.rowledger.coverage.CoverageDefect.Cause;
import io.rowledger.document.text.Messages;
import io.rowledger.finding.FindingKind;
import io.rowledger.text.Message;
import io.rowledger.uncertainty.MeterFault;
import io.rowledger.units.UnitFormat;
import io.rowledger.units.UnitSystem;
import java.time.ZoneOffset;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.locationtech.jts.geom.GeometryFactory;

/** Skips that a row left whose meter may be dead. */
class NitrogenAnswerTest {
    private static CoverageDefect skip(int number, Cause cause, Integer... rows) {
        return new CoverageDefect(
                number, new GeometryFactory().createPolygon(), 100, 0, 0, List.of(1), List.of(rows), cause);
    }

    /** Rows 5 and 7 read nothing and their meters are in question; row 4 read nothing for certain; row 9 is beside a gap alone. */
    @Test
    void only_rows_that_read_nothing_and_are_in_question_leave_a_skip_open() {
        List<CoverageDefect> skips = List.of(
                skip(1, Cause.ROW_NOT_DELIVERING, 7),
                skip(2, Cause.ROW_NOT_DELIVERING, 4),
                skip(3, Cause.GAP_BETWEEN_PASSES, 9),
                skip(4, Cause.ROW_NOT_DELIVERING, 7),
                skip(1, Cause.METER_READS_ZERO, 5));
        List<MeterFault> faults = List.of(
                new MeterFault(List.of(0), FindingKind.PLUGGED, List.of(7), 0, 100),
                new MeterFault(List.of(0), FindingKind.METER_DROPOUT, List.of(5), 0, 100),
                new MeterFault(List.of(0), FindingKind.METER_SCALE, List.of(9), 0, 100));
        assertEquals(List.of(5, 7), NitrogenAnswer.silentRows(skips, faults));
        assertEquals(List.of(), NitrogenAnswer.silentRows(skips, List.of()));
    }

    @Test
    void the_sentence_gives_the_bounds_and_says_why() {
        Messages messages = Messages.english(new UnitFormat(UnitSystem.US, ZoneOffset.UTC));
        assertEquals(
                "By the meters, 0.6 ac was skipped between the passes. That is not certain (0.0 to 0.7 ac, 9 times in 10): where row "
                        + "7 read nothing, its meter may be at fault and the ground may be covered",
                messages.text(
                                "record.answer.skipInQuestion",
                                "0.6 ac",
                                Message.of("record.answer.betweenPasses"),
                                "0.0 to 0.7 ac",
                                RecordUncertainty.TIMES_IN_TEN,
                                List.of(7))
                        .replace('\u00a0', ' '));
    }
}
