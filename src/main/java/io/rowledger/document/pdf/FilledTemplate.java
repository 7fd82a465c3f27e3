package io.rowledger.document.pdf;

import com.samskivert.mustache.Mustache;
import com.samskivert.mustache.MustacheException;
import io.rowledger.document.pdf.Templates.Template;
import io.rowledger.document.text.Messages;
import io.rowledger.document.text.TemplateText;
import io.rowledger.finding.UnusableInputException;
import io.rowledger.text.VisibleText;
import java.io.IOException;
import java.io.StringReader;
import java.io.StringWriter;
import java.util.Map;
import javax.xml.parsers.DocumentBuilder;
import javax.xml.parsers.DocumentBuilderFactory;
import javax.xml.parsers.ParserConfigurationException;
import org.w3c.dom.Document;
import org.xml.sax.ErrorHandler;
import org.xml.sax.InputSource;
import org.xml.sax.SAXException;
import org.xml.sax.SAXParseException;

/** Fills a template and parses the result; an error in a user's template is reported by file and line. */
final class FilledTemplate {
    private static final String SAX = "http://xml.org/sax/features/";

    private FilledTemplate() {}

    /**
     * Fills the tags from the model (its accessors are the tags' names) and the messages (as {@code t}) and parses the
     * result.
     */
    static Document fill(Template template, Object model, Messages messages) {
        if (template.own()) {
            OwnTemplate.check(template);
        }
        try {
            return parse(template, expand(template, template.text(), model, messages));
        } catch (SAXParseException e) {
            throw notWellFormed(template, expand(template, LineMarks.mark(template.text()), model, messages), e);
        }
    }

    /** The refusal by the template's own line: the page is filled once more with marks that tell it. */
    private static UnusableInputException notWellFormed(Template template, String marked, SAXParseException e) {
        String found = "no well-formed XHTML: " + e.getMessage();
        int line = 0;
        try {
            parse(template, LineMarks.strip(marked));
        } catch (SAXParseException again) {
            line = LineMarks.lineOf(marked, again.getLineNumber());
        }
        return broken(template, line, found, e)
                .expected("every element closed and every & written as &amp;")
                .hint("correct the line, or delete the file to use the built-in template");
    }

    private static String expand(Template template, String text, Object model, Messages messages) {
        try {
            StringWriter page = new StringWriter();
            Mustache.compiler()
                    .strictSections(true)
                    .emptyStringIsFalse(true)
                    .withFormatter(value -> VisibleText.of(TemplateText.printed(value)))
                    .withLoader(name -> {
                        throw OwnTemplate.partial(template, name, 0);
                    })
                    .compile(text)
                    .execute(model, Map.of("t", new TemplateText(messages, "")), page);
            return page.toString();
        } catch (MustacheException.Context e) {
            throw broken(template, e.lineNo, "a tag {{" + e.key + "}} that has no meaning here", e)
                    .expected("the tags of the built-in template")
                    .hint("take the tag out or correct its name");
        } catch (MustacheException e) {
            throw broken(template, lineOf(e), "tags that don't fit together (" + e.getMessage() + ")", e)
                    .expected("every {{#name}} to end with {{/name}}")
                    .hint("close or remove the section");
        }
    }

    private static int lineOf(MustacheException e) {
        String message = String.valueOf(e.getMessage());
        int at = message.lastIndexOf("line ");
        int line = 0;
        for (int i = at + 5; at >= 0 && i < message.length() && Character.isDigit(message.charAt(i)); i++) {
            line = line * 10 + Character.digit(message.charAt(i), 10);
        }
        return line;
    }

    private static Document parse(Template template, String text) throws SAXParseException {
        try {
            DocumentBuilderFactory factory = DocumentBuilderFactory.newDefaultInstance();
            factory.setFeature(SAX + "external-general-entities", false);
            factory.setFeature(SAX + "external-parameter-entities", false);
            factory.setFeature("http://apache.org/xml/features/nonvalidating/load-external-dtd", false);
            factory.setExpandEntityReferences(false);
            DocumentBuilder builder = factory.newDocumentBuilder();
            builder.setErrorHandler(new Quiet());
            return builder.parse(new InputSource(new StringReader(text)));
        } catch (SAXParseException e) {
            throw e;
        } catch (ParserConfigurationException | SAXException | IOException e) {
            throw new IllegalStateException("parsing " + template.name(), e);
        }
    }

    private static UnusableInputException broken(Template template, int line, String found, Exception cause) {
        if (!template.own()) {
            throw new IllegalStateException("built-in template " + template.name() + " line " + line, cause);
        }
        return UnusableInputException.found(found).inFile(template.name()).atLine(line);
    }

    /** Keeps the parser from printing errors; it throws fatal ones itself. */
    private static final class Quiet implements ErrorHandler {
        @Override
        public void warning(SAXParseException e) {}

        @Override
        public void error(SAXParseException e) {}

        @Override
        public void fatalError(SAXParseException e) throws SAXException {
            throw e;
        }
    }
}
