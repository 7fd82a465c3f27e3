package io.rowledger.log.header;

import io.rowledger.finding.RefusalKind;
import io.rowledger.finding.UnusableInputException;
import io.rowledger.log.header.ColumnPlan.Column;
import io.rowledger.log.header.ColumnPlan.Place;
import io.rowledger.units.Dimension;
import io.rowledger.units.Unit;
import java.util.Optional;

/** Gives columns their factor to SI, or refuses a unit that is missing or does not fit. */
final class ColumnUnits {
    private ColumnUnits() {}

    /** Returns the role that a column has in the table: every source of a flow is a flow. */
    static Role meaning(Role role) {
        return role.quantity().isFlowSource() ? new Role(LogQuantity.FLOW, role.product(), role.row()) : role;
    }

    /** Returns a column with its factor; throws if its unit is missing or does not fit. */
    static Column column(Place place, int index, ColumnName name, Role role, LogOptions options) {
        LogQuantity quantity = role.quantity();
        Dimension dimension = quantity.dimension();
        String header = name.header().strip();
        Role of = meaning(role);
        if (quantity.isCount()) {
            return new Column(index, header, of, "pulses", 1 / options.hints().pulsesPerL(), quantity);
        }
        if (dimension == null) {
            String form = quantity == LogQuantity.DATE ? FormatUnits.date(name.unitText()) : "";
            return new Column(index, header, of, form, 1, quantity);
        }
        Unit unit = name.unit();
        if (unit == null && dimension == Dimension.FLOW && name.unitText().isEmpty()) {
            unit = options.hints().flowUnit();
        }
        if (unit != null) {
            return new Column(index, header, of, unit.symbol(), unit.toSi(), quantity);
        }
        if ((quantity == LogQuantity.LAT || quantity == LogQuantity.LON)
                && FormatUnits.isDegreesMinutes(name.unitText())) {
            return new Column(index, header, of, FormatUnits.DEGREES_MINUTES, Math.PI / 180, quantity);
        }
        String implied = quantity.impliedUnit();
        if (name.unitText().isEmpty() && implied != null) {
            double factor = implied.isEmpty()
                    ? Double.NaN
                    : Unit.find(implied, dimension).orElseThrow().toSi();
            return new Column(index, header, of, implied, factor, quantity);
        }
        if (quantity == LogQuantity.TIME) {
            return new Column(index, header, of, FormatUnits.time(name.unitText()), Double.NaN, quantity);
        }
        throw noUnit(place, name, header, dimension);
    }

    /** A rate can be a flow or a volume per area: both readings are shown. */
    private static UnusableInputException rateWithoutUnit(Place place, Role role, String header) {
        String flow = canonical(LogQuantity.FLOW, role);
        String rate = canonical(LogQuantity.BAR_RATE, role);
        return place.found("a rate without a unit")
                .kind(RefusalKind.FLOW_OR_RATE_UNIT, quantity(role))
                .atColumn(header)
                .expected("gal/ac or L/ha if it is a volume per area, gal/min or L/min if it is a flow")
                .hint("write columns: {\"" + rate + "[gal/ac]\": \"" + header + "\"} or columns: {\"" + flow
                        + "[gal/min]\": \"" + header + "\"} in the rig file"
                        + (role.row() > 0 ? ", a line for each row" : "") + ", or the unit into the header");
    }

    /** The quantity without the number of its row, such as {@code uan.flow}. */
    private static String quantity(Role role) {
        return new Role(role.quantity(), role.product(), 0).canonical();
    }

    private static RefusalKind unitOf(Dimension dimension) {
        return switch (dimension) {
            case FLOW -> RefusalKind.FLOW_UNIT;
            case RATE -> RefusalKind.RATE_UNIT;
            default -> RefusalKind.UNIT;
        };
    }

    private static String canonical(LogQuantity quantity, Role role) {
        return new Role(quantity, role.product(), role.row()).canonical();
    }

    /** Returns true for a flow named as a rate without a unit: volume per time or per area. */
    static boolean mayBeRate(ColumnName name, String header) {
        return ColumnName.plain(header).contains("rate")
                && name.role().quantity().isFlowSource()
                && name.unitText().isEmpty();
    }

    private static UnusableInputException noUnit(Place place, ColumnName name, String header, Dimension dimension) {
        if (mayBeRate(name, header)) {
            return rateWithoutUnit(place, name.role(), header);
        }
        boolean weight = Unit.find(name.unitText(), Dimension.MASS_PER_AREA).isPresent();
        if (weight && name.role().quantity().isFlowSource()) {
            String nitrogen = canonical(LogQuantity.BAR_NITROGEN_RATE, name.role()) + "[" + name.unitText() + "]";
            return place.found("a weight per area that does not say of what")
                    .kind(RefusalKind.UNIT, quantity(name.role()))
                    .atColumn(header)
                    .expected("nitrogen per area, or a volume per area in gal/ac or L/ha")
                    .hint("if it is nitrogen, name the column " + nitrogen + " or write columns: {\"" + nitrogen
                            + "\": \"" + header + "\"} in the rig file");
        }
        String proposal = name.role().canonical() + "[" + dimension.exampleUnit() + "]";
        if (name.unitText().isEmpty()) {
            String rig = dimension == Dimension.FLOW
                    ? ", or into the rig file if all rows have it, such as log: {flow_unit: gal/min}"
                    : ", or into the rig file: columns: {\"" + proposal + "\": \"" + header + "\"}";
            return place.found("no unit in the column name")
                    .kind(unitOf(dimension), quantity(name.role()))
                    .atColumn(header)
                    .expected("a unit of " + dimension.words().replaceFirst("^an? ", "") + ": "
                            + dimension.unitsToWrite())
                    .hint("write the unit the figures are in into the header, such as " + proposal + rig);
        }
        Optional<Unit> other = Unit.findAny(name.unitText());
        String words = other.isPresent()
                ? "the unit " + name.unitText() + ", which is "
                        + other.get().dimension().words()
                : "the unknown unit " + name.unitText();
        return place.found(words)
                .kind(RefusalKind.UNIT, quantity(name.role()) + "[" + name.unitText() + "]")
                .atColumn(header)
                .expected(dimension.words() + " in " + dimension.unitsToWrite())
                .hint("write the unit the figures are in, such as " + proposal);
    }
}
