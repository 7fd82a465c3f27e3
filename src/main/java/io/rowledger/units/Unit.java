package io.rowledger.units;

import java.util.Optional;

/**
 * A unit people write.
 *
 * @param symbol its usual spelling
 * @param dimension what it measures
 * @param toSi multiply by this to get the program's own unit (see {@link Dimension})
 */
public record Unit(String symbol, Dimension dimension, double toSi) {
    /**
     * The unit a person means, whatever the case, blanks, underscores, hyphens or points, with or without the stroke of
     * "gal/min"; empty where the catalogue has none of that dimension.
     */
    public static Optional<Unit> find(String text, Dimension dimension) {
        return UnitCatalogue.find(text, dimension);
    }

    /** The first unit of any dimension spelt like this, to tell a person what was found instead. */
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
