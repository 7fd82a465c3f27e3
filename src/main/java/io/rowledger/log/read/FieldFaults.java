package io.rowledger.log.read;

import org.jspecify.annotations.Nullable;

/** Counts the unreadable fields of one file per column and keeps the first of each. */
public final class FieldFaults {
    private final int[] count;
    private final int[] firstLine;
    private final @Nullable String[] firstText;
    private int raggedLines;
    private int firstRaggedLine;
    private int firstRaggedFields;
    private int positionsOutOfRange;
    private int firstOutOfRangeLine;
    private int inRangeIfSwapped;

    FieldFaults(int columns) {
        count = new int[columns];
        firstLine = new int[columns];
        firstText = new String[columns];
    }

    void bad(int column, String text, int line) {
        if (count[column]++ == 0) {
            firstLine[column] = line;
            firstText[column] = text.strip();
        }
    }

    void ragged(int fields, int line) {
        if (raggedLines++ == 0) {
            firstRaggedLine = line;
            firstRaggedFields = fields;
        }
    }

    void outOfRange(double latDeg, double lonDeg, int line) {
        if (positionsOutOfRange++ == 0) {
            firstOutOfRangeLine = line;
        }
        if (Math.abs(lonDeg) <= 90 && Math.abs(latDeg) <= 180) {
            inRangeIfSwapped++;
        }
    }

    public int count(int column) {
        return count[column];
    }

    public int firstLine(int column) {
        return firstLine[column];
    }

    public String firstText(int column) {
        String text = firstText[column];
        return text == null ? "" : text;
    }

    public int raggedLines() {
        return raggedLines;
    }

    public int firstRaggedLine() {
        return firstRaggedLine;
    }

    public int firstRaggedFields() {
        return firstRaggedFields;
    }

    public int positionsOutOfRange() {
        return positionsOutOfRange;
    }

    public int firstOutOfRangeLine() {
        return firstOutOfRangeLine;
    }

    /** Returns the number of positions that would be in range if latitude and longitude were swapped. */
    public int inRangeIfSwapped() {
        return inRangeIfSwapped;
    }
}
