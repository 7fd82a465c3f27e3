package io.rowledger.page;

import com.fasterxml.jackson.core.JsonGenerator;
import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.SerializerProvider;
import com.fasterxml.jackson.databind.module.SimpleModule;
import com.fasterxml.jackson.databind.ser.std.StdScalarSerializer;
import com.samskivert.mustache.Escapers;
import com.samskivert.mustache.Mustache;
import io.rowledger.analysis.Analysis;
import io.rowledger.document.text.Messages;
import io.rowledger.document.text.TemplateText;
import io.rowledger.report.common.ReportOptions;
import io.rowledger.report.review.PassReview;
import io.rowledger.report.review.PassReviewReport;
import io.rowledger.report.rows.RowDiagnosis;
import io.rowledger.report.rows.RowDiagnosisReport;
import io.rowledger.text.VisibleText;
import io.rowledger.units.UnitSystem;
import java.io.IOException;
import java.io.OutputStream;
import java.io.StringWriter;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;

/** The whole job in one file that opens from disk in any browser: {@code review.html}. */
public final class ReviewPage {
    /** Its name in the results folder. */
    public static final String FILE = "review.html";

    /** The script puts these texts into the page as they are. */
    private static final ObjectMapper JSON =
            new ObjectMapper().registerModule(new SimpleModule().addSerializer(String.class, new VisibleStrings()));

    private ReviewPage() {}

    /**
     * The words and rounded figures of the printed reports in one unit system.
     *
     * @param system {@code us} or {@code metric}
     * @param shown true for the system in which the page opens
     * @param bar the bar drawn to scale (SVG)
     */
    record Reader(String system, boolean shown, PassReview review, RowDiagnosis diagnosis, String bar) {}

    /** What the template's tags name. */
    record Model(
            String title,
            List<Reader> readers,
            String picture,
            String styles,
            String scripts,
            String licenses,
            String words,
            String data,
            String columns,
            String units) {}

    /**
     * Writes the page.
     *
     * @throws IOException where the stream can't be written
     */
    public static void write(Analysis analysis, ReportOptions options, OutputStream out) throws IOException {
        ColumnBlock block =
                JobColumns.of(analysis.rig(), analysis.log(), analysis.track().poses(), analysis.delivery());
        PageData data = new PageDataBuilder(analysis).build(options, block);
        List<Reader> readers = readers(analysis, options);
        PassReview review =
                readers.stream().filter(Reader::shown).findFirst().orElseThrow().review();
        Messages words = options.messages();
        Model model = new Model(
                review.head().field(),
                readers,
                PageMap.of(analysis.coverage(), review.ground().skipSummary()),
                WebAssets.styles(),
                WebAssets.scripts(),
                WebAssets.licenses(),
                json(words.plain("page")),
                json(data),
                block.base64(),
                name(options.units()));
        StringWriter page = new StringWriter();
        Mustache.compiler()
                .withEscaper(text -> Escapers.HTML.escape(VisibleText.of(text)))
                .strictSections(true)
                .emptyStringIsFalse(true)
                .compile(WebAssets.template())
                .execute(model, Map.of("t", new TemplateText(words, "")), page);
        out.write(page.toString().getBytes(StandardCharsets.UTF_8));
    }

    private static List<Reader> readers(Analysis analysis, ReportOptions options) {
        List<Reader> readers = new ArrayList<>();
        for (UnitSystem units : UnitSystem.values()) {
            ReportOptions of = options.in(units);
            readers.add(new Reader(
                    name(units),
                    units == options.units(),
                    PassReviewReport.of(analysis, of).content(),
                    RowDiagnosisReport.of(analysis, of).content(),
                    BarDrawing.of(analysis.rig(), analysis.setup().check(), of.messages())));
        }
        return readers;
    }

    private static String name(UnitSystem units) {
        return units.name().toLowerCase(Locale.ROOT);
    }

    private static final class VisibleStrings extends StdScalarSerializer<String> {
        private static final long serialVersionUID = 1L;

        VisibleStrings() {
            super(String.class);
        }

        @Override
        public void serialize(String value, JsonGenerator json, SerializerProvider provider) throws IOException {
            json.writeString(VisibleText.of(value));
        }
    }

    /** JSON that may stand in a script element. */
    private static String json(Object value) throws JsonProcessingException {
        return JSON.writeValueAsString(value).replace("<", "\\u003c");
    }
}
