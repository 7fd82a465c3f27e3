package io.rowledger.document.pdf;

import com.lowagie.text.pdf.PdfArray;
import com.lowagie.text.pdf.PdfBoolean;
import com.lowagie.text.pdf.PdfDate;
import com.lowagie.text.pdf.PdfDictionary;
import com.lowagie.text.pdf.PdfEncryption;
import com.lowagie.text.pdf.PdfFileSpecification;
import com.lowagie.text.pdf.PdfName;
import com.lowagie.text.pdf.PdfNumber;
import com.lowagie.text.pdf.PdfObject;
import com.lowagie.text.pdf.PdfStream;
import com.lowagie.text.pdf.PdfString;
import com.lowagie.text.pdf.PdfWriter;
import io.rowledger.digest.Sha256;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.time.Instant;
import java.time.ZoneOffset;
import java.time.format.DateTimeFormatter;
import java.util.Arrays;
import java.util.GregorianCalendar;
import java.util.List;
import java.util.Locale;
import java.util.Objects;
import java.util.TimeZone;
import org.w3c.dom.Document;
import org.w3c.dom.NodeList;
import org.xhtmlrenderer.pdf.DefaultPDFCreationListener;
import org.xhtmlrenderer.pdf.ITextRenderer;

/**
 * Makes a PDF conform to PDF/A (ISO 19005), level A: part 2, or part 3 with attachments, since part 2 allows only PDF/A
 * files as attachments. Sets identity, dates, metadata, color space and attachments; nothing of it comes from a clock.
 */
final class Archive extends DefaultPDFCreationListener {
    private static final PdfName AF = new PdfName("AF");
    private static final PdfName RELATIONSHIP = new PdfName("AFRelationship");
    /** Level of Deflate, 1 to 9: maps are long lists of numbers, which the usual 6 packs some 6 % smaller for more time. */
    private static final int COMPRESSION = 3;

    private static final PdfName PDF_A_INTENT = new PdfName("GTS_PDFA1");

    private final Document document;
    private final Instant date;
    private final List<Attachment> attachments;

    /**
     * Creates the listener.
     *
     * @param date of document and attachments
     */
    Archive(Document document, Instant date, List<Attachment> attachments) {
        this.document = document;
        this.date = date;
        this.attachments = attachments;
    }

    @Override
    public void preOpen(ITextRenderer renderer) {
        PdfWriter writer = writer(renderer);
        writer.setPdfVersion(PdfWriter.VERSION_1_7);
        writer.setFullCompression();
        writer.setCompressionLevel(COMPRESSION);
        writer.setTagged();
        PdfDictionary info = writer.getInfo();
        info.put(PdfName.CREATIONDATE, stamp());
        info.put(PdfName.MODDATE, stamp());
        byte[] id = digest();
        info.put(PdfName.FILEID, PdfEncryption.createInfoId(id, id));
        PdfDictionary catalog = writer.getExtraCatalog();
        catalog.put(PdfName.LANG, new PdfString(language()));
        PdfDictionary preferences = new PdfDictionary();
        preferences.put(PdfName.DISPLAYDOCTITLE, PdfBoolean.PDFTRUE);
        catalog.put(PdfName.VIEWERPREFERENCES, preferences);
        PdfObject producer = Objects.requireNonNull(info.get(PdfName.PRODUCER), "the library names itself");
        writer.setXmpMetadata(metadata(producer.toString()).getBytes(StandardCharsets.UTF_8));
    }

    @Override
    public void preWrite(ITextRenderer renderer, int pageCount) {
        PdfWriter writer = writer(renderer);
        try {
            PdfStream profile = new PdfStream(SrgbProfile.bytes());
            profile.put(PdfName.N, new PdfNumber(3));
            profile.flateCompress(writer.getCompressionLevel());
            PdfDictionary intent = new PdfDictionary(PdfName.OUTPUTINTENT);
            intent.put(PdfName.S, PDF_A_INTENT);
            intent.put(PdfName.OUTPUTCONDITIONIDENTIFIER, new PdfString("sRGB IEC61966-2-1"));
            intent.put(PdfName.INFO, new PdfString("sRGB IEC61966-2-1"));
            intent.put(PdfName.DESTOUTPUTPROFILE, writer.addToBody(profile).getIndirectReference());
            writer.getExtraCatalog().put(PdfName.OUTPUTINTENTS, new PdfArray(intent));
        } catch (IOException e) {
            throw new UncheckedIOException("writing the color profile", e);
        }
    }

    @Override
    public void onClose(ITextRenderer renderer) {
        if (attachments.isEmpty()) {
            return;
        }
        PdfWriter writer = writer(renderer);
        PdfArray names = new PdfArray();
        PdfArray associated = new PdfArray();
        try {
            // A name tree is in the order of its keys (ISO 32000-1, 7.9.6).
            for (Attachment attachment : attachments.stream()
                    .sorted((a, b) -> a.name().compareTo(b.name()))
                    .toList()) {
                PdfObject file = embedded(attachment, writer);
                names.add(new PdfString(attachment.name(), PdfObject.TEXT_UNICODE));
                names.add(file);
                associated.add(file);
            }
            PdfDictionary tree = new PdfDictionary();
            tree.put(PdfName.NAMES, names);
            PdfDictionary kinds = new PdfDictionary();
            kinds.put(PdfName.EMBEDDEDFILES, writer.addToBody(tree).getIndirectReference());
            writer.getExtraCatalog().put(PdfName.NAMES, kinds);
            writer.getExtraCatalog().put(AF, associated);
        } catch (IOException e) {
            throw new UncheckedIOException("attaching files", e);
        }
    }

    private PdfObject embedded(Attachment attachment, PdfWriter writer) throws IOException {
        PdfDictionary particulars = new PdfDictionary();
        particulars.put(PdfName.CREATIONDATE, stamp());
        particulars.put(PdfName.MODDATE, stamp());
        PdfFileSpecification file = PdfFileSpecification.fileEmbedded(
                writer,
                attachment.name(),
                attachment.name(),
                attachment.bytes(),
                attachment.mediaType(),
                particulars,
                PdfStream.BEST_COMPRESSION);
        file.addDescription(attachment.description(), true);
        file.put(RELATIONSHIP, new PdfName("Data"));
        return file.getReference();
    }

    private static PdfWriter writer(ITextRenderer renderer) {
        return Objects.requireNonNull(renderer.getWriter(), "no writer before opening");
    }

    private PdfDate stamp() {
        GregorianCalendar calendar = new GregorianCalendar(TimeZone.getTimeZone("UTC"), Locale.ROOT);
        calendar.setTimeInMillis(date.toEpochMilli());
        return new PdfDate(calendar);
    }

    private String language() {
        String lang = document.getDocumentElement().getAttribute("lang");
        return lang.isEmpty() ? "en-US" : lang;
    }

    /** The title in the head of the page. */
    private String title() {
        NodeList titles = document.getElementsByTagName("title");
        return titles.getLength() == 0 ? "" : titles.item(0).getTextContent().trim();
    }

    private String metadata(String producer) {
        String when = DateTimeFormatter.ofPattern("uuuu-MM-dd'T'HH:mm:ss'Z'", Locale.ROOT)
                .format(date.atOffset(ZoneOffset.UTC));
        String part = attachments.isEmpty() ? "2" : "3";
        return """
                <?xpacket begin="\uFEFF" id="W5M0MpCehiHzreSzNTczkc9d"?>
                <x:xmpmeta xmlns:x="adobe:ns:meta/">
                <rdf:RDF xmlns:rdf="http://www.w3.org/1999/02/22-rdf-syntax-ns#">
                <rdf:Description rdf:about="" xmlns:dc="http://purl.org/dc/elements/1.1/"
                 xmlns:xmp="http://ns.adobe.com/xap/1.0/" xmlns:pdf="http://ns.adobe.com/pdf/1.3/"
                 xmlns:pdfaid="http://www.aiim.org/pdfa/ns/id/">
                <pdfaid:part>PART</pdfaid:part>
                <pdfaid:conformance>A</pdfaid:conformance>
                <dc:format>application/pdf</dc:format>
                <dc:language><rdf:Bag><rdf:li>LANGUAGE</rdf:li></rdf:Bag></dc:language>
                <dc:title><rdf:Alt><rdf:li xml:lang="x-default">TITLE</rdf:li></rdf:Alt></dc:title>
                <xmp:CreateDate>WHEN</xmp:CreateDate>
                <xmp:ModifyDate>WHEN</xmp:ModifyDate>
                <xmp:MetadataDate>WHEN</xmp:MetadataDate>
                <pdf:Producer>PRODUCER</pdf:Producer>
                </rdf:Description>
                </rdf:RDF>
                </x:xmpmeta>
                <?xpacket end="r"?>""".replace("PART", part)
                .replace("WHEN", when)
                .replace("LANGUAGE", escaped(language()))
                .replace("PRODUCER", escaped(producer))
                .replace("TITLE", escaped(title()));
    }

    private static String escaped(String text) {
        return text.replace("&", "&amp;").replace("<", "&lt;").replace(">", "&gt;");
    }

    /** The identity of the document: a digest of its words and attachments. */
    private byte[] digest() {
        MessageDigest sha = Sha256.digest();
        sha.update(document.getDocumentElement().getTextContent().getBytes(StandardCharsets.UTF_8));
        for (Attachment attachment : attachments) {
            sha.update(attachment.name().getBytes(StandardCharsets.UTF_8));
            sha.update(attachment.bytes());
        }
        return Arrays.copyOf(sha.digest(), 16);
    }
}
