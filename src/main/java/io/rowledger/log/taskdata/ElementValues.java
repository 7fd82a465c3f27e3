package io.rowledger.log.taskdata;

import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import org.jspecify.annotations.Nullable;

/**
 * The values of a time log by device element. A value that the device description leaves open, such as an offset, is the
 * first that the log has for it.
 */
final class ElementValues {
    private final LogHeader header;
    private final TimeLog log;
    private final Devices devices;
    /** The elements of the header's values; null for values that are not read or whose element is unknown. */
    private final List<@Nullable DeviceElement> elements = new ArrayList<>();

    private final Set<String> unknown = new LinkedHashSet<>();

    ElementValues(LogHeader header, TimeLog log, Devices devices) {
        this.header = header;
        this.log = log;
        this.devices = devices;
        for (LogHeader.Value value : header.values()) {
            DeviceElement element = devices.find(value.element());
            elements.add(element);
            if (element == null && Ddi.isRead(value.ddi())) {
                unknown.add(value.element().isEmpty() ? "no element" : value.element());
            }
        }
    }

    LogHeader header() {
        return header;
    }

    TimeLog log() {
        return log;
    }

    Devices devices() {
        return devices;
    }

    /** Elements with values that would be read, but that no device description has. */
    Set<String> unknownElements() {
        return unknown;
    }

    int count() {
        return elements.size();
    }

    int ddi(int value) {
        return header.values().get(value).ddi();
    }

    @Nullable
    DeviceElement element(int value) {
        return elements.get(value);
    }

    /** The place of an element's value in the header; −1 without one. */
    int column(int ddi, DeviceElement element) {
        for (int v = 0; v < elements.size(); v++) {
            if (ddi(v) == ddi && element.equals(elements.get(v))) {
                return v;
            }
        }
        return -1;
    }

    /** The place of the first value of that kind, whatever its element; −1 without one. */
    int column(int ddi) {
        for (int v = 0; v < elements.size(); v++) {
            if (ddi(v) == ddi) {
                return v;
            }
        }
        return -1;
    }

    /** A value that does not change: from the description, else the first in the log; null if neither has it. */
    @Nullable
    Integer fixed(int ddi, @Nullable DeviceElement element) {
        if (element == null) {
            return null;
        }
        Integer described = element.properties().get(ddi);
        int v = described == null ? column(ddi, element) : -1;
        return v < 0 || log.first[v] == TimeLog.NONE ? described : Integer.valueOf(log.first[v]);
    }

    /** A length that does not change, m; NaN if neither description nor log has it. */
    double lengthM(int ddi, @Nullable DeviceElement element) {
        Integer mm = fixed(ddi, element);
        return mm == null ? Double.NaN : mm / 1000.0;
    }

    /** The working width of an element by description or log, m; NaN if neither has one above zero. */
    double widthM(DeviceElement element) {
        for (int ddi : new int[] {Ddi.ACTUAL_WIDTH, Ddi.SETPOINT_WIDTH, Ddi.MAXIMUM_WIDTH}) {
            double widthM = lengthM(ddi, element);
            if (widthM > 0) {
                return widthM;
            }
        }
        return Double.NaN;
    }
}
