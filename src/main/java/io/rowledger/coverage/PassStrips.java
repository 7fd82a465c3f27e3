package io.rowledger.coverage;

import io.rowledger.coverage.RowRuns.Run;
import io.rowledger.geo.Heading;
import io.rowledger.rate.Delivery;
import io.rowledger.strip.Strips;
import io.rowledger.track.Pass;
import io.rowledger.track.Poses;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.BitSet;
import java.util.List;
import org.locationtech.jts.geom.Polygon;

/** Cuts one pass into strip polygons: chunks along the way, runs of neighbouring rows across it. */
final class PassStrips {
    /** A chunk turns less than this, so that it cannot cross itself: its bar lines stay ahead of one another. */
    private static final double CHUNK_TURN_RAD = Math.toRadians(60);
    /** Longer chunks have looser bounding boxes, shorter ones are more; the search is fastest about here, m. */
    private static final double CHUNK_LENGTH_M = 60;
    /** Bands closer than this lie side by side: the difference is rounding in the rig file's units, m. */
    private static final double TOUCH_M = 1e-6;

    private final Pass pass;
    private final Strips strips;
    private final Poses poses;
    private final double[] rightM;
    private final List<List<Run>> runs = new ArrayList<>();
    private final List<Visit> out = new ArrayList<>();

    private PassStrips(Pass pass, Strips strips, Delivery delivery) {
        this.pass = pass;
        this.strips = strips;
        this.poses = strips.poses();
        this.rightM = new double[strips.rows()];
        RowRuns rowRuns = new RowRuns(pass, strips, delivery);
        for (int r = 0; r < strips.rows(); r++) {
            runs.add(rowRuns.of(r));
            rightM[r] = touchesNext(r) ? strips.leftM(r + 1) : strips.rightM(r);
        }
    }

    private boolean touchesNext(int r) {
        return r + 1 < strips.rows() && Math.abs(strips.leftM(r + 1) - strips.rightM(r)) < TOUCH_M;
    }

    /** The strip polygons of a pass, by chunk, then row, then step. */
    static List<Visit> of(Pass pass, Strips strips, Delivery delivery, double simplifyM) {
        PassStrips work = new PassStrips(pass, strips, delivery);
        int[] chunks = work.chunks();
        int[] kept = work.kept(chunks, simplifyM);
        for (int c = 0; c + 1 < chunks.length; c++) {
            work.cut(c, chunks[c], chunks[c + 1], kept);
        }
        return work.out;
    }

    /** Steps at which chunks begin, and the pass's end. */
    private int[] chunks() {
        List<Integer> borders = new ArrayList<>();
        borders.add(pass.firstStep());
        double lengthM = 0;
        double turn = 0;
        double leastTurn = 0;
        double mostTurn = 0;
        for (int k = pass.firstStep(); k < pass.endStep(); k++) {
            double stepM = Math.hypot(
                    poses.dropEastM(k + 1) - poses.dropEastM(k), poses.dropNorthM(k + 1) - poses.dropNorthM(k));
            double stepTurn = Heading.wrap(poses.barHeadingRad(k + 1) - poses.barHeadingRad(k));
            lengthM += stepM;
            turn += stepTurn;
            leastTurn = Math.min(leastTurn, turn);
            mostTurn = Math.max(mostTurn, turn);
            boolean full = lengthM > CHUNK_LENGTH_M || mostTurn - leastTurn > CHUNK_TURN_RAD;
            if (full && k > borders.get(borders.size() - 1)) {
                borders.add(k);
                lengthM = stepM;
                turn = stepTurn;
                leastTurn = Math.min(0, turn);
                mostTurn = Math.max(0, turn);
            }
        }
        borders.add(pass.endStep());
        return borders.stream().mapToInt(Integer::intValue).toArray();
    }

    private int[] kept(int[] chunks, double simplifyM) {
        BitSet kept = new BitSet();
        for (int border : chunks) {
            kept.set(border);
        }
        for (List<Run> row : runs) {
            for (Run run : row) {
                kept.set(run.start());
                kept.set(run.end());
            }
        }
        new Decimation(poses, RowRuns.leftmost(strips), RowRuns.rightmost(strips), simplifyM).addTo(kept);
        return kept.stream().toArray();
    }

    /** One chunk: every row's runs in it, merged with the same run of the next rows. */
    private void cut(int chunk, int from, int to, int[] kept) {
        int rows = strips.rows();
        List<List<Run>> clipped = new ArrayList<>(rows);
        for (List<Run> row : runs) {
            clipped.add(row.stream()
                    .filter(run -> run.start() < to && run.end() > from)
                    .toList());
        }
        boolean[][] taken = new boolean[rows][];
        for (int r = 0; r < rows; r++) {
            taken[r] = new boolean[clipped.get(r).size()];
        }
        for (int r = 0; r < rows; r++) {
            for (int i = 0; i < taken[r].length; i++) {
                if (!taken[r][i]) {
                    merge(chunk, r, clipped.get(r).get(i), new Window(from, to, kept), clipped, taken);
                }
            }
        }
    }

    private record Window(int from, int to, int[] kept) {
        int start(Run run) {
            return Math.max(from, run.start());
        }

        int end(Run run) {
            return Math.min(to, run.end());
        }
    }

    private void merge(int chunk, int r, Run run, Window window, List<List<Run>> clipped, boolean[][] taken) {
        int start = window.start(run);
        int end = window.end(run);
        int runStart = run.start();
        int runEnd = run.end();
        int last = r;
        while (touchesNext(last)) {
            int same = -1;
            List<Run> next = clipped.get(last + 1);
            for (int i = 0; i < next.size() && same < 0; i++) {
                Run other = next.get(i);
                if (other.kind() == run.kind() && window.start(other) == start && window.end(other) == end) {
                    same = i;
                }
            }
            if (same < 0) {
                break;
            }
            last++;
            taken[last][same] = true;
            runStart = Math.max(runStart, next.get(same).start());
            runEnd = Math.min(runEnd, next.get(same).end());
        }
        // Starts and ends of runs and chunks are always kept, so both are found.
        int[] vertices = Arrays.copyOfRange(
                window.kept(), Arrays.binarySearch(window.kept(), start), Arrays.binarySearch(window.kept(), end) + 1);
        boolean unsettled = false;
        for (int k = start; k < end && !unsettled; k++) {
            unsettled = poses.unsettled(k);
        }
        List<Polygon> polygons = StripOutline.polygons(poses, vertices, strips.leftM(r), rightM[last]);
        double areaM2 = polygons.stream().mapToDouble(Polygon::getArea).sum();
        for (Polygon polygon : polygons) {
            StripPolygon strip = new StripPolygon(
                    pass.number(), r + 1, last + 1, start, end, run.kind() != Visit.Kind.SILENT, unsettled, polygon);
            out.add(new Visit(strip, run.kind(), chunk, runStart, runEnd, areaM2, vertices));
        }
    }
}
