package io.rowledger.site;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import org.junit.jupiter.api.Test;

class SitePageTest {
    private static final String PAGE = "above\n<!-- begin a -->\nold\n<!-- end a -->\nbelow\n";

    @Test
    void a_table_changes_and_nothing_else_does() {
        assertEquals(
                "above\n<!-- begin a -->\n| new |\n<!-- end a -->\nbelow\n", SitePage.replaced(PAGE, "a", "| new |\n"));
    }

    @Test
    void a_table_without_its_marks_is_an_error() {
        assertThrows(IllegalArgumentException.class, () -> SitePage.replaced(PAGE, "b", "| new |"));
    }
}
