package io.rowledger.sim;

import java.util.List;

/**
 * A job whose passes are driven at several speeds: a third slower, a third as planned, a third faster, in the order they are
 * driven, as a person does on rough ground and on smooth.
 *
 * @param layout the job
 * @param factors of the planned speed, for as many groups of passes
 */
public record SpeedsByPass(FieldPlan.Layout layout, double... factors) implements FieldPlan.Layout {
    private static final double AROUND_M = 8;

    @Override
    public FieldPlan lay(SimRig rig) {
        FieldPlan plan = layout.lay(rig);
        TourPath path = plan.path();
        List<TourPath.WorkSpan> spans = path.spans();
        for (int j = 0; j < spans.size(); j++) {
            double factor = factors[j * factors.length / spans.size()];
            double from = spans.get(j).startM() + rig.dropBehindAxleM() - AROUND_M;
            double to = spans.get(j).endM() + rig.dropBehindAxleM() + 1;
            for (int i = 0; i < path.size(); i++) {
                if (path.s()[i] >= from && path.s()[i] <= to) {
                    path.speedMps()[i] *= factor;
                }
            }
        }
        return plan;
    }
}
