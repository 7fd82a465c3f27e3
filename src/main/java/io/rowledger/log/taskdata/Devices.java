package io.rowledger.log.taskdata;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;

/** The device descriptions of the task data (elements DVC). */
final class Devices {
    /** Parts within parts: ISO 11783-10 has device, function, section, unit. */
    private static final int DEEPEST = 20;

    private final Map<String, DeviceElement> byId = new LinkedHashMap<>();

    private Devices() {}

    static Devices of(List<XmlElement> dvcs) {
        Devices devices = new Devices();
        dvcs.forEach(devices::add);
        return devices;
    }

    /** The element a time log names, or null. */
    @Nullable
    DeviceElement find(String id) {
        return byId.get(id);
    }

    /** All elements, in the order of the files. */
    List<DeviceElement> all() {
        return List.copyOf(byId.values());
    }

    private void add(XmlElement dvc) {
        String device = dvc.need("A", "device id");
        Map<Integer, int[]> fixed = new HashMap<>();
        for (XmlElement dpt : dvc.children("DPT")) {
            fixed.put(dpt.number("A", "object id"), new int[] {dpt.ddi("B"), dpt.number("C", "value")});
        }
        Map<Integer, XmlElement> byObject = new LinkedHashMap<>();
        for (XmlElement det : dvc.children("DET")) {
            if (byObject.put(det.number("B", "object id"), det) != null) {
                throw det.found("the object id " + det.text("B") + " a second time")
                        .expected("an object id of its own for each part of a device")
                        .hint("export the task data again");
            }
        }
        Map<Integer, DeviceElement> made = new HashMap<>();
        for (Integer object : byObject.keySet()) {
            DeviceElement element = make(device, object, byObject, fixed, made, 0);
            if (element != null && byId.put(element.id(), element) != null) {
                throw dvc.found("the device element " + element.id() + " a second time")
                        .expected("an id of its own for each device element")
                        .hint("export the task data again");
            }
        }
    }

    private static @Nullable DeviceElement make(
            String device,
            Integer object,
            Map<Integer, XmlElement> byObject,
            Map<Integer, int[]> fixed,
            Map<Integer, DeviceElement> made,
            int depth) {
        DeviceElement before = made.get(object);
        XmlElement det = byObject.get(object);
        if (before != null || det == null) {
            return before;
        }
        if (depth > DEEPEST) {
            throw det.found("a part of a device that is part of itself, or parts " + depth + " deep")
                    .expected("device, function, section, unit")
                    .hint("export the task data again");
        }
        // 0 is no object: the parent of the device's own element.
        Integer parentObject = det.text("F").isEmpty() ? 0 : det.number("F", "parent's object id");
        DeviceElement parent = make(device, parentObject, byObject, fixed, made, depth + 1);
        Map<Integer, Integer> properties = new HashMap<>();
        for (XmlElement dor : det.children("DOR")) {
            int[] property = fixed.get(dor.number("A", "object id"));
            if (property != null) {
                properties.put(property[0], property[1]);
            }
        }
        DeviceElement element = new DeviceElement(
                det.need("A", "device element id"),
                device,
                det.number("C", "type"),
                det.text("D"),
                det.text("E").isEmpty() ? 0 : det.number("E", "element number"),
                parent,
                Map.copyOf(properties));
        made.put(object, element);
        return element;
    }

    /** Elements of the same type beside any of these, themselves included. */
    List<DeviceElement> besides(List<DeviceElement> some) {
        List<DeviceElement> all = new ArrayList<>();
        for (DeviceElement element : byId.values()) {
            for (DeviceElement other : some) {
                if (element.type() == other.type()
                        && element.device().equals(other.device())
                        && id(element.parent()).equals(id(other.parent()))) {
                    all.add(element);
                    break;
                }
            }
        }
        return all;
    }

    private static String id(@Nullable DeviceElement element) {
        return element == null ? "" : element.id();
    }
}
