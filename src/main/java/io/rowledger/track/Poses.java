package io.rowledger.track;

/**
 * Poses of tractor and bar as columns, and the steps between them.
 *
 * <p>Poses lie halfway in time between records, and more of them in between if a step would be longer than 0.5 m, so that
 * every step belongs to one record: a record covers the half intervals on either side of it. Step k runs from pose k to
 * pose k + 1. A step with {@code record(k) < 0} spans a gap in the log: nothing is known of it, and it is not working.
 *
 * <p>Coordinates are in m in the job's {@link io.rowledger.geo.LocalPlane}, headings in rad clockwise from north. Immutable.
 */
public final class Poses {
    private final PoseColumns c;

    /** Uses the columns without copying them. */
    public Poses(PoseColumns columns) {
        this.c = columns;
    }

    /** Returns the number of poses. */
    public int poses() {
        return c.timeS.length;
    }

    /** Returns the number of steps: one less than poses, or 0 without poses. */
    public int steps() {
        return Math.max(0, poses() - 1);
    }

    /** Returns the time of pose i, seconds since the Unix epoch. */
    public double timeS(int i) {
        return c.timeS[i];
    }

    /** Returns the antenna's east, m. */
    public double antennaEastM(int i) {
        return c.antennaEastM[i];
    }

    /** Returns the antenna's north, m. */
    public double antennaNorthM(int i) {
        return c.antennaNorthM[i];
    }

    /** Returns the tractor's heading ψ, rad. */
    public double headingRad(int i) {
        return c.headingRad[i];
    }

    /** Returns the hitch pin's east, m. */
    public double hitchEastM(int i) {
        return c.hitchEastM[i];
    }

    /** Returns the hitch pin's north, m. */
    public double hitchNorthM(int i) {
        return c.hitchNorthM[i];
    }

    /** Returns the bar's heading θ, rad. */
    public double barHeadingRad(int i) {
        return c.barHeadingRad[i];
    }

    /** Returns the east of the drop line's center, m. */
    public double dropEastM(int i) {
        return c.dropEastM[i];
    }

    /** Returns the north of the drop line's center, m. */
    public double dropNorthM(int i) {
        return c.dropNorthM[i];
    }

    /** Returns the east of the point yM right of the drop line's center at pose i, m. */
    public double eastM(int i, double yM) {
        return c.dropEastM[i] + yM * c.barCos[i];
    }

    /** Returns the north of the point yM right of the drop line's center at pose i, m. */
    public double northM(int i, double yM) {
        return c.dropNorthM[i] - yM * c.barSin[i];
    }

    /** Returns the record that step k belongs to, or −1 for a gap. */
    public int record(int k) {
        return c.record[k];
    }

    /** Returns the duration of step k, s. */
    public double durationS(int k) {
        return c.timeS[k + 1] - c.timeS[k];
    }

    /** Returns true if the bar is lowered and moves forward in step k. */
    public boolean working(int k) {
        return c.pass[k] > 0;
    }

    /** Returns the number of the pass that step k belongs to, from 1; 0 if it is not working. */
    public int pass(int k) {
        return c.pass[k];
    }

    /** Returns true while the bar's angle is unknown: from the start, a gap or backing until the hitch has moved 3·A forward. */
    public boolean unsettled(int k) {
        return c.unsettled[k];
    }

    /** Returns true if the bar is lowered in step k; without a column of it, if the step is working. */
    public boolean lowered(int k) {
        return c.lowered.length == 0 ? working(k) : c.lowered[k];
    }

    /** Returns true if the tractor backs in step k. */
    public boolean backing(int k) {
        return c.backing[k];
    }
}
