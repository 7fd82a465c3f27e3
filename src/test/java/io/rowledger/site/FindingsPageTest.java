package io.rowledger.site;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.io.IOException;
import java.nio.file.Files;
import org.junit.jupiter.api.Test;

class FindingsPageTest {
    @Test
    void the_page_is_what_the_messages_say() throws IOException {
        assertEquals(FindingsPage.text(), Files.readString(FindingsPage.FILE), "run mvn -Ppictures test");
    }
}
