package io.rowledger.output;

import io.rowledger.analysis.Analysis;
import io.rowledger.analysis.SetupReview;
import io.rowledger.backdrop.Backdrop;
import io.rowledger.document.pdf.Attachment;
import io.rowledger.document.pdf.PdfReport;
import io.rowledger.export.FieldGeoPackage;
import io.rowledger.export.FieldMap;
import io.rowledger.export.GeoPackage;
import io.rowledger.export.Layers;
import io.rowledger.export.PassesCsv;
import io.rowledger.export.PlacesGpx;
import io.rowledger.export.ReceivedTiff;
import io.rowledger.export.RowsCsv;
import io.rowledger.finding.UnusableInputException;
import io.rowledger.log.source.LogSource;
import io.rowledger.page.ReviewPage;
import io.rowledger.parallel.Lazy;
import io.rowledger.report.common.Audience;
import io.rowledger.report.common.ReportOptions;
import io.rowledger.report.findings.SavedDiagnosis;
import io.rowledger.report.record.NitrogenRecordReport;
import io.rowledger.report.review.PassReviewReport;
import io.rowledger.report.rows.RowDiagnosisReport;
import io.rowledger.results.DiagnosisJson;
import io.rowledger.results.NitrogenRecordJson;
import io.rowledger.results.ResultFile;
import io.rowledger.results.SetupJson;
import io.rowledger.results.SummaryJson;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;

/** Everything a run writes. */
public final class Reports {
    private Reports() {}

    /**
     * Loads what writing any results needs: half a second of processor time that a thread of its own spends while the log is read.
     */
    public static void prepare() {
        SummaryJson.prepareWriting();
        PdfReport.prepare();
    }

    /**
     * Writes the files for machines and the printed reports of these audiences as a whole new folder in place of the old one.
     *
     * @param inputs the files handed in; a folder that holds one is refused
     * @param threads how many files are written at a time; the bytes don't depend on it
     * @throws UnusableInputException where the folder holds anything but results of this job, or can't be written, or the
     *     user's template can't be used
     */
    public static void write(
            Analysis analysis,
            ReportOptions options,
            Path folder,
            Set<Audience> audiences,
            List<Path> inputs,
            int threads) {
        write(analysis, outputs(analysis, options, audiences), folder, inputs, threads);
    }

    /**
     * Refuses at once a folder that no results may go into.
     *
     * @throws UnusableInputException where it is the current one, or holds anything but results
     */
    public static void requireRoom(Path folder) {
        ResultsFolder.requireRoom(folder, ResultsFolder.job(Set.of()));
    }

    /** The same with outputs that a caller has completed. */
    public static void write(Analysis analysis, Outputs outputs, Path folder, List<Path> inputs, int threads) {
        Set<String> logs =
                analysis.log().sources().stream().map(LogSource::sha256).collect(Collectors.toSet());
        ResultsFolder.replace(folder, outputs, inputs, ResultsFolder.job(logs), threads);
    }

    /** The same files, to which a caller may add its own before writing. */
    public static Outputs outputs(Analysis analysis, ReportOptions options, Set<Audience> audiences) {
        return outputs(analysis, options, audiences, null, new Lazy<>(() -> PassReviewReport.of(analysis, options)));
    }

    /**
     * The same with a picture of the ground.
     *
     * @param backdrop the picture under the map of the review page, or null
     * @param review the pass review of this analysis in these options
     */
    public static Outputs outputs(
            Analysis analysis,
            ReportOptions options,
            Set<Audience> audiences,
            @Nullable Backdrop backdrop,
            Lazy<PassReviewReport> review) {
        Outputs outputs = new Outputs();
        // The longest first: its end is the last file's.
        Lazy<RowDiagnosisReport> rows = new Lazy<>(() -> RowDiagnosisReport.of(analysis, options));
        outputs.add(ReviewPage.FILE, out -> ReviewPage.write(analysis, rows.get(), options, backdrop, out));
        if (audiences.contains(Audience.APPLICATOR)) {
            outputs.add("pass-review.pdf", out -> review.get().write(out));
        }
        if (audiences.contains(Audience.LANDLORD)) {
            Lazy<NitrogenRecordReport> record =
                    new Lazy<>(() -> NitrogenRecordReport.of(analysis, options.in(Locale.ENGLISH)));
            outputs.add(
                    "nitrogen-record.pdf",
                    out -> record.get().write(List.of(machineReadable(analysis, record.get(), options)), out));
            outputs.add(
                    ResultFile.NITROGEN_RECORD.fileName(),
                    out -> NitrogenRecordJson.write(analysis, record.get(), options, out));
        }
        if (audiences.contains(Audience.DEALER)) {
            outputs.add("row-diagnosis.pdf", out -> rows.get().write(out));
        }
        addMaps(outputs, analysis, options);
        addData(outputs, analysis, options);
        return outputs;
    }

    /** Adds maps for other programs, as far as the job has them, and the corrected rig file. */
    private static void addMaps(Outputs outputs, Analysis analysis, ReportOptions options) {
        FieldMap map = FieldMap.of(analysis);
        if (analysis.zones() != null) {
            outputs.add("layers/zones.geojson", out -> Layers.zones(map, out));
        }
        if (analysis.setup().corrected() != null) {
            String text = analysis.setup().correction().text();
            outputs.add(SetupReview.CORRECTED_FILE, out -> out.write(text.getBytes(StandardCharsets.UTF_8)));
        }
        if (GeoPackage.canBeWritten()) {
            outputs.add(FieldGeoPackage.FILE, out -> FieldGeoPackage.write(map, out));
        }
        outputs.add(PlacesGpx.FILE, out -> PlacesGpx.write(map, options.format(), out));
        for (int p = 0; p < analysis.rig().products().size(); p++) {
            int product = p;
            outputs.add(ReceivedTiff.file(map, p), out -> ReceivedTiff.write(map, product, out));
        }
    }

    /** Adds the figures for other programs and the layers that every job has. */
    private static void addData(Outputs outputs, Analysis analysis, ReportOptions options) {
        FieldMap map = FieldMap.of(analysis);
        outputs.add(ResultFile.SUMMARY.fileName(), out -> SummaryJson.write(analysis, options.programVersion(), out))
                .add(
                        ResultFile.DIAGNOSIS.fileName(),
                        out -> DiagnosisJson.write(
                                SavedDiagnosis.of(
                                        analysis.rig(),
                                        analysis.log(),
                                        analysis.track(),
                                        analysis.diagnosis(),
                                        options.zone()),
                                options.programVersion(),
                                out))
                .add(ResultFile.SETUP_CHECK.fileName(), out -> SetupJson.write(analysis, options.programVersion(), out))
                .add(
                        "rows.csv",
                        out -> RowsCsv.write(
                                analysis.rig().products(),
                                analysis.log().isAreas()
                                        ? List.of()
                                        : analysis.rates().rows(),
                                analysis.intervals(),
                                analysis.log().metering(),
                                options.format(),
                                out))
                .add(
                        "passes.csv",
                        out -> PassesCsv.write(
                                analysis.rig().products(),
                                analysis.track().passes(),
                                analysis.rates(),
                                analysis.intervals(),
                                options.format(),
                                out))
                .add("layers/strips.geojson", out -> Layers.strips(map, out))
                .add("layers/overlaps.geojson", out -> Layers.overlaps(map, out))
                .add("layers/skips.geojson", out -> Layers.skips(map, out))
                .add("layers/findings.geojson", out -> Layers.findings(map, out))
                .add("layers/setbacks.geojson", out -> Layers.setbacks(map, out));
    }

    /** What is not written on this machine though it belongs to the results, a sentence each; usually nothing. */
    public static List<String> leftOut() {
        return GeoPackage.canBeWritten()
                ? List.of()
                : List.of(FieldGeoPackage.FILE
                        + " was not written: this machine has no SQLite library for it, or does not let"
                        + " programs run from the temporary folder. The other layers hold the same places.");
    }

    /** The record for programs, to travel inside the printed one. */
    private static Attachment machineReadable(Analysis analysis, NitrogenRecordReport record, ReportOptions options)
            throws IOException {
        ByteArrayOutputStream bytes = new ByteArrayOutputStream();
        NitrogenRecordJson.write(analysis, record, options, bytes);
        return new Attachment(
                ResultFile.NITROGEN_RECORD.fileName(),
                "application/json",
                "This record for programs, SI units",
                bytes.toByteArray());
    }
}
