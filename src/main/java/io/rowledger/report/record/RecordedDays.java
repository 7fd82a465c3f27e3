package io.rowledger.report.record;

import io.rowledger.document.text.Messages;
import io.rowledger.rate.Rates.PassTotals;
import io.rowledger.report.record.NitrogenRecord.Day;
import io.rowledger.text.Message;
import io.rowledger.track.Pass;
import io.rowledger.units.QuantityKind;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/** Sums the passes by day. */
final class RecordedDays {
    private RecordedDays() {}

    /** One line per day of the printed time zone; empty if all passes began on one day. */
    static List<Day> of(RecordInput in, Messages messages) {
        Map<String, List<Integer>> passesByDate = new LinkedHashMap<>();
        List<Pass> passes = in.work().passes();
        for (int i = 0; i < passes.size(); i++) {
            passesByDate
                    .computeIfAbsent(messages.units().date(passes.get(i).startS()), date -> new ArrayList<>())
                    .add(i);
        }
        List<Day> days = new ArrayList<>();
        if (passesByDate.size() > 1) {
            passesByDate.forEach((date, indexes) -> days.add(day(in, messages, date, indexes)));
        }
        return days;
    }

    private static Day day(RecordInput in, Messages messages, String date, List<Integer> indexes) {
        double sweptM2 = 0;
        double[] volumeL = new double[in.rig().products().size()];
        for (int i : indexes) {
            PassTotals totals = in.work().totals().get(i);
            sweptM2 += totals.sweptAreaM2();
            for (int p = 0; p < volumeL.length; p++) {
                volumeL[p] += totals.volumeL()[p];
            }
        }
        List<String> volumes = new ArrayList<>();
        for (int p = 0; p < volumeL.length; p++) {
            volumes.add(
                    volumeL.length > 1
                            ? messages.text(
                                    "record.day.volumeOf",
                                    Message.value(QuantityKind.VOLUME, volumeL[p]),
                                    in.product(p))
                            : messages.units().text(QuantityKind.VOLUME, volumeL[p]));
        }
        List<Pass> passes = in.work().passes();
        Pass first = passes.get(indexes.get(0));
        Pass last = passes.get(indexes.get(indexes.size() - 1));
        return new Day(
                date,
                messages.text("record.day.hours", Message.time(first.startS()), Message.time(last.endS())),
                messages.units().text(QuantityKind.AREA, sweptM2),
                String.join(", ", volumes));
    }
}
