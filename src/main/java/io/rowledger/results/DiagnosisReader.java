package io.rowledger.results;

import io.rowledger.diagnose.signal.Figure;
import io.rowledger.diagnose.signal.RowBaseline;
import io.rowledger.finding.Finding;
import io.rowledger.finding.FindingKind;
import io.rowledger.finding.UnusableInputException;
import io.rowledger.report.findings.RowHealth;
import io.rowledger.report.findings.RowPicture;
import io.rowledger.report.findings.SavedDiagnosis;
import io.rowledger.report.findings.SavedDiagnosis.ProductState;
import io.rowledger.report.findings.SavedDiagnosis.SavedFinding;
import io.rowledger.text.Message;
import java.nio.file.Path;
import java.time.DateTimeException;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;

/** Reads {@code diagnosis.json} back from a folder of results and checks what the schema can't. */
public final class DiagnosisReader {
    /** More rows than any bar has. */
    private static final int MAX_ROWS = 1000;

    /** Ends are rounded to hundredths: the next stretch may begin that much earlier, s. */
    private static final double ROUNDING_S = 0.02;

    private final JsonFile.Read<DiagnosisJson> file;
    private final DiagnosisJson json;
    private final double startS;

    private DiagnosisReader(JsonFile.Read<DiagnosisJson> file) {
        this.file = file;
        this.json = file.content();
        this.startS = JsonNumbers.epochS(json.start());
    }

    /**
     * The diagnosis that a results folder holds.
     *
     * @throws UnusableInputException where the folder, or the file in it, isn't what {@code report} writes
     */
    public static SavedDiagnosis read(Path folder) {
        return new DiagnosisReader(JsonFile.read(folder, ResultFile.DIAGNOSIS, DiagnosisJson.class)).diagnosis();
    }

    private SavedDiagnosis diagnosis() {
        if (json.rows() < 1 || json.rows() > MAX_ROWS) {
            throw file.wrong("rows", "a whole number from 1 to " + MAX_ROWS);
        }
        List<ProductState> products = new ArrayList<>();
        for (int p = 0; p < json.products().size(); p++) {
            products.add(product(p, json.products().get(p), "products[" + p + "]"));
        }
        List<SavedFinding> findings = new ArrayList<>();
        for (int i = 0; i < json.findings().size(); i++) {
            findings.add(finding(json.findings().get(i), "findings[" + i + "]"));
        }
        return new SavedDiagnosis(
                json.field(),
                json.rig(),
                zone(json.zone()),
                startS,
                JsonNumbers.epochS(json.end()),
                json.rows(),
                json.fastestPassMps(),
                products,
                findings,
                json.notes().stream().map(DiagnosisReader::text).toList());
    }

    private String zone(String zone) {
        try {
            return ZoneId.of(zone).getId();
        } catch (DateTimeException e) {
            throw file.wrong("zone", "a time zone such as America/Chicago");
        }
    }

    private ProductState product(int index, DiagnosisJson.OfProduct product, String path) {
        require(product.rows().size(), json.rows(), path + ".rows");
        List<RowHealth> health = new ArrayList<>();
        List<RowBaseline> baselines = new ArrayList<>();
        for (int r = 0; r < json.rows(); r++) {
            DiagnosisJson.Row row = product.rows().get(r);
            if (row.row() != r + 1) {
                throw file.wrong(path + ".rows[" + r + "].row", Integer.toString(r + 1));
            }
            health.add(new RowHealth(
                    row.row(), row.medianDeviationPct() / 100, row.beyond10PctSharePct() / 100, row.evaluatedS()));
            DiagnosisJson.Baseline b = row.baseline();
            if (b != null) {
                baselines.add(new RowBaseline(
                        index,
                        row.row(),
                        b.medianRatio(),
                        b.spreadRatio(),
                        b.responseS(),
                        b.evaluatedS(),
                        b.outlier()));
            }
        }
        return new ProductState(
                product.product(),
                product.name(),
                product.meters(),
                picture(product.picture(), path + ".picture"),
                health,
                baselines);
    }

    private RowPicture picture(DiagnosisJson.Picture p, String path) {
        int n = p.fromS().length;
        require(p.toS().length, n, path + ".to_s");
        require(p.pass().length, n, path + ".pass");
        require(p.deviationPct().length, json.rows(), path + ".deviation_pct");
        RowPicture picture = new RowPicture(new double[n], new double[n], p.pass(), new float[json.rows()][n]);
        double lastS = Double.NEGATIVE_INFINITY;
        for (int c = 0; c < n; c++) {
            if (p.pass()[c] < 1) {
                throw file.wrong(path + ".pass[" + c + "]", "a whole number from 1 on");
            }
            picture.startS()[c] = startS + p.fromS()[c];
            picture.endS()[c] = startS + p.toS()[c];
            if (!(picture.endS()[c] > picture.startS()[c] && picture.startS()[c] >= lastS)) {
                throw file.wrong(path + ".to_s[" + c + "]", "times that rise");
            }
            lastS = picture.endS()[c] - ROUNDING_S;
        }
        for (int r = 0; r < json.rows(); r++) {
            require(p.deviationPct()[r].length, n, path + ".deviation_pct[" + r + "]");
            for (int c = 0; c < n; c++) {
                picture.deviation()[r][c] = (float) (p.deviationPct()[r][c] / 100);
            }
        }
        return picture;
    }

    private void require(int entries, int expected, String path) {
        if (entries != expected) {
            throw file.wrong(path, "a list of " + expected + " entries");
        }
    }

    private SavedFinding finding(FindingJson f, String path) {
        for (int i = 0; i < f.rows().size(); i++) {
            if (f.rows().get(i) < 1 || f.rows().get(i) > json.rows()) {
                throw file.wrong(path + ".rows[" + i + "]", "a row from 1 to " + json.rows());
            }
        }
        double fromS = JsonNumbers.epochS(f.from());
        double toS = JsonNumbers.epochS(f.to());
        if (!(toS >= fromS)) {
            throw file.wrong(path + ".to", "a time not before from");
        }
        if (!(f.confidence() >= 0 && f.confidence() <= 1)) {
            throw file.wrong(path + ".confidence", "a number from 0 to 1");
        }
        Finding finding = new Finding(
                kind(f.kind(), file, path),
                f.rows(),
                fromS,
                toS,
                f.confidence(),
                f.areaM2(),
                f.volumeL(),
                f.nitrogenKg(),
                f.where().lat(),
                f.where().lon(),
                text(f.evidence()),
                text(f.alternative()),
                text(f.check()),
                f.meters());
        List<Figure> figures = f.figures().stream()
                .map(figure -> new Figure(text(figure.name()), figure.value(), figure.unit()))
                .toList();
        return new SavedFinding(f.product(), finding, figures);
    }

    /** Text as the file holds it. */
    private static Message text(String text) {
        return Message.of("findings.text", text);
    }

    /**
     * The kind of this name.
     *
     * @param path of the finding, for the message
     */
    static FindingKind kind(String name, JsonFile.Read<?> file, String path) {
        for (FindingKind kind : FindingKind.values()) {
            if (kind.jsonName().equals(name)) {
                return kind;
            }
        }
        throw file.wrong(path + ".kind", "a kind of finding that this version knows");
    }
}
