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
    private final @Nullable RefusalKind kind;
    private final String about;

    private UnusableInputException(
            String found, Where where, @Nullable String expected, @Nullable String hint, What what) {
        super(where.words() + message(found, expected, hint));
        this.found = found;
        this.file = where.file;
        this.line = where.line;
        this.column = where.column;
        this.expected = expected;
        this.hint = hint;
        this.kind = what.kind;
        this.about = what.about;
    }

    /** What the message is about, for programs. */
    private record What(@Nullable RefusalKind kind, String about) {}

    /** The place that the message is about. */
    private record Where(
            @Nullable String file, int line, @Nullable String column) {
        /** The parts that are there, with a colon and a blank behind them; empty where none is. */
        String words() {
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
            return place.isEmpty() ? "" : VisibleText.line(String.join(":", place)) + ": ";
        }
    }

    private Where where() {
        return new Where(file, line, column);
    }

    private What what() {
        return new What(kind, about);
    }

    /** Starts a message with what was found, as a clause without a full stop. */
    public static UnusableInputException found(String found) {
        return new UnusableInputException(found, new Where(null, 0, null), null, null, new What(null, ""));
    }

    /** The same message with the file it is about. */
    public UnusableInputException inFile(String file) {
        return new UnusableInputException(found, new Where(file, line, column), expected, hint, what());
    }

    /** The same message with the line (from 1) it is about; 0 for none. */
    public UnusableInputException atLine(int line) {
        return new UnusableInputException(found, new Where(file, line, column), expected, hint, what());
    }

    /** The same message with the column it is about: a header name, a key path or a number as text. */
    public UnusableInputException atColumn(String column) {
        return new UnusableInputException(found, new Where(file, line, column), expected, hint, what());
    }

    /** The same message with what was expected, as a clause without a full stop. */
    public UnusableInputException expected(String expected) {
        return new UnusableInputException(found, where(), expected, hint, what());
    }

    /** The same message with what to do about it, as a sentence without a full stop. */
    public UnusableInputException hint(String hint) {
        return new UnusableInputException(found, where(), expected, hint, what());
    }

    /** The same message with its kind. */
    public UnusableInputException kind(RefusalKind kind) {
        return kind(kind, "");
    }

    /**
     * The same message with its kind.
     *
     * @param about the quantity without the number of the row, such as {@code uan.flow}: rows that lack the same differ in nothing
     *     else
     */
    public UnusableInputException kind(RefusalKind kind, String about) {
        return new UnusableInputException(found, where(), expected, hint, new What(kind, about));
    }

    /** The kind, or null where no caller needs it. */
    public @Nullable RefusalKind kind() {
        return kind;
    }

    /** The quantity that the kind is about, without the number of the row; empty where there is none. */
    public String about() {
        return about;
    }

    /** The message without the place: what was found, what was expected, and the hint. */
    public String reason() {
        return message(found, expected, hint);
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

    private static String message(String found, @Nullable String expected, @Nullable String hint) {
        StringBuilder text = new StringBuilder("found ").append(found);
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
