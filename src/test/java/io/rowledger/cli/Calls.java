package io.rowledger.cli;

import java.io.ByteArrayOutputStream;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;

/** Calls the program in this process and keeps what it said. */
public record Calls(int status, String out, String err) {
    public static Calls of(Object... words) {
        String[] args = new String[words.length];
        for (int i = 0; i < words.length; i++) {
            args[i] = words[i].toString();
        }
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        ByteArrayOutputStream err = new ByteArrayOutputStream();
        int status = Main.run(
                new PrintStream(out, true, StandardCharsets.UTF_8),
                new PrintStream(err, true, StandardCharsets.UTF_8),
                args);
        return new Calls(status, out.toString(StandardCharsets.UTF_8), err.toString(StandardCharsets.UTF_8));
    }
}
