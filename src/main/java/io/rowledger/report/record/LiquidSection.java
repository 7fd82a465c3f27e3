package io.rowledger.report.record;

import io.rowledger.document.text.Messages;
import io.rowledger.document.text.TextTruncation;
import io.rowledger.document.text.Wording;
import io.rowledger.finding.Finding;
import io.rowledger.finding.FindingKind;
import io.rowledger.rate.NutrientKg;
import io.rowledger.rate.Nutrients;
import io.rowledger.rate.Nutrients.OfProduct;
import io.rowledger.report.common.Limits;
import io.rowledger.report.findings.FindingTitles;
import io.rowledger.report.record.NitrogenRecord.Liquid;
import io.rowledger.report.record.NitrogenRecord.Sentence;
import io.rowledger.rig.Amount;
import io.rowledger.rig.LoadTicket;
import io.rowledger.rig.Product;
import io.rowledger.text.Argument;
import io.rowledger.text.Message;
import io.rowledger.uncertainty.Interval;
import io.rowledger.units.QuantityKind;
import io.rowledger.units.UnitFormat;
import io.rowledger.units.UnitSystem;
import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Set;

/** The table of products: metered, ordered and delivered volume, and the nutrients in it. */
final class LiquidSection {
    /** Smallest difference between a delivery and the meters that is printed, percent; common practice, no source. */
    private static final double MIN_DIFFERENCE_PCT = 0.5;
    /** Smallest share of a product's volume metered outside of work that is printed; common practice, no source. */
    private static final double MIN_OUTSIDE_WORK_SHARE = 0.002;

    /** Findings that put the metered volume in question. */
    private static final Set<FindingKind> METERING = EnumSet.of(
            FindingKind.METER_DROPOUT, FindingKind.METER_STUCK, FindingKind.METER_SCALE, FindingKind.CHANNELS_SWAPPED);

    private final RecordInput in;
    private final Nutrients nutrients;
    private final Messages messages;
    private final UnitFormat f;

    LiquidSection(RecordInput in, Messages messages) {
        this.in = in;
        this.nutrients = in.nutrients();
        this.messages = messages;
        this.f = messages.units();
    }

    List<Liquid> lines() {
        List<Liquid> lines = new ArrayList<>();
        double coveredM2 = nutrients.areaM2();
        for (OfProduct one : nutrients.products()) {
            Product product = one.product();
            double nitrogenKg = one.kg().nitrogenKg();
            Amount order = in.job().order().get(product.key());
            lines.add(new Liquid(
                    TextTruncation.name(product.name()),
                    analysis(product),
                    density(product),
                    cell(QuantityKind.VOLUME, one.volumeL()),
                    cell(QuantityKind.RATE, one.volumeL() / coveredM2),
                    cell(QuantityKind.NITROGEN, nitrogenKg),
                    cell(QuantityKind.NITROGEN_RATE, nitrogenKg / coveredM2),
                    order == null ? NitrogenRecord.NONE : cell(QuantityKind.VOLUME, order.volumeL()),
                    tickets(product).isEmpty() ? NitrogenRecord.NONE : cell(QuantityKind.VOLUME, deliveredL(product))));
        }
        return lines;
    }

    private String cell(QuantityKind kind, double si) {
        return Wording.cell(f.number(kind, si));
    }

    /** N-P2O5-K2O in percent such as {@code 32-0-0}, with sulfur as a fourth number if there is any. */
    private String analysis(Product product) {
        if (Double.isNaN(product.nitrogenFraction())) {
            return messages.text("words.notRecorded");
        }
        String text = percent(product.nitrogenFraction()) + "-" + percent(product.phosphateFraction()) + "-"
                + percent(product.potashFraction());
        return product.sulfurFraction() > 0 ? text + "-" + percent(product.sulfurFraction()) + "S" : text;
    }

    /** A fraction as a percentage without a trailing zero. */
    private String percent(double fraction) {
        String text = f.fixed(Double.isNaN(fraction) ? 0 : fraction * 100, 1);
        return text.endsWith(".0") ? text.substring(0, text.length() - 2) : text;
    }

    private String density(Product product) {
        if (Double.isNaN(product.densityKgPerL())) {
            return messages.text("words.notRecorded");
        }
        Argument density = Message.value(QuantityKind.DENSITY, product.densityKgPerL());
        return Double.isNaN(product.densityAtC())
                ? messages.text("record.liquid.density", density)
                : messages.text("record.liquid.densityAt", density, f.temperature(product.densityAtC()));
    }

    /** The nitrogen worked out, ordered and delivered compared with metered volume, then the other nutrients. */
    List<Sentence> notes() {
        List<Sentence> notes = new ArrayList<>();
        for (int p = 0; p < nutrients.products().size(); p++) {
            OfProduct one = nutrients.products().get(p);
            if (one.volumeL() > 0 && Double.isFinite(one.kg().nitrogenKg())) {
                notes.add(ofProduct(one, arithmetic(one)));
            }
            bounds(notes, one, p);
            Amount order = in.job().order().get(one.product().key());
            if (order != null) {
                notes.add(ofProduct(one, compared(one, order.volumeL(), Message.of("record.liquid.ordered"))));
            }
            List<LoadTicket> tickets = tickets(one.product());
            if (!tickets.isEmpty()) {
                notes.add(ofProduct(one, compared(one, deliveredL(one.product()), delivered(tickets))));
            }
            double outsideL = in.outsideWorkL().get(p);
            if (outsideL > 0 && !(outsideL <= MIN_OUTSIDE_WORK_SHARE * one.volumeL())) {
                notes.add(ofProduct(
                        one, Message.of("record.liquid.outsideWork", Message.value(QuantityKind.VOLUME, outsideL))));
            }
        }
        for (Finding finding : in.machineFindings()) {
            if (METERING.contains(finding.kind())) {
                notes.add(new Sentence(
                        messages.text("record.liquid.meter", FindingTitles.of(finding), in.cost(finding)), true));
            }
        }
        otherNutrients(notes);
        return notes;
    }

    /** The bounds of the metered volume. */
    private void bounds(List<Sentence> notes, OfProduct one, int p) {
        if (p < in.intervals().products().size()) {
            Interval volumeL = in.intervals().products().get(p).volumeL();
            if (volumeL.known()) {
                notes.add(ofProduct(
                        one,
                        Message.of(
                                in.areas() ? "record.liquid.boundsOfMap" : "record.liquid.bounds",
                                Message.within(QuantityKind.VOLUME, volumeL.value(), volumeL.low(), volumeL.high()),
                                RecordUncertainty.TIMES_IN_TEN)));
            }
        }
    }

    /** {@code 539.9 gal × 11.06 lb/gal × 32% N = 1,911 lb N}. */
    private Message arithmetic(OfProduct one) {
        Product product = one.product();
        return Message.of(
                "record.liquid.arithmetic",
                Message.value(QuantityKind.VOLUME, one.volumeL()),
                Message.value(QuantityKind.DENSITY, product.densityKgPerL()),
                percent(product.nitrogenFraction()),
                Message.value(QuantityKind.NITROGEN, one.kg().nitrogenKg()));
    }

    /** Names the product if there are several. */
    private Sentence ofProduct(OfProduct one, Message note) {
        return new Sentence(
                nutrients.products().size() > 1
                        ? messages.text(
                                "record.liquid.ofProduct",
                                TextTruncation.name(one.product().name()),
                                note)
                        : messages.text(note),
                false);
    }

    private Message compared(OfProduct one, double otherL, Message what) {
        if (!Double.isFinite(otherL)) {
            return Message.of("record.liquid.weighed", what, gallons());
        }
        double differencePct = (otherL / one.volumeL() - 1) * 100;
        Argument other = Message.value(QuantityKind.VOLUME, otherL);
        if (Math.abs(differencePct) < MIN_DIFFERENCE_PCT || !Double.isFinite(differencePct)) {
            return Message.of("record.liquid.same", other, what, Message.percent(MIN_DIFFERENCE_PCT));
        }
        return Message.of(
                differencePct > 0 ? "record.liquid.more" : "record.liquid.less",
                other,
                what,
                Message.value(QuantityKind.VOLUME, Math.abs(otherL - one.volumeL())),
                Message.percent(Math.abs(differencePct)));
    }

    private Message gallons() {
        return f.system() == UnitSystem.US ? Message.of("record.unit.gallons") : Message.of("record.unit.liters");
    }

    private Message delivered(List<LoadTicket> tickets) {
        List<Object> numbers = new ArrayList<>();
        for (LoadTicket ticket : tickets.subList(0, Math.min(tickets.size(), Limits.TICKETS_NAMED))) {
            numbers.add(
                    ticket.number().isEmpty()
                            ? Message.of("record.liquid.noNumber")
                            : TextTruncation.name(ticket.number()));
        }
        int more = tickets.size() - numbers.size();
        return Message.of("record.liquid.delivered", tickets.size(), numbers, more);
    }

    private List<LoadTicket> tickets(Product product) {
        return in.job().tickets().stream()
                .filter(ticket -> ticket.product().equals(product.key()))
                .toList();
    }

    private double deliveredL(Product product) {
        return tickets(product).stream()
                .mapToDouble(ticket -> ticket.amount().volumeL())
                .sum();
    }

    /** Adds phosphate, potash and sulfur, if an analysis names them. */
    private void otherNutrients(List<Sentence> notes) {
        NutrientKg job = nutrients.jobKg();
        List<Message> parts = new ArrayList<>();
        addNutrient(parts, "P\u2082O\u2085", job.phosphateKg());
        addNutrient(parts, "K\u2082O", job.potashKg());
        addNutrient(parts, "S", job.sulfurKg());
        if (!parts.isEmpty()) {
            notes.add(new Sentence(messages.text("record.liquid.otherNutrients", parts), false));
        }
    }

    private void addNutrient(List<Message> parts, String symbol, double kg) {
        if (kg > 0) {
            parts.add(Message.of(
                    f.system() == UnitSystem.US ? "record.liquid.nutrientUs" : "record.liquid.nutrientMetric",
                    Message.value(QuantityKind.NITROGEN, kg),
                    symbol,
                    Message.value(QuantityKind.NITROGEN_RATE, kg / nutrients.areaM2())));
        }
    }
}
