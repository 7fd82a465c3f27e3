package io.rowledger.report;

import io.rowledger.report.NitrogenRecord.Liquid;
import io.rowledger.rig.Amount;
import io.rowledger.rig.LoadTicket;
import io.rowledger.rig.Product;
import io.rowledger.units.Measure;
import io.rowledger.units.UnitFormat;
import io.rowledger.units.UnitSystem;
import java.util.ArrayList;
import java.util.List;

/** What was put on, product by product: metered, ordered, delivered, and the nutrients in it. */
final class LiquidSection {
    private static final String DASH = "\u2013";
    /** A difference smaller than this goes without an "only": no meter and no scale ticket is closer, percent. */
    private static final double SAME_PCT = 0.5;

    private final Analysis a;
    private final UnitFormat f;

    LiquidSection(Analysis a, UnitFormat f) {
        this.a = a;
        this.f = f;
    }

    List<Liquid> lines() {
        List<Liquid> lines = new ArrayList<>();
        double coveredM2 = a.coverage().coveredAreaM2();
        for (int p = 0; p < a.rig().products().size(); p++) {
            Product product = a.rig().products().get(p);
            double volumeL = ProductSums.of(a, p).volumeL();
            double nitrogenKg = volumeL * product.nitrogenKgPerL();
            Amount order = a.rig().job().order().get(product.key());
            lines.add(new Liquid(
                    Cut.name(product.name()),
                    analysis(product),
                    density(product),
                    cell(f.number(Measure.VOLUME, volumeL)),
                    cell(f.number(Measure.RATE, volumeL / coveredM2)),
                    cell(f.number(Measure.NITROGEN, nitrogenKg)),
                    cell(f.number(Measure.NITROGEN_RATE, nitrogenKg / coveredM2)),
                    order == null ? DASH : cell(f.number(Measure.VOLUME, order.volumeL())),
                    tickets(product).isEmpty() ? DASH : cell(f.number(Measure.VOLUME, deliveredL(product)))));
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
        return f.text(Measure.DENSITY, product.densityKgPerL()) + at;
    }

    /** Ordered and delivered against metered, then the other nutrients. */
    List<String> notes() {
        List<String> notes = new ArrayList<>();
        for (int p = 0; p < a.rig().products().size(); p++) {
            Product product = a.rig().products().get(p);
            double volumeL = ProductSums.of(a, p).volumeL();
            Amount order = a.rig().job().order().get(product.key());
            if (order != null) {
                notes.add(against(product, volumeL, order.volumeL(), "were ordered"));
            }
            List<LoadTicket> tickets = tickets(product);
            if (!tickets.isEmpty()) {
                String by = "came by " + Wording.counted(tickets.size(), "load ticket", "load tickets") + " ("
                        + numbers(tickets) + ")";
                notes.add(against(product, volumeL, deliveredL(product), by));
            }
        }
        String others = others();
        if (!others.isEmpty()) {
            notes.add(others);
        }
        return notes;
    }

    private String against(Product product, double meteredL, double otherL, String what) {
        String name = a.rig().products().size() > 1 ? Cut.name(product.name()) + ": " : "";
        if (!Double.isFinite(otherL)) {
            return name + "an unknown volume (weighed, and no density to turn it into " + liters() + ") " + what + ".";
        }
        double offPct = (otherL / meteredL - 1) * 100;
        String difference = Math.abs(offPct) < SAME_PCT || !Double.isFinite(offPct)
                ? ", the same as the meters counted within 0.5%"
                : ", " + f.text(Measure.VOLUME, Math.abs(otherL - meteredL)) + " (" + f.percent(Math.abs(offPct)) + ") "
                        + (offPct > 0 ? "more" : "less") + " than the meters counted";
        return name + f.text(Measure.VOLUME, otherL) + " " + what + "\u2020" + difference + ".";
    }

    private String liters() {
        return f.system() == UnitSystem.US ? "gallons" : "liters";
    }

    private static String numbers(List<LoadTicket> tickets) {
        List<String> numbers = new ArrayList<>();
        for (LoadTicket ticket : tickets) {
            numbers.add(ticket.number().isEmpty() ? "no number" : Cut.name(ticket.number()));
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
        double[] kg = new double[3];
        for (int p = 0; p < a.rig().products().size(); p++) {
            Product product = a.rig().products().get(p);
            double massKg = ProductSums.of(a, p).volumeL() * product.densityKgPerL();
            kg[0] += some(massKg, product.phosphateFraction());
            kg[1] += some(massKg, product.potashFraction());
            kg[2] += some(massKg, product.sulfurFraction());
        }
        String[] names = {"P\u2082O\u2085", "K\u2082O", "S"};
        List<String> parts = new ArrayList<>();
        for (int i = 0; i < kg.length; i++) {
            if (kg[i] > 0) {
                boolean us = f.system() == UnitSystem.US;
                parts.add(f.number(Measure.NITROGEN, kg[i]) + "\u00a0" + (us ? "lb " : "kg ") + names[i] + " ("
                        + f.number(Measure.NITROGEN_RATE, kg[i] / a.coverage().coveredAreaM2())
                        + "\u00a0" + (us ? "lb/ac" : "kg/ha") + ")");
            }
        }
        return parts.isEmpty() ? "" : "Besides nitrogen: " + String.join(", ", parts) + ".";
    }

    private static double some(double massKg, double fraction) {
        return fraction > 0 ? massKg * fraction : 0;
    }

    private static String cell(String text) {
        return UnitFormat.UNKNOWN.equals(text) ? DASH : text;
    }
}
