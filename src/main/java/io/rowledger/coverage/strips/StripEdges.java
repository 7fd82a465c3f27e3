package io.rowledger.coverage.strips;

import io.rowledger.geo.Jts;
import io.rowledger.track.Poses;
import java.util.Arrays;
import java.util.stream.IntStream;
import org.locationtech.jts.geom.Coordinate;

/**
 * The longitudinal edges of the strips of one pass, through the same poses for every position on the bar, so that
 * adjacent rows share their edge.
 *
 * <p>A corner at a kept pose is where the bar was, on the grid. A corner at any other pose is moved to the line between
 * the kept poses around it, within the tolerance of the simplification; otherwise every row that stops would leave a
 * sliver beside the next row. The next row's strip has that corner as a vertex too, so that both have the same edge to
 * the last digit.
 */
public final class StripEdges {
    private final Poses poses;
    private final int[] kept;

    /** Edges with vertices at the kept poses. */
    public StripEdges(Poses poses, int[] kept) {
        this.poses = poses;
        this.kept = kept;
    }

    Poses poses() {
        return poses;
    }

    /** Returns start, the kept poses between, end. */
    public int[] vertices(int start, int end) {
        int first = after(start);
        int last = first;
        while (last < kept.length && kept[last] < end) {
            last++;
        }
        int[] out = new int[last - first + 2];
        out[0] = start;
        System.arraycopy(kept, first, out, 1, last - first);
        out[out.length - 1] = end;
        return out;
    }

    /**
     * Returns the vertices of one edge: {@link #vertices(int, int)} and the poses at which runs on its other side begin
     * or end.
     *
     * @param beside such poses, ascending; those outside (start, end) are ignored
     */
    public int[] vertices(int start, int end, int[] beside) {
        int[] plain = vertices(start, end);
        int found = Arrays.binarySearch(beside, start);
        int next = found >= 0 ? found + 1 : -found - 1;
        IntStream.Builder out = IntStream.builder();
        for (int i : plain) {
            while (next < beside.length && beside[next] < i) {
                out.add(beside[next++]);
            }
            if (next < beside.length && beside[next] == i) {
                next++;
            }
            out.add(i);
        }
        return out.build().toArray();
    }

    /** Returns the index of the first kept pose after pose i. */
    private int after(int i) {
        int found = Arrays.binarySearch(kept, i);
        return found >= 0 ? found + 1 : -found - 1;
    }

    /** Returns the corner yM right of the bar's center at pose i, which lies between the pass's first and last pose. */
    Coordinate corner(int i, double yM) {
        int next = after(i);
        if (kept[next - 1] == i) {
            return onGrid(poses.eastM(i, yM), poses.northM(i, yM));
        }
        Coordinate a = corner(kept[next - 1], yM);
        Coordinate b = corner(kept[next], yM);
        double de = b.x - a.x;
        double dn = b.y - a.y;
        double length2 = de * de + dn * dn;
        double along = (poses.eastM(i, yM) - a.x) * de + (poses.northM(i, yM) - a.y) * dn;
        double t = length2 == 0 ? 0 : Math.max(0, Math.min(1, along / length2));
        return onGrid(a.x + t * de, a.y + t * dn);
    }

    private static Coordinate onGrid(double eastM, double northM) {
        return new Coordinate(Jts.onGrid(eastM), Jts.onGrid(northM));
    }
}
