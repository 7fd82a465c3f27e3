package io.rowledger.report.findings;

import io.rowledger.diagnose.Diagnosis;
import io.rowledger.rig.Product;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * The products a finding shows in: a cause common to several products, such as a row's hose or valve, is one finding and
 * stands under the first.
 */
public record FindingProducts(List<Product> products, Diagnosis diagnosis) {
    /** Copies the list. */
    public FindingProducts {
        products = List.copyOf(products);
    }

    /** Indices in rig order of the products in which finding i shows; its own always. */
    public List<Integer> of(int i) {
        return diagnosis.productsOf(i);
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
}
