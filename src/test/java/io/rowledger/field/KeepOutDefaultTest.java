package io.rowledger.field;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import io.rowledger.document.text.TestNotes;
import io.rowledger.finding.UnusableInputException;
import io.rowledger.geo.LocalPlane;
import io.rowledger.maps.TestShapefile;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.locationtech.jts.geom.Envelope;

/** Public layers of wells and ditches: no setback at any feature, and most of them in other townships. */
class KeepOutDefaultTest {
    private static final LocalPlane PLANE = new LocalPlane(45, -93);
    private static final Envelope DRIVEN = new Envelope(-100, 100, -100, 100);
    private static final double FIFTY_FEET_M = 50 * 0.3048;

    @TempDir
    Path dir;

    private KeepOuts read(Path file, double defaultM) {
        return KeepOutReader.read(file, PLANE, DRIVEN, defaultM);
    }

    @Test
    void wells_of_a_county_take_the_distance_of_the_call() {
        Path wells = TestShapefile.points()
                .add(new double[] {-93.0001, 45.0001}, Map.of("WELL_ID", 1, "Name", "Old well"))
                .add(new double[] {-93.0010, 45.0010}, Map.of("WELL_ID", 2, "Name", "New well"))
                .add(new double[] {-93.5, 45.3}, Map.of("WELL_ID", 3, "Name", "Far well"))
                .zip(dir, "wells", TestShapefile.WGS84);
        KeepOuts found = read(wells, FIFTY_FEET_M);
        assertEquals(
                List.of("Old well", "New well"),
                found.places().stream().map(KeepOut::name).toList());
        for (KeepOut well : found.places()) {
            assertEquals(FIFTY_FEET_M, well.setbackM(), 1e-12);
            // A circle of 256 chords holds 0.01 % less than π r².
            assertEquals(
                    Math.PI * FIFTY_FEET_M * FIFTY_FEET_M,
                    well.ground().getArea(),
                    2e-4 * Math.PI * FIFTY_FEET_M * FIFTY_FEET_M);
        }
        assertEquals(2, found.notes().size(), found.notes().toString());
        assertTrue(
                TestNotes.texts(found.notes()).get(0).contains("1 of 3 places"),
                TestNotes.texts(found.notes()).get(0));
        assertTrue(
                TestNotes.texts(found.notes()).get(1).contains("2 of 2 places"),
                TestNotes.texts(found.notes()).get(1));
        assertTrue(
                TestNotes.texts(found.notes()).get(1).contains("50.0 ft"),
                TestNotes.texts(found.notes()).get(1));
    }

    @Test
    void a_place_keeps_the_setback_it_has() throws IOException {
        Path file = Files.writeString(dir.resolve("both.geojson"), """
                {"type": "FeatureCollection", "features": [
                {"type": "Feature", "properties": {"setback": "100 ft"}, "geometry": {"type": "Point", "coordinates": [-93, 45]}},
                {"type": "Feature", "properties": {}, "geometry": {"type": "LineString", "coordinates": [[-93, 45], [-93.001, 45]]}}
                ]}
                """);
        List<KeepOut> places = read(file, FIFTY_FEET_M).places();
        assertEquals(100 * 0.3048, places.get(0).setbackM(), 1e-12);
        assertEquals(FIFTY_FEET_M, places.get(1).setbackM(), 1e-12);
    }

    @Test
    void without_a_distance_the_message_shows_the_option() {
        Path wells = TestShapefile.points()
                .add(new double[] {-93.0001, 45.0001}, Map.of("WELL_ID", 1))
                .write(dir, "wells", TestShapefile.WGS84);
        String text = assertThrows(UnusableInputException.class, () -> read(wells, Double.NaN))
                .getMessage();
        assertTrue(text.contains("--setback \"N ft\""), text);
    }
}
