package io.rowledger.report.record;

import io.rowledger.analysis.Analysis;
import io.rowledger.analysis.InputFile;
import io.rowledger.document.text.TextTruncation;
import io.rowledger.document.text.Wording;
import io.rowledger.log.source.LogSource;
import io.rowledger.report.common.Fact;
import io.rowledger.report.common.QualitySection;
import io.rowledger.report.common.QualitySectionBuilder;
import io.rowledger.report.common.ReportHeaders;
import io.rowledger.report.common.ReportOptions;
import io.rowledger.report.record.NitrogenRecord.Basis;
import io.rowledger.report.record.NitrogenRecord.File;
import io.rowledger.report.record.NitrogenRecord.Item;
import io.rowledger.rig.Product;
import io.rowledger.units.UnitFormat;
import io.rowledger.units.UnitSystem;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

/** What the record rests on, so that it can be made again byte for byte: files, settings, the call. */
final class RecordBasis {
    /** Notes printed; the rest stands in the JSON. */
    private static final int NOTES = 6;

    private final Analysis a;
    private final ReportOptions options;
    private final UnitFormat f;

    RecordBasis(Analysis a, ReportOptions options) {
        this.a = a;
        this.options = options;
        this.f = options.format();
    }

    Basis build() {
        List<String> notes = new ArrayList<>();
        for (String note : a.notes()) {
            if (notes.size() == NOTES) {
                notes.add("More is said in nitrogen-record.json.");
                break;
            }
            notes.add(TextTruncation.value(withoutFolders(note)));
        }
        return new Basis(files(), settings(), command(), notes);
    }

    private List<File> files() {
        List<File> files = new ArrayList<>();
        for (LogSource source : a.log().sources()) {
            int dropped = source.dropped().total();
            files.add(new File(
                    TextTruncation.value(Wording.fileName(source.file())),
                    "log: " + f.count(source.used()) + " of " + f.count(source.records()) + " records used, "
                            + (dropped == 0 ? "none" : f.count(dropped)) + " dropped",
                    source.sha256()));
        }
        for (InputFile setup : a.setups()) {
            files.add(new File(TextTruncation.value(Wording.fileName(setup.file())), setup.role(), setup.sha256()));
        }
        return files;
    }

    private List<Item> settings() {
        QualitySection quality = new QualitySectionBuilder(a, f).build();
        List<Item> settings = new ArrayList<>();
        List<String> lengths = new ArrayList<>();
        for (Fact fact : quality.machine()) {
            boolean product = a.rig().products().stream().anyMatch(p -> p.name().equals(fact.label()));
            if (!product) {
                lengths.add(fact.label().toLowerCase(Locale.ROOT) + " " + fact.value());
            }
        }
        settings.add(
                new Item("Machine", TextTruncation.name(a.rig().name()) + ": " + String.join("; ", lengths), true));
        List<String> lags = new ArrayList<>();
        for (Product product : a.rig().products()) {
            lags.add(f.fixed(product.flowLagS(), 2) + "\u00a0s"
                    + (a.rig().products().size() > 1 ? " " + TextTruncation.name(product.name()) : ""));
        }
        settings.add(new Item(
                "Settings",
                "flow lag taken out " + String.join(", ", lags) + "\u2020; "
                        + (options.units() == UnitSystem.US ? "US units" : "metric units") + ", times of "
                        + ReportHeaders.zone(f)
                        + "; made with Rowledger " + options.programVersion() + "; map total against log total "
                        + quality.checks().get(0).value(),
                false));
        settings.add(new Item("Positions", new QualitySectionBuilder(a, f).positions(), false));
        settings.addAll(new RecordUncertainty(a, f).items());
        return settings;
    }

    /** The call that makes this record again in a folder that holds the files. */
    private String command() {
        StringBuilder call = new StringBuilder("java -jar rowledger.jar report");
        for (LogSource source : a.log().sources()) {
            call.append(' ').append(word(source.file()));
        }
        for (InputFile setup : a.setups()) {
            if (setup.option().startsWith("-")) {
                call.append(' ').append(setup.option()).append(' ').append(word(setup.file()));
            }
        }
        call.append(" --for landlord --units ")
                .append(options.units().name().toLowerCase(Locale.ROOT))
                .append(" --paper ")
                .append(options.paper().name().toLowerCase(Locale.ROOT));
        if (options.templateFolder() != null) {
            call.append(" --templates ").append(word(options.templateFolder().toString()));
        }
        return call.toString();
    }

    /** A file name as a shell takes it. */
    private static String word(String path) {
        String name = Wording.fileName(path);
        return name.matches("[A-Za-z0-9._+@%-]+") ? name : "'" + name.replace("'", "'\\''") + "'";
    }

    /** A folder's name would make another record of the same files in another place. */
    private String withoutFolders(String note) {
        String text = note;
        for (LogSource source : a.log().sources()) {
            text = text.replace(source.file(), Wording.fileName(source.file()));
        }
        for (InputFile setup : a.setups()) {
            text = text.replace(setup.file(), Wording.fileName(setup.file()));
        }
        return text;
    }
}
