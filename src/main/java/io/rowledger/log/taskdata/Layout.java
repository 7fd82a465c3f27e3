package io.rowledger.log.taskdata;

import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * Which of a time log's values are what: the flows of the outlets from the left, states, targets, totals and speed.
 *
 * @param groups one for each product
 * @param whole true where there is one flow for the whole bar
 * @param sections work states of the sections below that one flow; empty where there are several flows
 * @param down values that say whether the bar works; empty where none does
 * @param speed the value with the speed over ground, −1 where there is none
 * @param notes what was taken for granted
 */
record Layout(
        List<Group> groups, boolean whole, List<State> sections, List<Integer> down, int speed, List<String> notes) {
    Layout {
        groups = List.copyOf(groups);
        sections = List.copyOf(sections);
        down = List.copyOf(down);
        notes = List.copyOf(notes);
    }

    /**
     * The outlets of one product.
     *
     * @param key what the columns begin with; empty where there is one product
     * @param outlets from the left
     * @param total the value with the flow of them all, −1 where there is none
     * @param targets setpoints of volume per area, of which one holds for the product
     */
    record Group(String key, List<Outlet> outlets, int total, List<Amount> targets) {
        Group {
            outlets = List.copyOf(outlets);
            targets = List.copyOf(targets);
        }
    }

    /** A value and the entry of the data dictionary it is. */
    record Amount(int value, int ddi) {
        /** Litres for each square metre, of a volume per area. */
        double lPerM2(int raw) {
            boolean ml = ddi == Ddi.ACTUAL_PER_AREA_ML || ddi == Ddi.SETPOINT_PER_AREA_ML;
            return raw * (ml ? Ddi.PER_AREA_ML_L_PER_M2 : Ddi.PER_AREA_L_PER_M2);
        }
    }

    /**
     * One outlet.
     *
     * @param element what it is in the device description
     * @param actual its flow or rate
     * @param width the value with its working width, −1 where there is none
     * @param widthM its working width by the description, NaN where that does not say it
     * @param commanded whether it was asked to be on, or is, where nobody says what was asked
     * @param actualState whether it was on
     */
    record Outlet(
            DeviceElement element,
            Amount actual,
            int width,
            double widthM,
            @Nullable State commanded,
            @Nullable State actualState) {}

    /**
     * A work state within a value.
     *
     * @param value the value it is in
     * @param shift its lowest bit
     */
    record State(int value, int shift) {
        /** 1 on, 0 off, −1 error or not there. Two bits each (ISO 11783-11): 00 off, 01 on, 10 error, 11 not there. */
        int of(int raw) {
            if (raw == TimeLog.NONE) {
                return -1;
            }
            int bits = raw >> shift & 3;
            return bits > 1 ? -1 : bits;
        }
    }
}
