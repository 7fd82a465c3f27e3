package io.rowledger.report.record;

import io.rowledger.analysis.Analysis;
import io.rowledger.document.text.TextTruncation;
import io.rowledger.document.text.Wording;
import io.rowledger.report.common.Limits;
import io.rowledger.report.common.SetbackSection;
import io.rowledger.report.common.ZoneSection;
import io.rowledger.report.common.ZoneSection.ZoneTable;
import io.rowledger.report.common.ZoneSectionBuilder;
import io.rowledger.report.record.NitrogenRecord.SetbackTable;
import io.rowledger.setback.Setbacks;
import io.rowledger.units.UnitFormat;
import java.util.ArrayList;
import java.util.List;

/** Setbacks and zones as the record lists them: the longest lists cut, so that a field and a day keep to two pages. */
final class RecordTables {
    private RecordTables() {}

    static SetbackTable setbacks(Analysis a, UnitFormat f) {
        SetbackSection section = SetbackSection.of(a, f);
        Setbacks setbacks = a.setbacks();
        if (section == null || setbacks == null) {
            return SetbackTable.NONE;
        }
        List<SetbackSection.Line> lines = new ArrayList<>();
        for (boolean touched : new boolean[] {true, false}) {
            for (SetbackSection.Line line : section.lines()) {
                if (line.mark().isEmpty() != touched) {
                    lines.add(named(line));
                }
            }
        }
        int shown = Math.min(lines.size(), Limits.RECORD_LINES);
        String rest = lines.size() > shown
                ? "And " + Wording.counted(lines.size() - shown, "more place", "more places") + " in summary.json."
                : "";
        return new SetbackTable(
                lines.subList(0, shown),
                rest,
                "The distances are the user's own, from " + Wording.fileName(setbacks.file())
                        + "; the program knows none: product label, local rules and licensed practice decide how far to keep"
                        + " away. Ground within two setbacks counts in both.");
    }

    private static SetbackSection.Line named(SetbackSection.Line line) {
        return new SetbackSection.Line(
                line.number(),
                TextTruncation.name(line.name()),
                line.setback(),
                line.closest(),
                line.applied(),
                line.nitrogen(),
                line.ground(),
                line.when(),
                line.passes(),
                line.rows(),
                line.mark());
    }

    static ZoneSection zones(Analysis a, UnitFormat f) {
        ZoneSection section = ZoneSectionBuilder.build(a, f);
        List<ZoneTable> tables = new ArrayList<>();
        for (ZoneTable table : section.products()) {
            int shown = Math.min(table.zones().size(), Limits.RECORD_LINES);
            String rest = table.zones().size() > shown
                    ? "And " + Wording.counted(table.zones().size() - shown, "smaller zone", "smaller zones")
                            + " in summary.json."
                    : table.rest();
            tables.add(new ZoneTable(
                    TextTruncation.name(table.name()),
                    table.asked(),
                    table.zones().subList(0, shown),
                    rest,
                    table.changes(),
                    List.of()));
        }
        return new ZoneSection(tables, section.outside());
    }
}
