package io.rowledger.report.record;

import io.rowledger.document.text.Messages;
import io.rowledger.document.text.Wording;
import io.rowledger.rate.Rates.PassTotals;
import io.rowledger.report.record.NitrogenRecord.Day;
import io.rowledger.text.Message;
import io.rowledger.track.Pass;
import io.rowledger.units.QuantityKind;
import io.rowledger.units.UnitFormat;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/** Sums the passes by local day; the rounded figures of the days add up to the rounded total. */
final class RecordedDays {
    private final RecordInput in;
    private final Messages messages;

    private RecordedDays(RecordInput in, Messages messages) {
        this.in = in;
        this.messages = messages;
    }

    /** Exact sums of some passes, SI; nitrogen is NaN if a product's is not known. */
    private record Sums(double sweptM2, double[] volumeL, double nitrogenKg) {}

    /** One line per day of the printed time zone and one for all; empty if all passes began on one day. */
    static List<Day> of(RecordInput in, Messages messages) {
        return new RecordedDays(in, messages).days();
    }

    private List<Day> days() {
        Map<String, List<Integer>> passesByDate = new LinkedHashMap<>();
        List<Pass> passes = in.work().passes();
        List<Integer> all = new ArrayList<>();
        for (int i = 0; i < passes.size(); i++) {
            passesByDate
                    .computeIfAbsent(messages.units().day(passes.get(i).startS()), date -> new ArrayList<>())
                    .add(i);
            all.add(i);
        }
        List<Day> days = new ArrayList<>();
        if (passesByDate.size() > 1) {
            Sums total = sums(all);
            List<Integer> until = new ArrayList<>();
            for (Map.Entry<String, List<Integer>> day : passesByDate.entrySet()) {
                Sums before = sums(until);
                until.addAll(day.getValue());
                days.add(line(day.getKey(), hours(day.getValue()), before, sums(until), total));
            }
            days.add(total(total));
        }
        return days;
    }

    private Sums sums(List<Integer> indexes) {
        double sweptM2 = 0;
        double[] volumeL = new double[in.rig().products().size()];
        for (int i : indexes) {
            PassTotals totals = in.work().totals().get(i);
            sweptM2 += totals.sweptAreaM2();
            for (int p = 0; p < volumeL.length; p++) {
                volumeL[p] += totals.volumeL()[p];
            }
        }
        double nitrogenKg = 0;
        for (int p = 0; p < volumeL.length; p++) {
            nitrogenKg += volumeL[p] == 0
                    ? 0
                    : volumeL[p] * in.rig().products().get(p).nitrogenKgPerL();
        }
        return new Sums(sweptM2, volumeL, nitrogenKg);
    }

    /** A day as the difference of two rounded running sums, so that the lines add up. */
    private Day line(String date, String hours, Sums before, Sums until, Sums total) {
        List<String> volumes = new ArrayList<>();
        for (int p = 0; p < total.volumeL.length; p++) {
            volumes.add(
                    named(difference(QuantityKind.VOLUME, before.volumeL[p], until.volumeL[p], total.volumeL[p]), p));
        }
        return new Day(
                date,
                hours,
                difference(QuantityKind.AREA, before.sweptM2, until.sweptM2, total.sweptM2),
                String.join(", ", volumes),
                difference(QuantityKind.NITROGEN, before.nitrogenKg, until.nitrogenKg, total.nitrogenKg),
                false);
    }

    private Day total(Sums total) {
        UnitFormat f = messages.units();
        List<String> volumes = new ArrayList<>();
        for (int p = 0; p < total.volumeL.length; p++) {
            volumes.add(named(f.number(QuantityKind.VOLUME, total.volumeL[p]), p));
        }
        return new Day(
                messages.text("record.day.total"),
                "",
                f.number(QuantityKind.AREA, total.sweptM2),
                String.join(", ", volumes),
                Wording.cell(f.number(QuantityKind.NITROGEN, total.nitrogenKg)),
                true);
    }

    private String named(String volume, int p) {
        return in.rig().products().size() > 1 ? messages.text("record.day.volumeOf", volume, in.product(p)) : volume;
    }

    /** The step between two running sums, both rounded to the decimals of the total. */
    private String difference(QuantityKind kind, double beforeSi, double untilSi, double totalSi) {
        UnitFormat f = messages.units();
        if (!Double.isFinite(totalSi)) {
            return NitrogenRecord.NONE;
        }
        String total = f.number(kind, totalSi);
        int decimals = total.contains(".") ? total.length() - total.indexOf('.') - 1 : 0;
        double step = Math.pow(10, -decimals);
        double before = Math.round(kind.from(beforeSi, f.system()) / step);
        double until = Math.round(kind.from(untilSi, f.system()) / step);
        return f.fixed((until - before) * step, decimals);
    }

    private String hours(List<Integer> indexes) {
        List<Pass> passes = in.work().passes();
        Pass first = passes.get(indexes.get(0));
        Pass last = passes.get(indexes.get(indexes.size() - 1));
        return messages.text("record.day.hours", Message.time(first.startS()), Message.time(last.endS()));
    }
}
