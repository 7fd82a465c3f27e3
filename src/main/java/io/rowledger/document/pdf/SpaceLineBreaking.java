package io.rowledger.document.pdf;

import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;
import org.xhtmlrenderer.css.style.CalculatedStyle;
import org.xhtmlrenderer.layout.breaker.BreakPoint;
import org.xhtmlrenderer.layout.breaker.BreakPointsProvider;
import org.xhtmlrenderer.layout.breaker.LineBreakingStrategy;
import org.xhtmlrenderer.layout.breaker.ListBreakPointsProvider;

/**
 * Breaks lines at spaces only, so that −50.0% and 08:15:30 stay whole; a word too long for any column, such as a file name,
 * may break anywhere. Unlike the rule of the library it does not depend on the machine's locale.
 */
final class SpaceLineBreaking implements LineBreakingStrategy {
    /** Longest word that never breaks, characters: units, times and places are shorter. */
    private static final int LONG_WORD = 26;

    @Override
    public BreakPointsProvider getBreakPointsProvider(String text, @Nullable String lang, CalculatedStyle style) {
        List<BreakPoint> points = new ArrayList<>();
        int n = text.length();
        int start = 0;
        while (start < n) {
            int end = start;
            while (end < n && !isSpace(text.charAt(end))) {
                end++;
            }
            for (int i = start + LONG_WORD; end - start > LONG_WORD && i < end; i++) {
                points.add(new BreakPoint(i));
            }
            while (end < n && isSpace(text.charAt(end))) {
                end++;
            }
            points.add(new BreakPoint(end));
            start = end;
        }
        return new ListBreakPointsProvider(points);
    }

    /** True for a space; false for the no-break space between value and unit. */
    private static boolean isSpace(char c) {
        return c == ' ' || c == '\n' || c == '\t';
    }
}
