package io.rowledger.geo;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collection;
import java.util.Collections;
import java.util.List;
import java.util.Random;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.PrecisionModel;
import org.locationtech.jts.noding.NodedSegmentString;
import org.locationtech.jts.noding.Noder;
import org.locationtech.jts.noding.SegmentString;
import org.locationtech.jts.noding.snapround.SnapRoundingNoder;

/**
 * Snap rounding of lines that are handed over in pieces and in random order.
 *
 * <p>{@link SnapRoundingNoder} puts intersections into an unbalanced tree in the order it finds them. Along one long line,
 * such as a boundary that crosses the edge of the work again and again, they come in sorted order; the tree is then a list, and
 * the time grows with the square of their number: minutes for 200,000 corners. The nodes don't depend on the order, and pieces
 * end at corners, which are nodes of the grid anyway.
 */
final class ShuffledNoder implements Noder {
    /** Number of segments in a piece: few enough to shuffle, enough to keep the number of pieces small. */
    private static final int PIECE_SEGMENTS = 16;

    private static final long SEED = 1;

    private final SnapRoundingNoder noder;

    /** Nodes on this grid. */
    ShuffledNoder(PrecisionModel grid) {
        this.noder = new SnapRoundingNoder(grid);
    }

    @Override
    @SuppressWarnings("rawtypes")
    public void computeNodes(Collection lines) {
        List<SegmentString> pieces = new ArrayList<>();
        for (Object line : lines) {
            SegmentString whole = (SegmentString) line;
            Coordinate[] corners = whole.getCoordinates();
            for (int from = 0; from + 1 < corners.length; from += PIECE_SEGMENTS) {
                int to = Math.min(corners.length, from + PIECE_SEGMENTS + 1);
                pieces.add(new NodedSegmentString(Arrays.copyOfRange(corners, from, to), whole.getData()));
            }
        }
        Collections.shuffle(pieces, new Random(SEED));
        noder.computeNodes(pieces);
    }

    @Override
    @SuppressWarnings("rawtypes")
    public Collection getNodedSubstrings() {
        return noder.getNodedSubstrings();
    }
}
