package io.rowledger.report.record;

import io.rowledger.analysis.Analysis;
import io.rowledger.document.text.TextTruncation;
import io.rowledger.document.text.Wording;
import io.rowledger.rate.NutrientKg;
import io.rowledger.rate.Nutrients;
import io.rowledger.rate.Nutrients.OfProduct;
import io.rowledger.rate.RatesBuilder;
import io.rowledger.report.common.Limits;
import io.rowledger.report.record.NitrogenRecord.Liquid;
import io.rowledger.rig.Amount;
import io.rowledger.rig.LoadTicket;
import io.rowledger.rig.Product;
import io.rowledger.units.QuantityKind;
import io.rowledger.units.UnitFormat;
import io.rowledger.units.UnitSystem;
import java.util.ArrayList;
import java.util.List;

/** What was put on, product by product: metered, ordered, delivered, and the nutrients in it. */
final class LiquidSection {
    private static final String DASH = "\u2013";
    /** A difference smaller than this goes without an "only": no meter and no scale ticket is closer, percent. */
    private static final double SAME_PCT = 0.5;
    /** Less than this share metered outside of work is not worth a line; common practice, no source. */
    private static final double OUTSIDE_WORK = 0.002;

    private final Analysis a;
    private final UnitFormat f;
    private final Nutrients nutrients;

    LiquidSection(Analysis a, UnitFormat f) {
        this.a = a;
        this.f = f;
        this.nutrients = NitrogenSums.nutrients(a);
    }

    List<Liquid> lines() {
        List<Liquid> lines = new ArrayList<>();
        double coveredM2 = nutrients.areaM2();
        for (OfProduct one : nutrients.products()) {
            Product product = one.product();
            double nitrogenKg = one.kg().nitrogenKg();
            Amount order = a.rig().job().order().get(product.key());
            lines.add(new Liquid(
                    TextTruncation.name(product.name()),
                    analysis(product),
                    density(product),
                    cell(f.number(QuantityKind.VOLUME, one.volumeL())),
                    cell(f.number(QuantityKind.RATE, one.volumeL() / coveredM2)),
                    cell(f.number(QuantityKind.NITROGEN, nitrogenKg)),
                    cell(f.number(QuantityKind.NITROGEN_RATE, nitrogenKg / coveredM2)),
                    order == null ? DASH : cell(f.number(QuantityKind.VOLUME, order.volumeL())),
                    tickets(product).isEmpty() ? DASH : cell(f.number(QuantityKind.VOLUME, deliveredL(product)))));
        }
        return lines;
    }

    /** {@code 32-0-0}, with S as a fourth number where there is any. */
    private String analysis(Product product) {
        if (Double.isNaN(product.nitrogenFraction())) {
            return "not recorded";
        }
        String text = percent(product.nitrogenFraction()) + "-" + percent(product.phosphateFraction()) + "-"
                + percent(product.potashFraction());
        return product.sulfurFraction() > 0 ? text + "-" + percent(product.sulfurFraction()) + "S" : text;
    }

    private String percent(double fraction) {
        double value = Double.isNaN(fraction) ? 0 : fraction * 100;
        String text = f.fixed(value, 1);
        return text.endsWith(".0") ? text.substring(0, text.length() - 2) : text;
    }

    private String density(Product product) {
        if (Double.isNaN(product.densityKgPerL())) {
            return "not recorded";
        }
        String at = Double.isNaN(product.densityAtC())
                ? ", temperature not recorded"
                : " at " + f.temperature(product.densityAtC());
        return f.text(QuantityKind.DENSITY, product.densityKgPerL()) + at;
    }

    /** Ordered and delivered against metered, then the other nutrients. */
    List<String> notes() {
        List<String> notes = new ArrayList<>();
        double[] outsideWorkL = RatesBuilder.volumeOutsideWorkL(a.track(), a.delivery());
        for (int p = 0; p < nutrients.products().size(); p++) {
            OfProduct one = nutrients.products().get(p);
            Amount order = a.rig().job().order().get(one.product().key());
            if (order != null) {
                notes.add(against(one, order.volumeL(), "ordered"));
            }
            List<LoadTicket> tickets = tickets(one.product());
            if (!tickets.isEmpty()) {
                String by = "delivered on " + Wording.counted(tickets.size(), "load ticket", "load tickets") + " ("
                        + numbers(tickets) + ")";
                notes.add(against(one, deliveredL(one.product()), by));
            }
            if (outsideWorkL[p] > OUTSIDE_WORK * one.volumeL()) {
                notes.add(of(one) + f.text(QuantityKind.VOLUME, outsideWorkL[p])
                        + " more ran through the meters while the bar was lifted, standing or backing; it is in no figure"
                        + " here.");
            }
        }
        String others = others();
        if (!others.isEmpty()) {
            notes.add(others);
        }
        return notes;
    }

    private String of(OfProduct one) {
        return nutrients.products().size() > 1
                ? TextTruncation.name(one.product().name()) + ": "
                : "";
    }

    private String against(OfProduct one, double otherL, String what) {
        String unit = f.system() == UnitSystem.US ? "gallons" : "liters";
        if (!Double.isFinite(otherL)) {
            return of(one) + what + "\u2020: not known in " + unit
                    + ", because it was weighed and its density is not known.";
        }
        double offPct = (otherL / one.volumeL() - 1) * 100;
        String difference = Math.abs(offPct) < SAME_PCT || !Double.isFinite(offPct)
                ? ", within 0.5% of what the meters counted"
                : ", " + f.text(QuantityKind.VOLUME, Math.abs(otherL - one.volumeL())) + " ("
                        + f.percent(Math.abs(offPct)) + ") " + (offPct > 0 ? "more" : "less")
                        + " than the meters counted";
        return of(one) + f.text(QuantityKind.VOLUME, otherL) + " " + what + "\u2020" + difference + ".";
    }

    private static String numbers(List<LoadTicket> tickets) {
        List<String> numbers = new ArrayList<>();
        for (LoadTicket ticket : tickets) {
            numbers.add(ticket.number().isEmpty() ? "no number" : TextTruncation.name(ticket.number()));
        }
        int shown = Math.min(numbers.size(), Limits.TICKETS_NAMED);
        String rest = numbers.size() > shown ? " and " + (numbers.size() - shown) + " more" : "";
        return "no. " + String.join(", ", numbers.subList(0, shown)) + rest;
    }

    private List<LoadTicket> tickets(Product product) {
        return a.rig().job().tickets().stream()
                .filter(ticket -> ticket.product().equals(product.key()))
                .toList();
    }

    private double deliveredL(Product product) {
        double sum = 0;
        for (LoadTicket ticket : tickets(product)) {
            sum += ticket.amount().volumeL();
        }
        return sum;
    }

    /** Phosphate, potash and sulfur where an analysis has them. */
    private String others() {
        NutrientKg job = nutrients.jobKg();
        double[] kg = {job.phosphateKg(), job.potashKg(), job.sulfurKg()};
        String[] names = {"P\u2082O\u2085", "K\u2082O", "S"};
        boolean us = f.system() == UnitSystem.US;
        List<String> parts = new ArrayList<>();
        for (int i = 0; i < kg.length; i++) {
            if (kg[i] > 0) {
                parts.add(f.number(QuantityKind.NITROGEN, kg[i]) + "\u00a0" + (us ? "lb " : "kg ") + names[i] + " ("
                        + f.number(QuantityKind.NITROGEN_RATE, kg[i] / nutrients.areaM2()) + "\u00a0"
                        + (us ? "lb/ac" : "kg/ha") + ")");
            }
        }
        return parts.isEmpty() ? "" : "Besides nitrogen: " + String.join(", ", parts) + ".";
    }

    private static String cell(String text) {
        return UnitFormat.UNKNOWN.equals(text) ? DASH : text;
    }
}
