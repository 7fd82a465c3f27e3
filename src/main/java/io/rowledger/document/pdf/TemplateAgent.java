package io.rowledger.document.pdf;

import io.rowledger.document.pdf.Templates.Template;
import java.io.ByteArrayInputStream;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.util.Objects;
import org.jspecify.annotations.Nullable;
import org.xhtmlrenderer.pdf.ITextOutputDevice;
import org.xhtmlrenderer.pdf.ITextUserAgent;
import org.xhtmlrenderer.resource.CSSResource;
import org.xhtmlrenderer.swing.NaiveUserAgent;

/** Serves style sheets from the templates; fetches nothing else, and nothing from a network. */
final class TemplateAgent extends ITextUserAgent {
    /** The default style sheet of the layout library. */
    private static final String LAYOUT_DEFAULTS = "XhtmlNamespaceHandler.css";

    private final Templates templates;

    /** A style sheet that neither the user's folder nor the program has. */
    static final class UnknownSheetException extends RuntimeException {
        private static final long serialVersionUID = 1L;

        final String uri;

        UnknownSheetException(String uri) {
            super(uri);
            this.uri = uri;
        }
    }

    TemplateAgent(Templates templates, ITextOutputDevice device, int dotsPerPixel) {
        super(device, dotsPerPixel);
        this.templates = templates;
    }

    @Override
    public CSSResource getCSSResource(String uri) {
        String name = uri.substring(uri.lastIndexOf('/') + 1);
        if (LAYOUT_DEFAULTS.equals(name)) {
            return new CSSResource(layoutDefaults());
        }
        if (!templates.has(uri)) {
            throw new UnknownSheetException(uri);
        }
        Template sheet = templates.read(uri);
        if (sheet.own()) {
            OwnTemplate.checkSheet(sheet);
        }
        byte[] css = sheet.text().getBytes(StandardCharsets.UTF_8);
        return new CSSResource(new ByteArrayInputStream(css));
    }

    private static InputStream layoutDefaults() {
        return Objects.requireNonNull(
                NaiveUserAgent.class.getResourceAsStream("/resources/css/" + LAYOUT_DEFAULTS),
                "the layout library lacks its default style sheet");
    }

    @Override
    public String resolveURI(@Nullable String uri) {
        return uri == null ? "" : uri;
    }

    @Override
    protected @Nullable InputStream resolveAndOpenStream(@Nullable String uri) {
        return null;
    }
}
