package io.rowledger.cli;

import io.rowledger.document.pdf.Paper;
import io.rowledger.units.UnitSystem;
import java.nio.file.Path;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Option;

/** How pages are printed: the same three options wherever a command prints. */
@SuppressWarnings("NullAway.Init")
final class PageOptions {
    @Option(
            names = "--units",
            defaultValue = "us",
            paramLabel = "us|metric",
            description = "Units of the reports and tables. JSON files and map layers stay in SI.")
    private UnitSystem units;

    @Option(
            names = "--paper",
            paramLabel = "letter|a4",
            description = "Paper size (default: letter for us, a4 for metric).")
    private @Nullable Paper paper;

    @Option(
            names = "--templates",
            paramLabel = "DIR",
            description = "A folder with your own copies of the report templates.")
    private @Nullable Path templates;

    UnitSystem units() {
        return units;
    }

    /** The sheet: as asked for, else the usual one of these units. */
    Paper sheet() {
        Paper usual = units == UnitSystem.US ? Paper.LETTER : Paper.A4;
        return paper == null ? usual : paper;
    }

    @Nullable
    Path templates() {
        return templates;
    }
}
