package io.rowledger.report.sections;

import io.rowledger.coverage.Coverage;
import io.rowledger.coverage.grid.ReceivedStatistics;
import io.rowledger.document.text.Messages;
import io.rowledger.field.Boundary;
import io.rowledger.finding.RegularFile;
import io.rowledger.log.source.LogSource;
import io.rowledger.rate.VolumeBalance;
import io.rowledger.report.common.Fact;
import io.rowledger.report.common.InputFileLine;
import io.rowledger.report.common.IntervalPhrases;
import io.rowledger.report.common.JobView;
import io.rowledger.report.common.Limits;
import io.rowledger.rig.Hitch;
import io.rowledger.rig.Product;
import io.rowledger.rig.Rig;
import io.rowledger.text.Message;
import io.rowledger.track.PathBreak;
import io.rowledger.track.TrackQuality;
import io.rowledger.units.QuantityKind;
import io.rowledger.units.UnitFormat;
import java.util.ArrayList;
import java.util.List;

/** Builds the {@link QualitySection}: records, fixes, gaps, the machine as measured, notes and sums that must agree. */
public final class QualitySectionBuilder {
    private final JobView job;
    private final Messages messages;
    private final UnitFormat f;

    public QualitySectionBuilder(JobView job, Messages messages) {
        this.job = job;
        this.messages = messages;
        this.f = messages.units();
    }

    /**
     * The section.
     *
     * @param notes notes of the analysis
     * @param limits what the log can resolve, one sentence each
     */
    public QualitySection build(List<String> notes, List<String> limits) {
        List<InputFileLine> files = new ArrayList<>();
        for (LogSource source : job.log().sources()) {
            LogSource.Dropped d = source.dropped();
            files.add(new InputFileLine(
                    RegularFile.name(source.file()),
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
                facts(limits),
                machine(),
                checks(),
                notes,
                areas(),
                String.join(
                        " ",
                        messages.texts(new IntervalPhrases(messages)
                                .includes(job.intervals().basis()))));
    }

    /** Fix types, rate and noise of the positions in one line. */
    public String positions() {
        if (job.log().isAreas()) {
            return messages.text("words.quality.areasLog");
        }
        TrackQuality q = job.track().quality();
        String noise = noise(q.noiseM());
        Object spread = noise.isEmpty() ? "" : Message.of("words.quality.positionsNoise", noise);
        return job.log().isTimed()
                ? messages.text(
                        "words.quality.positions", fixes(q.recordsByFix()), seconds(q.medianIntervalS()), spread)
                : messages.text("words.quality.positionsUntimed", fixes(q.recordsByFix()), spread);
    }

    private List<Fact> facts(List<String> limits) {
        TrackQuality q = job.track().quality();
        List<Fact> facts = new ArrayList<>();
        long records = 0;
        long used = 0;
        for (LogSource source : job.log().sources()) {
            records += source.records();
            used += source.used();
        }
        facts.add(fact("words.quality.recordsUsed", used(used, records)));
        if (job.log().isAreas()) {
            facts.add(fact("words.quality.positionsLabel", messages.text("words.quality.areasLog")));
            return facts;
        }
        facts.add(fact(
                "words.quality.interval",
                job.log().isTimed() ? seconds(q.medianIntervalS()) : messages.text("words.notInFile")));
        facts.add(fact("words.quality.fixes", fixes(q.recordsByFix())));
        String noise = noise(q.noiseM());
        if (!noise.isEmpty()) {
            facts.add(fact("words.quality.noise", noise));
        }
        facts.add(fact(
                "words.quality.gaps",
                q.gaps() == 0
                        ? messages.text("words.none")
                        : job.log().isTimed()
                                ? messages.text("words.quality.gapsValue", q.gaps(), Message.duration(q.gapS()))
                                : f.count(q.gaps())));
        long jumps = job.track().breaks().stream()
                .filter(each -> each.kind() == PathBreak.Kind.SHIFTED)
                .count();
        if (jumps > 0) {
            facts.add(fact("words.quality.jumps", f.count(jumps)));
        }
        facts.add(fact(
                "words.quality.workState",
                messages.text(
                        q.workStateDerived() ? "words.quality.workStateDerived" : "words.quality.workStateLogged")));
        if (!limits.isEmpty()) {
            facts.add(fact("words.quality.resolves", String.join(" ", limits)));
        }
        facts.add(fact("words.quality.unsettled", unsettled()));
        for (Product product : job.rig().products()) {
            facts.add(new Fact(
                    messages.text("words.quality.flowLag", product.name()),
                    product.flowLagS() == 0
                            ? messages.text("words.quality.noFlowLag")
                            : messages.text("words.quality.flowLagValue", seconds(product.flowLagS()))));
        }
        return facts;
    }

    private Fact fact(String labelKey, String value) {
        return new Fact(messages.text(labelKey), value);
    }

    private String used(long used, long records) {
        return used < records
                ? messages.text(
                        "words.quality.usedSome",
                        used,
                        records,
                        records - used,
                        Message.percent(100.0 * (records - used) / records))
                : messages.text("words.quality.usedAll", used, records);
    }

    private String unsettled() {
        double workedM2 = job.rates().sweptAreaM2();
        double unsettledM2 = job.rates().unsettledAreaM2();
        return unsettledM2 > 0
                ? messages.text(
                        "words.quality.unsettledValue",
                        Message.area(unsettledM2),
                        Message.percent(unsettledM2 / workedM2 * 100))
                : messages.text("words.none");
    }

    private String seconds(double s) {
        return Double.isFinite(s)
                ? messages.text("words.quality.seconds", Message.decimal(s, 2))
                : messages.units().unknown();
    }

    private String fixes(int[] byFix) {
        long total = 0;
        for (int n : byFix) {
            total += n;
        }
        List<String> parts = new ArrayList<>();
        for (int digit = 0; digit < byFix.length; digit++) {
            if (byFix[digit] > 0) {
                parts.add(messages.text(
                        "words.quality.share",
                        Message.of("words.fix." + digit),
                        Message.percent(100.0 * byFix[digit] / total)));
            }
        }
        return parts.isEmpty() ? messages.units().unknown() : String.join(", ", parts);
    }

    private String noise(double[] noiseM) {
        List<String> parts = new ArrayList<>();
        for (int digit = 0; digit < noiseM.length; digit++) {
            if (Double.isFinite(noiseM[digit])) {
                parts.add(messages.text(
                        "words.quality.share",
                        Message.of("words.fix." + digit),
                        Message.value(QuantityKind.SMALL_LENGTH, noiseM[digit])));
            }
        }
        return String.join(", ", parts);
    }

    private List<Fact> machine() {
        Rig rig = job.rig();
        List<Fact> facts = new ArrayList<>();
        facts.add(length("words.quality.antennaAhead", rig.antennaAheadM()));
        facts.add(length("words.quality.antennaRight", rig.antennaRightM()));
        facts.add(length("words.quality.axleToHitch", rig.axleToHitchM()));
        boolean pullType = rig.hitch() == Hitch.PULL_TYPE;
        facts.add(fact(
                "words.quality.bar", messages.text(pullType ? "words.quality.pullType" : "words.quality.mounted")));
        if (pullType) {
            facts.add(length("words.quality.hitchToWheels", rig.hitchToWheelsM()));
        }
        facts.add(length("words.quality.hitchToDrop", rig.hitchToDropM()));
        facts.add(length("words.quality.barRight", rig.barRightM()));
        facts.add(fact(
                "words.quality.outlets",
                messages.text(
                        "words.quality.outletsValue",
                        rig.rows(),
                        Message.value(QuantityKind.DIMENSION, rig.widthM()))));
        for (Product product : rig.products()) {
            facts.add(new Fact(
                    product.name(),
                    messages.text(
                            "words.quality.product",
                            Message.value(QuantityKind.DENSITY, product.densityKgPerL()),
                            Message.decimal(product.nitrogenFraction() * 100, 1))));
        }
        return facts;
    }

    private Fact length(String labelKey, double lengthM) {
        return fact(labelKey, f.text(QuantityKind.DIMENSION, lengthM));
    }

    private static Message outsideWork(VolumeBalance balance) {
        return Message.of(
                "words.quality.outsideWorkValue",
                Message.value(QuantityKind.VOLUME, balance.outsideWorkL()),
                Message.value(QuantityKind.VOLUME, balance.liftedL()),
                Message.value(QuantityKind.VOLUME, balance.standingL()),
                Message.value(QuantityKind.VOLUME, balance.creepingL()),
                Message.value(QuantityKind.VOLUME, balance.backingL()),
                Message.value(QuantityKind.VOLUME, balance.gapL()));
    }

    private List<Fact> checks() {
        Coverage c = job.coverage();
        List<Fact> facts = new ArrayList<>();
        List<ReceivedStatistics> received = c.received();
        for (int p = 0; p < received.size(); p++) {
            ReceivedStatistics r = received.get(p);
            double errorPct = r.conservationError() * 100;
            String product = job.rig().products().get(p).name();
            facts.add(new Fact(
                    messages.text("words.quality.mapTotal", product),
                    messages.text(
                            "words.quality.against",
                            Message.value(QuantityKind.VOLUME, r.gridVolumeL()),
                            Message.value(QuantityKind.VOLUME, r.logVolumeL()),
                            agreement(errorPct, Limits.CONSERVATION_PCT))));
            if (!job.log().isAreas()) {
                facts.add(new Fact(
                        messages.text("words.quality.outsideWork", product),
                        messages.text(outsideWork(VolumeBalance.of(job.log(), job.track(), job.delivery(), p)))));
            }
        }
        if (c.boundary() != null) {
            double insideM2 = c.coveredAreaM2() - c.outsideBoundaryM2() + c.skipAreaM2();
            double errorPct = (insideM2 / c.boundaryAreaM2() - 1) * 100;
            facts.add(fact(
                    "words.quality.areaSum",
                    messages.text(
                            "words.quality.against",
                            Message.value(QuantityKind.AREA, insideM2),
                            Message.value(QuantityKind.AREA, c.boundaryAreaM2()),
                            agreement(errorPct, Limits.AREA_SUM_PCT))));
            facts.add(fact(
                    "words.quality.outside",
                    c.outsideBoundaryM2() > 0 ? f.anyArea(c.outsideBoundaryM2()) : messages.text("words.none")));
        }
        return facts;
    }

    private String agreement(double errorPct, double limitPct) {
        if (!Double.isFinite(errorPct)) {
            return messages.units().unknown();
        }
        return messages.text(
                Math.abs(errorPct) <= limitPct ? "words.quality.agrees" : "words.quality.disagrees",
                Message.decimal(errorPct, 3),
                Message.decimal(limitPct, limitPct < 0.1 ? 2 : 1));
    }

    private String areas() {
        Coverage c = job.coverage();
        Boundary boundary = c.boundary();
        Message from = boundary == null
                ? Message.of("words.quality.noBoundary")
                : Message.of(
                        boundary.repaired() ? "words.quality.boundaryRepaired" : "words.quality.boundary",
                        RegularFile.name(boundary.file()));
        return messages.text(
                "words.sentences",
                List.of(Message.of(job.log().isAreas() ? "words.quality.areasJoined" : "words.quality.areas"), from));
    }
}
