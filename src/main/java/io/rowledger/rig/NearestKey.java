package io.rowledger.rig;

import java.util.Collection;
import java.util.Locale;
import java.util.Optional;

/** Finds the known key nearest to a misspelled one. */
final class NearestKey {
    private NearestKey() {}

    /** The nearest key; empty if more than half of the letters would have to change for each. */
    static Optional<String> of(String wrong, Collection<String> keys) {
        String best = null;
        int min = Integer.MAX_VALUE;
        for (String key : keys) {
            int distance = distance(wrong.toLowerCase(Locale.ROOT), key.toLowerCase(Locale.ROOT));
            if (distance < min && 2 * distance <= Math.max(wrong.length(), key.length())) {
                min = distance;
                best = key;
            }
        }
        return Optional.ofNullable(best);
    }

    /**
     * Restricted Damerau-Levenshtein distance: fewest insertions, deletions, replacements and swaps of neighboring letters
     * (F. J. Damerau, Communications of the ACM 7(3), 1964).
     */
    static int distance(String a, String b) {
        int[][] d = new int[a.length() + 1][b.length() + 1];
        for (int i = 0; i <= a.length(); i++) {
            for (int j = 0; j <= b.length(); j++) {
                if (i == 0 || j == 0) {
                    d[i][j] = i + j;
                    continue;
                }
                int replaced = d[i - 1][j - 1] + (a.charAt(i - 1) == b.charAt(j - 1) ? 0 : 1);
                d[i][j] = Math.min(replaced, Math.min(d[i - 1][j], d[i][j - 1]) + 1);
                boolean swapped =
                        i > 1 && j > 1 && a.charAt(i - 1) == b.charAt(j - 2) && a.charAt(i - 2) == b.charAt(j - 1);
                if (swapped) {
                    d[i][j] = Math.min(d[i][j], d[i - 2][j - 2] + 1);
                }
            }
        }
        return d[a.length()][b.length()];
    }
}
