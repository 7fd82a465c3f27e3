package io.rowledger.document.text;

import com.samskivert.mustache.Escapers;
import com.samskivert.mustache.Mustache;
import com.samskivert.mustache.Template;
import java.io.IOException;
import java.io.Writer;
import org.jspecify.annotations.Nullable;

/**
 * The words of a page in its template: {@code {{t.review.rows.title}}} prints the message {@code review.rows.title}, and
 * {@code {{#t.review.rows.of}}{{name}}{{/t.review.rows.of}}} prints {@code review.rows.of} with the text in between as
 * {@code {0}}.
 *
 * @param key the key as far as it has been read; empty at the start
 */
public record TemplateText(Messages messages, String key) implements Mustache.CustomContext, Mustache.Lambda {
    /** U+FFFC, the object replacement character: stands where the escaped argument goes. */
    private static final String ARGUMENT = "\ufffc";

    /**
     * What a tag prints of a value. Records of a model are opened as sections and never printed; the engine asks for their text
     * all the same, to find out whether it is empty, and theirs is all that is in them.
     */
    public static String printed(Object value) {
        boolean section = value instanceof Record && !(value instanceof TemplateText);
        return section ? value.getClass().getSimpleName() : String.valueOf(value);
    }

    /** The next part of the key; null where no bundle has a key that goes on so. */
    @Override
    public @Nullable Object get(String name) {
        String longer = key.isEmpty() ? name : key + "." + name;
        return messages.hasPrefix(longer) ? new TemplateText(messages, longer) : null;
    }

    @Override
    public void execute(Template.Fragment argument, Writer out) throws IOException {
        out.write(Escapers.HTML.escape(messages.text(key, ARGUMENT)).replace(ARGUMENT, argument.execute()));
    }

    @Override
    public String toString() {
        return messages.text(key);
    }
}
