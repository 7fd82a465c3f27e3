package io.rowledger.document.pdf;

import io.rowledger.document.pdf.Templates.Template;
import io.rowledger.finding.UnusableInputException;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** What a user's own template or style sheet must not hold, each refused by file and line before it is used. */
final class OwnTemplate {
    /** Elements or sections within one another; the built-in templates have at most 12. */
    private static final int MAX_DEPTH = 100;

    private static final Pattern PARTIAL = Pattern.compile("\\{\\{\\s*>\\s*([^}]*)}}");
    /** CSS 2.2, 4.1.5; letters may be escaped (4.1.3). */
    private static final Pattern IMPORT = Pattern.compile("(?i)@import|@[a-z\\\\0-9]*\\\\[a-z\\\\0-9]*");

    private static final Pattern COMMENT = Pattern.compile("/\\*(?s:.*?)\\*/");
    /** A section's start or end, an element's start or end; comments and declarations count for nothing. */
    private static final Pattern NESTING =
            Pattern.compile("\\{\\{\\s*([#^/])[^}]*}}|<!--(?s:.*?)-->|<(/?)[A-Za-z][^<>]*?(/?)>");

    private OwnTemplate() {}

    /** Checks a page's template. */
    static void check(Template template) {
        Matcher partial = PARTIAL.matcher(template.text());
        if (partial.find()) {
            throw partial(template, partial.group(1).strip(), line(template.text(), partial.start()));
        }
        int depth = 0;
        Matcher nesting = NESTING.matcher(template.text());
        while (nesting.find()) {
            depth += change(nesting);
            if (depth > MAX_DEPTH) {
                throw UnusableInputException.found("elements more than " + MAX_DEPTH + " deep within one another")
                        .inFile(template.name())
                        .atLine(line(template.text(), nesting.start()))
                        .expected("a template built like the built-in one")
                        .hint("close the elements above this line, or delete the file to use the built-in template");
            }
        }
    }

    /** +1 for a start, −1 for an end, 0 for an element that has no content. */
    private static int change(Matcher nesting) {
        if (nesting.group(1) != null) {
            return nesting.group(1).equals("/") ? -1 : 1;
        }
        if (nesting.group(2) == null) {
            return 0;
        }
        return nesting.group(2).isEmpty() ? (nesting.group(3).isEmpty() ? 1 : 0) : -1;
    }

    /** Checks a style sheet: one that takes in others could read files that are no templates. */
    static void checkSheet(Template sheet) {
        String text = COMMENT.matcher(sheet.text())
                .replaceAll(comment -> comment.group().replaceAll("[^\n]", " "));
        Matcher found = IMPORT.matcher(text);
        if (found.find()) {
            throw UnusableInputException.found(found.group() + ", a rule that takes in another style sheet")
                    .inFile(sheet.name())
                    .atLine(line(text, found.start()))
                    .expected("all rules in this file")
                    .hint("copy the other file's rules into this one");
        }
    }

    /** The refusal of a part of a template in a file of its own. */
    static UnusableInputException partial(Template template, String name, int line) {
        return UnusableInputException.found("{{>" + name + "}}, a part in another file")
                .inFile(template.name())
                .atLine(line)
                .expected("the whole page in one template")
                .hint("copy that part into this file");
    }

    /** The line of the first mention of a text, from 1; 0 where it isn't mentioned. */
    static int lineOf(String text, String mention) {
        int at = text.indexOf(mention);
        return at < 0 ? 0 : line(text, at);
    }

    private static int line(String text, int at) {
        return 1 + (int) text.substring(0, at).chars().filter(c -> c == '\n').count();
    }
}
