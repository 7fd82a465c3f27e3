package io.rowledger.document.pdf;

import com.lowagie.text.pdf.BaseFont;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.security.SecureRandom;
import java.util.HashMap;
import java.util.Map;
import org.xhtmlrenderer.css.constants.IdentValue;
import org.xhtmlrenderer.css.value.FontSpecification;
import org.xhtmlrenderer.layout.SharedContext;
import org.xhtmlrenderer.pdf.FontDescription;
import org.xhtmlrenderer.pdf.FontFamily;
import org.xhtmlrenderer.pdf.ITextFSFont;
import org.xhtmlrenderer.pdf.ITextFontResolver;
import org.xhtmlrenderer.render.FSFont;

/**
 * The only fonts of a report: Liberation Sans regular and bold (SIL Open Font License), from the jar, embedded as subsets.
 * They stand for every font family that a template names, so that a report looks the same on every machine.
 */
final class ReportFonts extends ITextFontResolver {
    private static final int BOLD_FROM = 600;
    /**
     * Weight that both fonts are registered with: the library thickens a font that is lighter than the text it painted last,
     * which for the number of a list item is some other text.
     */
    private static final int HEAVIEST = 900;

    /** Read once for all reports of a run: reading takes longer than writing a page. What a report uses of them is its own. */
    private static final class Loaded {
        static final BaseFont REGULAR = load("/liberation/LiberationSans-Regular.ttf", 0);
        static final BaseFont BOLD = load("/liberation/LiberationSans-Bold.ttf", 1);
        static final MissingGlyphs MISSING = new MissingGlyphs(REGULAR);

        private Loaded() {}
    }

    /** The characters that these fonts lack. */
    MissingGlyphs missing() {
        return Loaded.MISSING;
    }

    BaseFont of(boolean heavy) {
        return heavy ? Loaded.BOLD : Loaded.REGULAR;
    }

    /** No built-in PDF fonts: those would not be embedded, and reading their metrics takes time. */
    @Override
    protected Map<String, FontFamily> loadFonts() {
        return new HashMap<>();
    }

    @Override
    public FSFont resolveFont(SharedContext context, FontSpecification spec) {
        int weight = convertWeightToInt(spec.fontWeight);
        BaseFont font = of(weight >= BOLD_FROM);
        return new ITextFSFont(new FontDescription(font, IdentValue.NORMAL, HEAVIEST), spec.size);
    }

    private static BaseFont load(String resource, int number) {
        try (InputStream in = ReportFonts.class.getResourceAsStream(resource)) {
            if (in == null) {
                throw new IllegalStateException("the jar lacks " + resource);
            }
            String name = resource.substring(resource.lastIndexOf('/') + 1);
            BaseFont font = BaseFont.createFont(
                    name, BaseFont.IDENTITY_H, BaseFont.EMBEDDED, BaseFont.NOT_CACHED, in.readAllBytes(), null);
            font.setSecureRandom(new SubsetTag(number));
            // A list of the glyphs in the subset is optional, and PDF/A allows it only complete; the library's is not.
            font.setIncludeCidSet(false);
            return font;
        } catch (IOException e) {
            throw new UncheckedIOException("reading " + resource, e);
        }
    }

    /** The library tags each subset with six random letters; these are the same for a weight every time. */
    private static final class SubsetTag extends SecureRandom {
        private static final long serialVersionUID = 1L;
        private static final int LETTERS = 26;

        private final int number;

        SubsetTag(int number) {
            this.number = number;
        }

        @Override
        public double nextDouble() {
            return (number + 0.5) / LETTERS;
        }
    }
}
