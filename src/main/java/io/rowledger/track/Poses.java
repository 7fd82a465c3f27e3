package io.rowledger.track;

/**
 * Where the bar was: poses as columns, and the steps between them.
 *
 * <p>Poses lie half-way in time between records (and on the way where a step would be longer than 0.5 m), so that every
 * step belongs to exactly one record: the record answers for the half intervals on either side of it. Step k runs from
 * pose k to pose k + 1; a step with {@code record(k) < 0} bridges a gap in the log and is no step at all.
 *
 * <p>Metres in the job's {@link io.rowledger.geo.LocalPlane}, headings in radians clockwise from north. Immutable.
 */
public final class Poses {
    private final PoseColumns c;

    /** Takes over the columns; they are not copied. */
    public Poses(PoseColumns columns) {
        this.c = columns;
    }

    /** Number of poses. */
    public int poses() {
        return c.timeS.length;
    }

    /** Number of steps: one less than poses, 0 for none. */
    public int steps() {
        return Math.max(0, poses() - 1);
    }

    /** Time of pose i, seconds since the Unix epoch. */
    public double timeS(int i) {
        return c.timeS[i];
    }

    /** Antenna, east. */
    public double antennaEastM(int i) {
        return c.antennaEastM[i];
    }

    /** Antenna, north. */
    public double antennaNorthM(int i) {
        return c.antennaNorthM[i];
    }

    /** Tractor heading ψ. */
    public double headingRad(int i) {
        return c.headingRad[i];
    }

    /** Hitch pin, east. */
    public double hitchEastM(int i) {
        return c.hitchEastM[i];
    }

    /** Hitch pin, north. */
    public double hitchNorthM(int i) {
        return c.hitchNorthM[i];
    }

    /** Bar heading θ. */
    public double barHeadingRad(int i) {
        return c.barHeadingRad[i];
    }

    /** Drop line's centre, east. */
    public double dropEastM(int i) {
        return c.dropEastM[i];
    }

    /** Drop line's centre, north. */
    public double dropNorthM(int i) {
        return c.dropNorthM[i];
    }

    /** East of the point y metres right of the drop line's centre at pose i. */
    public double eastM(int i, double yM) {
        return c.dropEastM[i] + yM * c.barCos[i];
    }

    /** North of the point y metres right of the drop line's centre at pose i. */
    public double northM(int i, double yM) {
        return c.dropNorthM[i] - yM * c.barSin[i];
    }

    /** The record step k belongs to, −1 for a gap. */
    public int record(int k) {
        return c.record[k];
    }

    /** Seconds step k lasts. */
    public double durationS(int k) {
        return c.timeS[k + 1] - c.timeS[k];
    }

    /** Lowered and moving forward. */
    public boolean working(int k) {
        return c.pass[k] > 0;
    }

    /** The pass step k belongs to, from 1; 0 when not working. */
    public int pass(int k) {
        return c.pass[k];
    }

    /** True while the bar's angle is not yet known (start, or after backing) until the hitch has moved 3·A forward. */
    public boolean unsettled(int k) {
        return c.unsettled[k];
    }

    /** True while the tractor backs. */
    public boolean backing(int k) {
        return c.backing[k];
    }
}
