package io.rowledger.cli;

import io.rowledger.text.VisibleText;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import org.jspecify.annotations.Nullable;

/**
 * Prints UTF-8 with hidden characters made visible: names and texts come from files, and what stands in a file must not move a
 * terminal's cursor or turn a line around.
 */
final class VisiblePrintStream extends PrintStream {
    VisiblePrintStream(PrintStream to) {
        super(to, true, StandardCharsets.UTF_8);
    }

    @Override
    public void print(@Nullable String text) {
        super.print(VisibleText.of(String.valueOf(text)));
    }

    @Override
    public void print(@Nullable Object value) {
        print(String.valueOf(value));
    }

    @Override
    public void print(char value) {
        print(Character.toString(value));
    }
}
