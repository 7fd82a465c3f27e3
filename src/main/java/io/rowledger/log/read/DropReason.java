package io.rowledger.log.read;

import io.rowledger.log.source.LogSource;

/** Reasons to leave a record out; see {@link LogSource.Dropped}. */
public enum DropReason {
    NO_FIX("the receiver had no position"),
    DUPLICATE("same time stamp as the record before, or a time another file covers"),
    OUT_OF_ORDER("time runs backward"),
    JUMP("farther away than the machine could have gone"),
    FROZEN("the position of the record before, though the machine moved"),
    UNREADABLE("a needed field is empty or not a number, or the line has too few or too many fields");

    private final String words;

    DropReason(String words) {
        this.words = words;
    }

    public String words() {
        return words;
    }
}
