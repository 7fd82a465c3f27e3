package io.rowledger.results;

import io.rowledger.analysis.Analysis;
import java.util.LinkedHashMap;
import java.util.Map;

/** Values of all products, by their keys in the order of the rig file. */
final class ByProduct {
    private ByProduct() {}

    /** The value of one product. */
    interface Value<T> {
        T of(int product);
    }

    static <T> Map<String, T> of(Analysis a, Value<T> value) {
        Map<String, T> map = new LinkedHashMap<>();
        for (int p = 0; p < a.rig().products().size(); p++) {
            map.put(a.rig().products().get(p).key(), value.of(p));
        }
        return map;
    }
}
