package io.rowledger.sim;

import java.util.ArrayList;
import java.util.List;

/** Sums up by zone what happens step by step: a row's 20 ms belong to the zone that holds the middle of its band. */
final class ZoneTally {
    private final ZoneMap map;
    private final double[] swept;
    private final double[][] volume;
    private final double[][] metered;
    private final double[][] asked;

    ZoneTally(ZoneMap map, int products) {
        this.map = map;
        int n = map.zones().size();
        swept = new double[n];
        volume = new double[n][products];
        metered = new double[n][products];
        asked = new double[n][products];
    }

    void step(StepState s) {
        for (int i = 0; i < s.rows; i++) {
            double x = (s.startX[i] + s.endX[i] + s.startX[s.rows + i] + s.endX[s.rows + i]) / 4;
            double y = (s.startY[i] + s.endY[i] + s.startY[s.rows + i] + s.endY[s.rows + i]) / 4;
            int z = map.at(x, y);
            if (z < 0) {
                continue;
            }
            double area = Math.max(0, s.areaM2[i]);
            swept[z] += area;
            for (int p = 0; p < s.products; p++) {
                volume[z][p] += s.trueLPerS[p][i] * s.dtS;
                metered[z][p] += s.meterLPerS[p][i] * s.dtS;
                asked[z][p] += s.targetLPerM2[p] * area;
            }
        }
    }

    List<Truth.Zone> done() {
        List<Truth.Zone> zones = new ArrayList<>();
        for (int z = 0; z < swept.length; z++) {
            zones.add(new Truth.Zone(map.zones().get(z).name(), swept[z], volume[z], metered[z], asked[z]));
        }
        return zones;
    }
}
