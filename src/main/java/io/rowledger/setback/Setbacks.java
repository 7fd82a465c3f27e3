package io.rowledger.setback;

import io.rowledger.coverage.Coverage;
import io.rowledger.coverage.strips.StripPolygon;
import io.rowledger.field.KeepOuts;
import io.rowledger.parallel.ParallelTasks;
import io.rowledger.rate.Delivery;
import io.rowledger.rig.Product;
import io.rowledger.strip.Strips;
import java.util.List;

/**
 * What was applied within the setbacks of a keep-out file.
 *
 * @param file the file
 * @param places per place, in the file's order
 */
public record Setbacks(String file, List<Setback> places) {
    /** Copies the list. */
    public Setbacks {
        places = List.copyOf(places);
    }

    /** Returns the places within whose setback anything was applied, in the file's order. */
    public List<Setback> touched() {
        return places.stream().filter(Setback::anythingInside).toList();
    }

    /**
     * Compares every place with every strip.
     *
     * @param covered the strips' polygons, {@link Coverage#strips}
     * @param products in rig order
     * @param threads the result is the same for any number
     */
    public static Setbacks of(
            KeepOuts keepOuts,
            Strips strips,
            Delivery delivery,
            List<StripPolygon> covered,
            List<Product> products,
            int threads) {
        StepBlocks blocks = new StepBlocks(strips);
        List<Setback> places = ParallelTasks.map(
                keepOuts.places().size(),
                threads,
                i -> new SetbackFinder(strips, delivery, blocks, covered)
                        .find(keepOuts.places().get(i), products));
        return new Setbacks(keepOuts.file(), places);
    }
}
