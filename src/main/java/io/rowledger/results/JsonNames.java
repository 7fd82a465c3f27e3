package io.rowledger.results;

import com.fasterxml.jackson.databind.PropertyNamingStrategies.NamingBase;

/**
 * Names of record components as keys: {@code meanRateLPerHa} is {@code mean_rate_l_per_ha}, {@code within5Pct} is
 * {@code within_5_pct}, {@code areaM2} is {@code area_m2}. A capital starts a word, and so does a digit after a small letter.
 */
final class JsonNames extends NamingBase {
    private static final long serialVersionUID = 1L;

    @Override
    public String translate(String name) {
        StringBuilder key = new StringBuilder();
        for (int i = 0; i < name.length(); i++) {
            char c = name.charAt(i);
            boolean digitStarts = Character.isDigit(c) && i > 0 && Character.isLowerCase(name.charAt(i - 1));
            if (Character.isUpperCase(c) || digitStarts) {
                key.append('_');
            }
            key.append(Character.toLowerCase(c));
        }
        return key.toString();
    }
}
