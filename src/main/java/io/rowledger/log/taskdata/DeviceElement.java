package io.rowledger.log.taskdata;

import java.util.Map;
import org.jspecify.annotations.Nullable;

/**
 * A part of a machine as its device description has it (element DET).
 *
 * @param id what time logs call it, such as DET-3
 * @param device the device's id, such as DVC-1
 * @param type one of the numbers below
 * @param name its designator, empty where there is none
 * @param number its element number; sections are numbered from the left
 * @param parent the element it is part of; null for the device's own
 * @param properties values of the data dictionary that the description fixes
 */
record DeviceElement(
        String id,
        String device,
        int type,
        String name,
        int number,
        @Nullable DeviceElement parent,
        Map<Integer, Integer> properties) {
    // ISO 11783-10, types of device elements.
    static final int DEVICE = 1;
    static final int FUNCTION = 2;
    static final int BIN = 3;
    static final int SECTION = 4;
    static final int UNIT = 5;
    static final int CONNECTOR = 6;
    static final int NAVIGATION = 7;

    /** True for what can be one outlet, false for what stands for the bar or more. */
    boolean isPart() {
        return type == SECTION || type == UNIT;
    }

    /** The nearest element of a type, itself or what it is part of; null where there is none. */
    @Nullable
    DeviceElement within(int wanted) {
        for (DeviceElement at = this; at != null; at = at.parent) {
            if (at.type == wanted) {
                return at;
            }
        }
        return null;
    }

    /** True where this is the other or a part of it. */
    boolean isIn(DeviceElement whole) {
        for (DeviceElement at = this; at != null; at = at.parent) {
            if (at.id.equals(whole.id)) {
                return true;
            }
        }
        return false;
    }

    /** For a message: "section 3 (DET-4)". */
    String words() {
        String kind =
                switch (type) {
                    case DEVICE -> "device";
                    case FUNCTION -> "function";
                    case BIN -> "bin";
                    case SECTION -> "section";
                    case UNIT -> "unit";
                    case CONNECTOR -> "connector";
                    case NAVIGATION -> "receiver";
                    default -> "element";
                };
        return kind + " " + number + " (" + id + (name.isEmpty() ? "" : ", " + name) + ")";
    }
}
