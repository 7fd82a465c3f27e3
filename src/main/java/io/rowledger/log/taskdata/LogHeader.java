package io.rowledger.log.taskdata;

import io.rowledger.finding.UnusableInputException;
import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * What the records of a binary time log hold (TLGnnnnn.XML, ISO 11783-10). An attribute without a value stands in every
 * record, one with a value has it for all of them, one that is missing is not recorded.
 *
 * @param file the header's name
 * @param position which of the nine attributes A to I of PTN stand in the records; empty without a PTN
 * @param fixedStatus the position status for all records, −1 where there is none
 * @param values what the numbered values of the records are, in their order
 */
record LogHeader(String file, List<Boolean> position, int fixedStatus, List<Value> values) {
    // Attributes of PTN in the order in which they stand in a record.
    static final int NORTH = 0;
    static final int EAST = 1;
    static final int UP = 2;
    static final int STATUS = 3;
    static final int PDOP = 4;
    static final int HDOP = 5;
    static final int SATELLITES = 6;
    static final int UTC_TIME = 7;
    static final int UTC_DATE = 8;

    private static final String[] POSITION = {"A", "B", "C", "D", "E", "F", "G", "H", "I"};
    /** A value's number is one byte, and so is how many there are. */
    private static final int MAX_VALUES = 255;

    /**
     * One numbered value (element DLV).
     *
     * @param ddi its entry of the data dictionary
     * @param element the device element it is of
     * @param fixed its value for all records; null where the records have it
     * @param line its line in the header
     */
    record Value(int ddi, String element, @Nullable Integer fixed, int line) {}

    LogHeader {
        position = List.copyOf(position);
        values = List.copyOf(values);
    }

    boolean has(int attribute) {
        return !position.isEmpty() && position.get(attribute);
    }

    /** Reads the outermost element of a header file. */
    static LogHeader of(XmlElement tim) {
        if (!tim.isInBinary("A") || tim.isInBinary("B") || tim.isInBinary("C")) {
            throw refuse(tim, "a time log whose records do not hold the time of start and no other time")
                    .expected("<TIM A=\"\" ...>, without a stop and a duration to be read from the records");
        }
        List<XmlElement> positions = tim.children("PTN");
        if (positions.size() > 1) {
            throw refuse(positions.get(1), "a second position").expected("one PTN in a TIM");
        }
        List<Boolean> position = new ArrayList<>();
        int status = -1;
        if (!positions.isEmpty()) {
            XmlElement ptn = positions.get(0);
            for (String attribute : POSITION) {
                position.add(ptn.isInBinary(attribute));
            }
            status = ptn.has("D") && !ptn.isInBinary("D") ? ptn.number("D", "position status") : -1;
        }
        List<Value> values = new ArrayList<>();
        for (XmlElement dlv : tim.children("DLV")) {
            boolean fixed = !dlv.isInBinary("B") && dlv.has("B");
            values.add(new Value(dlv.ddi("A"), dlv.text("C"), fixed ? dlv.number("B", "value") : null, dlv.line()));
        }
        if (values.size() > MAX_VALUES) {
            throw refuse(tim, values.size() + " values").expected("255 at most: a record counts them in one byte");
        }
        return new LogHeader(tim.file(), position, status, values);
    }

    /** This header with the values of others behind its own. */
    LogHeader with(List<LogHeader> others) {
        List<Value> all = new ArrayList<>(values);
        others.forEach(other -> all.addAll(other.values));
        return new LogHeader(file, position, fixedStatus, all);
    }

    private static UnusableInputException refuse(XmlElement element, String found) {
        return element.found(found).hint("export the task data again; this header does not fit ISO 11783-10");
    }
}
