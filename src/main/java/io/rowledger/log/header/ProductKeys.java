package io.rowledger.log.header;

import io.rowledger.log.header.ColumnPlan.Place;
import java.util.List;

/** Resolves the product of a column against the keys of the rig file. */
final class ProductKeys {
    private ProductKeys() {}

    /** Returns the role with the product key as spelled in the rig file. */
    static Role withProduct(Place place, ColumnName name, LogOptions options) {
        Role role = name.role();
        List<String> keys = options.productKeys();
        if (!role.quantity().ofProduct() || keys.isEmpty()) {
            return role;
        }
        if (role.product().isEmpty()) {
            if (keys.size() == 1) {
                return new Role(role.quantity(), keys.get(0), role.row());
            }
            throw place.found("a column without a product")
                    .atColumn(name.header().strip())
                    .expected("a product's key before the name, one of " + String.join(", ", keys))
                    .hint("write " + keys.get(0) + "." + role.canonical() + " or " + keys.get(1) + "."
                            + role.canonical() + ", with the unit");
        }
        for (String key : keys) {
            if (ColumnName.plain(key).equals(ColumnName.plain(role.product()))) {
                return new Role(role.quantity(), key, role.row());
            }
        }
        throw place.found("the product " + role.product() + ", which the rig file does not have")
                .atColumn(name.header().strip())
                .expected("a key under products in the rig file: " + String.join(", ", keys))
                .hint("use that key in the header, or add " + role.product() + " under products");
    }
}
