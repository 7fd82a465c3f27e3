package io.rowledger.maps;

import io.rowledger.finding.UnusableInputException;
import java.io.BufferedInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.InputStreamReader;
import java.io.Reader;
import java.nio.charset.Charset;
import java.nio.charset.StandardCharsets;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * The characters of an XML file, by its byte order mark, its first bytes or its declaration (XML 1.0, appendix F), else UTF-8.
 * The JDK's parser would print to the console what it can't decode; a reader of ours throws it.
 */
public final class XmlCharacters {
    private static final int DECLARATION_BYTES = 200;
    private static final Pattern ENCODING =
            Pattern.compile("^<\\?xml[^>]*?encoding\\s*=\\s*[\"']([A-Za-z][A-Za-z0-9._-]{0,40})[\"']");

    private XmlCharacters() {}

    /**
     * Closing the reader closes the stream.
     *
     * @param file what to call it in messages
     * @param expected what the message says of the character set it should have
     * @param hint how else to come by the file
     * @throws UnusableInputException where the file declares a character set that nobody here knows
     */
    public static Reader of(String file, InputStream bytes, String expected, String hint) throws IOException {
        InputStream in = bytes.markSupported() ? bytes : new BufferedInputStream(bytes);
        in.mark(DECLARATION_BYTES);
        byte[] first = in.readNBytes(DECLARATION_BYTES);
        in.reset();
        String start = new String(first, StandardCharsets.ISO_8859_1);
        Matcher declared = ENCODING.matcher(start);
        Charset charset = StandardCharsets.UTF_8;
        if (start.startsWith("\u00fe\u00ff") || start.startsWith("\u00ff\u00fe")) {
            charset = StandardCharsets.UTF_16;
        } else if (start.startsWith("\0<")) {
            charset = StandardCharsets.UTF_16BE;
        } else if (start.startsWith("<\0")) {
            charset = StandardCharsets.UTF_16LE;
        } else if (start.startsWith("\u00ef\u00bb\u00bf")) {
            in.skipNBytes(3);
        } else if (declared.find()) {
            String name = declared.group(1);
            if (!Charset.isSupported(name)) {
                throw UnusableInputException.found("the character set " + name)
                        .inFile(file)
                        .expected(expected)
                        .hint(hint);
            }
            charset = Charset.forName(name);
        }
        return new InputStreamReader(in, charset.newDecoder());
    }
}
