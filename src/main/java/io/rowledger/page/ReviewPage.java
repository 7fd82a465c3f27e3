package io.rowledger.page;

import com.fasterxml.jackson.core.JsonGenerator;
import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.SerializerProvider;
import com.fasterxml.jackson.databind.module.SimpleModule;
import com.fasterxml.jackson.databind.ser.std.StdScalarSerializer;
import com.samskivert.mustache.Escapers;
import com.samskivert.mustache.Mustache;
import com.samskivert.mustache.Template;
import io.rowledger.analysis.Analysis;
import io.rowledger.analysis.RowCheck;
import io.rowledger.backdrop.Backdrop;
import io.rowledger.document.text.Messages;
import io.rowledger.document.text.TemplateText;
import io.rowledger.report.common.ReportOptions;
import io.rowledger.report.map.DeviationClasses;
import io.rowledger.report.rows.RowDiagnosisReport;
import io.rowledger.text.VisibleText;
import io.rowledger.units.UnitSystem;
import java.io.IOException;
import java.io.OutputStream;
import java.io.StringWriter;
import java.nio.charset.StandardCharsets;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.TreeMap;
import java.util.zip.Deflater;
import org.jspecify.annotations.Nullable;

/** The whole job in one file that opens from disk in any browser: {@code review.html}. */
public final class ReviewPage {
    /** Its name in the results folder. */
    public static final String FILE = "review.html";

    /** The languages that the page can switch between. */
    private static final List<Locale> LANGUAGES = List.of(Locale.ENGLISH, Locale.forLanguageTag("es"));

    private static final ObjectMapper JSON = new ObjectMapper();

    /** The script puts these texts into the page as they are. */
    private static final ObjectMapper VISIBLE =
            new ObjectMapper().registerModule(new SimpleModule().addSerializer(String.class, new VisibleStrings()));

    private final ReportOptions options;
    private final TextOf text;
    private final String picture;

    /** The page's text in these units and this language. */
    private interface TextOf {
        PageBody of(ReportOptions options, String picture);
    }

    private ReviewPage(ReportOptions options, TextOf text, String picture) {
        this.options = options;
        this.text = text;
        this.picture = picture;
    }

    /** What the outer template's tags name. */
    record Model(
            String title,
            String language,
            String units,
            String body,
            String styles,
            String scripts,
            String scriptHash,
            String licenses,
            String words,
            String data,
            String texts,
            String backdrop,
            String columns) {}

    /**
     * The page's other languages and units; the script reads it when a person first changes one of them.
     *
     * @param words the script's words by language
     * @param bodies the page's body by language and units
     */
    record Others(Map<String, Map<String, String>> words, Map<String, String> bodies) {}

    /**
     * Writes the page of a job.
     *
     * @param rows its row diagnosis, in any language and units
     * @param backdrop the picture under the map, or null
     * @throws IOException where the stream can't be written
     */
    public static void write(
            Analysis analysis,
            RowDiagnosisReport rows,
            ReportOptions options,
            @Nullable Backdrop backdrop,
            OutputStream out)
            throws IOException {
        ColumnBlock block =
                JobColumns.of(analysis.rig(), analysis.log(), analysis.track().poses(), analysis.delivery());
        PageData data =
                PageDataBuilder.of(analysis, options.zone(), block, backdrop == null ? null : backdrop.bounds());
        new ReviewPage(
                        options,
                        (look, picture) -> PageBodyBuilder.of(analysis, rows, look, picture),
                        PageMap.of(analysis.coverage()))
                .write(data, block.base64(), backdrop == null ? "" : backdrop.dataUri(), out);
    }

    /**
     * Writes the page of a check of rows: without a rig file nobody knows where the strips lie, so there is no map.
     *
     * @param name of the log
     * @throws IOException where the stream can't be written
     */
    public static void write(RowCheck check, String name, ReportOptions options, OutputStream out) throws IOException {
        ColumnBlock block = JobColumns.of(
                check.rig(), check.reading().table(), check.track().poses(), check.delivery());
        PageData data = PageDataBuilder.of(check, options.zone(), block);
        new ReviewPage(options, (look, picture) -> PageBodyBuilder.of(check, name, look), "")
                .write(data, block.base64(), "", out);
    }

    private void write(PageData data, String columns, String backdrop, OutputStream out) throws IOException {
        Template template = compiled(WebAssets.body());
        PageBody shown = text.of(options, picture);
        String scripts = WebAssets.scripts();
        Model model = new Model(
                shown.field(),
                options.language().getLanguage(),
                name(options.units()),
                html(template, shown, options.messages()),
                WebAssets.styles(),
                scripts,
                WebAssets.sha256(scripts),
                WebAssets.licenses(),
                json(words(options.language())),
                json(data),
                ColumnBlock.packed(JSON.writeValueAsBytes(others(template)), Deflater.DEFAULT_STRATEGY),
                backdrop,
                columns);
        StringWriter page = new StringWriter();
        compiled(WebAssets.template()).execute(model, page);
        out.write(page.toString().getBytes(StandardCharsets.UTF_8));
    }

    private static Template compiled(String template) {
        return Mustache.compiler()
                .withEscaper(text -> Escapers.HTML.escape(VisibleText.of(text)))
                .strictSections(true)
                .emptyStringIsFalse(true)
                .withFormatter(TemplateText::printed)
                .compile(template);
    }

    /** What the page shows in every other look. */
    private Others others(Template template) {
        Map<String, Map<String, String>> words = new LinkedHashMap<>();
        for (Locale language : LANGUAGES) {
            if (!language.getLanguage().equals(options.language().getLanguage())) {
                words.put(language.getLanguage(), words(language));
            }
        }
        return new Others(words, texts(template));
    }

    /** The page's body in every language and unit system by names such as {@code es-us}, but the one that is shown. */
    private Map<String, String> texts(Template template) {
        Map<String, String> texts = new LinkedHashMap<>();
        for (Locale language : LANGUAGES) {
            for (UnitSystem units : UnitSystem.values()) {
                ReportOptions look = options.in(language).in(units);
                if (!look.equals(options)) {
                    texts.put(
                            language.getLanguage() + "-" + name(units),
                            html(template, text.of(look, ""), look.messages()));
                }
            }
        }
        return texts;
    }

    private static String html(Template template, PageBody body, Messages messages) {
        StringWriter html = new StringWriter();
        template.execute(body, Map.of("t", new TemplateText(messages, "")), html);
        return html.toString();
    }

    /** The script's words in a language. */
    private Map<String, String> words(Locale language) {
        Messages messages = options.in(language).messages();
        Map<String, String> words = new TreeMap<>(messages.plain("page"));
        for (int i = 0; i < DeviationClasses.count(); i++) {
            words.put("class." + i, messages.text(DeviationClasses.name(i, true)));
            words.put("classShort." + i, messages.text(DeviationClasses.shortName(i)));
        }
        return words;
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
        return VISIBLE.writeValueAsString(value).replace("<", "\\u003c");
    }
}
