package io.rowledger.report.sections;

import io.rowledger.document.text.Messages;
import io.rowledger.document.text.Wording;
import io.rowledger.log.LogTable;
import io.rowledger.report.common.Limits;
import io.rowledger.report.common.ProductSums;
import io.rowledger.report.sections.ZoneSection.ChangeLine;
import io.rowledger.report.sections.ZoneSection.ZoneLine;
import io.rowledger.report.sections.ZoneSection.ZoneTable;
import io.rowledger.rig.Product;
import io.rowledger.text.Message;
import io.rowledger.units.QuantityKind;
import io.rowledger.units.UnitFormat;
import io.rowledger.zones.ZoneChanges;
import io.rowledger.zones.ZoneChanges.Timing;
import io.rowledger.zones.Zones;
import io.rowledger.zones.Zones.ZoneProduct;
import io.rowledger.zones.Zones.ZoneSums;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import org.jspecify.annotations.Nullable;

/** {@link Zones} as printed. */
public final class ZoneSectionBuilder {
    /** Zones listed per product; the rest is summed up here and listed in summary.json. */
    private static final int ZONES_LISTED = 25;

    private final Zones zones;
    private final List<Product> products;
    private final LogTable log;
    private final double coveredM2;
    private final Messages messages;
    private final UnitFormat f;

    private ZoneSectionBuilder(Zones zones, List<Product> products, LogTable log, double coveredM2, Messages messages) {
        this.zones = zones;
        this.products = products;
        this.log = log;
        this.coveredM2 = coveredM2;
        this.messages = messages;
        this.f = messages.units();
    }

    /**
     * The section of a job; without tables if there is no prescription.
     *
     * @param coveredM2 covered ground of the job, m²
     */
    public static ZoneSection build(
            @Nullable Zones zones, List<Product> products, LogTable log, double coveredM2, Messages messages) {
        return zones == null
                ? new ZoneSection(List.of(), "")
                : new ZoneSectionBuilder(zones, products, log, coveredM2, messages).build();
    }

    private ZoneSection build() {
        List<ZoneTable> tables = new ArrayList<>();
        for (int p = 0; p < products.size(); p++) {
            int product = p;
            List<ZoneSums> planned = zones.zones().stream()
                    .filter(zone -> !Double.isNaN(zone.products().get(product).planLPerM2()))
                    .sorted(Comparator.comparingDouble((ZoneSums zone) -> -zone.coveredM2())
                            .thenComparingInt(zone -> zone.zone().number()))
                    .toList();
            if (!planned.isEmpty()) {
                tables.add(table(p, planned));
            }
        }
        double share = 100 * zones.outsideCoveredM2() / coveredM2;
        String outside = zones.outsideCoveredM2() < 1
                ? ""
                : messages.text("words.zones.outside", Message.area(zones.outsideCoveredM2()), Message.percent(share));
        return new ZoneSection(tables, outside);
    }

    private ZoneTable table(int p, List<ZoneSums> planned) {
        Product product = products.get(p);
        int listed = Math.min(ZONES_LISTED, planned.size());
        List<ZoneLine> lines = new ArrayList<>();
        for (ZoneSums zone : planned.subList(0, listed)) {
            lines.add(line(zone, p, product));
        }
        return new ZoneTable(
                product.name(),
                log.hasTarget(p),
                lines,
                rest(planned.subList(listed, planned.size()), p),
                changes(zones.changes().get(p)),
                pairs(zones.changes().get(p)));
    }

    private ZoneLine line(ZoneSums zone, int p, Product product) {
        ZoneProduct sums = zone.products().get(p);
        double off = ProductSums.offPct(sums.receivedL(), sums.plannedCoveredL());
        return new ZoneLine(
                Wording.label(zone.zone().label()),
                f.number(QuantityKind.AREA, zone.areaM2()),
                f.number(QuantityKind.AREA, zone.coveredM2()),
                f.number(QuantityKind.RATE, sums.planLPerM2()),
                f.number(QuantityKind.VOLUME, sums.plannedCoveredL()),
                Wording.cell(f.number(QuantityKind.VOLUME, sums.loggedTargetL())),
                f.number(QuantityKind.VOLUME, sums.receivedL()),
                Wording.cell(f.number(QuantityKind.RATE, sums.meanRateLPerM2())),
                Wording.cell(f.signedPercent(off)),
                off,
                Limits.mark(off),
                Wording.cell(f.percent(sums.within10Pct())),
                Wording.cell(f.number(QuantityKind.NITROGEN, sums.receivedL() * product.nitrogenKgPerL())),
                Wording.cell(f.number(QuantityKind.NITROGEN_RATE, sums.meanRateLPerM2() * product.nitrogenKgPerL())));
    }

    private String rest(List<ZoneSums> others, int p) {
        if (others.isEmpty()) {
            return "";
        }
        double restM2 = 0;
        double plannedL = 0;
        double receivedL = 0;
        for (ZoneSums zone : others) {
            restM2 += zone.coveredM2();
            plannedL += zone.products().get(p).plannedCoveredL();
            receivedL += zone.products().get(p).receivedL();
        }
        return messages.text(
                "words.zones.more",
                others.size(),
                Message.area(restM2),
                Message.value(QuantityKind.VOLUME, plannedL),
                Message.value(QuantityKind.VOLUME, receivedL));
    }

    private String changes(ZoneChanges changes) {
        Timing all = changes.all();
        Message why = changes.why();
        if (why != null) {
            return messages.text("words.zones.unknown", why);
        }
        String changed = messages.text(
                "words.zones.changed",
                from(all.lateM()),
                Message.decimal(Math.abs(all.lateS()), 1),
                all.evaluated(),
                range(all),
                Double.isNaN(all.settledM()) ? "" : Message.of("words.zones.settled", from(all.settledM())));
        return all.unfollowed() == 0
                ? changed
                : changed + " " + messages.text("words.zones.unfollowed", all.unfollowed());
    }

    private static Message range(Timing timing) {
        return Message.of("words.zones.range", from(timing.minLateM()), from(timing.maxLateM()));
    }

    /** {@code 7.5 ft behind the line}. */
    private static Message from(double lateM) {
        return Message.of(
                lateM < 0 ? "words.zones.before" : "words.zones.behind",
                Message.value(QuantityKind.LENGTH, Math.abs(lateM)));
    }

    private List<ChangeLine> pairs(ZoneChanges changes) {
        List<ChangeLine> lines = new ArrayList<>();
        for (ZoneChanges.Pair pair : changes.pairs()) {
            if (pair.timing().known()) {
                lines.add(new ChangeLine(
                        label(pair.from()),
                        label(pair.to()),
                        f.count(pair.timing().evaluated()),
                        messages.text("words.zones.pair", from(pair.timing().lateM()), range(pair.timing()))));
            }
        }
        return lines;
    }

    private String label(int number) {
        return Wording.label(zones.zones().get(number - 1).zone().label());
    }
}
