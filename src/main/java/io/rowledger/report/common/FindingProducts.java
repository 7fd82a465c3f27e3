package io.rowledger.report.common;

import io.rowledger.diagnose.Diagnosis;
import io.rowledger.diagnose.signal.RowTime;
import io.rowledger.finding.Finding;
import io.rowledger.finding.FindingKind;
import io.rowledger.rig.Product;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.IntStream;
import org.jspecify.annotations.Nullable;

/**
 * The products a finding shows in: a cause common to several products, such as a row's hose or valve, is one finding and
 * stands under the first.
 */
public record FindingProducts(List<Product> products, Diagnosis diagnosis) {
    /** Fraction of a finding's time in which its rows must be off for it to show in another product; common practice, no source. */
    private static final double MIN_OFF_SHARE = 0.2;

    /** Copies the list. */
    public FindingProducts {
        products = List.copyOf(products);
    }

    /** Indices in rig order of the products in whose pictures finding i shows; its own always. */
    public List<Integer> of(int i) {
        Finding finding = diagnosis.findings().get(i);
        if (finding.kind() == FindingKind.DROP_OFFSET || finding.kind() == FindingKind.SIDE_OFFSET) {
            // The place of the bar is common to all products.
            return IntStream.range(0, products.size()).boxed().toList();
        }
        int own = diagnosis.windows().get(i).product();
        List<Integer> in = new ArrayList<>();
        for (int p = 0; p < diagnosis.pictures().size(); p++) {
            if (p == own || shows(diagnosis.pictures().get(p), finding)) {
                in.add(p);
            }
        }
        return in;
    }

    /** Key of the only product finding i shows in; null if it shows in several. */
    public @Nullable String onlyKey(int i) {
        List<Integer> in = of(i);
        return in.size() == 1 ? products.get(in.get(0)).key() : null;
    }

    /** {@code UAN 32-0-0: } if a finding shows in some of several products only, else empty. */
    public String prefix(int i) {
        List<Integer> in = of(i);
        if (in.size() >= products.size()) {
            return "";
        }
        List<String> names = in.stream().map(p -> products.get(p).name()).toList();
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
        return evaluated > 0 && off >= MIN_OFF_SHARE * evaluated;
    }
}
