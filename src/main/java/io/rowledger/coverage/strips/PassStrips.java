package io.rowledger.coverage.strips;

import io.rowledger.coverage.strips.RowRuns.Run;
import io.rowledger.coverage.strips.StripOutline.Sides;
import io.rowledger.coverage.strips.Visit.Chunk;
import io.rowledger.geo.Heading;
import io.rowledger.rate.Delivery;
import io.rowledger.strip.Strips;
import io.rowledger.track.Pass;
import io.rowledger.track.Poses;
import java.util.ArrayList;
import java.util.BitSet;
import java.util.List;
import java.util.stream.IntStream;
import org.locationtech.jts.geom.Polygon;

/** Divides a pass into strip polygons: chunks along the path, runs of neighboring rows across it. */
public final class PassStrips {
    /**
     * Largest turn within a chunk, rad, so that it can't cross itself: each of its bar lines lies ahead of the one
     * before.
     */
    private static final double MAX_CHUNK_TURN_RAD = Math.toRadians(60);
    /**
     * Largest length of a chunk, m. Longer chunks have looser bounding boxes, shorter ones are more; near 60 m the
     * search is fastest ({@code CoverageBenchmark.whole}).
     */
    private static final double MAX_CHUNK_LENGTH_M = 60;
    /** Largest distance of adjacent bands, m: rounding of units in the rig file. */
    private static final double MAX_TOUCHING_GAP_M = 1e-6;

    private static final int[] NONE = {};

    private final Pass pass;
    private final Strips strips;
    private final Poses poses;
    private final double[] rightM;
    private final RowRuns rowRuns;
    private final List<List<Run>> runs = new ArrayList<>();
    /** Poses at which the runs of each row begin or end, ascending. */
    private final List<int[]> runEnds = new ArrayList<>();

    private final List<Visit> out = new ArrayList<>();

    private PassStrips(Pass pass, Strips strips, Delivery delivery) {
        this.pass = pass;
        this.strips = strips;
        this.poses = strips.poses();
        this.rightM = new double[strips.rows()];
        this.rowRuns = new RowRuns(pass, strips, delivery);
        for (int r = 0; r < strips.rows(); r++) {
            runs.add(rowRuns.of(r));
            runEnds.add(ends(runs.get(r)));
            rightM[r] = touchesNext(r) ? strips.leftM(r + 1) : strips.rightM(r);
        }
    }

    private static int[] ends(List<Run> row) {
        return row.stream()
                .flatMapToInt(run -> IntStream.of(run.start(), run.end()))
                .distinct()
                .toArray();
    }

    private boolean touchesNext(int r) {
        return r + 1 < strips.rows() && Math.abs(strips.leftM(r + 1) - strips.rightM(r)) < MAX_TOUCHING_GAP_M;
    }

    /** Returns the visits of a pass, ordered by chunk, row, step. */
    public static List<Visit> of(Pass pass, Strips strips, Delivery delivery, double simplifyM) {
        PassStrips work = new PassStrips(pass, strips, delivery);
        int[] chunks = work.chunks();
        BitSet tiled = new BitSet();
        StripEdges edges = new StripEdges(work.poses, work.kept(chunks, simplifyM, tiled));
        for (int c = 0; c + 1 < chunks.length; c++) {
            work.cut(new Chunk(c, chunks[c], chunks[c + 1], tiled.get(c)), edges);
        }
        return work.out;
    }

    /** Returns the steps at which chunks begin, and the pass's end. */
    private int[] chunks() {
        List<Integer> borders = new ArrayList<>();
        borders.add(pass.firstStep());
        double lengthM = 0;
        double turn = 0;
        double minTurn = 0;
        double maxTurn = 0;
        for (int k = pass.firstStep(); k < pass.endStep(); k++) {
            double stepM = Math.hypot(
                    poses.dropEastM(k + 1) - poses.dropEastM(k), poses.dropNorthM(k + 1) - poses.dropNorthM(k));
            double stepTurn = Heading.wrap(poses.barHeadingRad(k + 1) - poses.barHeadingRad(k));
            lengthM += stepM;
            turn += stepTurn;
            minTurn = Math.min(minTurn, turn);
            maxTurn = Math.max(maxTurn, turn);
            boolean full = lengthM > MAX_CHUNK_LENGTH_M || maxTurn - minTurn > MAX_CHUNK_TURN_RAD;
            if (full && k > borders.get(borders.size() - 1)) {
                borders.add(k);
                lengthM = stepM;
                turn = stepTurn;
                minTurn = Math.min(0, turn);
                maxTurn = Math.max(0, turn);
            }
        }
        borders.add(pass.endStep());
        return borders.stream().mapToInt(Integer::intValue).toArray();
    }

    /**
     * Returns the poses that are vertices. In a tiled chunk these are the same for all rows, whatever the rows do, and
     * a run that begins or ends between two of them does so on the line between: a row that flickers adds no vertices
     * to its neighbors. In other chunks the poses at which runs begin and end are vertices too.
     *
     * @param tiled receives the numbers of the tiled chunks
     */
    private int[] kept(int[] chunks, double simplifyM, BitSet tiled) {
        double leftM = RowRuns.leftmost(strips);
        double rightmostM = RowRuns.rightmost(strips);
        Decimation decimation = new Decimation(poses, leftM, rightmostM, simplifyM);
        BitSet borders = new BitSet();
        for (int border : chunks) {
            borders.set(border);
        }
        BitSet kept = (BitSet) borders.clone();
        decimation.addTo(kept);
        StripEdges edges = new StripEdges(poses, kept.stream().toArray());
        for (int c = 0; c + 1 < chunks.length; c++) {
            boolean tiles = bandsApart()
                    && rowRuns.allForward(chunks[c], chunks[c + 1])
                    && StripOutline.advances(edges, edges.vertices(chunks[c], chunks[c + 1]), leftM, rightmostM);
            tiled.set(c, tiles);
            if (!tiles) {
                setRunEnds(borders, chunks[c], chunks[c + 1]);
            }
        }
        decimation.addTo(borders);
        return borders.stream().toArray();
    }

    /** Returns false if bands overlap. */
    private boolean bandsApart() {
        for (int r = 0; r + 1 < strips.rows(); r++) {
            if (strips.leftM(r + 1) < strips.rightM(r) - MAX_TOUCHING_GAP_M) {
                return false;
            }
        }
        return true;
    }

    private void setRunEnds(BitSet set, int from, int to) {
        for (List<Run> row : runs) {
            for (Run run : within(row, from, to)) {
                set.set(Math.max(from, run.start()));
                set.set(Math.min(to, run.end()));
            }
        }
    }

    /** Returns the runs that have steps in [from, to). */
    private static List<Run> within(List<Run> row, int from, int to) {
        int low = 0;
        int high = row.size();
        while (low < high) {
            int middle = (low + high) >>> 1;
            if (row.get(middle).end() > from) {
                high = middle;
            } else {
                low = middle + 1;
            }
        }
        int end = low;
        while (end < row.size() && row.get(end).start() < to) {
            end++;
        }
        return row.subList(low, end);
    }

    /** Adds the visits of a chunk: every row's runs in it, each merged with the same run of the next rows. */
    private void cut(Chunk chunk, StripEdges edges) {
        int rows = strips.rows();
        List<List<Run>> clipped = new ArrayList<>(rows);
        boolean[][] taken = new boolean[rows][];
        for (int r = 0; r < rows; r++) {
            clipped.add(within(runs.get(r), chunk.from(), chunk.to()));
            taken[r] = new boolean[clipped.get(r).size()];
        }
        for (int r = 0; r < rows; r++) {
            for (int i = 0; i < taken[r].length; i++) {
                if (!taken[r][i]) {
                    merge(chunk, r, clipped.get(r).get(i), edges, clipped, taken);
                }
            }
        }
    }

    private void merge(Chunk chunk, int r, Run run, StripEdges edges, List<List<Run>> clipped, boolean[][] taken) {
        int start = chunk.start(run);
        int end = chunk.end(run);
        int runStart = run.start();
        int runEnd = run.end();
        int last = r;
        while (touchesNext(last)) {
            int same = -1;
            List<Run> next = clipped.get(last + 1);
            for (int i = 0; i < next.size() && same < 0; i++) {
                Run other = next.get(i);
                if (other.kind() == run.kind() && chunk.start(other) == start && chunk.end(other) == end) {
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
        int[] vertices = edges.vertices(start, end);
        Sides sides = new Sides(
                vertices,
                edges.vertices(start, end, r > 0 && touchesNext(r - 1) ? runEnds.get(r - 1) : NONE),
                edges.vertices(start, end, touchesNext(last) ? runEnds.get(last + 1) : NONE));
        boolean unsettled = false;
        for (int k = start; k < end && !unsettled; k++) {
            unsettled = poses.unsettled(k);
        }
        List<Polygon> polygons = StripOutline.polygons(edges, sides, strips.leftM(r), rightM[last]);
        double areaM2 = polygons.stream().mapToDouble(Polygon::getArea).sum();
        for (Polygon polygon : polygons) {
            StripPolygon strip = new StripPolygon(
                    pass.number(),
                    r + 1,
                    last + 1,
                    start,
                    end,
                    run.kind() != Visit.Kind.NOT_DELIVERING,
                    unsettled,
                    polygon);
            out.add(new Visit(strip, run.kind(), chunk, runStart, runEnd, areaM2, vertices));
        }
    }
}
