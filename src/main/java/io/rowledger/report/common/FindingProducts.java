package io.rowledger.report.common;

import io.rowledger.analysis.Analysis;
import io.rowledger.diagnose.signal.RowTime;
import io.rowledger.finding.Finding;
import io.rowledger.finding.FindingKind;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.IntStream;
import org.jspecify.annotations.Nullable;

/**
 * The products a finding shows in: a cause common to several products, such as a row's hose or valve, is one finding and
 * stands under the first.
 */
public final class FindingProducts {
    /** In another product a finding shows where its rows were off for this share of its time; common practice, no source. */
    private static final double SHOWS = 0.2;

    private FindingProducts() {}

    /** Indices in rig order of the products in whose pictures finding i shows; its own always. */
    public static List<Integer> of(Analysis a, int i) {
        Finding finding = a.findings().get(i);
        if (finding.kind() == FindingKind.DROP_OFFSET || finding.kind() == FindingKind.SIDE_OFFSET) {
            // The bar's place is every product's.
            return IntStream.range(0, a.rig().products().size()).boxed().toList();
        }
        int own = a.diagnosis().windows().get(i).product();
        List<Integer> products = new ArrayList<>();
        for (int p = 0; p < a.diagnosis().pictures().size(); p++) {
            if (p == own || shows(a.diagnosis().pictures().get(p), finding)) {
                products.add(p);
            }
        }
        return products;
    }

    /** Key of the only product finding i shows in; null where it shows in several. */
    public static @Nullable String onlyKey(Analysis a, int i) {
        List<Integer> in = of(a, i);
        return in.size() == 1 ? a.rig().products().get(in.get(0)).key() : null;
    }

    /** {@code UAN 32-0-0: } where a finding is of one of several products only, else empty. */
    public static String prefix(Analysis a, int i) {
        List<Integer> in = of(a, i);
        if (in.size() >= a.rig().products().size()) {
            return "";
        }
        List<String> names =
                in.stream().map(p -> a.rig().products().get(p).name()).toList();
        return names.isEmpty() ? "" : String.join(", ", names) + ": ";
    }

    private static boolean shows(RowTime picture, Finding finding) {
        int evaluated = 0;
        int off = 0;
        for (int b = 0; b < picture.bins(); b++) {
            if (picture.endS(b) <= finding.fromS() || picture.startS(b) >= finding.toS()) {
                continue;
            }
            for (int row : finding.rows()) {
                double deviation = picture.deviation(row - 1, b);
                evaluated += Double.isNaN(deviation) ? 0 : 1;
                off += Math.abs(deviation) * 100 > Limits.WATCH_PCT ? 1 : 0;
            }
        }
        return evaluated > 0 && off >= SHOWS * evaluated;
    }
}
