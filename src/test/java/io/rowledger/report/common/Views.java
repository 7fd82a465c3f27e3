package io.rowledger.report.common;

import io.rowledger.analysis.Analysis;
import io.rowledger.document.text.Messages;
import io.rowledger.report.findings.SavedDiagnosis;
import io.rowledger.report.sections.SetbackSection;
import io.rowledger.report.sections.ZoneSection;
import io.rowledger.report.sections.ZoneSectionBuilder;
import org.jspecify.annotations.Nullable;

/** What the documents' entry classes hand on of an analysis, for tests of the parts behind them. */
public final class Views {
    private Views() {}

    public static JobView job(Analysis a) {
        return new JobView(a.rig(), a.log(), a.track(), a.delivery(), a.rates(), a.coverage(), a.intervals());
    }

    public static @Nullable SetbackSection setbacks(Analysis a, ReportOptions options) {
        return SetbackSection.of(a.setbacks(), a.rig().products(), a.track().plane(), options.messages());
    }

    public static ZoneSection zones(Analysis a, Messages messages) {
        return ZoneSectionBuilder.build(
                a.zones(), a.rig().products(), a.log(), a.coverage().coveredAreaM2(), messages);
    }

    public static SavedDiagnosis saved(Analysis a, ReportOptions options) {
        return SavedDiagnosis.of(a.rig(), a.log(), a.track(), a.diagnosis(), options.zone());
    }
}
