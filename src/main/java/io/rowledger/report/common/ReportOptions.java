package io.rowledger.report.common;

import io.rowledger.document.pdf.Paper;
import io.rowledger.document.text.Messages;
import io.rowledger.units.UnitFormat;
import io.rowledger.units.UnitSystem;
import java.nio.file.Path;
import java.time.ZoneId;
import java.util.Locale;
import org.jspecify.annotations.Nullable;

/**
 * Units, paper, time zone, language and templates of the reports; none of them changes a value in SI.
 *
 * @param units the units people read; files for machines stay in SI
 * @param paper the sheet
 * @param zone the zone of printed times
 * @param templateFolder the user's own templates, or null; a file missing there is taken from the jar
 * @param programVersion version of the program, printed in the footer
 * @param language of the documents that are translated
 */
public record ReportOptions(
        UnitSystem units,
        Paper paper,
        ZoneId zone,
        @Nullable Path templateFolder,
        String programVersion,
        Locale language) {
    /** English documents. */
    public ReportOptions(
            UnitSystem units, Paper paper, ZoneId zone, @Nullable Path templateFolder, String programVersion) {
        this(units, paper, zone, templateFolder, programVersion, Locale.ENGLISH);
    }

    /** The same in another language. */
    public ReportOptions in(Locale other) {
        return new ReportOptions(units, paper, zone, templateFolder, programVersion, other);
    }

    /** The same in other units. */
    public ReportOptions in(UnitSystem other) {
        return new ReportOptions(other, paper, zone, templateFolder, programVersion, language);
    }

    /** The same in another time zone. */
    public ReportOptions in(ZoneId other) {
        return new ReportOptions(units, paper, other, templateFolder, programVersion, language);
    }

    /** Values in these units and this time zone. */
    public UnitFormat format() {
        return new UnitFormat(units, zone, language);
    }

    /** The words of the reports, with values in these units. */
    public Messages messages() {
        return new Messages(format());
    }
}
