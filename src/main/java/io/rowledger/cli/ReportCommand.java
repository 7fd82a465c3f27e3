package io.rowledger.cli;

import io.rowledger.analysis.Analysis;
import io.rowledger.analysis.FieldParts;
import io.rowledger.analysis.JobFiles;
import io.rowledger.analysis.LogDates;
import io.rowledger.analysis.Pipeline;
import io.rowledger.analysis.Progress;
import io.rowledger.backdrop.Backdrop;
import io.rowledger.backdrop.BackdropReader;
import io.rowledger.document.pdf.PdfSigner;
import io.rowledger.finding.UnusableInputException;
import io.rowledger.output.Reports;
import io.rowledger.report.common.Audience;
import io.rowledger.units.Dimension;
import io.rowledger.units.Quantity;
import io.rowledger.units.Reading;
import io.rowledger.units.Refusal;
import java.nio.file.Path;
import java.time.Clock;
import java.util.List;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import org.locationtech.jts.geom.Envelope;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** {@code rowledger report}: analyzes the logs of one field as one job and writes everything into a folder. */
@Command(
        name = "report",
        mixinStandardHelpOptions = true,
        description =
                "Analyzes the logs of one field as one job and writes reports, tables and map layers into a folder.")
@SuppressWarnings("NullAway.Init")
final class ReportCommand implements Callable<Integer> {
    @Parameters(
            paramLabel = "LOG",
            arity = "1..*",
            description =
                    "One log of the field or several: CSV, .xlsx, points or polygons in a map file, or task data (ISO 11783-10)"
                            + " as a folder, TASKDATA.XML or .zip.")
    private List<Path> logs;

    @Option(names = "--rig", required = true, paramLabel = "RIG.yaml", description = "The rig file.")
    private Path rig;

    @Option(
            names = "--boundary",
            paramLabel = "F",
            description = "The field's outline: GeoJSON, KML, shapefile or GeoPackage.")
    private @Nullable Path boundary;

    @Option(names = "--prescription", paramLabel = "F", description = "Zones with a target rate each, a map file too.")
    private @Nullable Path prescription;

    @Option(
            names = "--keep-out",
            paramLabel = "F",
            description = "Map of the places to keep away from, each with your own setback.")
    private @Nullable Path keepOut;

    @Option(
            names = "--setback",
            paramLabel = "D",
            description =
                    "How far to keep from the places of --keep-out that have no setback of their own, such as 35 ft.")
    private @Nullable String setback;

    @Option(
            names = "--backdrop",
            paramLabel = "F",
            description =
                    "A picture of the ground under the map of review.html: a GeoTIFF, or a JPEG, PNG or TIFF with its world"
                            + " file (and .prj) beside it.")
    private @Nullable Path backdrop;

    @Option(
            names = "--out",
            paramLabel = "DIR",
            description = "A folder for the results alone (default: LOG-results, after the first log).")
    private @Nullable Path out;

    @Option(
            names = "--for",
            split = ",",
            paramLabel = "WHO",
            defaultValue = "applicator,landlord,dealer",
            description = "Who the reports are for: applicator, landlord, dealer (default: ${DEFAULT-VALUE}).")
    private List<Audience> audiences;

    @Mixin
    private PageOptions page;

    @Mixin
    private LanguageOption language;

    @Mixin
    private SignOptions sign;

    @Option(names = "--threads", paramLabel = "N", description = "Threads to use (default: all cores).")
    private @Nullable Integer threads;

    @Option(
            names = "--apply-setup-check",
            description =
                    "Also computes coverage with the setup that the log points to, shows both side by side and writes"
                            + " rig-corrected.yaml into the results. Your rig file stays as it is.")
    private boolean applySetupCheck;

    @Option(names = "--quiet", description = "No progress lines.")
    private boolean quiet;

    /** Wider than any rule asks for, m. */
    private static final double MAX_SETBACK_M = 5000;

    private final Console console;

    ReportCommand(Console console) {
        this.console = console;
    }

    @Override
    public Integer call() {
        Results results = new Results(
                page.units(), page.sheet(), page.templates(), threads, Results.printable(audiences), language.locale());
        if (threads != null && threads < 1) {
            throw UnusableInputException.found(threads + " threads")
                    .atColumn("--threads")
                    .expected("1 or more")
                    .hint("leave --threads out to use all cores");
        }
        PdfSigner signer = sign.signer(System.getenv());
        JobFiles files = new JobFiles(logs, rig, boundary, prescription, keepOut, setbackM());
        Path folder = out == null ? Path.of(files.name() + "-results") : out;
        Reports.requireRoom(folder);
        Progress progress = console.progress(quiet);
        Thread prepare = new Thread(Reports::prepare, "prepare writing");
        prepare.setDaemon(true);
        prepare.start();
        Analysis analysis = Pipeline.analyze(files, results.threadCount(), progress);
        LogDates.requirePast(analysis.log(), Clock.systemUTC());
        FieldParts.requireOne(analysis);
        if (applySetupCheck) {
            analysis = Pipeline.withSetupApplied(analysis, files, results.threadCount(), progress);
        }
        Backdrop picture = backdrop == null ? null : backdrop(analysis, backdrop);
        progress.begins("writing", folder.toString());
        results.write(analysis, files, folder, picture, signer, console.out());
        return Main.DONE;
    }

    private static Backdrop backdrop(Analysis analysis, Path file) {
        Envelope field = analysis.coverage().covered().getEnvelopeInternal();
        if (analysis.coverage().boundary() != null) {
            field.expandToInclude(analysis.coverage().boundary().area().getEnvelopeInternal());
        }
        if (field.isNull()) {
            throw UnusableInputException.found("a log without covered ground")
                    .atColumn("--backdrop")
                    .expected("a log whose field the picture shows")
                    .hint("leave --backdrop out");
        }
        double[] bounds = {field.getMinX(), field.getMinY(), field.getMaxX(), field.getMaxY()};
        return BackdropReader.read(file, analysis.track().plane(), bounds);
    }

    /** The distance of {@code --setback}, m; NaN without it. */
    private double setbackM() {
        if (setback == null) {
            return Double.NaN;
        }
        if (keepOut == null) {
            throw UnusableInputException.found("--setback without --keep-out")
                    .expected("--keep-out with the map of the places to keep away from")
                    .hint("add --keep-out F, or leave --setback out");
        }
        Reading reading = Quantity.read(setback, Dimension.LENGTH);
        if (reading instanceof Refusal refusal) {
            throw UnusableInputException.found(refusal.found())
                    .atColumn("--setback")
                    .expected(refusal.expected())
                    .hint(refusal.hint());
        }
        double distanceM = ((Quantity) reading).si();
        if (!(distanceM >= 0 && distanceM <= MAX_SETBACK_M)) {
            throw UnusableInputException.found("\"" + setback + "\"")
                    .atColumn("--setback")
                    .expected("a distance from 0 to 3 miles (5 km)")
                    .hint("write how far to keep away, such as --setback \"35 ft\"");
        }
        return distanceM;
    }
}
