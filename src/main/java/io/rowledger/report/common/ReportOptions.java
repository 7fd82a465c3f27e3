package io.rowledger.report.common;

import io.rowledger.document.pdf.Paper;
import io.rowledger.document.text.Messages;
import io.rowledger.units.UnitFormat;
import io.rowledger.units.UnitSystem;
import java.nio.file.Path;
import java.time.ZoneId;
import org.jspecify.annotations.Nullable;

/**
 * Units, paper, time zone and templates of the reports; none of them changes a value in SI.
 *
 * @param units the units people read; files for machines stay in SI
 * @param paper the sheet
 * @param zone the zone of printed times
 * @param templateFolder the user's own templates, or null; a file missing there is taken from the jar
 * @param programVersion version of the program, printed in the footer
 */
public record ReportOptions(
        UnitSystem units,
        Paper paper,
        ZoneId zone,
        @Nullable Path templateFolder,
        String programVersion) {
    /** Values in these units and this time zone. */
    public UnitFormat format() {
        return new UnitFormat(units, zone);
    }

    /** The words of the reports, with values in these units. */
    public Messages messages() {
        return Messages.english(format());
    }
}
