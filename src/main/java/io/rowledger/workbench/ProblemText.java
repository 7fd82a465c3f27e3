package io.rowledger.workbench;

import com.fasterxml.jackson.core.JsonGenerator;
import com.fasterxml.jackson.databind.JsonSerializer;
import com.fasterxml.jackson.databind.SerializerProvider;
import com.fasterxml.jackson.databind.annotation.JsonSerialize;
import io.rowledger.document.text.Messages;
import io.rowledger.finding.RefusalKind;
import io.rowledger.finding.RegularFile;
import io.rowledger.finding.UnusableInputException;
import io.rowledger.text.Message;
import java.io.IOException;
import java.util.Locale;
import java.util.Map;
import org.jspecify.annotations.Nullable;

/**
 * Why something can't be done. It becomes a text in the language of whoever reads it when it is sent. The engine refuses in English
 * beside its checks: what a person at the workbench can do about it stands before that, in the page's language.
 *
 * @param words of the workbench; null where the engine refused
 * @param refusal of the engine; null where the workbench refused
 */
@JsonSerialize(using = ProblemText.Writer.class)
record ProblemText(@Nullable Message words, @Nullable UnusableInputException refusal) {
    /** Keys of a rig file and columns that the screens have a name for. */
    private static final Map<String, String> NAMED_KEYS = Map.ofEntries(
            Map.entry("time", "time"),
            Map.entry("lat", "lat"),
            Map.entry("lon", "lon"),
            Map.entry("rig", "rig"),
            Map.entry("rig.name", "name"),
            Map.entry("rig.hitch", "hitch"),
            Map.entry("rig.antenna", "antenna"),
            Map.entry("rig.antenna.ahead_of_axle", "antenna"),
            Map.entry("rig.axle_to_hitch", "pin"),
            Map.entry("rig.hitch_to_wheels", "wheels"),
            Map.entry("rig.hitch_to_drop", "drop"),
            Map.entry("rows", "rows"),
            Map.entry("rows.count", "rows"),
            Map.entry("rows.spacing", "spacing"),
            Map.entry("rows.outer_share", "outside"),
            Map.entry("products", "product"),
            Map.entry("products.name", "product"),
            Map.entry("products.density", "density"),
            Map.entry("products.analysis", "analysis"));

    /** Nothing is wrong. */
    static final ProblemText NONE = new ProblemText(null, null);

    /** A problem that the workbench found. */
    static ProblemText of(String key, Object... values) {
        return new ProblemText(Message.of(key, values), null);
    }

    /** A refusal of the engine. */
    static ProblemText of(UnusableInputException refusal) {
        return new ProblemText(null, refusal);
    }

    /** What is known of the engine's refusal; null for a problem of the workbench. */
    @Nullable
    RefusalKind kind() {
        return refusal == null ? null : refusal.kind();
    }

    /** The key of the rig file or the column that the problem is about; empty if it is about none. */
    String key() {
        if (refusal == null) {
            return "";
        }
        boolean key = refusal.kind() == RefusalKind.KEY
                || refusal.kind() == RefusalKind.FIGURE
                || refusal.kind() == RefusalKind.COLUMN;
        return key ? refusal.about() : refusal.column() == null ? "" : refusal.column();
    }

    /** The text; empty where nothing is wrong. */
    String in(Messages language) {
        if (words != null) {
            return language.text(words);
        }
        return refusal == null ? "" : of(refusal, language);
    }

    private String of(UnusableInputException engine, Messages language) {
        RefusalKind kind = engine.kind();
        if (kind == null && language.language().equals(Locale.ENGLISH)) {
            return String.valueOf(
                    (engine.file() == null ? engine : engine.inFile(RegularFile.name(engine.file()))).getMessage());
        }
        String name = NAMED_KEYS.get(key().replaceFirst("^products\\.\\w+\\.", "products."));
        Object about = name == null ? key() : Message.of("refusals.key." + name);
        if (kind == RefusalKind.KEY && name != null) {
            return language.text("refusals.kind.KEY", about);
        }
        Message what = Message.of("refusals.kind." + (kind == null ? "OTHER" : kind.name()), about);
        return language.text("refusals.engine", place(engine), what, engine.reason());
    }

    /** Where the refusal is; a part of a sentence that ends with a colon and a blank, or nothing. */
    private static Message place(UnusableInputException refusal) {
        String file = refusal.file() == null ? "" : RegularFile.name(refusal.file());
        String column = refusal.column() == null ? "" : refusal.column();
        String at = (file.isEmpty() ? "" : "File")
                + (refusal.line() > 0 ? "Line" : "")
                + (column.isEmpty() ? "" : "Column");
        return Message.of("refusals.at." + (at.isEmpty() ? "Nowhere" : at), file, refusal.line(), column);
    }

    /** Writes a problem as its text. */
    static final class Writer extends JsonSerializer<ProblemText> {
        @Override
        public void serialize(ProblemText problem, JsonGenerator json, SerializerProvider provider) throws IOException {
            json.writeString(problem.in((Messages) provider.getAttribute(Messages.class)));
        }
    }
}
