package io.rowledger.zones;

import io.rowledger.field.Prescription;
import io.rowledger.field.Prescription.Zone;
import io.rowledger.geo.Jts;
import io.rowledger.rate.PrescribedRates;
import io.rowledger.strip.Strips;
import io.rowledger.track.Poses;
import java.util.Arrays;
import java.util.List;
import org.locationtech.jts.algorithm.locate.IndexedPointInAreaLocator;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Envelope;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.Location;
import org.locationtech.jts.operation.distance.IndexedFacetDistance;

/**
 * Finds the zone of a position. A row's strip belongs to the zone of its middle.
 *
 * <p>Along the path, the distance to the nearest zone line gives a distance within which no row of the bar can be in
 * another zone, so that most steps need no search.
 */
final class ZoneFinder {
    private final Envelope[] boxes;
    private final IndexedPointInAreaLocator[] inside;
    private final double[][] rateLPerM2;
    private final IndexedFacetDistance lines;

    ZoneFinder(Prescription prescription, int products) {
        List<Zone> zones = prescription.zones();
        boxes = new Envelope[zones.size()];
        inside = new IndexedPointInAreaLocator[zones.size()];
        rateLPerM2 = new double[products][zones.size()];
        Geometry[] areas = new Geometry[zones.size()];
        for (int z = 0; z < boxes.length; z++) {
            areas[z] = zones.get(z).area();
            boxes[z] = areas[z].getEnvelopeInternal();
            inside[z] = new IndexedPointInAreaLocator(areas[z]);
            for (int p = 0; p < products; p++) {
                rateLPerM2[p][z] = zones.get(z).rateLPerM2()[p];
            }
        }
        lines = new IndexedFacetDistance(Jts.FACTORY.createGeometryCollection(areas));
    }

    /**
     * Returns the zone that holds the position, from 0, or {@link PrescribedRates#NO_ZONE}; on a line the first of the
     * two.
     */
    int at(double eastM, double northM) {
        Coordinate place = new Coordinate(eastM, northM);
        for (int z = 0; z < boxes.length; z++) {
            if (boxes[z].contains(place) && inside[z].locate(place) != Location.EXTERIOR) {
                return z;
            }
        }
        return PrescribedRates.NO_ZONE;
    }

    /** The zone of every row's strip in every step. */
    PrescribedRates along(Strips strips) {
        Poses poses = strips.poses();
        int rows = strips.rows();
        short[] zone = new short[poses.steps() * rows];
        Arrays.fill(zone, (short) PrescribedRates.NO_ZONE);
        double[] middleM = new double[rows];
        double reachM = 0;
        for (int r = 0; r < rows; r++) {
            middleM[r] = (strips.leftM(r) + strips.rightM(r)) / 2;
            reachM = Math.max(reachM, Math.abs(middleM[r]));
        }
        Coordinate last = new Coordinate(0, 0);
        double clearM = -1;
        int lastZone = PrescribedRates.NO_ZONE;
        for (int k = 0; k < poses.steps(); k++) {
            if (poses.record(k) < 0) {
                continue;
            }
            Coordinate here = middle(poses, k, 0);
            if (here.distance(last) + reachM >= clearM) {
                last = here;
                clearM = lines.distance(Jts.FACTORY.createPoint(here));
                lastZone = at(here.x, here.y);
            }
            boolean one = here.distance(last) + reachM < clearM;
            for (int r = 0; r < rows; r++) {
                Coordinate row = one ? here : middle(poses, k, middleM[r]);
                zone[k * rows + r] = (short) (one ? lastZone : at(row.x, row.y));
            }
        }
        return new PrescribedRates(rows, zone, rateLPerM2);
    }

    /** Returns the position halfway along step k, yM right of the bar's center. */
    static Coordinate middle(Poses poses, int k, double yM) {
        return new Coordinate(
                (poses.eastM(k, yM) + poses.eastM(k + 1, yM)) / 2, (poses.northM(k, yM) + poses.northM(k + 1, yM)) / 2);
    }
}
