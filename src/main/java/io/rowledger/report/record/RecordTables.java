package io.rowledger.report.record;

import io.rowledger.document.text.Messages;
import io.rowledger.document.text.TextTruncation;
import io.rowledger.finding.RegularFile;
import io.rowledger.report.common.Limits;
import io.rowledger.report.record.NitrogenRecord.SetbackTable;
import io.rowledger.report.sections.SetbackSection;
import io.rowledger.report.sections.ZoneSection;
import io.rowledger.report.sections.ZoneSection.ZoneTable;
import io.rowledger.setback.Setbacks;
import java.util.ArrayList;
import java.util.List;

/** Setbacks and zones as the record lists them: long lists are cut, so that a field and a day keep to two pages. */
final class RecordTables {
    private RecordTables() {}

    static SetbackTable setbacks(RecordInput in, Messages messages) {
        SetbackSection section = in.sections().setbacks();
        Setbacks setbacks = in.setbacks();
        if (section == null || setbacks == null) {
            return SetbackTable.NONE;
        }
        List<SetbackSection.Line> lines = new ArrayList<>();
        for (boolean touched : new boolean[] {true, false}) {
            for (SetbackSection.Line line : section.lines()) {
                if (line.mark().isEmpty() != touched) {
                    lines.add(withShortName(line));
                }
            }
        }
        int shown = Math.min(lines.size(), Limits.RECORD_LINES);
        String rest = lines.size() > shown ? messages.text("record.setbacks.more", lines.size() - shown) : "";
        return new SetbackTable(
                lines.subList(0, shown),
                rest,
                messages.text("record.setbacks.basis", RegularFile.name(setbacks.file())));
    }

    private static SetbackSection.Line withShortName(SetbackSection.Line line) {
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

    static ZoneSection zones(RecordInput in, Messages messages) {
        ZoneSection section = in.sections().zones();
        List<ZoneTable> tables = new ArrayList<>();
        for (ZoneTable table : section.products()) {
            int shown = Math.min(table.zones().size(), Limits.RECORD_LINES);
            int more = table.zones().size() - shown;
            tables.add(new ZoneTable(
                    TextTruncation.name(table.name()),
                    table.hasLoggedTarget(),
                    table.zones().subList(0, shown),
                    more > 0 ? messages.text("record.zones.more", more) : table.rest(),
                    table.changes(),
                    List.of()));
        }
        return new ZoneSection(tables, section.outside());
    }
}
