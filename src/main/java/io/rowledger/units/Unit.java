package io.rowledger.units;

import java.util.Optional;

/**
 * A unit of measurement.
 *
 * @param symbol the spelling that messages use
 * @param dimension its dimension
 * @param toSi factor to the unit that {@link Dimension} names
 */
public record Unit(String symbol, Dimension dimension, double toSi) {
    /**
     * Returns the unit of this dimension with this spelling, or empty if there is none. Case, blanks, underscores, hyphens
     * and points don't matter, and the slash of "gal/min" may be missing.
     */
    public static Optional<Unit> find(String text, Dimension dimension) {
        return UnitCatalogue.find(text, dimension);
    }

    /** Returns the first unit of any dimension with this spelling, for messages that name what was found. */
    public static Optional<Unit> findAny(String text) {
        for (Dimension dimension : Dimension.values()) {
            Optional<Unit> unit = UnitCatalogue.find(text, dimension);
            if (unit.isPresent()) {
                return unit;
            }
        }
        return Optional.empty();
    }
}
