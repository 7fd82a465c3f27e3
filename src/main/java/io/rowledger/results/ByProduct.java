package io.rowledger.results;

import io.rowledger.rig.Product;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/** Values of all products, by their keys in the order of the rig file. */
final class ByProduct {
    private ByProduct() {}

    /** The value of one product. */
    interface Value<T> {
        T of(int product);
    }

    static <T> Map<String, T> of(List<Product> products, Value<T> value) {
        Map<String, T> map = new LinkedHashMap<>();
        for (int p = 0; p < products.size(); p++) {
            map.put(products.get(p).key(), value.of(p));
        }
        return map;
    }
}
