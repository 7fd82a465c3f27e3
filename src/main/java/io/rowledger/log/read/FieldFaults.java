package io.rowledger.log.read;

import org.jspecify.annotations.Nullable;

/** Fields of one file that are not what their column should hold: how many in each column, and the first of them. */
public final class FieldFaults {
    private final int[] count;
    private final int[] firstLine;
    private final @Nullable String[] firstText;
    private int raggedLines;
    private int firstRaggedLine;
    private int firstRaggedFields;
    private int positionsOffTheGlobe;
    private int firstOffTheGlobeLine;
    private int onTheGlobeSwapped;

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

    void offTheGlobe(double latDeg, double lonDeg, int line) {
        if (positionsOffTheGlobe++ == 0) {
            firstOffTheGlobeLine = line;
        }
        if (Math.abs(lonDeg) <= 90 && Math.abs(latDeg) <= 180) {
            onTheGlobeSwapped++;
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

    public int positionsOffTheGlobe() {
        return positionsOffTheGlobe;
    }

    public int firstOffTheGlobeLine() {
        return firstOffTheGlobeLine;
    }

    /** Positions that would be on the globe if latitude and longitude were swapped. */
    public int onTheGlobeSwapped() {
        return onTheGlobeSwapped;
    }
}
