package io.rowledger.diagnose;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Objects;
import org.jspecify.annotations.Nullable;

/** Puts episodes of neighbours, or of rows of one group, that began together into one: one cause, one finding. */
final class Together {
    /** Onsets as close as this are one event, s. */
    private static final double SAME_TIME_S = 12;

    /** Levels as close as this are of one cause. */
    private static final double SAME_LEVEL = 0.12;

    private Together() {}

    /** The episodes in groups; rows ascending within a group, groups by their first row. */
    static List<List<Levels.Episode>> grouped(Evidence e, List<Levels.Episode> episodes) {
        List<Levels.Episode> rest = new ArrayList<>(episodes);
        rest.sort(Comparator.comparingInt(Levels.Episode::row).thenComparingDouble(Levels.Episode::fromS));
        List<List<Levels.Episode>> groups = new ArrayList<>();
        while (!rest.isEmpty()) {
            List<Levels.Episode> group = new ArrayList<>();
            group.add(rest.remove(0));
            for (int i = 0; i < rest.size(); ) {
                Levels.Episode next = rest.get(i);
                if (group.stream().anyMatch(member -> oneCause(e, member, next))
                        && group.stream().noneMatch(member -> member.row() == next.row())) {
                    group.add(rest.remove(i));
                    i = 0;
                } else {
                    i++;
                }
            }
            group.sort(Comparator.comparingInt(Levels.Episode::row));
            groups.add(group);
        }
        return groups;
    }

    private static boolean oneCause(Evidence e, Levels.Episode a, Levels.Episode b) {
        boolean near = Math.abs(a.row() - b.row()) == 1 || sameGroup(group(e, a.row()), group(e, b.row()));
        return near
                && Math.abs(a.fromS() - b.fromS()) <= SAME_TIME_S + 0.3 * Math.max(a.slideS(), b.slideS())
                && Math.abs(a.level() - b.level()) <= SAME_LEVEL
                && a.fromStart() == b.fromStart();
    }

    private static @Nullable String group(Evidence e, int r) {
        return e.signals.rig.bands().get(r).group();
    }

    private static boolean sameGroup(@Nullable String a, @Nullable String b) {
        return a != null && Objects.equals(a, b);
    }

    static List<Integer> rows(List<Levels.Episode> group) {
        return group.stream().map(Levels.Episode::row).toList();
    }
}
