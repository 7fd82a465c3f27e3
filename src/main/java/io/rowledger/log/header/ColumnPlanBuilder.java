package io.rowledger.log.header;

import io.rowledger.finding.RefusalKind;
import io.rowledger.finding.UnusableInputException;
import io.rowledger.log.header.ColumnPlan.Column;
import io.rowledger.log.header.ColumnPlan.Place;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.Pattern;

/** Builds a {@link ColumnPlan} from a header line. */
public final class ColumnPlanBuilder {
    private static final Pattern GRID = Pattern.compile("easting|northing|^utm");

    /** Names of a column that may hold latitude and longitude together. */
    private static final Set<String> POSITIONS = Set.of(
            "position",
            "location",
            "coordinates",
            "coordinate",
            "coords",
            "latlon",
            "latlong",
            "latlng",
            "latitudelongitude",
            "gps",
            "gpsposition",
            "gpslocation",
            "geometry",
            "geom",
            "wkt",
            "thegeom",
            "point");

    private final List<String> headers;
    private final Headers found;
    private final LogOptions options;
    private final Questions questions;
    private final Place place;
    private final List<String> ambiguousDates = new ArrayList<>();
    /** Columns that a unit may yet make rates per area: these need no time. */
    private final Set<Integer> mayBeRates = new HashSet<>();

    private final List<String> withoutUnit = new ArrayList<>();

    /** A header for a role, and the index of another equally good header, or -1. */
    private record Candidate(int index, ColumnName name, Role role, int rank, int alternative) {}

    private ColumnPlanBuilder(
            String file, List<String> headers, Headers found, LogOptions options, Questions questions) {
        this.headers = headers;
        this.found = found;
        this.options = options;
        this.questions = questions;
        this.place = new Place(file, found.line());
    }

    /**
     * Maps every header.
     *
     * @param questions receives what is missing, ambiguous or without a unit
     */
    public static ColumnPlan plan(
            String file, List<String> headers, Headers found, LogOptions options, Questions questions) {
        return new ColumnPlanBuilder(file, headers, found, options, questions).build();
    }

    private ColumnPlan build() {
        Map<Integer, Column> chosen = new LinkedHashMap<>();
        questions.attempt(() -> chosen.putAll(ChosenColumns.of(place, headers, options)));
        Map<String, Column> byRole = new LinkedHashMap<>();
        for (Column column : chosen.values()) {
            byRole.put(column.role().canonical(), column);
        }
        for (Candidate candidate : candidates(chosen).values()) {
            add(candidate, byRole);
        }
        dateAsTime(byRole);
        List<Column> columns = new ArrayList<>(byRole.values());
        columns.sort(Comparator.comparing((Column c) -> c.role().quantity())
                .thenComparing(c -> c.role().product())
                .thenComparingInt(c -> c.role().row()));
        List<String> products = products(columns, options);
        RowMapping rows = RowMapping.of(place, headers, columns, products, options, questions);
        requirePositionAndTime(columns);
        return new ColumnPlan(headers, found, columns, products, rows, ambiguousDates, withoutUnit);
    }

    private void requirePositionAndTime(List<Column> columns) {
        boolean week = columns.stream().anyMatch(c -> c.role().quantity() == LogQuantity.TIME_OF_WEEK);
        boolean rates = columns.stream().anyMatch(c -> c.role().quantity() == LogQuantity.FLOW)
                && columns.stream()
                        .filter(c -> c.role().quantity() == LogQuantity.FLOW)
                        .allMatch(c -> c.written().isRate() || mayBeRates.contains(c.index()));
        if (!week && !rates) {
            need(columns, LogQuantity.TIME, "time", "a time such as 2026-05-14T10:00:00Z");
        }
        need(columns, LogQuantity.LAT, "lat", "the latitude in degrees");
        need(columns, LogQuantity.LON, "lon", "the longitude in degrees");
    }

    private void need(List<Column> columns, LogQuantity quantity, String canonical, String what) {
        if (columns.stream().noneMatch(c -> c.role().quantity() == quantity)) {
            questions.ask(place.found("no column for " + canonical)
                    .kind(RefusalKind.COLUMN, canonical)
                    .expected("a column " + canonical + " with " + what)
                    .hint((quantity == LogQuantity.TIME ? "" : otherPositions()) + "name the column " + canonical
                            + ", or add a line under columns in the rig file: " + canonical
                            + ": \"its header in the log\""));
        }
    }

    /** Returns the first half of a hint where another column may hold the positions; empty if none does. */
    private String otherPositions() {
        for (String header : headers) {
            if (POSITIONS.contains(ColumnName.plain(header))) {
                return "if " + header.strip() + " holds both, divide it into two columns, lat and lon; else ";
            }
        }
        return headers.stream()
                        .anyMatch(
                                header -> GRID.matcher(ColumnName.plain(header)).find())
                ? "eastings and northings are meters of a map grid: export degrees, or the points as a shapefile with its "
                        + ".prj; else "
                : "";
    }

    private void add(Candidate c, Map<String, Column> byRole) {
        LogQuantity quantity = c.role.quantity();
        String key = ColumnUnits.meaning(c.role).canonical();
        if (byRole.containsKey(key)) {
            return;
        }
        if (c.alternative >= 0 && quantity.isHelper()) {
            // Not refused here: a complete time does not need the date column.
            if (quantity == LogQuantity.DATE) {
                ambiguousDates.add(headers.get(c.index).strip());
                ambiguousDates.add(headers.get(c.alternative).strip());
            }
            return;
        }
        Column column;
        try {
            column = ColumnUnits.column(place, c.index, c.name, c.role, options);
        } catch (UnusableInputException e) {
            if (quantity.isOptional()) {
                withoutUnit.add(headers.get(c.index).strip());
                return;
            }
            questions.ask(e);
            if (!quantity.isFlowSource()) {
                return;
            }
            if (ColumnUnits.mayBeRate(c.name, headers.get(c.index))) {
                mayBeRates.add(c.index);
            }
            // Counted as a flow all the same, so that only its unit is asked about.
            column = new Column(
                    c.index, headers.get(c.index).strip(), ColumnUnits.meaning(c.role), "", Double.NaN, quantity);
        }
        // Of two optional columns the first one is used; speed and course are checked against the path anyway.
        if (c.alternative >= 0 && !quantity.isOptional()) {
            questions.ask(twice(place, column, headers.get(c.alternative).strip(), options));
        }
        byRole.put(key, column);
    }

    /** Returns the best header for each role: unambiguous names before weak ones, flows before volumes. */
    private Map<String, Candidate> candidates(Map<Integer, Column> chosen) {
        TreeSet<String> settled = new TreeSet<>();
        chosen.values().forEach(column -> settled.add(column.role().canonical()));
        Map<String, Candidate> best = new LinkedHashMap<>();
        boolean flows = chosen.values().stream().anyMatch(c -> c.written() == LogQuantity.FLOW);
        for (int i = 0; i < headers.size(); i++) {
            Optional<ColumnName> name =
                    chosen.containsKey(i) || isNotNeeded(i) ? Optional.empty() : ColumnName.of(headers.get(i));
            if (name.isEmpty() || (options.productKeys().size() > 1 && isIncidental(name.get()))) {
                continue;
            }
            Role role;
            try {
                role = ProductKeys.withProduct(place, name.get(), options);
            } catch (UnusableInputException e) {
                questions.ask(e);
                continue;
            }
            flows |= role.quantity() == LogQuantity.FLOW && !name.get().weak();
            if (settled.contains(ColumnUnits.meaning(role).canonical())) {
                continue;
            }
            int rank = rank(name.get());
            Candidate other = best.get(key(role));
            if (other == null || rank < other.rank) {
                best.put(key(role), new Candidate(i, name.get(), role, rank, -1));
            } else if (rank == other.rank && other.alternative < 0 && role.quantity() != LogQuantity.ROW) {
                best.put(key(role), new Candidate(other.index, other.name, other.role, rank, i));
            }
        }
        if (flows) {
            // A log with flows may also have totals and counts; they are not needed.
            best.values().removeIf(c -> c.role.quantity().metersFlow() && c.rank > 0);
        }
        keepBestSource(best, List.copyOf(chosen.values()));
        return best;
    }

    private boolean isNotNeeded(int index) {
        return options.hints().notNeeded().contains(headers.get(index).strip());
    }

    /** Removes the flow sources of each product but the best kind; a total meter alone becomes the bar's flow. */
    private static void keepBestSource(Map<String, Candidate> best, List<Column> chosen) {
        List<Role> roles = best.values().stream().map(Candidate::role).toList();
        Map<String, Integer> preferred = new HashMap<>();
        for (Role role : roles) {
            preferred.computeIfAbsent(role.product(), product -> FlowSources.best(product, chosen, roles));
        }
        best.values()
                .removeIf(c -> c.role.quantity().isFlowSource()
                        && FlowSources.preference(c.role.quantity()) > preferred.getOrDefault(c.role.product(), 0));
        best.replaceAll((key, c) -> c.role.quantity() == LogQuantity.FLOW_TOTAL
                        && FlowSources.preference(LogQuantity.FLOW_TOTAL) == preferred.getOrDefault(c.role.product(), 0)
                ? new Candidate(
                        c.index, c.name, new Role(LogQuantity.BAR_FLOW, c.role.product(), 0), c.rank, c.alternative)
                : c);
    }

    /** Returns the key by which headers compete: all forms of a row's metered flow are one, all volumes of the bar another. */
    private static String key(Role role) {
        if (role.quantity().isBarVolume()) {
            return LogQuantity.BAR_VOLUME.name() + "."
                    + new Role(LogQuantity.BAR_VOLUME, role.product(), 0).canonical();
        }
        return role.quantity().metersFlow()
                ? new Role(LogQuantity.FLOW, role.product(), role.row()).canonical()
                : role.quantity().name() + "." + role.canonical();
    }

    /** Returns true for a volume or weakly named value without a product: it is ignored, not refused. */
    private static boolean isIncidental(ColumnName name) {
        LogQuantity quantity = name.role().quantity();
        boolean plain = quantity == LogQuantity.FLOW && !name.weak();
        return (quantity.isFlowSource() || quantity == LogQuantity.FLOW_TOTAL)
                && !plain
                && name.role().product().isEmpty();
    }

    /** Returns the rank of a name, lower is better: flows, volumes, pulses; those with a known start before the others. */
    private static int rank(ColumnName name) {
        int kind =
                switch (name.role().quantity()) {
                    case VOLUME_SINCE_LAST, BAR_VOLUME_SINCE_LAST -> 2;
                    case VOLUME_TOTAL, BAR_VOLUME_TOTAL -> 4;
                    case VOLUME, BAR_VOLUME -> 6;
                    case COUNT_SINCE_LAST -> 8;
                    case COUNT_TOTAL -> 10;
                    case COUNT -> 12;
                    default -> 0;
                };
        return kind + (name.weak() ? 1 : 0);
    }

    /** Uses a date column as the time column if there is no other; the time reader refuses it if it holds only dates. */
    private static void dateAsTime(Map<String, Column> byRole) {
        Column date = byRole.get(LogQuantity.DATE.canonical());
        boolean hasTime = byRole.containsKey(LogQuantity.TIME.canonical())
                || byRole.containsKey(LogQuantity.TIME_OF_WEEK.canonical());
        if (date != null && !hasTime) {
            byRole.remove(LogQuantity.DATE.canonical());
            Role time = new Role(LogQuantity.TIME, "", 0);
            byRole.put(
                    time.canonical(),
                    new Column(date.index(), date.header(), time, date.unit(), Double.NaN, LogQuantity.TIME));
        }
    }

    private UnusableInputException twice(Place place, Column first, String second, LogOptions options) {
        // What the header says, not what it becomes: a total is chosen as a total.
        Role role = first.role();
        String product = options.productKeys().size() == 1 ? "" : role.product();
        String canonical = new Role(first.written(), product, role.row()).canonical();
        long alike = headers.stream()
                .filter(header -> header.strip().equals(first.header()))
                .count();
        boolean numbered = alike > 2 && role.quantity().ofProduct();
        String found = first.header().equals(second)
                ? (alike == 2 ? "two" : String.valueOf(alike)) + " columns of one name, " + second
                : "two columns for " + canonical + ": " + first.header() + " and " + second;
        return place.found(found)
                .kind(RefusalKind.SAME_QUANTITY)
                .atColumn(second)
                .expected("one column for a quantity")
                .hint(
                        numbered
                                ? "number them from the left in a copy of the log, such as Row 1 " + second + ", Row 2 "
                                        + second
                                : first.header().equals(second)
                                        ? "rename one of the two in a copy of the log"
                                        : "choose one under columns in the rig file, such as " + canonical + ": \""
                                                + first.header() + "\"");
    }

    private static List<String> products(List<Column> columns, LogOptions options) {
        if (!options.productKeys().isEmpty()) {
            return options.productKeys();
        }
        List<String> products = new ArrayList<>();
        for (Column column : columns) {
            if (column.role().quantity() == LogQuantity.FLOW
                    && !products.contains(column.role().product())) {
                products.add(column.role().product());
            }
        }
        return products;
    }
}
