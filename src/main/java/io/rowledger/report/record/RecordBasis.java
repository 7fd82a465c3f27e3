package io.rowledger.report.record;

import io.rowledger.analysis.InputFile;
import io.rowledger.document.text.Messages;
import io.rowledger.document.text.TextTruncation;
import io.rowledger.finding.RegularFile;
import io.rowledger.log.source.LogSource;
import io.rowledger.report.common.Fact;
import io.rowledger.report.common.ReportHeaders;
import io.rowledger.report.common.ReportOptions;
import io.rowledger.report.record.NitrogenRecord.Basis;
import io.rowledger.report.record.NitrogenRecord.File;
import io.rowledger.report.record.NitrogenRecord.Item;
import io.rowledger.report.sections.QualitySection;
import io.rowledger.rig.Product;
import io.rowledger.text.Message;
import io.rowledger.units.UnitSystem;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

/** Files, settings and the command behind a record, so that it can be made again byte for byte. */
final class RecordBasis {
    /** Notes printed; nitrogen-record.json holds all of them. */
    private static final int MAX_NOTES = 6;

    private final RecordInput in;
    private final ReportOptions options;
    private final Messages messages;

    RecordBasis(RecordInput in, ReportOptions options, Messages messages) {
        this.in = in;
        this.options = options;
        this.messages = messages;
    }

    Basis build() {
        List<String> all = in.files().notes();
        List<String> notes = new ArrayList<>();
        for (String note : all.subList(0, Math.min(MAX_NOTES, all.size()))) {
            notes.add(TextTruncation.value(in.files().withoutFolders(note)));
        }
        if (all.size() > MAX_NOTES) {
            notes.add(messages.text("record.basis.moreNotes"));
        }
        return new Basis(files(), settings(), command(), notes);
    }

    private List<File> files() {
        List<File> files = new ArrayList<>();
        for (LogSource source : in.files().logs()) {
            files.add(new File(
                    TextTruncation.value(RegularFile.name(source.file())),
                    messages.text(
                            "record.basis.log",
                            source.used(),
                            source.records(),
                            source.dropped().total()),
                    source.sha256()));
        }
        for (InputFile other : in.files().others()) {
            files.add(new File(TextTruncation.value(RegularFile.name(other.file())), other.role(), other.sha256()));
        }
        return files;
    }

    private List<Item> settings() {
        List<Item> settings = new ArrayList<>();
        settings.add(new Item(messages.text("record.basis.machine"), messages.text(machine()), true));
        settings.add(new Item(
                messages.text("record.basis.settings"),
                messages.text(
                        "record.basis.settingsText",
                        flowLags(),
                        options.units() == UnitSystem.US
                                ? Message.of("record.basis.unitsUs")
                                : Message.of("record.basis.unitsMetric"),
                        ReportHeaders.zone(messages.units()),
                        options.programVersion(),
                        in.sections().quality().checks().get(0).value()),
                false));
        settings.add(
                new Item(messages.text("record.basis.positions"), in.sections().positions(), false));
        settings.addAll(new RecordUncertainty(in, messages).items());
        return settings;
    }

    private Message machine() {
        QualitySection quality = in.sections().quality();
        List<String> lengths = new ArrayList<>();
        for (Fact fact : quality.machine()) {
            boolean product =
                    in.rig().products().stream().anyMatch(p -> p.name().equals(fact.label()));
            if (!product) {
                lengths.add(fact.label().toLowerCase(Locale.ROOT) + " " + fact.value());
            }
        }
        return Message.of(
                "record.basis.machineText", TextTruncation.name(in.rig().name()), String.join("; ", lengths));
    }

    private List<Message> flowLags() {
        List<Message> lags = new ArrayList<>();
        boolean several = in.rig().products().size() > 1;
        for (Product product : in.rig().products()) {
            lags.add(
                    several
                            ? Message.of(
                                    "record.basis.lagOf",
                                    Message.decimal(product.flowLagS(), 2),
                                    TextTruncation.name(product.name()))
                            : Message.of("record.basis.lag", Message.decimal(product.flowLagS(), 2)));
        }
        return lags;
    }

    /** The command that makes this record again in a folder that holds the files. */
    private String command() {
        StringBuilder call = new StringBuilder("java -jar rowledger.jar report");
        for (LogSource source : in.files().logs()) {
            call.append(' ').append(word(source.file()));
        }
        for (InputFile other : in.files().others()) {
            if (other.option().startsWith("-")) {
                call.append(' ').append(other.option()).append(' ').append(word(other.file()));
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

    /** A file name quoted for a shell where it needs to be. */
    private static String word(String path) {
        String name = RegularFile.name(path);
        return name.matches("[A-Za-z0-9._+@%-]+") ? name : "'" + name.replace("'", "'\\''") + "'";
    }
}
