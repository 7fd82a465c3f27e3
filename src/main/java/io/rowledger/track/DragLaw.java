package io.rowledger.track;

import io.rowledger.geo.Heading;

/**
 * Heading of a body that is towed at distance A and does not slip sideways: a cart behind its hitch pin, or a tractor's
 * rear axle behind an antenna ahead of it.
 *
 * <p>While the towing point moves a distance s in a straight line of direction φ, the heading θ of the body follows
 * <pre>tan(δ₁/2) = tan(δ₀/2) · exp(−s/A),  δ = θ − φ</pre>
 * the classical tractrix, exact for polylines whatever the step. Source: the one-trailer equation θ' = (v/A)·sin(φ − θ),
 * LaValle, Planning Algorithms (2006), eq. 13.19, integrated; see also "Tractrix", MacTutor. Valid for A &gt; 0 and
 * forward motion; it is unstable backward, where callers hold the angle.
 */
public final class DragLaw {
    private DragLaw() {}

    /**
     * Returns the heading of the towed body after a move of the towing point.
     *
     * @param headingRad heading θ before the move, rad
     * @param courseRad direction φ of the move, rad
     * @param lengthM distance s of the move, m, at least 0
     * @param drawbarM distance A, m; if 0, the heading is the course
     * @return heading after the move, rad, in (−π, π]
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
