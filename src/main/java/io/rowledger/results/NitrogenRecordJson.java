package io.rowledger.results;

import com.fasterxml.jackson.annotation.JsonProperty;
import io.rowledger.analysis.Analysis;
import io.rowledger.analysis.InputFile;
import io.rowledger.analysis.JobClock;
import io.rowledger.coverage.Coverage;
import io.rowledger.finding.RegularFile;
import io.rowledger.log.source.LogSource;
import io.rowledger.report.common.JobTimes;
import io.rowledger.report.common.ProductSums;
import io.rowledger.report.common.ReportOptions;
import io.rowledger.report.record.NitrogenFigures;
import io.rowledger.report.record.NitrogenRecord;
import io.rowledger.report.record.NitrogenRecord.Missing;
import io.rowledger.report.record.NitrogenRecordReport;
import io.rowledger.rig.Amount;
import io.rowledger.rig.Credit;
import io.rowledger.rig.EarlierApplication;
import io.rowledger.rig.Job;
import io.rowledger.rig.LoadTicket;
import io.rowledger.rig.Product;
import io.rowledger.rig.Rig;
import java.io.IOException;
import java.io.OutputStream;
import java.time.Instant;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;

/**
 * {@code nitrogen-record.json}: the record for programs, in SI, {@code null} where unknown; what the user entered stands whole
 * and as entered. Files go by their names without folders: the same files in another folder make the same record.
 */
public record NitrogenRecordJson(
        String schema,
        String programVersion,
        @OrNull @Nullable Instant start,
        @OrNull @Nullable Instant end,
        String zone,
        Map<String, String> enteredByUser,
        List<NotRecorded> notRecorded,
        List<OfProduct> products,
        List<Ticket> loadTickets,
        Nitrogen nitrogen,
        Ground coverage,
        @OrNull @Nullable List<SetbackJson> setbacks,
        @OrNull @Nullable PrescriptionJson prescription,
        Machine machine,
        List<Input> inputs,
        String command,
        List<String> notes,
        List<String> cautions) {

    /** Writes the record of a job. */
    public static void write(Analysis a, NitrogenRecordReport report, ReportOptions options, OutputStream out)
            throws IOException {
        JsonFile.write(of(a, report, options), out);
    }

    private static NitrogenRecordJson of(Analysis a, NitrogenRecordReport report, ReportOptions options) {
        NitrogenRecord record = report.content();
        List<OfProduct> products = new ArrayList<>();
        for (int p = 0; p < a.rig().products().size(); p++) {
            products.add(OfProduct.of(a, p));
        }
        return new NitrogenRecordJson(
                ResultFile.NITROGEN_RECORD.schemaId(),
                options.programVersion(),
                JsonNumbers.instant(
                        JobTimes.of(a.track(), a.log(), JobClock.zone(a)).startS()),
                JsonNumbers.instant(
                        JobTimes.of(a.track(), a.log(), JobClock.zone(a)).endS()),
                options.zone().getId(),
                a.rig().job().facts(),
                record.missing().stream().map(NotRecorded::of).toList(),
                products,
                a.rig().job().tickets().stream().map(Ticket::of).toList(),
                Nitrogen.of(a, report.figures()),
                Ground.of(a, report.figures()),
                SetbackJson.all(a.setbacks(), a.rig().products(), a.track().plane()),
                PrescriptionJson.of(a.zones(), a.rig().products()),
                Machine.of(a.rig()),
                Input.all(a),
                record.basis().command(),
                record.basis().notes(),
                record.cautions());
    }

    /** A fact that nobody entered, and the published rules that require it. */
    record NotRecorded(String item, String requiredBy) {
        static NotRecorded of(Missing missing) {
            return new NotRecorded(missing.item(), missing.rules());
        }
    }

    /** One product. */
    record OfProduct(
            String key,
            String name,
            @Decimals(6) double densityKgPerL,
            @Decimals(2) double densityAtC,
            @Decimals(5) double nitrogenFraction,
            @Decimals(5) double phosphateFraction,
            @Decimals(5) double potashFraction,
            @Decimals(5) double sulfurFraction,
            @Decimals(JsonNumbers.VOLUME_L) double volumeL,
            @Decimals(JsonNumbers.RATE) double meanRateLPerHa,
            @Decimals(JsonNumbers.MASS_KG) double nitrogenKg,
            @Decimals(JsonNumbers.MASS_KG) double phosphateKg,
            @Decimals(JsonNumbers.MASS_KG) double potashKg,
            @Decimals(JsonNumbers.MASS_KG) double sulfurKg,
            @OrNull @Nullable Quantity ordered) {
        static OfProduct of(Analysis a, int p) {
            Product product = a.rig().products().get(p);
            double volumeL = ProductSums.of(a.rates(), a.coverage(), p).volumeL();
            double massKg = volumeL * product.densityKgPerL();
            return new OfProduct(
                    product.key(),
                    product.name(),
                    product.densityKgPerL(),
                    product.densityAtC(),
                    product.nitrogenFraction(),
                    product.phosphateFraction(),
                    product.potashFraction(),
                    product.sulfurFraction(),
                    volumeL,
                    volumeL / JobJson.perM2(a.coverage().coveredAreaM2()),
                    massKg * product.nitrogenFraction(),
                    massKg * product.phosphateFraction(),
                    massKg * product.potashFraction(),
                    massKg * product.sulfurFraction(),
                    Quantity.of(a.rig().job().order().get(product.key())));
        }
    }

    /** An amount of liquid as entered. */
    record Quantity(
            @Decimals(JsonNumbers.VOLUME_L) double volumeL,
            @Decimals(JsonNumbers.MASS_KG) double massKg,
            @Decimals(6) double densityKgPerL,
            String entered) {
        static @Nullable Quantity of(@Nullable Amount amount) {
            return amount == null
                    ? null
                    : new Quantity(amount.volumeL(), amount.massKg(), amount.densityKgPerL(), amount.entered());
        }
    }

    /** A load ticket as entered. */
    record Ticket(
            String number,
            String date,
            String product,
            @OrNull @Nullable Quantity amount,
            @Decimals(2) double temperatureC) {
        static Ticket of(LoadTicket ticket) {
            return new Ticket(
                    ticket.number(),
                    ticket.date(),
                    ticket.product(),
                    Quantity.of(ticket.amount()),
                    ticket.temperatureC());
        }
    }

    /** Nitrogen of the job, of other sources and in all, against plan and cap. */
    record Nitrogen(
            @Decimals(JsonNumbers.MASS_KG) double jobKg,
            @Decimals(JsonNumbers.RATE) double jobKgPerHa,
            @Decimals(JsonNumbers.RATE) double jobKgPerHaLow,
            @Decimals(JsonNumbers.RATE) double jobKgPerHaHigh,
            List<Earlier> earlier,
            List<OneCredit> credits,
            @Decimals(JsonNumbers.RATE) double totalKgPerHa,
            @Decimals(JsonNumbers.RATE) double planKgPerHa,
            @Decimals(JsonNumbers.RATE) double capKgPerHa,
            @OrNull @Nullable Boolean capExceeded) {
        static Nitrogen of(Analysis a, NitrogenFigures figures) {
            Job job = a.rig().job();
            boolean known = Double.isFinite(job.capKgPerM2()) && Double.isFinite(figures.totalKgPerM2());
            return new Nitrogen(
                    figures.jobKg(),
                    JobJson.perHa(figures.jobKgPerM2()),
                    JobJson.perHa(a.intervals().nitrogenKgPerM2().low()),
                    JobJson.perHa(a.intervals().nitrogenKgPerM2().high()),
                    job.earlier().stream().map(Earlier::of).toList(),
                    job.credits().stream().map(OneCredit::of).toList(),
                    JobJson.perHa(figures.totalKgPerM2()),
                    JobJson.perHa(job.planKgPerM2()),
                    JobJson.perHa(job.capKgPerM2()),
                    known ? figures.totalKgPerM2() > job.capKgPerM2() : null);
        }
    }

    /** An application before this job, over the whole field. */
    record Earlier(
            String date,
            String what,
            @Decimals(JsonNumbers.RATE) double nitrogenKgPerHa,
            @Decimals(JsonNumbers.RATE) double phosphateKgPerHa,
            @Decimals(JsonNumbers.RATE) double potashKgPerHa,
            @Decimals(JsonNumbers.RATE) double sulfurKgPerHa,
            String entered) {
        static Earlier of(EarlierApplication of) {
            JobJson.Earlier e = JobJson.Earlier.of(of);
            return new Earlier(
                    e.date(),
                    e.what(),
                    e.nitrogenKgPerHa(),
                    e.phosphateKgPerHa(),
                    e.potashKgPerHa(),
                    e.sulfurKgPerHa(),
                    e.entered());
        }
    }

    /** A nitrogen credit, over the whole field. */
    record OneCredit(
            String what, @Decimals(JsonNumbers.RATE) double nitrogenKgPerHa, String entered) {
        static OneCredit of(Credit credit) {
            return new OneCredit(credit.what(), JobJson.perHa(credit.nitrogenKgPerM2()), credit.entered());
        }
    }

    /** Areas, and shares of the covered ground against the plan or the target. */
    record Ground(
            @Decimals(JsonNumbers.AREA_M2) double coveredAreaM2,
            @Decimals(JsonNumbers.AREA_M2) double coveredAreaM2Low,
            @Decimals(JsonNumbers.AREA_M2) double coveredAreaM2High,
            @Decimals(JsonNumbers.AREA_M2) double boundaryAreaM2,
            @Decimals(JsonNumbers.AREA_M2) double skipAreaM2,
            @Decimals(JsonNumbers.AREA_M2) double overlapAreaM2,
            @OrNull @Nullable String comparedWith,
            @Decimals(JsonNumbers.PCT) double within10Pct,
            @Decimals(JsonNumbers.PCT) double under10Pct,
            @Decimals(JsonNumbers.PCT) double over10Pct) {
        static Ground of(Analysis a, NitrogenFigures figures) {
            Coverage c = a.coverage();
            return new Ground(
                    c.coveredAreaM2(),
                    a.intervals().coveredAreaM2().low(),
                    a.intervals().coveredAreaM2().high(),
                    c.boundaryAreaM2(),
                    c.skipAreaM2(),
                    c.overlapAreaM2(),
                    figures.comparedWith(),
                    figures.withinPct(),
                    figures.underPct(),
                    figures.overPct());
        }
    }

    /** The bar and its lengths. */
    record Machine(
            String name,
            String hitch,
            @Decimals(4) double antennaAheadOfAxleM,
            @Decimals(4) double antennaRightOfCenterM,
            @Decimals(4) double axleToHitchM,
            @Decimals(4) double hitchToWheelsM,
            @Decimals(4) double hitchToDropM,
            @Decimals(4) double barRightOfCenterM,
            int rows,
            @Decimals(4) double widthM,
            Map<String, FlowLag> products) {
        static Machine of(Rig rig) {
            Map<String, FlowLag> lags = new LinkedHashMap<>();
            rig.products().forEach(product -> lags.put(product.key(), new FlowLag(product.flowLagS())));
            return new Machine(
                    rig.name(),
                    rig.hitch().word(),
                    rig.antennaAheadM(),
                    rig.antennaRightM(),
                    rig.axleToHitchM(),
                    rig.hitchToWheelsM(),
                    rig.hitchToDropM(),
                    rig.barRightM(),
                    rig.rows(),
                    rig.widthM(),
                    lags);
        }
    }

    /** How much later the meter shows what left the outlet, s. */
    record FlowLag(@Decimals(3) double flowLagS) {}

    /** A file that went into the record; counts of records are null for other files than logs. */
    record Input(
            String role,
            String file,
            @JsonProperty("sha256") String sha256,
            @OrNull @Nullable Integer records,
            @OrNull @Nullable Integer used) {
        static List<Input> all(Analysis a) {
            List<Input> inputs = new ArrayList<>();
            for (LogSource source : a.log().sources()) {
                inputs.add(new Input(
                        "log", RegularFile.name(source.file()), source.sha256(), source.records(), source.used()));
            }
            for (InputFile setup : a.setups()) {
                inputs.add(new Input(setup.role(), RegularFile.name(setup.file()), setup.sha256(), null, null));
            }
            return inputs;
        }
    }
}
