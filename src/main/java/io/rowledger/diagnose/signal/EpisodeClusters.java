package io.rowledger.diagnose.signal;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Objects;
import org.jspecify.annotations.Nullable;

/** Puts episodes of neighbors, or of rows of one group, that began together into one: one cause, one finding. */
public final class EpisodeClusters {
    /** Onsets as close as this are one event, s. */
    private static final double SAME_TIME_S = 12;

    /** Levels as close as this are of one cause. */
    private static final double SAME_LEVEL = 0.12;

    private EpisodeClusters() {}

    /** The episodes in groups; rows ascending within a group, groups by their first row. */
    public static List<List<LevelShifts.Episode>> grouped(Evidence e, List<LevelShifts.Episode> episodes) {
        List<LevelShifts.Episode> rest = new ArrayList<>(episodes);
        rest.sort(Comparator.comparingInt(LevelShifts.Episode::row).thenComparingDouble(LevelShifts.Episode::fromS));
        List<List<LevelShifts.Episode>> groups = new ArrayList<>();
        while (!rest.isEmpty()) {
            List<LevelShifts.Episode> group = new ArrayList<>();
            group.add(rest.remove(0));
            for (int i = 0; i < rest.size(); ) {
                LevelShifts.Episode next = rest.get(i);
                if (group.stream().anyMatch(member -> oneCause(e, member, next))
                        && group.stream().noneMatch(member -> member.row() == next.row())) {
                    group.add(rest.remove(i));
                    i = 0;
                } else {
                    i++;
                }
            }
            group.sort(Comparator.comparingInt(LevelShifts.Episode::row));
            groups.add(group);
        }
        return groups;
    }

    private static boolean oneCause(Evidence e, LevelShifts.Episode a, LevelShifts.Episode b) {
        boolean near = Math.abs(a.row() - b.row()) == 1 || sameGroup(group(e, a.row()), group(e, b.row()));
        return near
                && Math.abs(a.fromS() - b.fromS()) <= SAME_TIME_S + 0.3 * Math.max(a.slideS(), b.slideS())
                && Math.abs(a.level() - b.level()) <= SAME_LEVEL
                && a.fromStart() == b.fromStart();
    }

    private static @Nullable String group(Evidence e, int r) {
        return e.ratios.rig.bands().get(r).section();
    }

    private static boolean sameGroup(@Nullable String a, @Nullable String b) {
        return a != null && Objects.equals(a, b);
    }

    public static List<Integer> rows(List<LevelShifts.Episode> group) {
        return group.stream().map(LevelShifts.Episode::row).toList();
    }
}
