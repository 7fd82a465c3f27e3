package io.rowledger.results;

import io.rowledger.rig.Product;
import io.rowledger.text.Message;
import io.rowledger.zones.ZoneChanges;
import io.rowledger.zones.ZoneChanges.Timing;
import io.rowledger.zones.Zones;
import io.rowledger.zones.Zones.ZoneProduct;
import io.rowledger.zones.Zones.ZoneSums;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;

/**
 * The prescription against what was done, zone by zone.
 *
 * @param zones the zones in the order of the file
 * @param outsideZones what was applied outside all zones
 * @param zoneChanges how the rate changed at the lines between zones, by product
 */
public record PrescriptionJson(List<Zone> zones, Outside outsideZones, Map<String, Changes> zoneChanges) {

    /** Null without a prescription. */
    static @Nullable PrescriptionJson of(@Nullable Zones zones, List<Product> products) {
        return zones == null
                ? null
                : new PrescriptionJson(
                        zones.zones().stream()
                                .map(zone -> Zone.of(zone, products))
                                .toList(),
                        new Outside(
                                zones.outsideCoveredM2(),
                                ByProduct.of(products, p -> new Volume(zones.outsideReceivedL()[p]))),
                        ByProduct.of(products, p -> Changes.of(zones.changes().get(p))));
    }

    /** One zone; the map layer has the same figures. */
    public record Zone(
            int zone,
            String name,
            @Decimals(JsonNumbers.AREA_M2) double areaM2,
            @Decimals(JsonNumbers.AREA_M2) double coveredAreaM2,
            Map<String, OfProduct> products) {
        /** The figures of one zone. */
        public static Zone of(ZoneSums zone, List<Product> products) {
            return new Zone(
                    zone.zone().number(),
                    zone.zone().name(),
                    zone.areaM2(),
                    zone.coveredM2(),
                    ByProduct.of(products, p -> OfProduct.of(zone.products().get(p), products.get(p))));
        }
    }

    /**
     * One product in a zone.
     *
     * @param plannedVolumeL planned rate times covered ground
     * @param plannedZoneVolumeL planned rate times the whole zone
     * @param targetVolumeL target rate of the machine times covered ground
     */
    record OfProduct(
            @Decimals(JsonNumbers.RATE) double plannedRateLPerHa,
            @Decimals(JsonNumbers.VOLUME_L) double plannedVolumeL,
            @Decimals(JsonNumbers.VOLUME_L) double plannedZoneVolumeL,
            @Decimals(JsonNumbers.VOLUME_L) double targetVolumeL,
            @Decimals(JsonNumbers.VOLUME_L) double volumeL,
            @Decimals(JsonNumbers.RATE) double meanRateLPerHa,
            @Decimals(JsonNumbers.MASS_KG) double nitrogenKg,
            @Decimals(JsonNumbers.PCT) double within5Pct,
            @Decimals(JsonNumbers.PCT) double within10Pct,
            @Decimals(JsonNumbers.PCT) double within20Pct) {
        static OfProduct of(ZoneProduct z, Product product) {
            return new OfProduct(
                    JobJson.perHa(z.planLPerM2()),
                    z.plannedCoveredL(),
                    z.plannedZoneL(),
                    z.loggedTargetL(),
                    z.receivedL(),
                    JobJson.perHa(z.meanRateLPerM2()),
                    z.receivedL() * product.nitrogenKgPerL(),
                    z.within5Pct(),
                    z.within10Pct(),
                    z.within20Pct());
        }
    }

    /** Covered ground in no zone, and the liquid on it. */
    record Outside(@Decimals(JsonNumbers.AREA_M2) double coveredAreaM2, Map<String, Volume> products) {}

    /** Liquid of one product. */
    record Volume(@Decimals(JsonNumbers.VOLUME_L) double volumeL) {}

    /** How the rate changed at lines between zones; {@code whyNotKnown} is a code, empty if it is known. */
    record Changes(Delay all, String whyNotKnown, List<Pair> pairs) {
        static Changes of(ZoneChanges changes) {
            return new Changes(
                    Delay.of(changes.all()),
                    lastPart(changes.why()),
                    changes.pairs().stream()
                            .map(pair -> new Pair(pair.from(), pair.to(), Delay.of(pair.timing())))
                            .toList());
        }
    }

    /** Returns the last part of a message's key, such as {@code not_followed}; empty for null. */
    private static String lastPart(@Nullable Message message) {
        return message == null ? "" : message.key().substring(message.key().lastIndexOf('.') + 1);
    }

    /** Crossings from one zone into another. */
    record Pair(int fromZone, int toZone, Delay delay) {}

    /**
     * Where the rate changed, behind the line.
     *
     * @param evaluated crossings that could be evaluated
     * @param unfollowed crossings at which the rate did not change
     * @param lateM median distance, m
     * @param settledM median distance at which the rate had settled, m
     */
    record Delay(
            int crossings,
            int evaluated,
            int unfollowed,
            @Decimals(JsonNumbers.LENGTH_M) double lateM,
            @Decimals(JsonNumbers.LENGTH_M) double minLateM,
            @Decimals(JsonNumbers.LENGTH_M) double maxLateM,
            @Decimals(2) double lateS,
            @Decimals(JsonNumbers.LENGTH_M) double settledM) {
        static Delay of(Timing timing) {
            return new Delay(
                    timing.crossings(),
                    timing.evaluated(),
                    timing.unfollowed(),
                    timing.lateM(),
                    timing.minLateM(),
                    timing.maxLateM(),
                    timing.lateS(),
                    timing.settledM());
        }
    }
}
