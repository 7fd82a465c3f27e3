package io.rowledger.report.record;

import io.rowledger.document.text.Messages;
import io.rowledger.report.record.RecordField.From;
import io.rowledger.report.record.RecordField.Kept;
import io.rowledger.text.Message;
import io.rowledger.units.UnitFormat;
import io.rowledger.units.UnitSystem;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Set;

/** The facts of a nitrogen record as lines of plain text: to read, or as a job block to fill in. */
public final class RecordFieldList {
    /** Longest line, characters: as wide as common terminals. */
    private static final int MAX_LINE = 100;

    private static final String INDENT = "      ";

    private final Messages messages = Messages.english(new UnitFormat(UnitSystem.US, ZoneOffset.UTC));
    private final List<String> lines = new ArrayList<>();

    private RecordFieldList() {}

    /** Each fact, what fills it and which rules ask for it; then the rules with their sources. */
    public static List<String> text() {
        return new RecordFieldList().list();
    }

    /** A {@code job:} block with every key on a line of its own, commented out until somebody fills it in. */
    public static List<String> yaml() {
        return new RecordFieldList().block();
    }

    private List<String> list() {
        add("record.list.title");
        add("record.list.defer");
        section("record.list.log", From.LOG, EnumSet.allOf(Kept.class));
        section("record.list.rig", From.RIG, EnumSet.allOf(Kept.class));
        section("record.list.job", From.JOB, EnumSet.of(Kept.IN_THE_RECORD));
        section("record.list.applies", From.JOB, EnumSet.of(Kept.WHERE_IT_APPLIES));
        section("record.list.beside", From.JOB, EnumSet.of(Kept.BESIDE_IT));
        lines.add("");
        add("record.list.rules");
        for (RecordRule rule : RecordRule.values()) {
            lines.add("  " + messages.text("record.list.rule", rule.place(), status(rule.status())));
            wrap(messages.text("record.list.ruleText", rule.citation(), rule.read(), rule.period(), rule.note()));
        }
        lines.add("");
        add("record.list.defer");
        return lines;
    }

    private List<String> block() {
        lines.add("# " + messages.text("record.list.fillIn"));
        lines.add("# " + messages.text("record.list.defer"));
        lines.add("job:");
        for (RecordField field : RecordFields.all()) {
            if (field.from() == From.JOB) {
                lines.add("  # "
                        + (field.rules().isEmpty()
                                ? messages.text(field.label())
                                : messages.text("record.list.labelAskedBy", field.label(), askedBy(field))));
                lines.add("  # " + field.key() + ":" + (field.example().isEmpty() ? "" : " " + field.example()));
            }
        }
        lines.add("# " + messages.text("record.list.defer"));
        return lines;
    }

    private void add(String key) {
        lines.add(messages.text(key));
    }

    private void section(String title, From from, Set<Kept> kept) {
        lines.add("");
        add(title);
        for (RecordField field : RecordFields.all()) {
            if (field.from() == from && kept.contains(field.kept())) {
                String source = field.source().isEmpty() ? "" : " [" + field.source() + "]";
                lines.add("  " + messages.text(field.label()) + source);
                if (!field.rules().isEmpty()) {
                    wrap(messages.text("record.list.askedBy", askedBy(field)));
                }
            }
        }
    }

    /** The places of the rules, joined with semicolons because some of them have commas. */
    private String askedBy(RecordField field) {
        return String.join(
                "; ",
                messages.texts(field.rules().stream().map(RecordRule::place).toList()));
    }

    private static Message status(RecordRule.Status status) {
        return switch (status) {
            case CITED -> Message.of("record.list.cited");
            case IN_PART -> Message.of("record.list.citedInPart");
        };
    }

    private void wrap(String text) {
        StringBuilder line = new StringBuilder(INDENT);
        for (String word : text.split(" ", -1)) {
            if (line.length() + word.length() > MAX_LINE) {
                lines.add(line.toString().stripTrailing());
                line = new StringBuilder(INDENT);
            }
            line.append(word).append(' ');
        }
        lines.add(line.toString().stripTrailing());
    }
}
