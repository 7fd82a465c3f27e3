package io.rowledger.sim;

import java.util.LinkedHashMap;
import java.util.Map;
import java.util.function.LongFunction;

/** Ready jobs of 2 to 5 ha; exchange any part before {@link Scenario#run()}. */
public final class Scenarios {
    private Scenarios() {}

    /** All of them by name, each to be made from a seed: for tests that loop. */
    public static Map<String, LongFunction<Scenario>> all() {
        Map<String, LongFunction<Scenario>> all = new LinkedHashMap<>();
        all.put("straight drawn", Scenarios::straightDrawn);
        all.put("straight carried", Scenarios::straightCarried);
        all.put("contour drawn", Scenarios::contourDrawn);
        all.put("contour carried", Scenarios::contourCarried);
        all.put("laps drawn", Scenarios::headlandLapsDrawn);
        all.put("laps carried", Scenarios::headlandLapsCarried);
        return all;
    }

    /** Twelve-row pull-type bar, 14 straight passes of 380 m in a rectangle with a boundary, bulb turns. */
    public static Scenario straightDrawn(long seed) {
        SimRig rig = SimRig.drawn(12);
        return new Scenario(seed, rig, PassPlan.rectangle(380, 14, 0, rig.widthM()));
    }

    /** Eight-row mounted bar, 20 straight passes of 350 m in a rectangle with a boundary, wide U-turns. */
    public static Scenario straightCarried(long seed) {
        SimRig rig = SimRig.carried(8);
        return new Scenario(
                seed,
                rig,
                PassPlan.rectangle(350, 20, 0, rig.widthM()).skipping(4).heading(1.9));
    }

    /** Twelve-row pull-type bar on 10 arcs of 64 to 146 m radius, 250 m long in the middle, with a boundary. */
    public static Scenario contourDrawn(long seed) {
        return new Scenario(seed, SimRig.drawn(12), CurvePlan.arcs(64, 250, 10));
    }

    /** Twelve-row mounted bar on 8 parallels of a wave (least radius about 90 m), with a boundary. */
    public static Scenario contourCarried(long seed) {
        return new Scenario(seed, SimRig.carried(12), CurvePlan.waves(8, 220, 420, 8));
    }

    /** Twelve-row pull-type bar: two laps, then passes between slanting headlands; rows shut off one by one. */
    public static Scenario headlandLapsDrawn(long seed) {
        return new Scenario(seed, SimRig.drawn(12), PassPlan.field(slanted(), 2));
    }

    /** Sixteen-row mounted bar: two laps, then passes between slanting headlands; rows shut off one by one. */
    public static Scenario headlandLapsCarried(long seed) {
        return new Scenario(
                seed, SimRig.carried(16), PassPlan.field(slanted(), 2).heading(2.6));
    }

    private static double[][] slanted() {
        return new double[][] {{0, 0}, {330, 25}, {360, 165}, {30, 180}};
    }
}
