package io.rowledger.rig;

import io.rowledger.finding.UnusableInputException;
import io.rowledger.log.Inspection;
import io.rowledger.log.header.LogHints;
import io.rowledger.log.read.ColumnMeaning;
import io.rowledger.text.Message;
import io.rowledger.units.Unit;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.util.Locale;
import java.util.function.Function;
import java.util.regex.Pattern;

/** A rig file to start from: what the log tells filled in, what a tape measure has to tell left open. */
public final class DraftRig {
    private static final int COMMENT_AT = 40;
    /** Flow, rate, volume or pulses of a row. */
    private static final Pattern OF_A_ROW =
            Pattern.compile("(?:[^.]+\\.)?(?:flow|rate|nitrogen_rate|volume|count)[a-z_]*_\\d+");

    private DraftRig() {}

    /**
     * Writes the draft.
     *
     * @param words puts the remarks on the columns into words
     * @throws UnusableInputException where the file is there already or can't be written
     */
    public static void write(Path file, Inspection inspection, LogHints hints, Function<Message, String> words) {
        try {
            Files.write(
                    file,
                    text(inspection, hints, words).getBytes(StandardCharsets.UTF_8),
                    StandardOpenOption.CREATE_NEW);
        } catch (FileAlreadyExistsException e) {
            throw UnusableInputException.found("a file that is there already")
                    .inFile(file.toString())
                    .expected("a name for a new file: a draft replaces nothing")
                    .hint("give another name, or move the file away");
        } catch (IOException e) {
            throw UnusableInputException.found("a place that can't be written to (" + e.getMessage() + ")")
                    .inFile(file.toString())
                    .expected("a name for a new file")
                    .hint("give a name in a folder of yours");
        }
    }

    /** The draft as text. */
    static String text(Inspection inspection, LogHints hints, Function<Message, String> words) {
        StringBuilder text = new StringBuilder();
        text.append("# Draft from a log. Write each measure over the words that stand for it; the README shows\n")
                .append("# where each is taken.\n")
                .append("rig:\n");
        line(text, "  name: Unnamed bar", "what the records print");
        text.append("  antenna:\n");
        DraftMeasures measures = new DraftMeasures(text, inspection.geometry());
        measures.lengths();
        text.append("rows:\n");
        boolean perRow = inspection.geometry() != null
                || inspection.columns().stream()
                        .anyMatch(
                                meaning -> OF_A_ROW.matcher(meaning.quantity()).lookingAt());
        measures.rows(perRow ? Math.max(1, inspection.rows()) : 0);
        text.append("products:\n");
        for (String product : inspection.products()) {
            text.append("  ").append(product.isEmpty() ? "liquid" : product).append(":\n");
            fillIn(text, "    name", "as on the load ticket");
            fillIn(text, "    density", "from the load ticket, such as 11.06 lb/gal");
            fillIn(text, "    analysis", "N-P2O5-K2O, such as 32-0-0");
            fillIn(text, "    target", "such as 42 gal/ac; take the line out if the log has it");
        }
        text.append("columns:\n");
        for (ColumnMeaning meaning : inspection.columns()) {
            if (!meaning.ignored()) {
                line(text, "  " + quantity(meaning) + ": " + quoted(meaning.header()), meaning.remark(words));
            }
        }
        hints(text, hints);
        text.append("job:\n");
        line(text, "  field: Unnamed field", "what the records print");
        if (inspection.zone().isEmpty()) {
            line(text, "  # zone: America/Chicago", "write the field's time zone and take the # out");
        } else {
            line(text, "  zone: " + inspection.zone(), "from the position: check it near a zone line");
        }
        return text.toString();
    }

    private static void hints(StringBuilder text, LogHints hints) {
        StringBuilder block = new StringBuilder();
        add(block, "zone", hints.zone() == null ? null : quoted(hints.zone().getId()));
        add(block, "date", hints.date());
        add(
                block,
                "date_order",
                hints.dateOrder() == null ? null : hints.dateOrder().word());
        add(block, "gps_week", hints.gpsWeek() == 0 ? null : hints.gpsWeek());
        add(block, "counts", hints.counts() == null ? null : hints.counts().word());
        if (!Double.isNaN(hints.pulsesPerL())) {
            add(block, "pulses", String.format(Locale.ROOT, "%.6f per L", hints.pulsesPerL()));
        }
        add(
                block,
                "flow_unit",
                hints.flowUnit() == null ? null : hints.flowUnit().symbol());
        if (!block.isEmpty()) {
            text.append("log:\n").append(block);
        }
    }

    private static void add(StringBuilder block, String key, @org.jspecify.annotations.Nullable Object value) {
        if (value != null) {
            block.append("  ").append(key).append(": ").append(value).append('\n');
        }
    }

    private static String quantity(ColumnMeaning meaning) {
        boolean unit =
                Unit.findAny(meaning.unit()).isPresent() || meaning.unit().startsWith("ddmm");
        return unit || meaning.unit().equals("hhmmss")
                ? meaning.quantity() + "[" + meaning.unit() + "]"
                : meaning.quantity();
    }

    private static String quoted(String text) {
        return "\""
                + text.replace("\\", "\\\\")
                        .replace("\"", "\\\"")
                        .replace("\n", " ")
                        .replace("\t", "\\t") + "\"";
    }

    static void measure(StringBuilder text, String key, String comment) {
        line(text, key + ": " + Unmeasured.MEASURE, comment);
    }

    static void fillIn(StringBuilder text, String key, String comment) {
        line(text, key + ": " + Unmeasured.FILL_IN, comment);
    }

    static void line(StringBuilder text, String line, String comment) {
        text.append(line);
        if (!comment.isEmpty()) {
            text.append(" ".repeat(Math.max(1, COMMENT_AT - line.length())))
                    .append("# ")
                    .append(comment);
        }
        text.append('\n');
    }
}
