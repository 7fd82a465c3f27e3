package io.rowledger.setback;

import io.rowledger.geo.Jts;
import io.rowledger.rate.Delivery;
import io.rowledger.strip.Strips;
import io.rowledger.track.Poses;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Envelope;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.Polygon;
import org.locationtech.jts.geom.prep.PreparedGeometry;
import org.locationtech.jts.geom.prep.PreparedGeometryFactory;
import org.locationtech.jts.operation.distance.IndexedFacetDistance;

/**
 * Smallest distance from a place to any delivering strip: nearest blocks first, skipping steps that can't be nearer.
 */
final class ClosestApproach {
    private final Geometry place;
    private final PreparedGeometry prepared;
    private final IndexedFacetDistance facets;
    private final Strips strips;
    private final Poses poses;
    private final Delivery delivery;
    private double minM = Double.POSITIVE_INFINITY;

    private ClosestApproach(Geometry place, Strips strips, Delivery delivery) {
        this.place = place;
        this.prepared = PreparedGeometryFactory.prepare(place);
        this.facets = new IndexedFacetDistance(place);
        this.strips = strips;
        this.poses = strips.poses();
        this.delivery = delivery;
    }

    /** Returns the smallest distance, m: 0 if a strip lies on the place, NaN if nothing was delivered. */
    static double closestM(Geometry place, Strips strips, Delivery delivery, StepBlocks blocks) {
        ClosestApproach search = new ClosestApproach(place, strips, delivery);
        Envelope around = place.getEnvelopeInternal();
        // The bounding box of a bent or oblique bank holds half the field, so blocks are measured to the bank itself.
        double[] awayM = blocks.awayM(search::distanceM);
        for (int b : StepBlocks.byDistance(awayM)) {
            if (awayM[b] >= search.minM) {
                break;
            }
            for (int k = blocks.first(b); k < blocks.end(b); k++) {
                if (search.poses.working(k) && blocks.box(k).distance(around) < search.minM) {
                    search.step(k);
                }
            }
        }
        return search.minM == Double.POSITIVE_INFINITY ? Double.NaN : search.minM;
    }

    private double distanceM(Envelope box) {
        return distanceM(Jts.FACTORY.toGeometry(box));
    }

    /**
     * Returns the distance, 0 if they intersect; facet distances alone don't tell whether one lies inside the other.
     */
    private double distanceM(Geometry ground) {
        return prepared.intersects(ground) ? 0 : facets.distance(ground);
    }

    private void step(int k) {
        int r = 0;
        while (r < strips.rows()) {
            if (!delivery.delivering(r, k)) {
                r++;
                continue;
            }
            int last = r;
            while (last + 1 < strips.rows()
                    && delivery.delivering(last + 1, k)
                    && strips.leftM(last + 1) == strips.rightM(last)) {
                last++;
            }
            strip(k, strips.leftM(r), strips.rightM(last));
            r = last + 1;
        }
    }

    private void strip(int k, double left, double right) {
        Coordinate start = new Coordinate(poses.eastM(k, left), poses.northM(k, left));
        Polygon strip = Jts.FACTORY.createPolygon(new Coordinate[] {
            start,
            new Coordinate(poses.eastM(k + 1, left), poses.northM(k + 1, left)),
            new Coordinate(poses.eastM(k + 1, right), poses.northM(k + 1, right)),
            new Coordinate(poses.eastM(k, right), poses.northM(k, right)),
            start.copy()
        });
        if (strip.getEnvelopeInternal().distance(place.getEnvelopeInternal()) >= minM) {
            return;
        }
        minM = Math.min(minM, distanceM(strip));
    }
}
