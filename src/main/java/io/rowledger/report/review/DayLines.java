package io.rowledger.report.review;

import io.rowledger.document.text.Messages;
import io.rowledger.document.text.Wording;
import io.rowledger.rate.Rates.PassTotals;
import io.rowledger.report.common.JobView;
import io.rowledger.report.review.PassReview.DayLine;
import io.rowledger.text.Message;
import io.rowledger.track.Pass;
import io.rowledger.units.QuantityKind;
import io.rowledger.units.UnitFormat;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/** Passes by local day: a pass belongs to the day on which it starts. */
final class DayLines {
    private DayLines() {}

    /** A line a day, if there are several; else none. */
    static List<DayLine> of(JobView job, Messages messages) {
        UnitFormat f = messages.units();
        Map<String, List<Integer>> byDay = new LinkedHashMap<>();
        List<Pass> passes = job.track().passes();
        for (int i = 0; i < passes.size(); i++) {
            byDay.computeIfAbsent(f.day(passes.get(i).startS()), day -> new ArrayList<>())
                    .add(i);
        }
        if (byDay.size() < 2) {
            return List.of();
        }
        List<DayLine> lines = new ArrayList<>();
        byDay.forEach((date, indexes) -> lines.add(line(date, indexes, job, messages)));
        return lines;
    }

    private static DayLine line(String date, List<Integer> indexes, JobView job, Messages messages) {
        UnitFormat f = messages.units();
        double areaM2 = 0;
        double[] volumeL = new double[job.rig().products().size()];
        for (int i : indexes) {
            PassTotals totals = job.rates().passes().get(i);
            areaM2 += totals.sweptAreaM2();
            for (int p = 0; p < volumeL.length; p++) {
                volumeL[p] += totals.volumeL()[p];
            }
        }
        List<Pass> passes = job.track().passes();
        List<String> volumes = new ArrayList<>();
        for (double each : volumeL) {
            volumes.add(f.text(QuantityKind.VOLUME, each));
        }
        Message hours = Message.of(
                "review.day.hours",
                Message.time(passes.get(indexes.get(0)).startS()),
                Message.time(passes.get(indexes.get(indexes.size() - 1)).endS()));
        return new DayLine(
                date,
                messages.text(hours),
                Wording.ranges(indexes.stream().map(i -> passes.get(i).number()).toList()),
                f.text(QuantityKind.AREA, areaM2),
                messages.text("review.day.line", Message.value(QuantityKind.AREA, areaM2), hours),
                volumes);
    }
}
