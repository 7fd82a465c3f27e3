package io.rowledger.log.taskdata;

import io.rowledger.text.Message;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * The meaning of a time log's values: the flows of the outlets from the left, states, targets, totals and speed.
 *
 * @param groups one for each product
 * @param whole true if each product has one flow for the whole bar
 * @param sections sections of the bar from the left, if it has one flow; else empty
 * @param down values that say whether the bar works; empty where none does
 * @param speed the value with the speed over ground, −1 where there is none
 * @param notes what was taken for granted
 */
record Layout(
        List<Group> groups, boolean whole, List<Section> sections, List<Integer> down, int speed, List<Message> notes) {
    Layout {
        groups = List.copyOf(groups);
        sections = List.copyOf(sections);
        down = List.copyOf(down);
        notes = List.copyOf(notes);
    }

    /** Number of sections under one flow whose states are logged. */
    int switchedSections() {
        return (int)
                sections.stream().filter(section -> section.state() != null).count();
    }

    /** The parts of the bar from the left: sections under one flow, else the outlets. */
    List<DeviceElement> parts() {
        return sections.isEmpty()
                ? groups.get(0).outlets().stream().map(Outlet::element).toList()
                : sections.stream().map(Section::element).toList();
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
        /** Liters for each square meter, of a volume per area. */
        double lPerM2(int raw) {
            boolean ml = ddi == Ddi.ACTUAL_PER_AREA_ML || ddi == Ddi.SETPOINT_PER_AREA_ML;
            return raw * (ml ? Ddi.PER_AREA_ML_L_PER_M2 : Ddi.PER_AREA_L_PER_M2);
        }
    }

    /**
     * One outlet.
     *
     * @param element its element of the device description
     * @param actual its flow or rate
     * @param width its working width
     * @param commanded whether it was commanded on; whether it was on if no command is logged
     * @param actualState whether it was on
     */
    record Outlet(
            DeviceElement element,
            Amount actual,
            Width width,
            @Nullable State commanded,
            @Nullable State actualState) {}

    /**
     * A section of a bar with one flow.
     *
     * @param element its element of the device description
     * @param state whether it was on; null if not logged
     */
    record Section(DeviceElement element, @Nullable State state) {}

    /**
     * A working width.
     *
     * @param column the value with the width in each record; −1 without one
     * @param fixedM the width that does not change, m; NaN if unknown
     * @param sections the sections whose widths add up to it; empty unless all are known
     */
    record Width(int column, double fixedM, List<SectionWidth> sections) {
        Width {
            sections = List.copyOf(sections);
        }

        boolean isKnown() {
            return column >= 0 || fixedM > 0 || !sections.isEmpty();
        }

        /** The width in record i, m: as logged, else of the sections that were on, else as described; NaN if unknown. */
        double atM(TimeLog log, int i) {
            double loggedM = column < 0 ? Double.NaN : lengthM(log.values[column][i]);
            if (!Double.isNaN(loggedM)) {
                return loggedM;
            }
            boolean states = sections.stream().anyMatch(section -> section.state() != null);
            return !sections.isEmpty() && (states || !(fixedM > 0))
                    ? sections.stream()
                            .mapToDouble(section -> section.onM(log, i))
                            .sum()
                    : fixedM;
        }
    }

    /**
     * One section's part of a width.
     *
     * @param column the value with its width in each record; −1 without one
     * @param fixedM its width that does not change, m; NaN if unknown
     * @param state whether it was on; null if not logged
     */
    record SectionWidth(int column, double fixedM, @Nullable State state) {
        /** Its width in record i while on or unknown, m; 0 while off. */
        double onM(TimeLog log, int i) {
            if (state != null && state.of(log.values[state.value()][i]) == 0) {
                return 0;
            }
            double loggedM = column < 0 ? Double.NaN : lengthM(log.values[column][i]);
            return Double.isNaN(loggedM) ? fixedM : loggedM;
        }
    }

    private static double lengthM(int mm) {
        return mm >= 0 && mm != Integer.MAX_VALUE ? mm / 1000.0 : Double.NaN;
    }

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
