package io.rowledger.document.pdf;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import io.rowledger.document.pdf.Templates.Template;
import io.rowledger.document.text.Messages;
import io.rowledger.finding.UnusableInputException;
import io.rowledger.units.UnitFormat;
import io.rowledger.units.UnitSystem;
import java.time.ZoneOffset;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;

class TemplateTextTest {
    private static final Messages MESSAGES = Messages.english(new UnitFormat(UnitSystem.US, ZoneOffset.UTC));

    private static String fill(String body, boolean own) {
        Template template = new Template("page.xhtml", "<p>" + body + "</p>", own);
        Object model = Map.of("rows", List.of(Map.of("name", "a < b")));
        return FilledTemplate.fill(template, model, MESSAGES)
                .getDocumentElement()
                .getTextContent();
    }

    @Test
    void a_tag_prints_a_message_inside_any_section() {
        assertEquals("Rows & more: x", fill("{{#rows}}{{#t.sample.markup}}x{{/t.sample.markup}}{{/rows}}", false));
        assertEquals("Rows only", fill("{{#rows}}{{t.sample.plain}}{{/rows}}", false));
    }

    @Test
    void text_inside_a_message_is_escaped_once() {
        assertEquals(
                "Rows & more: a < b",
                fill("{{#rows}}{{#t.sample.markup}}{{name}}{{/t.sample.markup}}{{/rows}}", false));
    }

    @Test
    void a_key_that_no_bundle_has_is_our_bug_or_named_in_the_users_template() {
        assertThrows(IllegalStateException.class, () -> fill("{{t.sample.nothing}}", false));
        UnusableInputException e = assertThrows(UnusableInputException.class, () -> fill("{{t.sample.nothing}}", true));
        assertTrue(e.getMessage().contains("t.sample.nothing"), e.getMessage());
    }
}
