package io.rowledger.cli;

import io.rowledger.analysis.Analysis;
import io.rowledger.analysis.JobClock;
import io.rowledger.analysis.JobFiles;
import io.rowledger.backdrop.Backdrop;
import io.rowledger.document.pdf.Paper;
import io.rowledger.document.pdf.PdfSigner;
import io.rowledger.finding.UnusableInputException;
import io.rowledger.output.Outputs;
import io.rowledger.output.Reports;
import io.rowledger.parallel.Lazy;
import io.rowledger.report.common.Audience;
import io.rowledger.report.common.ReportOptions;
import io.rowledger.report.review.PassReviewReport;
import io.rowledger.units.UnitSystem;
import java.io.PrintStream;
import java.nio.file.Path;
import java.time.ZoneId;
import java.util.EnumSet;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import org.jspecify.annotations.Nullable;

/**
 * How a person wants the results, and where they go.
 *
 * @param units of the printed reports
 * @param sheet that they are printed on
 * @param templates the user's own templates, or null
 * @param threads or null for all cores
 * @param audiences whom to print for
 * @param language of the documents that are translated
 */
record Results(
        UnitSystem units,
        Paper sheet,
        @Nullable Path templates,
        @Nullable Integer threads,
        Set<Audience> audiences,
        Locale language) {

    /** The files a signature is put on: those that are handed to somebody as a record. */
    static final Set<String> SIGNED = Set.of("nitrogen-record.pdf");

    /** Whom to print for, as given with --for. */
    static Set<Audience> printable(List<Audience> audiences) {
        if (audiences.isEmpty()) {
            throw UnusableInputException.found("nobody")
                    .atColumn("--for")
                    .expected("applicator, landlord or dealer")
                    .hint("leave --for out");
        }
        return EnumSet.copyOf(audiences);
    }

    int threadCount() {
        return threads == null ? Runtime.getRuntime().availableProcessors() : threads;
    }

    /** How printed reports are to look. */
    ReportOptions options(ZoneId zone) {
        return new ReportOptions(units, sheet, zone, templates, Version.number(), language);
    }

    /** Writes everything into the folder and says so. */
    void write(Analysis analysis, JobFiles files, Path folder, PrintStream out) {
        write(analysis, files, folder, null, null, out);
    }

    /**
     * Writes everything into the folder and says so.
     *
     * @param backdrop the picture under the map of the review page, or null
     * @param signer signs what is to be signed, or null
     */
    void write(
            Analysis analysis,
            JobFiles files,
            Path folder,
            @Nullable Backdrop backdrop,
            @Nullable PdfSigner signer,
            PrintStream out) {
        ReportOptions options = options(JobClock.zone(analysis));
        Lazy<PassReviewReport> review = new Lazy<>(() -> PassReviewReport.of(analysis, options));
        Outputs outputs = Reports.outputs(analysis, options, audiences, backdrop, review);
        if (signer != null && outputs.finishing(SIGNED, signer::sign).isEmpty()) {
            throw UnusableInputException.found("nothing to sign")
                    .atColumn("--sign")
                    .expected("a nitrogen record among the reports, the one that is signed")
                    .hint("add landlord to --for, or leave --sign out");
        }
        Reports.write(analysis, outputs, folder, files.all(), threadCount());
        review.get().content().verdict().forEach(out::println);
        if (audiences.contains(Audience.LANDLORD)) {
            out.println("Nitrogen record: "
                    + folder.resolve("nitrogen-record.pdf").toAbsolutePath().normalize());
        }
        Reports.leftOut().forEach(out::println);
        out.println("Reports: " + folder.toAbsolutePath().normalize());
    }
}
