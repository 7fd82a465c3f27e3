package io.rowledger.coverage;

import io.rowledger.coverage.CoverageDefect.Cause;
import io.rowledger.coverage.sections.OffReasons;
import io.rowledger.coverage.strips.RowRuns;
import io.rowledger.coverage.strips.StripPolygon;
import io.rowledger.coverage.strips.Visit;
import io.rowledger.coverage.strips.Visit.Kind;
import io.rowledger.coverage.strips.VisitIndex;
import io.rowledger.geo.Jts;
import io.rowledger.parallel.ParallelTasks;
import io.rowledger.strip.Strips;
import io.rowledger.track.Pass;
import io.rowledger.track.Poses;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.SortedSet;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.function.Predicate;
import java.util.function.ToDoubleBiFunction;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Polygon;

/** Finds position, adjacent passes and rows, and cause of skips and overlaps. */
final class DefectClassifier {
    /** Smallest fraction of the outline at ends of runs for a cause at the ends of passes. */
    private static final double MIN_END_SHARE = 0.2;
    /** Smallest fraction of the outline along a pass for a pass that lies beside the defect. */
    private static final double MIN_FLANK_SHARE = 0.15;
    /**
     * Smallest fraction of the outline along strips for a defect enclosed by strips, whichever passes they belong to.
     */
    private static final double MIN_CLOSED_IN_SHARE = 0.6;
    /**
     * Fraction of the outline along strips from which a skip does not touch the edge of the field, allowing for noise.
     */
    private static final double MIN_ENCLOSED_SHARE = 0.95;
    /** Smallest fraction of the defect that visits of one kind must make up to be its cause. */
    private static final double MIN_MAIN_SHARE = 0.5;
    /** Smallest fraction of the defect that a visit or row must make up to be named with it. */
    private static final double MIN_NAMED_SHARE = 0.05;
    /** Fraction of the rows from which a start or end without delivery is that of the pass, not of its rows. */
    private static final double MIN_WHOLE_BAR_SHARE = 2.0 / 3;

    private final VisitIndex index;
    private final Strips strips;
    private final List<Pass> passes;
    private final boolean bounded;
    private final OffReasons reasons;
    private final double barWidthM;

    DefectClassifier(VisitIndex index, Strips strips, List<Pass> passes, boolean bounded, OffReasons reasons) {
        this.index = index;
        this.strips = strips;
        this.passes = passes;
        this.bounded = bounded;
        this.reasons = reasons;
        this.barWidthM = RowRuns.rightmost(strips) - RowRuns.leftmost(strips);
    }

    List<CoverageDefect> skips(List<Polygon> patches, int threads) {
        return ParallelTasks.map(patches.size(), threads, i -> skips(patches.get(i)));
    }

    List<CoverageDefect> overlap(List<Polygon> patches, int threads) {
        return numbered(ParallelTasks.map(patches.size(), threads, i -> overlap(patches.get(i))), defect -> true);
    }

    /** Returns the defects that fulfil the condition, numbered from 1, largest first. */
    static List<CoverageDefect> numbered(List<CoverageDefect> defects, Predicate<CoverageDefect> condition) {
        List<CoverageDefect> sorted =
                new ArrayList<>(defects.stream().filter(condition).toList());
        sorted.sort(Comparator.comparingDouble((CoverageDefect p) -> -p.areaM2())
                .thenComparing(CoverageDefect::eastM)
                .thenComparing(CoverageDefect::northM));
        List<CoverageDefect> out = new ArrayList<>(sorted.size());
        for (CoverageDefect p : sorted) {
            out.add(new CoverageDefect(
                    out.size() + 1, p.polygon(), p.areaM2(), p.eastM(), p.northM(), p.passes(), p.rows(), p.cause()));
        }
        return out;
    }

    private static CoverageDefect defect(
            Polygon polygon, SortedSet<Integer> passes, SortedSet<Integer> rows, Cause cause) {
        Coordinate inside = polygon.getInteriorPoint().getCoordinate();
        return new CoverageDefect(
                0, polygon, polygon.getArea(), inside.x, inside.y, List.copyOf(passes), List.copyOf(rows), cause);
    }

    private CoverageDefect skips(Polygon polygon) {
        List<Visit> notDelivering = visitsIn(polygon, v -> v.kind() == Kind.NOT_DELIVERING, MIN_MAIN_SHARE);
        if (!notDelivering.isEmpty()) {
            return notDelivering(polygon, notDelivering);
        }
        Surroundings s = Surroundings.of(polygon, index, strips);
        return defect(polygon, s.passes, s.rows, skipCause(polygon, s));
    }

    private Cause skipCause(Polygon polygon, Surroundings s) {
        if (s.touching == 0) {
            return Cause.OUTSIDE_THE_LOG;
        }
        if (Jts.meanWidthM(polygon) > barWidthM) {
            return Cause.OUTSIDE_THE_LOG;
        }
        if (s.endShare() >= MIN_END_SHARE) {
            return s.atStarts >= s.atEnds ? Cause.LATE_START : Cause.EARLY_STOP;
        }
        if (s.flankingPasses(MIN_FLANK_SHARE) >= 2 || !bounded || s.touchingShare() >= MIN_ENCLOSED_SHARE) {
            return Cause.GAP_BETWEEN_PASSES;
        }
        // A corner of the field that one lap rounds off is closed in along most of its outline, but between no passes.
        boolean closedIn = s.touchingShare() >= MIN_CLOSED_IN_SHARE && s.passes.size() >= 2;
        return closedIn ? Cause.GAP_BETWEEN_PASSES : Cause.EDGE_OF_FIELD;
    }

    private CoverageDefect notDelivering(Polygon polygon, List<Visit> notDelivering) {
        TreeSet<Integer> passNumbers = new TreeSet<>();
        TreeSet<Integer> rows = new TreeSet<>();
        int starts = 0;
        int ends = 0;
        for (Visit v : notDelivering) {
            passNumbers.add(v.pass());
            for (int r = v.strip().firstRow(); r <= v.strip().lastRow(); r++) {
                rows.add(r);
            }
            Pass pass = passes.get(v.pass() - 1);
            boolean fromStart = v.runStart() == pass.firstStep();
            boolean toEnd = v.runEnd() == pass.endStep();
            starts += fromStart && !toEnd ? 1 : 0;
            ends += toEnd && !fromStart ? 1 : 0;
        }
        boolean wholeBar = rows.size() >= MIN_WHOLE_BAR_SHARE * strips.rows();
        Cause cause = wholeBar && starts == notDelivering.size()
                ? Cause.LATE_START
                : wholeBar && ends == notDelivering.size() ? Cause.EARLY_STOP : Cause.ROW_NOT_DELIVERING;
        if (share(polygon, notDelivering, reasons::unknownShare) >= MIN_MAIN_SHARE) {
            cause = Cause.FLOW_NOT_KNOWN;
        } else if (cause == Cause.ROW_NOT_DELIVERING
                && share(polygon, notDelivering, reasons::meterShare) >= MIN_MAIN_SHARE) {
            cause = Cause.METER_READS_ZERO;
        }
        boolean ofRows = cause != Cause.LATE_START && cause != Cause.EARLY_STOP;
        return defect(polygon, passNumbers, ofRows ? mainRows(polygon, notDelivering, rows) : rows, cause);
    }

    /** Returns the share of these visits' part of the polygon for which a reason holds (1). */
    private double share(Polygon polygon, List<Visit> notDelivering, ToDoubleBiFunction<StripPolygon, Poses> reason) {
        double countedM2 = 0;
        double allM2 = 0;
        for (Visit v : notDelivering) {
            double areaM2 = Jts.intersection(v.polygon(), polygon).getArea();
            countedM2 += areaM2 * reason.applyAsDouble(v.strip(), strips.poses());
            allM2 += areaM2;
        }
        return allM2 > 0 ? countedM2 / allM2 : 0;
    }

    /**
     * Returns the rows that make up the defect, without rows whose part in it is a sliver; all of them if each is
     * small.
     */
    private SortedSet<Integer> mainRows(Polygon polygon, List<Visit> notDelivering, SortedSet<Integer> all) {
        TreeMap<Integer, Double> areaByRow = new TreeMap<>();
        for (Visit v : notDelivering) {
            int count = v.strip().lastRow() - v.strip().firstRow() + 1;
            double eachM2 = Jts.intersection(v.polygon(), polygon).getArea() / count;
            for (int r = v.strip().firstRow(); r <= v.strip().lastRow(); r++) {
                areaByRow.merge(r, eachM2, Double::sum);
            }
        }
        TreeSet<Integer> rows = new TreeSet<>();
        areaByRow.forEach((row, areaM2) -> {
            if (areaM2 >= MIN_NAMED_SHARE * polygon.getArea()) {
                rows.add(row);
            }
        });
        return rows.isEmpty() ? all : rows;
    }

    /**
     * Returns the visits that fulfil the condition, without those that hardly meet the polygon; empty if they make up
     * less than {@code share} of it together.
     */
    private List<Visit> visitsIn(Polygon polygon, Predicate<Visit> condition, double share) {
        List<Visit> out = new ArrayList<>();
        double sumM2 = 0;
        for (int i : index.near(polygon.getEnvelopeInternal())) {
            Visit visit = index.get(i);
            if (condition.test(visit)) {
                double commonM2 = Jts.intersection(visit.polygon(), polygon).getArea();
                sumM2 += commonM2;
                if (commonM2
                        >= MIN_NAMED_SHARE
                                * Math.min(polygon.getArea(), visit.polygon().getArea())) {
                    out.add(visit);
                }
            }
        }
        return sumM2 >= share * polygon.getArea() ? out : List.of();
    }

    private CoverageDefect overlap(Polygon polygon) {
        List<Visit> pivots = visitsIn(polygon, v -> v.kind() == Kind.PIVOT, MIN_MAIN_SHARE);
        Surroundings s = Surroundings.of(polygon, index, strips);
        if (!pivots.isEmpty()) {
            TreeSet<Integer> passNumbers = new TreeSet<>();
            TreeSet<Integer> rows = new TreeSet<>();
            for (Visit v : pivots) {
                passNumbers.add(v.pass());
                for (int r = v.strip().firstRow(); r <= v.strip().lastRow(); r++) {
                    rows.add(r);
                }
            }
            return defect(polygon, passNumbers, rows, Cause.INSIDE_THE_PIVOT);
        }
        TreeSet<Integer> passNumbers = new TreeSet<>();
        for (Visit v : visitsIn(polygon, v -> v.kind() == Kind.DELIVERING, 0)) {
            passNumbers.add(v.pass());
        }
        return defect(polygon, passNumbers, s.rows, overlapCause(passNumbers.size(), s));
    }

    private static Cause overlapCause(int passCount, Surroundings s) {
        if (passCount <= 1) {
            return Cause.PASS_CROSSED_ITSELF;
        }
        return s.endShare() >= MIN_END_SHARE ? Cause.HEADLAND_OVERLAP : Cause.PASSES_OVERLAP;
    }
}
