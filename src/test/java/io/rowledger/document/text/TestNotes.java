package io.rowledger.document.text;

import io.rowledger.text.Message;
import io.rowledger.units.UnitFormat;
import io.rowledger.units.UnitSystem;
import java.time.ZoneOffset;
import java.util.List;

/** Notes as a person reads them, US units and plain blanks, for tests. */
public final class TestNotes {
    private TestNotes() {}

    /** The texts of these notes, in their order. */
    public static List<String> texts(List<Message> notes) {
        return Messages.english(new UnitFormat(UnitSystem.US, ZoneOffset.UTC)).texts(notes).stream()
                .map(text -> text.replace('\u00a0', ' '))
                .toList();
    }
}
