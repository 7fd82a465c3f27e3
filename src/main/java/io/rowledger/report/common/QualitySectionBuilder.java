package io.rowledger.report.common;

import io.rowledger.analysis.Analysis;
import io.rowledger.coverage.Coverage;
import io.rowledger.coverage.grid.ReceivedStatistics;
import io.rowledger.document.text.Messages;
import io.rowledger.document.text.Wording;
import io.rowledger.log.source.LogSource;
import io.rowledger.rate.RatesBuilder;
import io.rowledger.rig.Hitch;
import io.rowledger.rig.Product;
import io.rowledger.rig.Rig;
import io.rowledger.track.PathBreak;
import io.rowledger.track.TrackQuality;
import io.rowledger.units.QuantityKind;
import io.rowledger.units.UnitFormat;
import java.util.ArrayList;
import java.util.List;

/** What the figures rest on: records, fixes, gaps, the machine as measured, what was assumed, the sums that must agree. */
public final class QualitySectionBuilder {
    private final JobView job;
    private final Messages messages;
    private final UnitFormat f;

    public QualitySectionBuilder(JobView job, Messages messages) {
        this.job = job;
        this.messages = messages;
        this.f = messages.units();
    }

    /** The section with these notes of the analysis. */
    public QualitySection build(List<String> notes) {
        List<InputFileLine> files = new ArrayList<>();
        for (LogSource source : job.log().sources()) {
            LogSource.Dropped d = source.dropped();
            files.add(new InputFileLine(
                    Wording.fileName(source.file()),
                    f.count(source.records()),
                    f.count(source.used()),
                    f.count(d.noFix()),
                    f.count(d.duplicate()),
                    f.count(d.outOfOrder()),
                    f.count(d.jump()),
                    f.count(d.frozen()),
                    f.count(d.unreadable()),
                    source.sha256()));
        }
        return new QualitySection(
                files,
                facts(),
                machine(),
                checks(),
                notes,
                acres(),
                String.join(" ", new IntervalPhrases(f).restsOn(job.intervals().basis())));
    }

    /** Fix types, rate and noise of the positions in one line. */
    public String positions() {
        TrackQuality q = job.track().quality();
        String noise = noise(q.noiseM());
        return "satellite receiver, " + fixes(q.recordsByFix()) + "; a record every " + seconds(q.medianIntervalS())
                + (noise.isEmpty() ? "" : "; noise from record to record " + noise);
    }

    private List<Fact> facts() {
        TrackQuality q = job.track().quality();
        List<Fact> facts = new ArrayList<>();
        long records = 0;
        long used = 0;
        for (LogSource source : job.log().sources()) {
            records += source.records();
            used += source.used();
        }
        facts.add(new Fact(
                "Records used",
                f.count(used) + " of " + f.count(records)
                        + (records > 0 && used < records
                                ? "; left out " + f.count(records - used) + " ("
                                        + f.percent(100.0 * (records - used) / records) + ")"
                                : "")));
        facts.add(new Fact("Time between records (median)", seconds(q.medianIntervalS())));
        facts.add(new Fact("Fix types", fixes(q.recordsByFix())));
        String noise = noise(q.noiseM());
        if (!noise.isEmpty()) {
            facts.add(new Fact("Position noise, record to record (1 sigma)", noise));
        }
        facts.add(
                new Fact("Gaps in the log", q.gaps() == 0 ? "none" : q.gaps() + ", together " + f.duration(q.gapS())));
        long shifts = job.track().breaks().stream()
                .filter(each -> each.kind() == PathBreak.Kind.SHIFTED)
                .count();
        if (shifts > 0) {
            facts.add(new Fact("Shifts of the position", f.count(shifts)));
        }
        facts.add(new Fact(
                "Work state", q.workStateDerived() ? "not in the log: taken from flow and speed" : "from the log"));
        double sweptM2 = job.rates().sweptAreaM2();
        double unsettledM2 = job.rates().unsettledAreaM2();
        facts.add(new Fact(
                "Swept while the bar's angle was not yet known",
                (unsettledM2 > 0 ? f.anyArea(unsettledM2) : "none")
                        + (unsettledM2 > 0 && sweptM2 > 0 ? " (" + f.percent(unsettledM2 / sweptM2 * 100) + ")" : "")));
        for (Product product : job.rig().products()) {
            facts.add(new Fact(
                    "Flow lag, " + product.name(),
                    product.flowLagS() == 0
                            ? "0 s in the rig file: none taken out"
                            : seconds(product.flowLagS()) + " from the rig file, taken out"));
        }
        return facts;
    }

    private String seconds(double s) {
        return Double.isFinite(s) ? f.fixed(s, 2) + "\u00a0s" : UnitFormat.UNKNOWN;
    }

    private String fixes(int[] byFix) {
        long total = 0;
        for (int n : byFix) {
            total += n;
        }
        List<String> parts = new ArrayList<>();
        for (int digit = 0; digit < byFix.length; digit++) {
            if (byFix[digit] > 0) {
                parts.add(TrackQuality.fixName(digit) + " " + f.percent(100.0 * byFix[digit] / total));
            }
        }
        return parts.isEmpty() ? UnitFormat.UNKNOWN : String.join(", ", parts);
    }

    private String noise(double[] noiseM) {
        List<String> parts = new ArrayList<>();
        for (int digit = 0; digit < noiseM.length; digit++) {
            if (Double.isFinite(noiseM[digit])) {
                parts.add(TrackQuality.fixName(digit) + " " + f.text(QuantityKind.SMALL_LENGTH, noiseM[digit]));
            }
        }
        return String.join(", ", parts);
    }

    private List<Fact> machine() {
        Rig rig = job.rig();
        List<Fact> facts = new ArrayList<>();
        facts.add(new Fact("Rear axle forward to antenna", f.text(QuantityKind.DIMENSION, rig.antennaAheadM())));
        facts.add(new Fact("Antenna right of center", f.text(QuantityKind.DIMENSION, rig.antennaRightM())));
        facts.add(new Fact("Rear axle back to hitch pin", f.text(QuantityKind.DIMENSION, rig.axleToHitchM())));
        boolean pullType = rig.hitch() == Hitch.PULL_TYPE;
        facts.add(new Fact("Bar", pullType ? "pull-type, on its own wheels" : "mounted"));
        if (pullType) {
            facts.add(new Fact("Hitch pin back to wheels", f.text(QuantityKind.DIMENSION, rig.hitchToWheelsM())));
        }
        facts.add(new Fact("Hitch pin back to drop line", f.text(QuantityKind.DIMENSION, rig.hitchToDropM())));
        facts.add(new Fact("Bar right of center", f.text(QuantityKind.DIMENSION, rig.barRightM())));
        facts.add(new Fact(
                "Outlets and width", rig.rows() + ", together " + f.text(QuantityKind.DIMENSION, rig.widthM())));
        for (Product product : rig.products()) {
            facts.add(new Fact(
                    product.name(),
                    f.text(QuantityKind.DENSITY, product.densityKgPerL()) + ", "
                            + f.fixed(product.nitrogenFraction() * 100, 1) + "% N by weight"));
        }
        return facts;
    }

    private List<Fact> checks() {
        Coverage c = job.coverage();
        List<Fact> facts = new ArrayList<>();
        List<ReceivedStatistics> received = c.received();
        double[] outsideWorkL = RatesBuilder.volumeOutsideWorkL(job.track(), job.delivery());
        for (int p = 0; p < received.size(); p++) {
            ReceivedStatistics r = received.get(p);
            double errorPct = r.conservationError() * 100;
            facts.add(new Fact(
                    "Map total against log total, "
                            + job.rig().products().get(p).name(),
                    f.text(QuantityKind.VOLUME, r.gridVolumeL()) + " against "
                            + f.text(QuantityKind.VOLUME, r.logVolumeL()) + ": "
                            + agreement(errorPct, Limits.CONSERVATION_PCT)));
            facts.add(new Fact(
                    "Metered while lifted, standing or backing, "
                            + job.rig().products().get(p).name(),
                    f.text(QuantityKind.VOLUME, outsideWorkL[p]) + ", in no figure of this review"));
        }
        if (c.boundary() != null) {
            double insideM2 = c.coveredAreaM2() - c.outsideBoundaryM2() + c.skipAreaM2();
            double errorPct = (insideM2 / c.boundaryAreaM2() - 1) * 100;
            facts.add(new Fact(
                    "Covered inside plus skipped against boundary",
                    f.text(QuantityKind.AREA, insideM2) + " against " + f.text(QuantityKind.AREA, c.boundaryAreaM2())
                            + ": " + agreement(errorPct, Limits.AREA_SUM_PCT)));
            facts.add(new Fact(
                    "Covered outside the boundary",
                    c.outsideBoundaryM2() > 0 ? f.anyArea(c.outsideBoundaryM2()) : "none"));
        }
        return facts;
    }

    private String agreement(double errorPct, double limitPct) {
        if (!Double.isFinite(errorPct)) {
            return UnitFormat.UNKNOWN;
        }
        String limit = (limitPct < 0.1 ? f.fixed(limitPct, 2) : f.fixed(limitPct, 1)) + "%";
        String off = f.fixed(errorPct, 3) + "%";
        return off
                + (Math.abs(errorPct) <= limitPct
                        ? ", within " + limit
                        : ", MORE than " + limit + ": don't trust the map");
    }

    private String acres() {
        Coverage c = job.coverage();
        String boundary = c.boundary() == null
                ? " There was no field boundary."
                : " The field boundary came from "
                        + Wording.fileName(c.boundary().file())
                        + (c.boundary().repaired() ? " and had to be repaired where it crosses itself." : ".");
        return "Covered ground is the union of the strips on which outlets delivered, each place once. The strips run from the "
                + "antenna's path back over hitch and bar to where the liquid meets the ground. Swept ground counts every "
                + "pass of every outlet. Areas are taken on a transverse Mercator plane on WGS 84 centered on this log."
                + boundary;
    }

    // BRIDGE
    private List<String> notes = List.of();

    public QualitySectionBuilder(Analysis a, UnitFormat f) {
        this(JobView.of(a), Messages.english(f));
        notes = a.notes();
    }

    public QualitySection build() {
        return build(notes);
    }
    // END BRIDGE
}
