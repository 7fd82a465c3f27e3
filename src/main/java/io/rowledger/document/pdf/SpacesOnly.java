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
 * Lines break at spaces and nowhere else, so that −50.0% and 08:15:30 stay whole; only a word too long for any column (a
 * file name) may break anywhere. Unlike the library's own rule it doesn't ask for the machine's locale.
 */
final class SpacesOnly implements LineBreakingStrategy {
    /** No unit, time or place is this long. */
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

    /** Not the no-break space, which is there to hold figure and unit together. */
    private static boolean isSpace(char c) {
        return c == ' ' || c == '\n' || c == '\t';
    }
}
