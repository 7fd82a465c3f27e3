package io.rowledger.geo;

/**
 * A transverse Mercator plane on an ellipsoid with scale 1 and a chosen origin: x east, y north, meters.
 *
 * <p>Krüger's series in the third flattening n to the sixth order, forward and inverse; for points within 3,000 km of
 * the central meridian it is exact to nanometres. Source: C. F. F. Karney, "Transverse Mercator with an accuracy of a
 * few nanometers", J. Geodesy 85 (2011) 475-485, equations 7 to 11 and 35, 36. Axis convention of EPSG method 9807.
 */
public final class LocalPlane {
    /** WGS 84 semi-major axis, m (defining constant). */
    public static final double WGS84_A = 6_378_137.0;
    /** WGS 84 inverse flattening (defining constant). */
    public static final double WGS84_INVERSE_F = 298.257223563;

    private final double lon0Deg;
    private final double scaledRadiusM;
    private final double e;
    private final double[] alpha;
    private final double[] beta;
    private final double northOriginM;

    /** A plane on WGS 84 with its origin at (lat0, lon0), degrees, scale 1. */
    public LocalPlane(double lat0Deg, double lon0Deg) {
        this(WGS84_A, WGS84_INVERSE_F, lat0Deg, lon0Deg, 1.0);
    }

    /** A plane on any ellipsoid with scale k0 on its central meridian, for tests against published examples. */
    public LocalPlane(double aM, double inverseF, double lat0Deg, double lon0Deg, double k0) {
        double f = 1 / inverseF;
        double n = f / (2 - f);
        this.lon0Deg = lon0Deg;
        this.e = Math.sqrt(f * (2 - f));
        double n2 = n * n;
        this.scaledRadiusM = k0 * aM / (1 + n) * (1 + n2 / 4 + n2 * n2 / 64 + n2 * n2 * n2 / 256);
        this.alpha = alphaSeries(n);
        this.beta = betaSeries(n);
        double[] origin = new double[2];
        double xi0 = Math.atan(conformalTan(Math.toRadians(lat0Deg)));
        seriesForward(xi0, 0, origin);
        this.northOriginM = scaledRadiusM * origin[0];
    }

    /** Projects (lat, lon) in degrees; {@code out} receives east and north, m. */
    public void forward(double latDeg, double lonDeg, double[] out) {
        double lam = Math.toRadians(Math.IEEEremainder(lonDeg - lon0Deg, 360));
        double t = conformalTan(Math.toRadians(latDeg));
        double xi = Math.atan2(t, Math.cos(lam));
        double eta = asinh(Math.sin(lam) / Math.hypot(t, Math.cos(lam)));
        seriesForward(xi, eta, out);
        double north = scaledRadiusM * out[0] - northOriginM;
        out[0] = scaledRadiusM * out[1];
        out[1] = north;
    }

    /** Inverse of {@link #forward}: east and north in meters; {@code out} receives lat and lon, degrees. */
    public void inverse(double eastM, double northM, double[] out) {
        double xi = (northM + northOriginM) / scaledRadiusM;
        double eta = eastM / scaledRadiusM;
        double xip = xi;
        double etap = eta;
        for (int j = 1; j <= 6; j++) {
            xip -= beta[j] * Math.sin(2 * j * xi) * Math.cosh(2 * j * eta);
            etap -= beta[j] * Math.cos(2 * j * xi) * Math.sinh(2 * j * eta);
        }
        double taup = Math.sin(xip) / Math.hypot(Math.sinh(etap), Math.cos(xip));
        out[1] = Math.IEEEremainder(lon0Deg + Math.toDegrees(Math.atan2(Math.sinh(etap), Math.cos(xip))), 360);
        out[0] = Math.toDegrees(Math.atan(geographicTan(taup)));
    }

    private void seriesForward(double xi, double eta, double[] out) {
        double x = xi;
        double y = eta;
        for (int j = 1; j <= 6; j++) {
            x += alpha[j] * Math.sin(2 * j * xi) * Math.cosh(2 * j * eta);
            y += alpha[j] * Math.cos(2 * j * xi) * Math.sinh(2 * j * eta);
        }
        out[0] = x;
        out[1] = y;
    }

    /** Tangent of the conformal latitude (Karney eq. 7 to 9). */
    private double conformalTan(double latRad) {
        double tau = Math.tan(latRad);
        double sigma = Math.sinh(e * atanh(e * tau / Math.hypot(1, tau)));
        return tau * Math.hypot(1, sigma) - sigma * Math.hypot(1, tau);
    }

    /** Newton's method for the tangent of the latitude (Karney eq. 19 to 21); four iterations, two reach double precision. */
    private double geographicTan(double taup) {
        double e2m = 1 - e * e;
        double tau = taup / e2m;
        for (int i = 0; i < 4; i++) {
            double sigma = Math.sinh(e * atanh(e * tau / Math.hypot(1, tau)));
            double t = tau * Math.hypot(1, sigma) - sigma * Math.hypot(1, tau);
            tau += (taup - t) / Math.hypot(1, t) * (1 + e2m * tau * tau) / (e2m * Math.hypot(1, tau));
        }
        return tau;
    }

    private static double atanh(double x) {
        return 0.5 * Math.log1p(2 * x / (1 - x));
    }

    private static double asinh(double x) {
        double a = Math.abs(x);
        return Math.copySign(Math.log1p(a + a * a / (1 + Math.hypot(1, a))), x);
    }

    private static double[] alphaSeries(double n) {
        double n2 = n * n;
        double n3 = n2 * n;
        double n4 = n3 * n;
        double n5 = n4 * n;
        double n6 = n5 * n;
        return new double[] {
            0,
            n / 2 - 2 * n2 / 3 + 5 * n3 / 16 + 41 * n4 / 180 - 127 * n5 / 288 + 7891 * n6 / 37800,
            13 * n2 / 48 - 3 * n3 / 5 + 557 * n4 / 1440 + 281 * n5 / 630 - 1983433 * n6 / 1935360,
            61 * n3 / 240 - 103 * n4 / 140 + 15061 * n5 / 26880 + 167603 * n6 / 181440,
            49561 * n4 / 161280 - 179 * n5 / 168 + 6601661 * n6 / 7257600,
            34729 * n5 / 80640 - 3418889 * n6 / 1995840,
            212378941 * n6 / 319334400
        };
    }

    private static double[] betaSeries(double n) {
        double n2 = n * n;
        double n3 = n2 * n;
        double n4 = n3 * n;
        double n5 = n4 * n;
        double n6 = n5 * n;
        return new double[] {
            0,
            n / 2 - 2 * n2 / 3 + 37 * n3 / 96 - n4 / 360 - 81 * n5 / 512 + 96199 * n6 / 604800,
            n2 / 48 + n3 / 15 - 437 * n4 / 1440 + 46 * n5 / 105 - 1118711 * n6 / 3870720,
            17 * n3 / 480 - 37 * n4 / 840 - 209 * n5 / 4480 + 5569 * n6 / 90720,
            4397 * n4 / 161280 - 11 * n5 / 504 - 830251 * n6 / 7257600,
            4583 * n5 / 161280 - 108847 * n6 / 3991680,
            20648693 * n6 / 638668800
        };
    }
}
