package io.rowledger.results;

import io.rowledger.field.KeepOut;
import io.rowledger.geo.LocalPlane;
import io.rowledger.rig.Product;
import io.rowledger.setback.Setback;
import io.rowledger.setback.Setback.Worst;
import io.rowledger.setback.Setbacks;
import java.time.Instant;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;

/**
 * What was applied within the setback of one place, in {@code summary.json}, {@code nitrogen-record.json} and the layer.
 *
 * @param number from 1, in the order of the file
 * @param closestM distance of the nearest applied ground from the place, m
 * @param coveredAreaM2 covered ground inside, m²
 * @param first first moment inside, null where nothing was applied inside
 * @param worst the row and pass with the most liquid inside, or null
 */
public record SetbackJson(
        int number,
        String name,
        @Decimals(4) double setbackM,
        boolean appliedInside,
        @Decimals(JsonNumbers.LENGTH_M) double closestM,
        @Decimals(JsonNumbers.AREA_M2) double coveredAreaM2,
        @OrNull @Nullable Instant first,
        @OrNull @Nullable Instant last,
        List<Integer> passes,
        List<Integer> rows,
        Map<String, Liquid> products,
        @OrNull @Nullable OneWorst worst) {

    /** All places in the order of the file; null where no such file was given. */
    static @Nullable List<SetbackJson> all(@Nullable Setbacks setbacks, List<Product> products, LocalPlane plane) {
        return setbacks == null
                ? null
                : setbacks.places().stream()
                        .map(setback -> of(setback, products, plane))
                        .toList();
    }

    /** The figures of one place. */
    public static SetbackJson of(Setback setback, List<Product> products, LocalPlane plane) {
        KeepOut keepOut = setback.keepOut();
        return new SetbackJson(
                keepOut.number(),
                keepOut.name(),
                keepOut.setbackM(),
                setback.anythingInside(),
                setback.closestM(),
                setback.coveredM2(),
                JsonNumbers.instant(setback.firstS()),
                JsonNumbers.instant(setback.lastS()),
                setback.passes(),
                setback.rows(),
                ByProduct.of(products, p -> new Liquid(setback.volumeL()[p], setback.nitrogenKg()[p])),
                OneWorst.of(setback.worst(), plane));
    }

    /** Liquid inside, and its nitrogen. */
    public record Liquid(
            @Decimals(JsonNumbers.VOLUME_L) double volumeL,
            @Decimals(JsonNumbers.MASS_KG) double nitrogenKg) {}

    /** The step with the most liquid inside. */
    public record OneWorst(
            int pass,
            int row,
            @OrNull @Nullable Instant time,
            @Decimals(JsonNumbers.VOLUME_L) double volumeL,
            @Decimals(JsonNumbers.DEGREES) double lat,
            @Decimals(JsonNumbers.DEGREES) double lon) {
        static @Nullable OneWorst of(@Nullable Worst worst, LocalPlane plane) {
            if (worst == null) {
                return null;
            }
            double[] latLon = new double[2];
            plane.inverse(worst.eastM(), worst.northM(), latLon);
            return new OneWorst(
                    worst.pass(),
                    worst.row(),
                    JsonNumbers.instant(worst.timeS()),
                    worst.volumeL(),
                    latLon[0],
                    latLon[1]);
        }
    }
}
