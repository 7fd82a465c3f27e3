package io.rowledger.text;

import io.rowledger.units.QuantityKind;
import java.util.List;

/** A value inside a {@link Message}. Physical values are SI; NaN stands for a value that is not known. */
public sealed interface Argument
        permits Message,
                Argument.Text,
                Argument.Count,
                Argument.Decimal,
                Argument.Percent,
                Argument.Physical,
                Argument.Bounded,
                Argument.Area,
                Argument.BoundedArea,
                Argument.Duration,
                Argument.Time,
                Argument.Place,
                Argument.Heading,
                Argument.Sequence {
    /** Text that is printed as it is, such as the name of a product. */
    record Text(String text) implements Argument {}

    /** A whole number: a count, a row, a pass. */
    record Count(long value) implements Argument {}

    /** A number without a unit, printed with this many decimals. */
    record Decimal(double value, int decimals) implements Argument {}

    /** A percentage, 4.2 for 4.2 %. */
    record Percent(double percent) implements Argument {}

    /** A physical value in SI, printed in the reader's units. */
    record Physical(QuantityKind kind, double si) implements Argument {}

    /** A physical value and the bounds of its interval, all in SI; bounds may be NaN where none are known. */
    record Bounded(QuantityKind kind, double si, double lowSi, double highSi) implements Argument {}

    /** An area in m², printed in the unit that suits the larger of both areas: acres or square feet. */
    record Area(double areaM2, double besideM2) implements Argument {}

    /** An area in m² with its bounds, printed in the unit that suits it; bounds may be NaN where none are known. */
    record BoundedArea(double areaM2, double lowM2, double highM2) implements Argument {}

    /** A length of time, s. */
    record Duration(double seconds) implements Argument {}

    /** A point in time, epoch seconds. */
    record Time(double epochS) implements Argument {}

    /** A place on the ground, degrees on WGS 84. */
    record Place(double latDeg, double lonDeg) implements Argument {}

    /** A direction, rad clockwise from north, printed as a compass point. */
    record Heading(double headingRad) implements Argument {}

    /** Several values in a row. */
    record Sequence(List<Argument> values) implements Argument {
        public Sequence {
            values = List.copyOf(values);
        }
    }
}
