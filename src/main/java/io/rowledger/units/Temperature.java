package io.rowledger.units;

import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * Reads temperatures: {@code 60 F}, {@code 15.5 °C}, {@code -5 deg C}. Their units differ by an offset, which
 * {@link UnitCatalogue} has no place for.
 *
 * <p>t/°C = (t/°F − 32) / 1.8 (NIST SP 811 (2008), 8.5 and Appendix B.8).
 */
final class Temperature {
    private static final Pattern TEXT = Pattern.compile(
            "([+-]?)\\s*(\\d+\\.?\\d*|\\.\\d+)\\s*(?:\\u00b0|deg(?:rees?)?)?\\s*([fFcC])(?:ahrenheit|elsius)?");

    private static final Pattern NUMBER_WITHOUT_UNIT = Pattern.compile("[+-]?\\s*(?:\\d+\\.?\\d*|\\.\\d+)");

    private Temperature() {}

    static Reading read(String text) {
        String plain = text.strip().replace('\u2212', '-').replace('\u00a0', ' ');
        Matcher matcher = TEXT.matcher(plain);
        Dimension dimension = Dimension.TEMPERATURE;
        if (!matcher.matches()) {
            boolean unitMissing = NUMBER_WITHOUT_UNIT.matcher(plain).matches();
            return new Refusal(
                    plain.isEmpty()
                            ? "nothing"
                            : "\"" + plain + "\"" + (unitMissing ? ", a figure without a unit" : ""),
                    dimension.words() + " in " + dimension.unitsToWrite(),
                    unitMissing ? "write the unit, such as " + plain + " F" : "write it as in " + dimension.example());
        }
        double figure = Double.parseDouble(matcher.group(2)) * (matcher.group(1).equals("-") ? -1 : 1);
        boolean fahrenheit = matcher.group(3).equalsIgnoreCase("f");
        return new Quantity(fahrenheit ? celsius(figure) : figure, dimension);
    }

    static double celsius(double fahrenheit) {
        return (fahrenheit - 32) / 1.8;
    }

    static double fahrenheit(double celsius) {
        return celsius * 1.8 + 32;
    }
}
