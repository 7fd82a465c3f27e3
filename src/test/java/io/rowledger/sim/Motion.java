package io.rowledger.sim;

/**
 * Tractor and bar, integrated from their no-slip equations with the classical fourth-order Runge-Kutta step.
 *
 * <p>State: rear axle (x, y), heading psi, bar heading theta. With curvature kappa and speed v of the axle:
 *
 * <pre>
 *   x' = v sin psi,  y' = v cos psi,  psi' = v kappa
 *   theta' = (v / A) (sin(psi - theta) - h kappa cos(psi - theta))
 * </pre>
 *
 * <p>The last line says that the bar's wheels, A behind a pin that sits h behind the axle, do not slip sideways; with
 * h = 0 it is the one-trailer equation of LaValle, Planning Algorithms (2006), eq. 13.19. A mounted bar has theta = psi.
 * Curvature and speed change linearly within a step. Valid for any heading; backing up is as unstable as it is in life.
 */
public final class Motion {
    private final SimRig rig;
    private double x;
    private double y;
    private double psi;
    private double theta;
    private double kappa;
    private double speed;

    /** A machine standing at (x, y) with the bar straight behind it. */
    public Motion(SimRig rig, double x, double y, double headingRad) {
        this.rig = rig;
        this.x = x;
        this.y = y;
        this.psi = headingRad;
        this.theta = headingRad;
    }

    /** Sets curvature (1/m, positive right) and speed (m/s) at once. */
    public void set(double curvaturePerM, double speedMps) {
        kappa = curvaturePerM;
        speed = speedMps;
    }

    /** Sets the bar's heading, rad. */
    public void barHeading(double thetaRad) {
        theta = thetaRad;
    }

    /** Moves on by dt with constant rates of curvature (1/m/s) and speed (m/s²). */
    public void step(double dtS, double curvatureRate, double accelMps2) {
        double[] k1 = rates(psi, theta, kappa, speed);
        double km = kappa + curvatureRate * dtS / 2;
        double vm = speed + accelMps2 * dtS / 2;
        double[] k2 = rates(psi + k1[2] * dtS / 2, theta + k1[3] * dtS / 2, km, vm);
        double[] k3 = rates(psi + k2[2] * dtS / 2, theta + k2[3] * dtS / 2, km, vm);
        kappa += curvatureRate * dtS;
        speed += accelMps2 * dtS;
        double[] k4 = rates(psi + k3[2] * dtS, theta + k3[3] * dtS, kappa, speed);
        x += dtS / 6 * (k1[0] + 2 * k2[0] + 2 * k3[0] + k4[0]);
        y += dtS / 6 * (k1[1] + 2 * k2[1] + 2 * k3[1] + k4[1]);
        psi += dtS / 6 * (k1[2] + 2 * k2[2] + 2 * k3[2] + k4[2]);
        theta = rig.drawn() ? theta + dtS / 6 * (k1[3] + 2 * k2[3] + 2 * k3[3] + k4[3]) : psi;
    }

    private double[] rates(double heading, double bar, double curvature, double v) {
        double turn = 0;
        if (rig.drawn()) {
            double delta = heading - bar;
            turn = v / rig.hitchToWheelsM() * (Math.sin(delta) - rig.axleToHitchM() * curvature * Math.cos(delta));
        }
        return new double[] {v * Math.sin(heading), v * Math.cos(heading), v * curvature, turn};
    }

    /** Rear axle, m east. */
    public double x() {
        return x;
    }

    /** Rear axle, m north. */
    public double y() {
        return y;
    }

    /** Tractor heading, rad, unwrapped. */
    public double psi() {
        return psi;
    }

    /** Bar heading, rad, unwrapped. */
    public double theta() {
        return theta;
    }

    /** Curvature, 1/m, positive right. */
    public double kappa() {
        return kappa;
    }

    /** Speed of the rear axle, m/s, negative backwards. */
    public double speed() {
        return speed;
    }

    /** Antenna, m east. */
    public double antennaX() {
        return x + rig.antennaAheadM() * Math.sin(psi) + rig.antennaRightM() * Math.cos(psi);
    }

    /** Antenna, m north. */
    public double antennaY() {
        return y + rig.antennaAheadM() * Math.cos(psi) - rig.antennaRightM() * Math.sin(psi);
    }

    /** Hitch pin, m east. */
    public double hitchX() {
        return x - rig.axleToHitchM() * Math.sin(psi);
    }

    /** Hitch pin, m north. */
    public double hitchY() {
        return y - rig.axleToHitchM() * Math.cos(psi);
    }

    /** Point of the bar: back from the hitch pin and right of the bar's own line, m east. */
    public double barX(double backM, double rightM) {
        return hitchX() - backM * Math.sin(theta) + rightM * Math.cos(theta);
    }

    /** Point of the bar: back from the hitch pin and right of the bar's own line, m north. */
    public double barY(double backM, double rightM) {
        return hitchY() - backM * Math.cos(theta) - rightM * Math.sin(theta);
    }
}
