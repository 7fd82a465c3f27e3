package io.rowledger.sim;

import net.sf.geographiclib.Geodesic;
import net.sf.geographiclib.GeodesicData;
import net.sf.geographiclib.GeodesicMask;

/**
 * Local meters to WGS 84: azimuthal equidistant about an origin, by GeographicLib's geodesics.
 *
 * <p>Distances from the origin are exact; across them the scale is off by r²/(6 R²), 4e-9 at 1 km.
 */
public final class LocalMap {
    private final double originLatDeg;
    private final double originLonDeg;

    /** A map about this origin, degrees. */
    public LocalMap(double originLatDeg, double originLonDeg) {
        this.originLatDeg = originLatDeg;
        this.originLonDeg = originLonDeg;
    }

    /** {latitude, longitude} in degrees of the point x east, y north. */
    public double[] latLonDeg(double xM, double yM) {
        double azimuthDeg = Math.toDegrees(Math.atan2(xM, yM));
        GeodesicData end = Geodesic.WGS84.Direct(
                originLatDeg,
                originLonDeg,
                azimuthDeg,
                Math.hypot(xM, yM),
                GeodesicMask.LATITUDE | GeodesicMask.LONGITUDE);
        return new double[] {end.lat2, end.lon2};
    }

    /** {x east, y north} in meters of a position in degrees. */
    public double[] localM(double latDeg, double lonDeg) {
        GeodesicData line = Geodesic.WGS84.Inverse(
                originLatDeg, originLonDeg, latDeg, lonDeg, GeodesicMask.DISTANCE | GeodesicMask.AZIMUTH);
        double azimuth = Math.toRadians(line.azi1);
        return new double[] {line.s12 * Math.sin(azimuth), line.s12 * Math.cos(azimuth)};
    }
}
