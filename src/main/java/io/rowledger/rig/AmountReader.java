package io.rowledger.rig;

import io.rowledger.rig.Amount.DensityFrom;
import io.rowledger.text.Message;
import io.rowledger.units.Dimension;
import java.util.List;

/** Amounts ordered or weighed, and load tickets. */
final class AmountReader {
    /** Relative difference up to which two densities are equal (1): tickets print hundredths of a lb/gal. */
    private static final double SAME_DENSITY = 0.001;

    private AmountReader() {}

    /** The volume or weight under a key, with the other by the product's density. */
    static Amount amount(YamlMap map, String key, Product product) {
        String entered = map.text(key, "a volume or a weight");
        if (map.isQuantity(key, Dimension.MASS)) {
            return ofMass(positive(map, key, Dimension.MASS), product.densityKgPerL(), DensityFrom.PRODUCT, entered);
        }
        return ofVolume(positive(map, key, Dimension.VOLUME), product.densityKgPerL(), DensityFrom.PRODUCT, entered);
    }

    static LoadTicket ticket(YamlMap item, List<Product> products) {
        item.only("number", "date", "product", "volume", "weight", "density", "temperature");
        Product product = products.size() == 1 && !item.has("product")
                ? products.get(0)
                : JobReader.product(
                        item, "product", item.text("product", "a key that stands under products"), products, "");
        double own = ProductReader.density(item);
        double density = Double.isNaN(own) ? product.densityKgPerL() : own;
        DensityFrom from = Double.isNaN(own) ? DensityFrom.PRODUCT : DensityFrom.TICKET;
        return new LoadTicket(
                item.textOr("number", ""),
                item.textOr("date", ""),
                product.key(),
                ticketAmount(item, density, from),
                item.quantityOr("temperature", Dimension.TEMPERATURE, Double.NaN));
    }

    private static Amount ticketAmount(YamlMap item, double density, DensityFrom from) {
        boolean weighed = item.has("weight");
        boolean measured = item.has("volume");
        if (!weighed && !measured) {
            throw item.fault("a load ticket without volume and weight")
                    .expected("volume or weight, or both")
                    .hint("add a line such as volume: 1300 gal or weight: 14380 lb");
        }
        if (!weighed) {
            return ofVolume(positive(item, "volume", Dimension.VOLUME), density, from, item.text("volume", "a volume"));
        }
        String entered = item.text("weight", "a weight");
        double massKg = positive(item, "weight", Dimension.MASS);
        if (!measured) {
            return ofMass(massKg, density, from, entered);
        }
        double volumeL = positive(item, "volume", Dimension.VOLUME);
        return new Amount(
                volumeL, massKg, Double.NaN, DensityFrom.NONE, item.text("volume", "a volume") + ", " + entered);
    }

    /** Adds a note for each load whose density differs from the product's: nitrogen follows the product's. */
    static void noteDensities(List<LoadTicket> tickets, List<Product> products, List<Message> notes) {
        for (LoadTicket ticket : tickets) {
            Product product = products.stream()
                    .filter(one -> one.key().equals(ticket.product()))
                    .findFirst()
                    .orElseThrow();
            Amount amount = ticket.amount();
            double density = amount.densityFrom() == DensityFrom.NONE
                    ? amount.massKg() / amount.volumeL()
                    : amount.densityKgPerL();
            double off = Math.abs(density / product.densityKgPerL() - 1);
            if (off > SAME_DENSITY) {
                notes.add(Message.of(
                        density > product.densityKgPerL() ? "notes.ticket.denser" : "notes.ticket.lighter",
                        ticket.number(),
                        Message.percent(100 * off),
                        product.name()));
            }
        }
    }

    private static double positive(YamlMap map, String key, Dimension dimension) {
        double value = map.quantity(key, dimension);
        if (!(value > 0)) {
            throw map.fault(key, "\"" + map.text(key, "an amount") + "\"")
                    .expected("an amount above zero")
                    .hint("write what was ordered or delivered, or take the line out");
        }
        return value;
    }

    private static Amount ofVolume(double volumeL, double density, DensityFrom from, String entered) {
        boolean known = !Double.isNaN(density);
        return new Amount(volumeL, volumeL * density, density, known ? from : DensityFrom.NONE, entered);
    }

    private static Amount ofMass(double massKg, double density, DensityFrom from, String entered) {
        boolean known = !Double.isNaN(density);
        return new Amount(massKg / density, massKg, density, known ? from : DensityFrom.NONE, entered);
    }
}
