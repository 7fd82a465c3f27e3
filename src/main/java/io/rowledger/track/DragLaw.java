package io.rowledger.track;

import io.rowledger.geo.Heading;

/**
 * How a point follows that is drawn on a bar of length A and does not slip sideways: a cart behind its hitch, or a rear
 * axle behind an antenna that stands ahead of it.
 *
 * <p>While the leading point moves a length s along a straight line of direction φ,
 * <pre>tan(δ₁/2) = tan(δ₀/2) · exp(−s/A),  δ = θ − φ</pre>
 * the classical tractrix, exact for a polyline of any step. Source: the one-trailer equation θ' = (v/A)·sin(φ − θ),
 * LaValle, Planning Algorithms (2006), eq. 13.19, integrated; see also "Tractrix", MacTutor. Valid for A &gt; 0 and
 * forward motion; backward it is unstable and callers hold the angle instead.
 */
public final class DragLaw {
    private DragLaw() {}

    /**
     * The drawn heading after the leading point moved.
     *
     * @param headingRad heading θ before
     * @param courseRad direction φ of the move
     * @param lengthM length s of the move, at least 0
     * @param drawbarM length A; 0 means the heading is the course
     * @return heading after, rad, in (−π, π]
     */
    public static double after(double headingRad, double courseRad, double lengthM, double drawbarM) {
        if (drawbarM <= 0) {
            return courseRad;
        }
        double delta = Heading.wrap(headingRad - courseRad);
        double left = 2 * Math.atan(Math.tan(delta / 2) * Math.exp(-lengthM / drawbarM));
        return Heading.wrap(courseRad + left);
    }
}
