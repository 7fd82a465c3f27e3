package io.rowledger.log.taskdata;

import io.rowledger.finding.RegularFile;
import io.rowledger.finding.UnusableInputException;
import io.rowledger.text.Message;
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

/**
 * Finds out from the device description what the values of a time log are.
 *
 * <p>A value holds for its element and the elements below it (ISO 11783-10). So a rate on the tank is the rate of the
 * whole bar, and its width stands on the tank's parent, or is the sum of the sections' widths.
 */
final class LayoutFinder {
    /** Distance below which two offsets are one place, m: descriptions are written in whole millimeters. */
    private static final double SAME_PLACE_M = 0.0015;
    /** Entries of the data dictionary named in a message. */
    private static final int MAX_NAMED = 4;

    private final ElementValues values;
    private final Devices devices;
    private final List<Message> notes = new ArrayList<>();

    private LayoutFinder(ElementValues values) {
        this.values = values;
        this.devices = values.devices();
    }

    /** The layout of a time log; null if none of its values is a flow or rate of a liquid. */
    static @Nullable Layout find(ElementValues values) {
        return new LayoutFinder(values).layout();
    }

    /** A few of the entries of the data dictionary that a header has, for a message. */
    static String has(LogHeader header) {
        Set<String> named = new TreeSet<>();
        Set<Integer> all = new TreeSet<>();
        for (LogHeader.Value value : header.values()) {
            all.add(value.ddi());
            String words = Ddi.words(value.ddi());
            if (!words.startsWith("DDI")) {
                named.add(words);
            }
        }
        if (all.isEmpty()) {
            return "nothing";
        }
        List<String> shown = new ArrayList<>(named.stream().limit(MAX_NAMED).toList());
        if (shown.isEmpty()) {
            all.stream().limit(MAX_NAMED).forEach(ddi -> shown.add("DDI " + ddi));
        }
        int more = (named.isEmpty() ? all.size() : Math.max(all.size(), named.size())) - shown.size();
        return String.join(", ", shown) + (more > 0 ? " and " + more + " more" : "");
    }

    private @Nullable Layout layout() {
        Map<DeviceElement, Layout.Amount> actual = new LinkedHashMap<>();
        for (int v = 0; v < values.count(); v++) {
            DeviceElement element = values.element(v);
            int ddi = values.ddi(v);
            // A metered flow goes before a rate that was made of it.
            if (element != null && Ddi.isActual(ddi)) {
                if (ddi == Ddi.ACTUAL_PER_TIME || !actual.containsKey(element)) {
                    actual.put(element, new Layout.Amount(v, ddi));
                }
            }
        }
        if (!values.unknownElements().isEmpty()) {
            notes.add(Message.of(
                    "notes.taskdata.unknown_elements",
                    RegularFile.name(values.header().file()),
                    String.join(", ", values.unknownElements())));
        }
        if (actual.isEmpty()) {
            return null;
        }
        List<DeviceElement> parts = finest(actual.keySet(), true);
        boolean whole = parts.isEmpty();
        List<DeviceElement> outlets = whole ? finest(actual.keySet(), false) : devices.besides(parts);
        for (DeviceElement outlet : outlets) {
            if (!actual.containsKey(outlet)) {
                throw refuse("no flow or rate for " + outlet.words() + " beside those of "
                                + parts.get(0).words()
                                + (values.unknownElements().isEmpty() ? "" : ", but " + unknown()))
                        .expected("actual volume per time (DDI 37) of every section")
                        .hint("have the controller log it for every section, or for none but the whole bar");
            }
        }
        Map<String, List<DeviceElement>> groups = whole ? products(outlets) : groups(outlets);
        List<Layout.Group> made = new ArrayList<>();
        for (Map.Entry<String, List<DeviceElement>> group : groups.entrySet()) {
            made.add(group(group.getKey(), group.getValue(), actual, !whole, groups.size()));
        }
        return new Layout(
                made,
                whole,
                whole ? sections(outlets.get(0)) : List.of(),
                down(outlets),
                values.column(Ddi.ACTUAL_SPEED),
                notes);
    }

    /** Each element without sections is a product of its own: two tanks on one bar. */
    private Map<String, List<DeviceElement>> products(List<DeviceElement> wholes) {
        if (wholes.size() == 1) {
            return Map.of("", wholes);
        }
        Map<String, List<DeviceElement>> products = new LinkedHashMap<>();
        for (DeviceElement one : wholes) {
            products.put(key(one, products.keySet()), List.of(one));
        }
        addProductsNote(products.keySet());
        return products;
    }

    private void addProductsNote(Set<String> keys) {
        notes.add(Message.of("notes.taskdata.products", String.join(", ", keys)));
    }

    private String unknown() {
        return "values of " + String.join(", ", values.unknownElements()) + ", which no device description has";
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
        double[] offsetsM =
                outlets.stream().mapToDouble(e -> offsetM(e)).sorted().toArray();
        int same = 0;
        for (int i = 1; i < offsetsM.length; i++) {
            same += offsetsM[i] - offsetsM[i - 1] < SAME_PLACE_M ? 1 : 0;
        }
        boolean known = outlets.stream().noneMatch(e -> Double.isNaN(offsetM(e)));
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
        byFunction.forEach((id, group) -> products.put(key(devices.find(id), products.keySet()), fromLeft(group)));
        addProductsNote(products.keySet());
        return products;
    }

    private double offsetM(DeviceElement element) {
        return values.lengthM(Ddi.OFFSET_Y, element);
    }

    /** A product's key from the name of its function or tank. */
    private static String key(@Nullable DeviceElement of, Set<String> taken) {
        String name = of == null ? "" : of.name();
        String key = name.toLowerCase(Locale.ROOT).replaceAll("[^a-z0-9]", "");
        if (key.isEmpty() || !Character.isLetter(key.charAt(0)) || taken.contains(key)) {
            key = "product" + (taken.size() + 1);
        }
        return key;
    }

    /** Sorted from the left: by the offset to the right (Y, ISO 11783-10), else by element number. */
    private List<DeviceElement> fromLeft(List<DeviceElement> some) {
        List<DeviceElement> sorted = new ArrayList<>(some);
        sorted.sort(Comparator.comparingDouble(e -> offsetM(e)));
        boolean apart = true;
        for (int i = 1; i < sorted.size(); i++) {
            apart &= offsetM(sorted.get(i)) - offsetM(sorted.get(i - 1)) >= SAME_PLACE_M;
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
        Message note = Message.of("notes.taskdata.no_offsets");
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
            Layout.Width width = width(element);
            if (Ddi.isActualPerArea(amount.ddi()) && !width.isKnown()) {
                throw refuse("a rate per area of " + element.words() + " without a working width")
                        .expected(
                                "a working width (DDI 67 or 70) of it, its parent or the sections: flow is rate \u00d7"
                                        + " speed \u00d7 width")
                        .hint(
                                "have the controller log actual volume per time (DDI 37), or enter the width in its setup");
            }
            Layout.State is = state(element, false);
            Layout.State commanded = state(element, true);
            outlets.add(new Layout.Outlet(element, amount, width, commanded == null ? is : commanded, is));
        }
        int total = -1;
        DeviceElement function = elementsOf.get(0).within(DeviceElement.FUNCTION);
        DeviceElement device = elementsOf.get(0).within(DeviceElement.DEVICE);
        if (parts && function != null) {
            total = values.column(Ddi.ACTUAL_PER_TIME, function);
        }
        if (parts && total < 0 && device != null && groups == 1) {
            total = values.column(Ddi.ACTUAL_PER_TIME, device);
        }
        return new Layout.Group(key, outlets, total, targets(elementsOf, function, device));
    }

    /**
     * Where an element's working width stands: a section's on itself; that of a tank or function on itself or up the tree,
     * else the sum of the sections that are on.
     */
    private Layout.Width width(DeviceElement element) {
        if (element.isPart()) {
            return new Layout.Width(values.column(Ddi.ACTUAL_WIDTH, element), values.widthM(element), List.of());
        }
        int column = -1;
        double fixedM = Double.NaN;
        for (DeviceElement at = element; at != null; at = at.parent()) {
            column = column < 0 ? values.column(Ddi.ACTUAL_WIDTH, at) : column;
            fixedM = Double.isNaN(fixedM) ? values.widthM(at) : fixedM;
        }
        List<Layout.SectionWidth> parts = new ArrayList<>();
        for (DeviceElement section : sectionsOf(element)) {
            int own = values.column(Ddi.ACTUAL_WIDTH, section);
            parts.add(new Layout.SectionWidth(own, values.widthM(section), state(section, false)));
        }
        boolean complete = parts.stream().allMatch(part -> part.column() >= 0 || part.fixedM() > 0);
        return new Layout.Width(column, fixedM, complete ? parts : List.of());
    }

    /** The sections that an element without sections of its own serves: those of the nearest element above with any. */
    private List<DeviceElement> sectionsOf(DeviceElement element) {
        for (DeviceElement at = element; at != null; at = at.parent()) {
            DeviceElement holder = at;
            List<DeviceElement> sections = devices.all().stream()
                    .filter(e -> e.type() == DeviceElement.SECTION && e.isIn(holder) && !e.equals(holder))
                    .toList();
            if (!sections.isEmpty()) {
                return fromLeft(sections);
            }
        }
        return List.of();
    }

    /** Setpoints of the element itself, of what it is part of, of the function or device, else those of its sections. */
    private List<Layout.Amount> targets(
            List<DeviceElement> outlets, @Nullable DeviceElement function, @Nullable DeviceElement device) {
        DeviceElement only = outlets.size() == 1 && !outlets.get(0).isPart() ? outlets.get(0) : null;
        for (DeviceElement whole : new DeviceElement[] {only, function, device}) {
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
        return targets.isEmpty() ? tankTargets(function, device) : targets;
    }

    /** The setpoint of the one tank of a function or device, which holds for all that is fed from it. */
    private List<Layout.Amount> tankTargets(@Nullable DeviceElement function, @Nullable DeviceElement device) {
        DeviceElement whole = function == null ? device : function;
        List<Layout.Amount> targets = new ArrayList<>();
        for (DeviceElement bin : devices.all()) {
            if (whole != null && bin.type() == DeviceElement.BIN && bin.isIn(whole)) {
                targets.addAll(targets(bin));
            }
        }
        return targets.size() == 1 ? targets : List.of();
    }

    private List<Layout.Amount> targets(DeviceElement of) {
        for (int ddi : new int[] {Ddi.SETPOINT_PER_AREA, Ddi.SETPOINT_PER_AREA_ML}) {
            int value = values.column(ddi, of);
            if (value >= 0) {
                return List.of(new Layout.Amount(value, ddi));
            }
        }
        return List.of();
    }

    private List<Layout.Section> sections(DeviceElement bar) {
        List<Layout.Section> sections = new ArrayList<>();
        for (DeviceElement section : sectionsOf(bar)) {
            Layout.State state = state(section, false);
            sections.add(new Layout.Section(section, state == null ? state(section, true) : state));
        }
        return sections;
    }

    /** Where an outlet's work state stands: its own, its section's, or its place in a condensed one. */
    private Layout.@Nullable State state(DeviceElement outlet, boolean setpoint) {
        int ddi = setpoint ? Ddi.SETPOINT_WORK_STATE : Ddi.WORK_STATE;
        for (DeviceElement at = outlet; at != null && at.isPart(); at = at.parent()) {
            int value = values.column(ddi, at);
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
        for (int v = 0; v < values.count() && !any; v++) {
            int ddi = values.ddi(v);
            any = holder.equals(values.element(v)) && (setpoint ? Ddi.isSetpointCondensed(ddi) : Ddi.isCondensed(ddi));
        }
        if (!any) {
            return null;
        }
        List<DeviceElement> sections = fromLeft(devices.all().stream()
                .filter(e -> e.type() == DeviceElement.SECTION && e.isIn(holder))
                .toList());
        int place = sections.indexOf(section);
        int value = place < 0 ? -1 : values.column(base + place / Ddi.SECTIONS_PER_STATE, holder);
        return value < 0 ? null : new Layout.State(value, 2 * (place % Ddi.SECTIONS_PER_STATE));
    }

    private List<Integer> down(List<DeviceElement> outlets) {
        List<Integer> down = new ArrayList<>();
        for (int v = 0; v < values.count(); v++) {
            DeviceElement element = values.element(v);
            if (element != null
                    && values.ddi(v) == Ddi.WORK_STATE
                    && !element.isPart()
                    && outlets.stream().anyMatch(outlet -> outlet.isIn(element))) {
                down.add(v);
            }
        }
        return down;
    }

    private UnusableInputException refuse(String found) {
        return UnusableInputException.found(found).inFile(values.header().file());
    }
}
