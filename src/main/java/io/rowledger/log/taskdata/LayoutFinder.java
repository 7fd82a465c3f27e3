package io.rowledger.log.taskdata;

import io.rowledger.finding.UnusableInputException;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import org.jspecify.annotations.Nullable;

/** Finds out from the device description what the values of a time log are. */
final class LayoutFinder {
    /** Two parts of a bar can't be this near each other, m: the description writes millimetres. */
    private static final double SAME_PLACE_M = 0.0015;

    private final LogHeader header;
    private final Devices devices;
    private final List<String> notes = new ArrayList<>();
    /** The elements of the header's values; null for values that are not used. */
    private final List<@Nullable DeviceElement> elements = new ArrayList<>();

    private LayoutFinder(LogHeader header, Devices devices) {
        this.header = header;
        this.devices = devices;
        for (LogHeader.Value value : header.values()) {
            elements.add(element(value));
        }
    }

    /** What the values are; null where none of them is a flow or rate of a liquid. */
    static @Nullable Layout find(LogHeader header, Devices devices) {
        return new LayoutFinder(header, devices).layout();
    }

    /** The entries of the data dictionary a header has, for a message. */
    static String has(LogHeader header) {
        Set<String> words = new TreeSet<>();
        header.values().forEach(value -> words.add(Ddi.words(value.ddi())));
        return words.isEmpty() ? "nothing" : String.join(", ", words);
    }

    private @Nullable DeviceElement element(LogHeader.Value value) {
        int ddi = value.ddi();
        boolean used = Ddi.isActual(ddi)
                || Ddi.isSetpointPerArea(ddi)
                || Ddi.isCondensed(ddi)
                || Ddi.isSetpointCondensed(ddi)
                || ddi == Ddi.WORK_STATE
                || ddi == Ddi.SETPOINT_WORK_STATE
                || ddi == Ddi.ACTUAL_WIDTH
                || ddi == Ddi.ACTUAL_SPEED;
        if (!used) {
            return null;
        }
        DeviceElement element = devices.find(value.element());
        if (element == null) {
            throw UnusableInputException.found(
                            Ddi.words(ddi) + " of " + (value.element().isEmpty() ? "nothing" : value.element())
                                    + ", which no device description has")
                    .inFile(header.file())
                    .atLine(value.line())
                    .atColumn("DLV")
                    .expected("a device element of the task data")
                    .hint("copy the whole folder from the terminal again, with the TASKDATA.XML of this job");
        }
        return element;
    }

    private @Nullable Layout layout() {
        Map<DeviceElement, Layout.Amount> actual = new LinkedHashMap<>();
        for (int v = 0; v < elements.size(); v++) {
            DeviceElement element = elements.get(v);
            int ddi = header.values().get(v).ddi();
            if (element != null && Ddi.isActual(ddi)) {
                // The metered flow before a rate that was made of it.
                if (ddi == Ddi.ACTUAL_PER_TIME || !actual.containsKey(element)) {
                    actual.put(element, new Layout.Amount(v, ddi));
                }
            }
        }
        if (actual.isEmpty()) {
            return null;
        }
        List<DeviceElement> parts = finest(actual.keySet(), true);
        List<DeviceElement> outlets = parts.isEmpty() ? finest(actual.keySet(), false) : devices.besides(parts);
        for (DeviceElement outlet : outlets) {
            if (!actual.containsKey(outlet)) {
                throw refuse("no flow or rate for " + outlet.words() + " beside those of "
                                + parts.get(0).words())
                        .expected("actual volume per time (DDI 37) of every section")
                        .hint("have the controller log it for every section, or for none but the whole bar");
            }
        }
        Map<String, List<DeviceElement>> groups = groups(outlets);
        List<Layout.Group> made = new ArrayList<>();
        for (Map.Entry<String, List<DeviceElement>> group : groups.entrySet()) {
            made.add(group(group.getKey(), group.getValue(), actual, !parts.isEmpty(), groups.size()));
        }
        boolean whole = made.stream().allMatch(group -> group.outlets().size() == 1);
        return new Layout(
                made,
                whole,
                whole ? sections(outlets.get(0)) : List.of(),
                down(outlets),
                first(Ddi.ACTUAL_SPEED),
                notes);
    }

    /** Elements with a flow that are (or are not) sections or units, without those that others of them are part of. */
    private static List<DeviceElement> finest(Set<DeviceElement> all, boolean parts) {
        List<DeviceElement> some = all.stream().filter(e -> e.isPart() == parts).toList();
        return some.stream()
                .filter(e -> some.stream().noneMatch(other -> !other.id().equals(e.id()) && other.isIn(e)))
                .toList();
    }

    /**
     * The outlets by product, each from the left. Functions whose sections lie at the same places put down a product each;
     * functions whose sections lie beside each other share one bar.
     */
    private Map<String, List<DeviceElement>> groups(List<DeviceElement> outlets) {
        Map<String, List<DeviceElement>> byFunction = new LinkedHashMap<>();
        for (DeviceElement outlet : outlets) {
            DeviceElement function = outlet.within(DeviceElement.FUNCTION);
            String id = function == null ? "" : function.id();
            byFunction.computeIfAbsent(id, any -> new ArrayList<>()).add(outlet);
        }
        if (byFunction.size() == 1) {
            return Map.of("", fromLeft(outlets));
        }
        double[] offsetsM = outlets.stream()
                .mapToDouble(e -> e.metres(Ddi.OFFSET_Y))
                .sorted()
                .toArray();
        int same = 0;
        for (int i = 1; i < offsetsM.length; i++) {
            same += offsetsM[i] - offsetsM[i - 1] < SAME_PLACE_M ? 1 : 0;
        }
        boolean known = outlets.stream().noneMatch(e -> Double.isNaN(e.metres(Ddi.OFFSET_Y)));
        if (!known) {
            throw refuse("flows of " + byFunction.size() + " functions (" + String.join(", ", byFunction.keySet())
                            + ") and no offsets to the side (DDI 135)")
                    .expected("a device description that says whether they put down a product each or lie side by side")
                    .hint("have the offsets entered in the controller's setup");
        }
        if (same == 0) {
            return Map.of("", fromLeft(outlets));
        }
        Map<String, List<DeviceElement>> products = new LinkedHashMap<>();
        byFunction.forEach((id, group) -> products.put(key(id, products.keySet()), fromLeft(group)));
        notes.add("The functions of the device put down a product each: "
                + String.join(", ", products.keySet())
                + ". The rig file has to have these keys under products.");
        return products;
    }

    /** A product's key from the name of its function. */
    private String key(String id, Set<String> taken) {
        DeviceElement function = devices.find(id);
        String name = function == null ? "" : function.name();
        String key = name.toLowerCase(Locale.ROOT).replaceAll("[^a-z0-9]", "");
        if (key.isEmpty() || !Character.isLetter(key.charAt(0)) || taken.contains(key)) {
            key = "product" + (taken.size() + 1);
        }
        return key;
    }

    /** Sorted from the left: by the offset to the right (Y, ISO 11783-10), else by element number. */
    private List<DeviceElement> fromLeft(List<DeviceElement> some) {
        List<DeviceElement> sorted = new ArrayList<>(some);
        sorted.sort(Comparator.comparingDouble(e -> e.metres(Ddi.OFFSET_Y)));
        boolean apart = true;
        for (int i = 1; i < sorted.size(); i++) {
            apart &= sorted.get(i).metres(Ddi.OFFSET_Y) - sorted.get(i - 1).metres(Ddi.OFFSET_Y) >= SAME_PLACE_M;
        }
        if (apart) {
            return sorted;
        }
        sorted.sort(Comparator.comparingInt(DeviceElement::number));
        Set<Integer> numbers = new HashSet<>();
        for (DeviceElement element : sorted) {
            if (!numbers.add(element.number())) {
                throw refuse("sections without an order: " + element.words()
                                + " has the number of another, and no offset to the side (DDI 135) tells them apart")
                        .expected("offsets, or numbers from the left")
                        .hint("have the offsets entered in the controller's setup");
            }
        }
        String note =
                "The device description has no offsets to the side (DDI 135) for every section: rows were counted by "
                        + "element number, which runs from the left.";
        if (!notes.contains(note)) {
            notes.add(note);
        }
        return sorted;
    }

    private Layout.Group group(
            String key,
            List<DeviceElement> elementsOf,
            Map<DeviceElement, Layout.Amount> actual,
            boolean parts,
            int groups) {
        List<Layout.Outlet> outlets = new ArrayList<>();
        for (DeviceElement element : elementsOf) {
            Layout.Amount amount = actual.get(element);
            if (amount == null) {
                throw new IllegalStateException("every outlet has an amount");
            }
            int width = of(Ddi.ACTUAL_WIDTH, element);
            double widthM = widthM(element);
            if (Ddi.isActualPerArea(amount.ddi()) && width < 0 && Double.isNaN(widthM)) {
                throw refuse("a rate per area of " + element.words() + ", whose working width nobody says")
                        .expected("a working width (DDI 67 or 70): flow is rate \u00d7 speed \u00d7 width")
                        .hint(
                                "have the controller log actual volume per time (DDI 37), or enter the width in its setup");
            }
            Layout.State is = state(element, false);
            Layout.State asked = state(element, true);
            outlets.add(new Layout.Outlet(element, amount, width, widthM, asked == null ? is : asked, is));
        }
        int total = -1;
        DeviceElement function = elementsOf.get(0).within(DeviceElement.FUNCTION);
        DeviceElement device = elementsOf.get(0).within(DeviceElement.DEVICE);
        if (parts && function != null) {
            total = of(Ddi.ACTUAL_PER_TIME, function);
        }
        if (parts && total < 0 && device != null && groups == 1) {
            total = of(Ddi.ACTUAL_PER_TIME, device);
        }
        return new Layout.Group(key, outlets, total, targets(elementsOf, function, device));
    }

    private static double widthM(DeviceElement element) {
        for (int ddi : new int[] {Ddi.ACTUAL_WIDTH, Ddi.SETPOINT_WIDTH, Ddi.MAXIMUM_WIDTH}) {
            double widthM = element.metres(ddi);
            if (widthM > 0) {
                return widthM;
            }
        }
        return Double.NaN;
    }

    /** Setpoints of the function or device as a whole, else those of its sections. */
    private List<Layout.Amount> targets(
            List<DeviceElement> outlets, @Nullable DeviceElement function, @Nullable DeviceElement device) {
        for (DeviceElement whole : new DeviceElement[] {function, device}) {
            List<Layout.Amount> targets = whole == null ? List.of() : targets(whole);
            if (!targets.isEmpty()) {
                return targets;
            }
        }
        List<Layout.Amount> targets = new ArrayList<>();
        Set<String> seen = new LinkedHashSet<>();
        for (DeviceElement outlet : outlets) {
            for (DeviceElement at = outlet; at != null && at.isPart(); at = at.parent()) {
                if (seen.add(at.id())) {
                    targets.addAll(targets(at));
                }
            }
        }
        return targets;
    }

    private List<Layout.Amount> targets(DeviceElement of) {
        for (int ddi : new int[] {Ddi.SETPOINT_PER_AREA, Ddi.SETPOINT_PER_AREA_ML}) {
            int value = of(ddi, of);
            if (value >= 0) {
                return List.of(new Layout.Amount(value, ddi));
            }
        }
        return List.of();
    }

    private List<Layout.State> sections(DeviceElement bar) {
        List<Layout.State> states = new ArrayList<>();
        for (DeviceElement section : devices.all()) {
            if (section.type() == DeviceElement.SECTION
                    && section.isIn(bar)
                    && !section.id().equals(bar.id())) {
                Layout.State state = state(section, false);
                if (state != null) {
                    states.add(state);
                }
            }
        }
        return states;
    }

    /** Where an outlet's work state stands: its own, its section's, or its place in a condensed one. */
    private Layout.@Nullable State state(DeviceElement outlet, boolean setpoint) {
        int ddi = setpoint ? Ddi.SETPOINT_WORK_STATE : Ddi.WORK_STATE;
        for (DeviceElement at = outlet; at != null && at.isPart(); at = at.parent()) {
            int value = of(ddi, at);
            if (value >= 0) {
                return new Layout.State(value, 0);
            }
        }
        DeviceElement section = outlet.within(DeviceElement.SECTION);
        for (DeviceElement at = section == null ? null : section.parent(); at != null; at = at.parent()) {
            Layout.State state = section == null ? null : condensed(at, section, setpoint);
            if (state != null) {
                return state;
            }
        }
        return null;
    }

    private Layout.@Nullable State condensed(DeviceElement holder, DeviceElement section, boolean setpoint) {
        int base = setpoint ? Ddi.SETPOINT_CONDENSED_STATE : Ddi.CONDENSED_STATE;
        boolean any = false;
        for (int v = 0; v < elements.size() && !any; v++) {
            int ddi = header.values().get(v).ddi();
            any = holder.equals(elements.get(v)) && (setpoint ? Ddi.isSetpointCondensed(ddi) : Ddi.isCondensed(ddi));
        }
        if (!any) {
            return null;
        }
        List<DeviceElement> sections = fromLeft(devices.all().stream()
                .filter(e -> e.type() == DeviceElement.SECTION && e.isIn(holder))
                .toList());
        int place = sections.indexOf(section);
        int value = of(base + place / Ddi.SECTIONS_PER_STATE, holder);
        return value < 0 || place < 0 ? null : new Layout.State(value, 2 * (place % Ddi.SECTIONS_PER_STATE));
    }

    private List<Integer> down(List<DeviceElement> outlets) {
        List<Integer> down = new ArrayList<>();
        for (int v = 0; v < elements.size(); v++) {
            DeviceElement element = elements.get(v);
            if (element != null
                    && header.values().get(v).ddi() == Ddi.WORK_STATE
                    && !element.isPart()
                    && outlets.stream().anyMatch(outlet -> outlet.isIn(element))) {
                down.add(v);
            }
        }
        return down;
    }

    private int of(int ddi, DeviceElement element) {
        for (int v = 0; v < elements.size(); v++) {
            if (header.values().get(v).ddi() == ddi && element.equals(elements.get(v))) {
                return v;
            }
        }
        return -1;
    }

    private int first(int ddi) {
        for (int v = 0; v < elements.size(); v++) {
            if (header.values().get(v).ddi() == ddi) {
                return v;
            }
        }
        return -1;
    }

    private UnusableInputException refuse(String found) {
        return UnusableInputException.found(found).inFile(header.file());
    }
}
