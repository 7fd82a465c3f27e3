package io.rowledger.results;

import io.rowledger.diagnose.signal.Figure;
import io.rowledger.diagnose.signal.RowBaseline;
import io.rowledger.finding.Finding;
import io.rowledger.finding.FindingKind;
import io.rowledger.finding.UnusableInputException;
import io.rowledger.report.common.RowHealth;
import io.rowledger.report.common.RowPicture;
import io.rowledger.report.common.SavedDiagnosis;
import io.rowledger.report.common.SavedDiagnosis.ProductState;
import io.rowledger.report.common.SavedDiagnosis.SavedFinding;
import io.rowledger.text.Message;
import java.nio.file.Path;
import java.time.DateTimeException;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;

/** Reads {@code diagnosis.json} back from a folder of results; whatever it can't use it says by file and place. */
public final class DiagnosisReader {
    /** The file it reads. */
    public static final String FILE = "diagnosis.json";

    /** No bar has more rows than this; a file that says so is no results file. */
    private static final int MAX_ROWS = 1000;

    private final double startS;
    private final int rows;

    private DiagnosisReader(double startS, int rows) {
        this.startS = startS;
        this.rows = rows;
    }

    /**
     * The diagnosis a results folder holds.
     *
     * @throws UnusableInputException where the folder, or the file in it, isn't what {@code report} writes
     */
    public static SavedDiagnosis read(Path folder) {
        ResultValue root = ResultFile.open(folder, FILE, DiagnosisJson.SCHEMA_ID);
        return new DiagnosisReader(root.at("start").time(), root.at("rows").whole(1, MAX_ROWS)).document(root);
    }

    private SavedDiagnosis document(ResultValue root) {
        List<ProductState> products = new ArrayList<>();
        List<ResultValue> states = root.at("products").list();
        for (int p = 0; p < states.size(); p++) {
            products.add(product(states.get(p), p));
        }
        List<SavedFinding> findings = new ArrayList<>();
        for (ResultValue value : root.at("findings").list()) {
            findings.add(finding(value));
        }
        List<String> notes = new ArrayList<>();
        for (ResultValue note : root.at("notes").list()) {
            notes.add(note.text());
        }
        return new SavedDiagnosis(
                root.at("field").text(),
                root.at("rig").text(),
                zone(root.at("zone")),
                startS,
                root.at("end").time(),
                rows,
                root.at("fastest_pass_m_per_s").number(),
                products,
                findings,
                notes);
    }

    private static String zone(ResultValue value) {
        try {
            return ZoneId.of(value.text()).getId();
        } catch (DateTimeException e) {
            throw value.wrong("'" + value.text() + "'", "a time zone such as America/Chicago");
        }
    }

    private ProductState product(ResultValue value, int index) {
        List<RowHealth> health = new ArrayList<>();
        List<RowBaseline> baselines = new ArrayList<>();
        List<ResultValue> lines = sized(value.at("rows"), rows);
        for (ResultValue line : lines) {
            int row = line.at("row").whole(health.size() + 1, health.size() + 1);
            health.add(new RowHealth(
                    row,
                    line.at("median_deviation_pct").number() / 100,
                    line.at("beyond_10_pct_share_pct").number() / 100,
                    line.at("judged_s").number()));
            ResultValue healthy = line.at("healthy");
            if (!healthy.isNull()) {
                baselines.add(new RowBaseline(
                        index,
                        row,
                        healthy.at("median_ratio").number(),
                        healthy.at("spread_ratio").number(),
                        healthy.at("response_s").number(),
                        healthy.at("judged_s").number(),
                        healthy.at("outlier").flag()));
            }
        }
        return new ProductState(
                value.at("product").text(), value.at("name").text(), picture(value.at("picture")), health, baselines);
    }

    private RowPicture picture(ResultValue value) {
        List<ResultValue> from = value.at("from_s").list();
        int n = from.size();
        List<ResultValue> to = sized(value.at("to_s"), n);
        List<ResultValue> pass = sized(value.at("pass"), n);
        List<ResultValue> lines = sized(value.at("deviation_pct"), rows);
        RowPicture picture = new RowPicture(new double[n], new double[n], new int[n], new float[rows][n]);
        double last = Double.NEGATIVE_INFINITY;
        for (int c = 0; c < n; c++) {
            picture.startS()[c] = startS + from.get(c).number();
            picture.endS()[c] = startS + to.get(c).number();
            picture.pass()[c] = pass.get(c).whole(1, Integer.MAX_VALUE);
            if (!(picture.endS()[c] > picture.startS()[c] && picture.startS()[c] >= last)) {
                throw to.get(c).wrong("times that don't rise", "columns one after the other");
            }
            // Ends are rounded to hundredths: the next column may begin that much before.
            last = picture.endS()[c] - 0.02;
        }
        for (int r = 0; r < rows; r++) {
            List<ResultValue> cells = sized(lines.get(r), n);
            for (int c = 0; c < n; c++) {
                picture.deviation()[r][c] = (float) (cells.get(c).number() / 100);
            }
        }
        return picture;
    }

    private static List<ResultValue> sized(ResultValue value, int n) {
        List<ResultValue> list = value.list();
        if (list.size() != n) {
            throw value.wrong(list.size() + " entries", n + " entries");
        }
        return list;
    }

    private SavedFinding finding(ResultValue value) {
        List<Integer> named = new ArrayList<>();
        for (ResultValue row : value.at("rows").list()) {
            named.add(row.whole(1, rows));
        }
        double fromS = value.at("from").time();
        double toS = value.at("to").time();
        double confidence = value.at("confidence").number();
        if (!(toS >= fromS)) {
            throw value.at("to").wrong("an end before the start", "from before to");
        }
        if (!(confidence >= 0 && confidence <= 1)) {
            throw value.at("confidence").wrong(Double.toString(confidence), "a share from 0 to 1");
        }
        List<Figure> figures = new ArrayList<>();
        for (ResultValue figure : value.at("figures").list()) {
            figures.add(new Figure(
                    figure.at("name").text(),
                    figure.at("value").number(),
                    figure.at("unit").text()));
        }
        Finding finding = new Finding(
                kind(value.at("kind")),
                named,
                fromS,
                toS,
                confidence,
                value.at("area_m2").number(),
                value.at("volume_l").number(),
                value.at("nitrogen_kg").number(),
                value.at("where").at("lat").number(),
                value.at("where").at("lon").number(),
                Message.of("findings.text", value.at("evidence").text()),
                Message.of("findings.text", value.at("rival").text()),
                Message.of("findings.text", value.at("check").text()));
        return new SavedFinding(value.at("product").text(), finding, figures);
    }

    /** The kind of this name. */
    static FindingKind kind(ResultValue value) {
        for (FindingKind kind : FindingKind.values()) {
            if (kind.jsonName().equals(value.text())) {
                return kind;
            }
        }
        throw value.wrong("'" + value.text() + "'", "a kind of finding this version knows");
    }
}
