package io.rowledger.field;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import io.rowledger.finding.UnusableInputException;
import io.rowledger.geo.LocalPlane;
import io.rowledger.maps.MapShape;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class SelfIntersectionsTest {
    private static final LocalPlane PLANE = new LocalPlane(41.5, -93.5);

    @TempDir
    Path folder;

    private static MapShape ring(double... lonLat) {
        return new MapShape(MapShape.Kind.POLYGON, List.of(lonLat));
    }

    /** Counted on paper: a square has none, a bow tie one; a ring meets itself where it closes. */
    @Test
    void crossings_are_counted() {
        int square = SelfIntersections.count(ring(0, 0, 1, 0, 1, 1, 0, 1, 0, 0));
        int tie = SelfIntersections.count(ring(0, 0, 1, 1, 1, 0, 0, 1, 0, 0));
        assertEquals(1, square, "the last edge meets the first where the ring closes");
        assertEquals(square + 1, tie);
    }

    /** Three thousand times around the same square: nine million meetings of edges, minutes of repair, 100 kB. */
    @Test
    void an_outline_drawn_over_itself_again_and_again_is_refused() throws IOException {
        String round = "[-93.504,41.497],[-93.496,41.497],[-93.496,41.503],[-93.504,41.503],";
        Path file = Files.writeString(
                folder.resolve("field.geojson"),
                "{\"type\":\"Polygon\",\"coordinates\":[[" + round.repeat(3000) + "[-93.504,41.497]]]}");
        UnusableInputException x = assertThrows(UnusableInputException.class, () -> BoundaryReader.read(file, PLANE));
        assertTrue(
                x.getMessage().contains("lines that cross or lie on each other more than 10000 times"), x.getMessage());
    }

    @Test
    void a_setback_below_zero_is_named_whatever_way_its_unit_is_written() throws IOException {
        for (String name : List.of("setback_ft", "setback[ft]", "Set back (ft)")) {
            Path file = Files.writeString(
                    folder.resolve("keep-out.geojson"),
                    "{\"type\":\"Feature\",\"properties\":{\"" + name
                            + "\":-1},\"geometry\":{\"type\":\"Point\",\"coordinates\":[-93.5,41.5]}}");
            UnusableInputException x = assertThrows(
                    UnusableInputException.class,
                    () -> KeepOutReader.read(
                            file, PLANE, new org.locationtech.jts.geom.Envelope(-9, 9, -9, 9), Double.NaN));
            assertTrue(x.getMessage().contains("found a setback of \"-1\""), x.getMessage());
        }
    }
}
