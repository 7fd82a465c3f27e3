package io.rowledger.report.rows;

import io.rowledger.coverage.Coverage;
import io.rowledger.diagnose.Diagnosis;
import io.rowledger.diagnose.OnsetWindow;
import io.rowledger.diagnose.signal.Figure;
import io.rowledger.finding.Finding;
import io.rowledger.log.Metering;
import io.rowledger.report.common.JobTimes;
import io.rowledger.report.common.ReportHeader;
import io.rowledger.report.findings.FindingTitles;
import io.rowledger.report.findings.FindingUncertainty;
import io.rowledger.report.findings.MeterLanes;
import io.rowledger.rig.Rig;
import io.rowledger.text.Message;
import io.rowledger.track.Track;
import java.util.List;

/**
 * What the row diagnosis takes from an analysis.
 *
 * @param header title and particulars
 * @param rig rows and products
 * @param track passes and the path of the bar
 * @param coverage covered ground and boundary, for the map
 * @param diagnosis row-by-time pictures, baselines and notes
 * @param findings most certain first
 * @param traces the rows over the whole job, one per product in rig order
 * @param lanes what the pictures draw apart, one per product
 * @param metering what the log's meters measure, one per product
 * @param totalMeters true for a product whose total is metered too
 * @param times when the work was done
 */
record RowsInput(
        ReportHeader header,
        Rig rig,
        Track track,
        Coverage coverage,
        Diagnosis diagnosis,
        List<FindingView> findings,
        List<JobTraces> traces,
        List<MeterLanes> lanes,
        List<Metering> metering,
        List<Boolean> totalMeters,
        JobTimes times) {
    RowsInput {
        findings = List.copyOf(findings);
        traces = List.copyOf(traces);
        lanes = List.copyOf(lanes);
        metering = List.copyOf(metering);
        totalMeters = List.copyOf(totalMeters);
    }

    /** Findings that cost something worth a word, in their order. */
    List<FindingView> costly() {
        return findings.stream().filter(view -> !view.alsoNoticed()).toList();
    }

    /** True if one meter serves the whole bar, for every product. */
    boolean oneMeter() {
        return !metering.isEmpty() && metering.stream().allMatch(each -> each == Metering.WHOLE_BAR);
    }

    /** True if the log is a map of areas without a path. */
    boolean areas() {
        return track.passes().isEmpty() && coverage.coveredAreaM2() > 0;
    }

    /**
     * One finding with what the diagnosis knows about it.
     *
     * @param finding the finding
     * @param products indices of the products in whose pictures it shows
     * @param prefix names of these products and a colon; empty if it shows in all products
     * @param uncertainty of its ground, liquid and nitrogen
     * @param figures further figures, SI
     * @param window the records around the onset
     * @param alsoNoticed true if it cost next to nothing
     */
    record FindingView(
            Finding finding,
            List<Integer> products,
            String prefix,
            FindingUncertainty uncertainty,
            List<Figure> figures,
            OnsetWindow window,
            boolean alsoNoticed) {
        FindingView {
            products = List.copyOf(products);
            figures = List.copyOf(figures);
        }

        /** What looks wrong, with the products if it doesn't show in all. */
        Message title() {
            return Message.of("rows.findingOf", prefix, FindingTitles.of(finding));
        }
    }
}
