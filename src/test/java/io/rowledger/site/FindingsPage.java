package io.rowledger.site;

import io.rowledger.document.text.Messages;
import io.rowledger.finding.FindingKind;
import io.rowledger.text.Message;
import io.rowledger.units.UnitFormat;
import io.rowledger.units.UnitSystem;
import java.io.IOException;
import java.io.InputStreamReader;
import java.io.Reader;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.time.ZoneOffset;
import java.util.List;
import java.util.Objects;
import java.util.Properties;
import java.util.TreeSet;

/** The page of findings: what the program can find, what else each could be and what to check, from its own messages. */
final class FindingsPage {
    static final Path FILE = Path.of("src/site/markdown/findings.md");

    private static final String BUNDLE = "/io/rowledger/text/findings.properties";

    /** The row that the examples name. */
    private static final int ROW = 7;

    private FindingsPage() {}

    /** The page's text. */
    static String text() throws IOException {
        Properties patterns = new Properties();
        try (Reader in = new InputStreamReader(
                Objects.requireNonNull(FindingsPage.class.getResourceAsStream(BUNDLE)), StandardCharsets.UTF_8)) {
            patterns.load(in);
        }
        Messages words = Messages.english(new UnitFormat(UnitSystem.US, ZoneOffset.UTC));
        StringBuilder page = new StringBuilder(
                "# Findings\n\nWritten from the program's own messages by `mvn -Ppictures test`; a test"
                        + " compares. Figures of a job stand where there is \u2026 here. Each finding says how sure it is, where and when it began,"
                        + " and what it cost.\n");
        for (FindingKind kind : FindingKind.values()) {
            page.append("\n## `").append(kind.jsonName()).append("`\n\n");
            page.append(words.text(Message.of("findings.title." + kind.jsonName(), List.of(ROW))))
                    .append(".\n");
            part(page, patterns, kind, "evidence", "Sign");
            part(page, patterns, kind, "alternative", "It could also be");
            part(page, patterns, kind, "check", "To check, safest first");
        }
        return page.toString();
    }

    private static void part(StringBuilder page, Properties patterns, FindingKind kind, String part, String title) {
        String prefix = "findings." + kind.jsonName() + "." + part;
        TreeSet<String> keys = new TreeSet<>();
        for (String key : patterns.stringPropertyNames()) {
            if (key.equals(prefix) || key.startsWith(prefix + ".")) {
                keys.add(key);
            }
        }
        if (keys.isEmpty()) {
            return;
        }
        page.append("\n**").append(title).append("**\n\n");
        for (String key : keys) {
            page.append("- ").append(plain(patterns.getProperty(key)).strip()).append('\n');
        }
    }

    /** A pattern with its places for values written as an ellipsis; of a choice, the last form. */
    private static String plain(String pattern) {
        StringBuilder out = new StringBuilder();
        int depth = 0;
        int from = -1;
        for (int i = 0; i < pattern.length(); i++) {
            char c = pattern.charAt(i);
            if (c == '{') {
                from = depth++ == 0 ? i : from;
            } else if (c == '}') {
                if (--depth == 0) {
                    String slot = pattern.substring(from + 1, i);
                    int last = slot.lastIndexOf('|');
                    String form = last < 0 ? "\u2026" : slot.substring(last + 1).replaceFirst("^-?\\d+[#<]", "");
                    out.append(form.contains("{") ? "\u2026" : form);
                }
            } else if (depth == 0) {
                out.append(c);
            }
        }
        return out.toString().replaceAll("\u2026(?:\u2026)+", "\u2026");
    }
}
