package io.rowledger.browser;

import static org.junit.jupiter.api.Assertions.assertEquals;

import io.rowledger.analysis.Analysis;
import io.rowledger.analysis.JobFiles;
import io.rowledger.analysis.Pipeline;
import io.rowledger.analysis.Progress;
import io.rowledger.cli.Calls;
import io.rowledger.strip.Strips;
import io.rowledger.track.Poses;
import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.GeometryFactory;
import org.locationtech.jts.geom.Point;
import org.locationtech.jts.geom.Polygon;

/**
 * A tap in the browser against the analysis: for random places the page gives row, pass, time and rate as the program has them.
 * The strips over a place are found here by JTS, one after another.
 */
@Tag("slow")
class ReviewPageFidelityTest {
    private static final Path SAMPLE = Path.of("sample-logs/contour");
    private static final int PLACES = 1000;
    /** The page keeps flows to 1/256 of the mean and lengths to 0.25 mm in steps of half a meter. */
    private static final double RATE_TOLERANCE = 0.008;
    /** Places so near a strip's edge that a quarter of a millimeter decides are left out, m. */
    private static final double EDGE_M = 0.002;

    private static final GeometryFactory PLANE = new GeometryFactory();

    /** The step and row (from 0) of the last strip over a place. */
    private record Hit(int step, int row) {}

    @Test
    void a_tap_says_what_the_program_computed(@TempDir Path folder) throws IOException {
        Path out = folder.resolve("results");
        Calls call = Calls.of(
                "report", SAMPLE.resolve("log.csv"), "--rig", SAMPLE.resolve("rig.yaml"), "--quiet", "--out", out);
        assertEquals(0, call.status(), call.err());
        Analysis a = Pipeline.analyze(
                new JobFiles(List.of(SAMPLE.resolve("log.csv")), SAMPLE.resolve("rig.yaml"), null), 2, Progress.SILENT);
        List<double[]> places = new ArrayList<>();
        List<Hit> hits = new ArrayList<>();
        draw(a, places, hits);
        try (Browser browser = Browser.open(folder, 1280, 800, false)) {
            browser.openPage(out.resolve("review.html"));
            List<?> taps = (List<?>) browser.driver.executeScript(
                    "var job = Rowledger.app.job; return arguments[0].map(function (at) {"
                            + " var strips = job.stripsAt(at[0], at[1]); var s = strips[strips.length - 1];"
                            + " return s ? [s.step, s.row, s.pass, job.data.startS + job.time[s.step],"
                            + " job.rate(0, s.row, s.step)] : null; });",
                    places);
            for (int i = 0; i < hits.size(); i++) {
                compare(a, hits.get(i), (List<?>) taps.get(i));
            }
        }
    }

    private static void draw(Analysis a, List<double[]> places, List<Hit> hits) {
        Poses poses = a.track().poses();
        Strips strips = a.strips();
        SplittableRandom random = new SplittableRandom(16);
        while (places.size() < PLACES) {
            int k = random.nextInt(poses.steps());
            int r = random.nextInt(strips.rows());
            if (!poses.working(k) || !a.delivery().delivering(r, k)) {
                continue;
            }
            double y = strips.leftM(r) + random.nextDouble() * (strips.rightM(r) - strips.leftM(r));
            double t = random.nextDouble();
            double east = poses.eastM(k, y) * (1 - t) + poses.eastM(k + 1, y) * t;
            double north = poses.northM(k, y) * (1 - t) + poses.northM(k + 1, y) * t;
            Hit hit = last(strips, PLANE.createPoint(new Coordinate(east, north)));
            if (hit != null) {
                places.add(new double[] {east, north});
                hits.add(hit);
            }
        }
    }

    /** The last strip over a place, or null where an edge is too near to tell. */
    private static Hit last(Strips strips, Point place) {
        Poses poses = strips.poses();
        Hit last = null;
        double reachM = strips.rightM(strips.rows() - 1) + 1;
        for (int k = 0; k < poses.steps(); k++) {
            if (!poses.working(k)
                    || Math.hypot(poses.dropEastM(k) - place.getX(), poses.dropNorthM(k) - place.getY()) > reachM) {
                continue;
            }
            for (int r = 0; r < strips.rows(); r++) {
                Polygon strip = strip(strips, k, r);
                if (strip.getExteriorRing().distance(place) < EDGE_M) {
                    return null;
                }
                if (strip.contains(place)) {
                    last = new Hit(k, r);
                }
            }
        }
        return last;
    }

    private static Polygon strip(Strips strips, int k, int r) {
        Poses poses = strips.poses();
        double left = strips.leftM(r);
        double right = strips.rightM(r);
        Coordinate first = new Coordinate(poses.eastM(k, left), poses.northM(k, left));
        return PLANE.createPolygon(new Coordinate[] {
            first,
            new Coordinate(poses.eastM(k + 1, left), poses.northM(k + 1, left)),
            new Coordinate(poses.eastM(k + 1, right), poses.northM(k + 1, right)),
            new Coordinate(poses.eastM(k, right), poses.northM(k, right)),
            first
        });
    }

    private static void compare(Analysis a, Hit hit, List<?> tap) {
        Poses poses = a.track().poses();
        assertEquals(hit.step(), ((Number) tap.get(0)).intValue(), "step");
        assertEquals(hit.row(), ((Number) tap.get(1)).intValue(), "row");
        assertEquals(poses.pass(hit.step()), ((Number) tap.get(2)).intValue(), "pass");
        assertEquals(poses.timeS(hit.step()), ((Number) tap.get(3)).doubleValue(), 0.006, "time");
        if (a.delivery().delivering(hit.row(), hit.step())) {
            double rate = a.delivery().flowLPerS(0, hit.row(), hit.step())
                    * poses.durationS(hit.step())
                    / a.strips().signedAreaM2(hit.step(), hit.row());
            assertEquals(rate, ((Number) tap.get(4)).doubleValue(), RATE_TOLERANCE * rate, "rate");
        }
    }
}
