package io.rowledger.finding;

import io.rowledger.text.VisibleText;
import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * Input or a call that can't be used: the one exception that the user can fix, and exit status 2.
 *
 * <p>Its parts are kept apart (file, line, column, found, expected, hint) so that a caller can add the ones it knows;
 * {@link #getMessage()} joins those that are there into the one message a person reads.
 */
public final class UnusableInputException extends RuntimeException {
    private static final long serialVersionUID = 1L;

    private final String found;
    private final @Nullable String file;
    private final int line;
    private final @Nullable String column;
    private final @Nullable String expected;
    private final @Nullable String hint;

    private UnusableInputException(
            String found,
            @Nullable String file,
            int line,
            @Nullable String column,
            @Nullable String expected,
            @Nullable String hint) {
        super(message(found, file, line, column, expected, hint));
        this.found = found;
        this.file = file;
        this.line = line;
        this.column = column;
        this.expected = expected;
        this.hint = hint;
    }

    /** Starts a message with what was found, as a clause without a full stop. */
    public static UnusableInputException found(String found) {
        return new UnusableInputException(found, null, 0, null, null, null);
    }

    /** The same message with the file it is about. */
    public UnusableInputException inFile(String file) {
        return new UnusableInputException(found, file, line, column, expected, hint);
    }

    /** The same message with the line (from 1) it is about; 0 for none. */
    public UnusableInputException atLine(int line) {
        return new UnusableInputException(found, file, line, column, expected, hint);
    }

    /** The same message with the column it is about: a header name, a key path or a number as text. */
    public UnusableInputException atColumn(String column) {
        return new UnusableInputException(found, file, line, column, expected, hint);
    }

    /** The same message with what was expected, as a clause without a full stop. */
    public UnusableInputException expected(String expected) {
        return new UnusableInputException(found, file, line, column, expected, hint);
    }

    /** The same message with what to do about it, as a sentence without a full stop. */
    public UnusableInputException hint(String hint) {
        return new UnusableInputException(found, file, line, column, expected, hint);
    }

    /** The file, or null where the message is about the call itself. */
    public @Nullable String file() {
        return file;
    }

    /** The line from 1, or 0 where there is none. */
    public int line() {
        return line;
    }

    /** The column or key, or null. */
    public @Nullable String column() {
        return column;
    }

    private static String message(
            String found,
            @Nullable String file,
            int line,
            @Nullable String column,
            @Nullable String expected,
            @Nullable String hint) {
        List<String> place = new ArrayList<>();
        if (file != null) {
            place.add(file);
        }
        if (line > 0) {
            place.add(Integer.toString(line));
        }
        if (column != null) {
            place.add(column);
        }
        StringBuilder text = new StringBuilder();
        if (!place.isEmpty()) {
            text.append(String.join(":", place)).append(": ");
        }
        text.append("found ").append(found);
        if (expected != null) {
            text.append("; expected ").append(expected);
        }
        text.append('.');
        if (hint != null) {
            text.append(" Hint: ").append(hint).append('.');
        }
        return VisibleText.line(text.toString());
    }
}
