package io.rowledger.report.record;

import io.rowledger.document.text.TextTruncation;
import io.rowledger.rate.Nutrients;
import io.rowledger.rig.Product;
import io.rowledger.text.Message;
import java.util.List;

/** Why the nitrogen of a job is not known. */
final class UnknownNitrogen {
    private UnknownNitrogen() {}

    /** A clause for each product whose volume, density or analysis is not known. */
    static List<Message> reasons(RecordInput in) {
        return in.nutrients().products().stream()
                .filter(one -> Double.isNaN(one.kg().nitrogenKg()))
                .map(UnknownNitrogen::reason)
                .toList();
    }

    private static Message reason(Nutrients.OfProduct one) {
        Product product = one.product();
        String name = TextTruncation.name(product.name());
        if (Double.isNaN(one.volumeL())) {
            return Message.of("record.unknown.flow", name);
        }
        boolean density = Double.isNaN(product.densityKgPerL());
        boolean analysis = Double.isNaN(product.nitrogenFraction());
        return Message.of(
                density && analysis
                        ? "record.unknown.both"
                        : density ? "record.unknown.density" : "record.unknown.analysis",
                name);
    }
}
