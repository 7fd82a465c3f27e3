package io.rowledger.sim;

/**
 * A planned job.
 *
 * @param path the rear axle's line with its working spans
 * @param boundary ring of {x, y} in meters, not closed; null for none
 * @param headingRad main heading of the passes
 */
public record FieldPlan(TourPath path, double[][] boundary, double headingRad) {
    /** Lays a job for a machine. */
    @FunctionalInterface
    public interface Layout {
        /** The job for this machine. */
        FieldPlan lay(SimRig rig);
    }
}
