package io.rowledger.report.record;

import io.rowledger.report.record.RecordField.From;
import io.rowledger.report.record.RecordField.Kept;
import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Set;

/** The facts of a nitrogen record as lines: to read, or as a job block to fill in. */
public final class RecordFieldList {
    /** Lines stay within the width of an old terminal. */
    private static final int WIDTH = 100;

    private static final String INDENT = "      ";

    private RecordFieldList() {}

    /** What each fact is, what fills it, which rules ask for it; then the rules with where they stand. */
    public static List<String> text() {
        List<String> lines = new ArrayList<>();
        lines.add("What a nitrogen record holds, what fills it, and who asks for it.");
        lines.add(RecordFields.DEFER);
        section(lines, "From the log", From.LOG, EnumSet.allOf(Kept.class));
        section(lines, "From the rig file", From.RIG, EnumSet.allOf(Kept.class));
        section(lines, "From you, under job: in the rig file", From.JOB, EnumSet.of(Kept.IN_THE_RECORD));
        section(lines, "From you, where it applies", From.JOB, EnumSet.of(Kept.WHERE_IT_APPLIES));
        section(lines, "Kept beside the record; the job block may point to it", From.JOB, EnumSet.of(Kept.BESIDE_IT));
        lines.add("");
        lines.add("The rules");
        for (RecordRule rule : RecordRule.values()) {
            lines.add("  " + rule.place() + " (" + rule.status().words() + ")");
            wrap(
                    lines,
                    rule.citation() + "; keep: " + rule.keep() + (rule.note().isEmpty() ? "" : "; " + rule.note()));
        }
        lines.add("");
        lines.add(RecordFields.DEFER);
        return lines;
    }

    /** A {@code job:} block with every key on a line of its own, commented out until somebody fills it in. */
    public static List<String> yaml() {
        List<String> lines = new ArrayList<>();
        lines.add("# Take away the # before a key and write its value. Every key is optional.");
        lines.add("# " + RecordFields.DEFER);
        lines.add("job:");
        for (RecordField field : RecordFields.all()) {
            if (field.from() == From.JOB) {
                String asked = field.rules().isEmpty() ? "" : "; asked for by " + field.askedBy();
                lines.add("  # " + field.label() + asked);
                lines.add("  # " + field.key() + ":" + (field.example().isEmpty() ? "" : " " + field.example()));
            }
        }
        lines.add("# " + RecordFields.DEFER);
        return lines;
    }

    private static void section(List<String> lines, String title, From from, Set<Kept> kept) {
        lines.add("");
        lines.add(title);
        for (RecordField field : RecordFields.all()) {
            if (field.from() == from && kept.contains(field.kept())) {
                String filled = from == From.LOG ? "" : " [" + field.source() + "]";
                lines.add("  " + field.label() + filled);
                if (!field.rules().isEmpty()) {
                    wrap(lines, "asked for by " + field.askedBy());
                }
            }
        }
    }

    private static void wrap(List<String> lines, String text) {
        StringBuilder line = new StringBuilder(INDENT);
        for (String word : text.split(" ", -1)) {
            if (line.length() + word.length() > WIDTH) {
                lines.add(line.toString().stripTrailing());
                line = new StringBuilder(INDENT);
            }
            line.append(word).append(' ');
        }
        lines.add(line.toString().stripTrailing());
    }
}
