package io.rowledger.coverage;

import io.rowledger.coverage.strips.Visit;
import io.rowledger.coverage.strips.Visit.Kind;
import io.rowledger.coverage.strips.VisitIndex;
import io.rowledger.geo.Jts;
import io.rowledger.strip.Strips;
import java.util.ArrayList;
import java.util.List;
import java.util.TreeMap;
import java.util.TreeSet;
import org.locationtech.jts.geom.CoordinateSequence;
import org.locationtech.jts.geom.Envelope;
import org.locationtech.jts.geom.LineString;
import org.locationtech.jts.geom.Polygon;

/**
 * The strips around a patch, from points sampled along its outline.
 *
 * <p>Counts are of points, so their fractions are fractions of the outline's length.
 */
final class Surroundings {
    /** Distance of the points along the outline, m; below the width of a 30 in row. */
    private static final double SPACING_M = 0.5;
    /** Largest number of points; fractions of the outline are known within 1 % then. */
    private static final int MAX_POINTS = 400;

    /**
     * The points lie this far inside the outline, m, so that points on the line between two rows are assigned to one of
     * them.
     */
    private static final double INSET_M = 0.05;

    /** Number of points. */
    int points;
    /** Points next to any delivering strip. */
    int touching;
    /** Points at a line where a delivering run began. */
    int atStarts;
    /** Points at a line where a delivering run ended. */
    int atEnds;
    /** Points along the side of each pass. */
    final TreeMap<Integer, Integer> flankByPass = new TreeMap<>();

    final TreeSet<Integer> passes = new TreeSet<>();
    final TreeSet<Integer> rows = new TreeSet<>();
    /** Visits that touch the patch. */
    final TreeSet<Integer> visits = new TreeSet<>();

    static Surroundings of(Polygon patch, VisitIndex index, Strips strips) {
        Surroundings s = new Surroundings();
        Contact contact = new Contact(strips);
        Envelope box = new Envelope(patch.getEnvelopeInternal());
        box.expandBy(Contact.MAX_DISTANCE_M);
        List<Integer> near = new ArrayList<>();
        for (int i : index.near(box)) {
            if (index.get(i).kind() == Kind.DELIVERING) {
                near.add(i);
            }
        }
        double spacingM = Math.max(SPACING_M, patch.getLength() / MAX_POINTS);
        boolean shell = true;
        for (LineString ring : Jts.rings(patch)) {
            // Walking clockwise the inside of a shell is on the right, that of a hole's surroundings on the left.
            boolean insideRight = (Jts.clockwiseTwiceArea(ring) > 0) == shell;
            s.along(ring, insideRight ? INSET_M : -INSET_M, spacingM, near, index, contact);
            shell = false;
        }
        return s;
    }

    private void along(
            LineString ring, double toRightM, double spacingM, List<Integer> near, VisitIndex index, Contact contact) {
        CoordinateSequence c = ring.getCoordinateSequence();
        double toNextM = spacingM / 2;
        for (int i = 1; i < c.size(); i++) {
            double de = c.getX(i) - c.getX(i - 1);
            double dn = c.getY(i) - c.getY(i - 1);
            double lengthM = Math.hypot(de, dn);
            while (toNextM <= lengthM) {
                double t = toNextM / lengthM;
                double aside = toRightM / lengthM;
                sample(c.getX(i - 1) + t * de + aside * dn, c.getY(i - 1) + t * dn - aside * de, near, index, contact);
                toNextM += spacingM;
            }
            toNextM -= lengthM;
        }
    }

    private void sample(double eastM, double northM, List<Integer> near, VisitIndex index, Contact contact) {
        points++;
        boolean touches = false;
        boolean start = false;
        boolean end = false;
        TreeSet<Integer> flanks = new TreeSet<>();
        for (int i : near) {
            Visit visit = index.get(i);
            Envelope box = visit.polygon().getEnvelopeInternal();
            boolean outside = eastM < box.getMinX() - Contact.MAX_DISTANCE_M
                    || eastM > box.getMaxX() + Contact.MAX_DISTANCE_M
                    || northM < box.getMinY() - Contact.MAX_DISTANCE_M
                    || northM > box.getMaxY() + Contact.MAX_DISTANCE_M;
            if (outside || !contact.find(visit, eastM, northM)) {
                continue;
            }
            touches = true;
            visits.add(i);
            passes.add(visit.pass());
            rows.add(contact.row());
            switch (contact.side()) {
                case START -> start = true;
                case END -> end = true;
                case FLANK -> flanks.add(visit.pass());
                default -> {}
            }
        }
        touching += touches ? 1 : 0;
        atStarts += start ? 1 : 0;
        atEnds += end ? 1 : 0;
        for (int pass : flanks) {
            flankByPass.merge(pass, 1, Integer::sum);
        }
    }

    /** Returns the fraction of the outline at lines where runs began or ended. */
    double endShare() {
        return points == 0 ? 0 : (double) (atStarts + atEnds) / points;
    }

    /** Returns the fraction of the outline next to any strip. */
    double touchingShare() {
        return points == 0 ? 0 : (double) touching / points;
    }

    /** Returns the number of passes along at least this fraction of the outline. */
    long flankingPasses(double share) {
        return flankByPass.values().stream().filter(n -> n >= share * points).count();
    }
}
