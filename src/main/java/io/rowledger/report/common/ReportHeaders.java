package io.rowledger.report.common;

import io.rowledger.analysis.Analysis;
import io.rowledger.document.text.TextTruncation;
import io.rowledger.document.text.Wording;
import io.rowledger.rig.Rig;
import io.rowledger.units.QuantityKind;
import io.rowledger.units.UnitFormat;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;

/** Title and particulars, the same on every report of a job. */
public final class ReportHeaders {
    private ReportHeaders() {}

    /** The head of a report of this kind, such as "Pass review". */
    public static ReportHeader of(String kind, Rig rig, JobTimes times, ReportOptions options) {
        UnitFormat f = options.format();
        double startS = times.startS();
        double endS = times.endS();
        String field = rig.job().facts().getOrDefault("field", "").strip();
        boolean named = !field.isEmpty();
        List<Fact> facts = new ArrayList<>();
        for (Map.Entry<String, String> entry : rig.job().facts().entrySet()) {
            if (!"field".equals(entry.getKey())) {
                facts.add(new Fact(Wording.label(entry.getKey()), entry.getValue()));
            }
        }
        return new ReportHeader(
                kind + ": " + (named ? TextTruncation.title(field) + ", " : "") + f.date(startS),
                named ? TextTruncation.value(field) : "Field without a name",
                when(startS, endS, f),
                rig.name() + ", " + rig.rows() + (rig.rows() == 1 ? " row, " : " rows, ")
                        + f.text(QuantityKind.LENGTH, rig.widthM()),
                endS,
                facts,
                new UnitLabels(
                        f.unit(QuantityKind.AREA),
                        f.unit(QuantityKind.LENGTH),
                        f.unit(QuantityKind.VOLUME),
                        f.unit(QuantityKind.RATE),
                        f.unit(QuantityKind.NITROGEN_RATE),
                        f.unit(QuantityKind.SPEED)),
                "Rowledger " + options.programVersion());
    }

    /** Local day and hours. */
    public static String when(double startS, double endS, UnitFormat f) {
        String sameDay = f.date(startS).equals(f.date(endS)) ? f.clock(endS) : f.date(endS) + " " + f.clock(endS);
        return f.date(startS) + ", " + f.clock(startS) + " to " + sameDay + " (" + zone(f) + ")";
    }

    /** The zone by its name; the one without an offset goes by the name people know. */
    public static String zone(UnitFormat f) {
        String id = f.zone().getId();
        return "Z".equals(id) ? "UTC" : id;
    }

    // BRIDGE
    public static ReportHeader of(String kind, Analysis a, ReportOptions options) {
        return of(kind, a.rig(), JobTimes.of(a.track(), a.log()), options);
    }
    // END BRIDGE
}
