package io.rowledger.report.record;

import io.rowledger.analysis.Analysis;
import io.rowledger.document.pdf.Attachment;
import io.rowledger.document.pdf.PdfReport;
import io.rowledger.document.text.Messages;
import io.rowledger.finding.Finding;
import io.rowledger.rate.Nutrients;
import io.rowledger.rate.VolumeBalance;
import io.rowledger.report.answer.ReviewSummary;
import io.rowledger.report.common.JobTimes;
import io.rowledger.report.common.JobView;
import io.rowledger.report.common.ProductSums;
import io.rowledger.report.common.ReportOptions;
import io.rowledger.report.common.Warnings;
import io.rowledger.report.findings.FindingUncertainties;
import io.rowledger.report.findings.FindingUncertainty;
import io.rowledger.report.record.RecordInput.Files;
import io.rowledger.report.record.RecordInput.Sections;
import io.rowledger.report.record.RecordInput.Work;
import io.rowledger.report.sections.CoverageSectionBuilder;
import io.rowledger.report.sections.QualitySectionBuilder;
import io.rowledger.report.sections.SetbackSection;
import io.rowledger.report.sections.ZoneSectionBuilder;
import io.rowledger.text.Message;
import java.io.IOException;
import java.io.OutputStream;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;

/** The nitrogen record of one job: its content, its figures and its PDF. */
public final class NitrogenRecordReport {
    private static final String TEMPLATE = "nitrogen-record.xhtml";
    private final RecordInput in;
    private final ReportOptions options;
    private final Messages messages;
    private final NitrogenRecord content;

    private NitrogenRecordReport(RecordInput in, ReportOptions options) {
        this.in = in;
        this.options = options;
        this.messages = options.messages();
        this.content = new NitrogenRecordBuilder(in, options, messages).build();
    }

    /** The record of this analysis in the options' units and time zone. */
    public static NitrogenRecordReport of(Analysis analysis, ReportOptions options) {
        return new NitrogenRecordReport(input(analysis, options), options);
    }

    static RecordInput input(Analysis a, ReportOptions options) {
        List<Double> volumeL = new ArrayList<>();
        List<Double> meanTargetLPerM2 = new ArrayList<>();
        List<Double> outsideWorkL = new ArrayList<>();
        for (int p = 0; p < a.rig().products().size(); p++) {
            ProductSums sums = ProductSums.of(a.rates(), a.coverage(), p);
            volumeL.add(sums.volumeL());
            meanTargetLPerM2.add(sums.meanTargetLPerM2());
            outsideWorkL.add(
                    VolumeBalance.of(a.log(), a.track(), a.delivery(), p).outsideWorkL());
        }
        NitrogenGrid ground = NitrogenGrid.of(a.coverage().grid(), a.rig().products(), volumeL);
        return new RecordInput(
                a.rig(),
                new Work(
                        JobTimes.of(a.track(), a.log(), options.zone()),
                        a.track().passes(),
                        a.rates().passes()),
                a.coverage(),
                Nutrients.of(a.rig(), a.rates(), a.coverage().coveredAreaM2()),
                outsideWorkL,
                ground,
                PlanComparison.of(ground, a.rig().products(), a.rig().job(), meanTargetLPerM2),
                a.intervals(),
                a.setup().contradicted(),
                costly(a),
                costs(a),
                a.setbacks(),
                new Files(
                        a.log().sources(),
                        a.setups(),
                        texts(a.notes(), options.messages()),
                        texts(Warnings.of(a.notes()), options.messages())),
                sections(a, options.messages()));
    }

    /** Findings to act on: what cost next to nothing is for the row diagnosis. */
    private static List<Finding> costly(Analysis a) {
        List<Finding> costly = new ArrayList<>();
        for (int i = 0; i < a.findings().size(); i++) {
            if (!a.diagnosis().alsoNoticed().get(i)) {
                costly.add(a.findings().get(i));
            }
        }
        return costly;
    }

    /** Their uncertainties, in the same order. */
    private static List<FindingUncertainty> costs(Analysis a) {
        FindingUncertainties uncertainties =
                new FindingUncertainties(a.rig(), a.strips(), a.track(), a.coverage(), a.diagnosis(), a.intervals());
        List<FindingUncertainty> costs = new ArrayList<>();
        for (int i = 0; i < a.findings().size(); i++) {
            if (!a.diagnosis().alsoNoticed().get(i)) {
                costs.add(uncertainties.of(i));
            }
        }
        return costs;
    }

    private static List<String> texts(List<Message> notes, Messages messages) {
        return notes.stream().map(messages::text).toList();
    }

    private static Sections sections(Analysis a, Messages messages) {
        JobView job = new JobView(a.rig(), a.log(), a.track(), a.delivery(), a.rates(), a.coverage(), a.intervals());
        QualitySectionBuilder quality = new QualitySectionBuilder(job, messages);
        SetbackSection setbacks =
                SetbackSection.of(a.setbacks(), a.rig().products(), a.track().plane(), messages);
        return new Sections(
                CoverageSectionBuilder.skips(a.coverage(), a.intervals(), messages),
                CoverageSectionBuilder.overlap(a.coverage(), a.intervals(), messages),
                setbacks,
                ZoneSectionBuilder.build(
                        a.zones(), a.rig().products(), a.log(), a.coverage().coveredAreaM2(), messages),
                quality.build(texts(a.notes(), messages), texts(a.diagnosis().limits(), messages)),
                quality.positions(),
                a.rates().sweptAreaM2() <= 0
                        ? List.of()
                        : messages.texts(
                                new ReviewSummary(job, a.setup().contradicted(), setbacks, messages).reservations()));
    }

    /** What the record says. */
    public NitrogenRecord content() {
        return content;
    }

    /** The record's figures, SI. */
    public NitrogenFigures figures() {
        return NitrogenFigures.of(in);
    }

    /** What the template's tags name: the record and the paper. */
    record Model(NitrogenRecord record, String paper) {}

    /** Writes the PDF with these files inside it. */
    public void write(List<Attachment> attachments, OutputStream out) throws IOException {
        NitrogenMap map = new NitrogenMap(in, content.map(), messages);
        new PdfReport(
                        TEMPLATE,
                        options.templateFolder(),
                        messages,
                        in.work().times().endS())
                .write(new Model(content, options.paper().css()), Map.of("nitrogen-map", map), attachments, out);
    }
}
