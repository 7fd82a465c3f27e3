package io.rowledger.document.pdf;

import com.lowagie.text.pdf.PRIndirectReference;
import com.lowagie.text.pdf.PdfArray;
import com.lowagie.text.pdf.PdfDictionary;
import com.lowagie.text.pdf.PdfName;
import com.lowagie.text.pdf.PdfNumber;
import com.lowagie.text.pdf.PdfObject;
import com.lowagie.text.pdf.PdfReader;
import com.lowagie.text.pdf.PdfString;
import io.rowledger.digest.Sha256;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import java.security.GeneralSecurityException;
import java.security.cert.CertificateEncodingException;
import java.security.cert.X509Certificate;
import java.time.Instant;
import java.time.ZoneOffset;
import java.time.format.DateTimeFormatter;
import java.util.Arrays;
import java.util.Locale;
import java.util.Map;
import java.util.TreeMap;

/**
 * Signs a finished PDF with the user's key: an invisible signature of the whole file (PAdES baseline B-B, ETSI EN 319
 * 142-1), appended as an incremental update (ISO 32000-1, 7.5.6), so that every byte of the unsigned file stays. The update
 * is written here because the layout library would put the machine's clock and a random identity into it.
 *
 * @param key to sign with
 * @param at the moment of signing, as the file will state it; no time stamp service confirms it
 */
public record PdfSigner(SigningKey key, Instant at) {
    private static final PdfName SIG_FLAGS = new PdfName("SigFlags");
    /** Signatures exist, and the file may only be appended to (ISO 32000-1, table 219). */
    private static final int SIGNED_APPEND_ONLY = 3;
    /** Room for the signature besides the certificates, bytes: the largest usual key (RSA, 8192 bits) needs 1,024. */
    private static final int ROOM = 4096;
    /** Digits kept free for each number of the byte range. */
    private static final int RANGE_DIGITS = 10;
    /** Bytes of a cross-reference entry: type, offset, generation. */
    private static final int[] WIDTHS = {1, 4, 2};

    /**
     * Signs a PDF.
     *
     * @param pdf a PDF this program wrote
     * @return the signed PDF, which begins with the bytes of the unsigned one
     */
    public byte[] sign(byte[] pdf) throws IOException {
        try (PdfReader reader = new PdfReader(pdf)) {
            return new Update(pdf, reader).signed();
        } catch (GeneralSecurityException e) {
            throw new IllegalStateException("signing with a key that was checked", e);
        }
    }

    /** The incremental update, which follows the bytes of the unsigned file. */
    private final class Update {
        private final PdfReader reader;
        private final int before;
        private final ByteArrayOutputStream out;
        private final Map<Integer, Integer> offsets = new TreeMap<>();
        private int next;
        private int range;
        private int contents;
        private int room;

        Update(byte[] pdf, PdfReader reader) {
            this.reader = reader;
            this.before = pdf.length;
            this.out = new ByteArrayOutputStream(pdf.length + 4 * ROOM);
            out.writeBytes(pdf);
            next = reader.getTrailer().getAsNumber(PdfName.SIZE).intValue();
        }

        byte[] signed() throws IOException, GeneralSecurityException {
            PRIndirectReference page = reader.getPageOrigRef(1);
            PRIndirectReference root = (PRIndirectReference) reader.getTrailer().get(PdfName.ROOT);
            int signature = next++;
            int field = next++;
            text("\n");
            writeSignature(signature);
            object(field);
            text("<</Type/Annot/Subtype/Widget/FT/Sig/T(Signature)/F 132/Rect[0 0 0 0]/P " + page.getNumber() + " "
                    + page.getGeneration() + " R/V " + signature + " 0 R>>\nendobj\n");
            rewrite(page, with(reader.getPageN(1), PdfName.ANNOTS, field));
            PdfDictionary catalog = copy(reader.getCatalog());
            PdfDictionary form = catalog.getAsDict(PdfName.ACROFORM);
            form = with(form == null ? new PdfDictionary() : form, PdfName.FIELDS, field);
            form.put(SIG_FLAGS, new PdfNumber(SIGNED_APPEND_ONLY));
            catalog.put(PdfName.ACROFORM, form);
            rewrite(root, catalog);
            writeTable(root);
            return filledIn();
        }

        private void writeSignature(int number) throws CertificateEncodingException, IOException {
            room = ROOM;
            for (X509Certificate certificate : key.chain()) {
                room += certificate.getEncoded().length;
            }
            object(number);
            text("<</Type/Sig/Filter/Adobe.PPKLite/SubFilter/ETSI.CAdES.detached/M(D:"
                    + DateTimeFormatter.ofPattern("uuuuMMddHHmmss", Locale.ROOT).format(at.atOffset(ZoneOffset.UTC))
                    + "Z)/ByteRange[0");
            range = out.size();
            text(" ".repeat(3 * (RANGE_DIGITS + 1)) + "]/Contents<");
            contents = out.size();
            text("0".repeat(2 * room) + ">>>\nendobj\n");
        }

        /** A copy of this dictionary with one more reference in the array of this name. */
        private PdfDictionary with(PdfDictionary dictionary, PdfName name, int number) {
            PdfDictionary copy = copy(dictionary);
            PdfArray array = dictionary.getAsArray(name);
            PdfArray longer = array == null ? new PdfArray() : new PdfArray(array);
            longer.add(new PRIndirectReference(reader, number));
            copy.put(name, longer);
            return copy;
        }

        private static PdfDictionary copy(PdfDictionary dictionary) {
            PdfDictionary copy = new PdfDictionary();
            copy.putAll(dictionary);
            return copy;
        }

        private void rewrite(PRIndirectReference reference, PdfDictionary dictionary) throws IOException {
            object(reference.getNumber());
            write(dictionary);
            text("\nendobj\n");
        }

        private void object(int number) {
            offsets.put(number, out.size());
            text(number + " 0 obj\n");
        }

        private void write(PdfObject value) throws IOException {
            if (value instanceof PRIndirectReference reference) {
                text(reference.getNumber() + " " + reference.getGeneration() + " R");
            } else if (value instanceof PdfDictionary dictionary) {
                text("<<");
                for (PdfName name : dictionary.getKeys()) {
                    out.writeBytes(name.getBytes());
                    text(" ");
                    write(dictionary.get(name));
                }
                text(">>");
            } else if (value instanceof PdfArray array) {
                text("[");
                for (PdfObject element : array.getElements()) {
                    write(element);
                    text(" ");
                }
                text("]");
            } else {
                value.toPdf(null, out);
            }
        }

        /** The cross-reference stream of the update (ISO 32000-1, 7.5.8), the kind the file itself has. */
        private void writeTable(PRIndirectReference root) throws IOException, GeneralSecurityException {
            int number = next++;
            int start = out.size();
            offsets.put(number, start);
            ByteBuffer table =
                    ByteBuffer.allocate(offsets.size() * Arrays.stream(WIDTHS).sum());
            StringBuilder index = new StringBuilder();
            for (Map.Entry<Integer, Integer> entry : offsets.entrySet()) {
                index.append(entry.getKey()).append(" 1 ");
                table.put((byte) 1).putInt(entry.getValue()).putShort((short) 0);
            }
            PRIndirectReference info = (PRIndirectReference) reader.getTrailer().get(PdfName.INFO);
            text(number + " 0 obj\n<</Type/XRef/Size " + next + "/W[1 4 2]/Index[" + index + "]/Prev "
                    + reader.getLastXref() + "/Root " + root.getNumber() + " 0 R/Info " + info.getNumber()
                    + " 0 R/ID");
            write(identity());
            text("/Length " + table.capacity() + ">>\nstream\n");
            out.writeBytes(table.array());
            text("\nendstream\nendobj\nstartxref\n" + start + "\n%%EOF\n");
        }

        /** File identifier: the first part is permanent, the second changes with each version (ISO 32000-1, 14.4). */
        private PdfArray identity() throws GeneralSecurityException {
            PdfArray ids =
                    new PdfArray(reader.getTrailer().getAsArray(PdfName.ID).getPdfObject(0));
            byte[] version = Sha256.digest().digest(out.toByteArray());
            ids.add(new PdfString(Arrays.copyOf(version, 16)).setHexWriting(true));
            return ids;
        }

        /** Fills in the byte range, signs it and fills in the signature. */
        private byte[] filledIn() throws GeneralSecurityException {
            byte[] file = out.toByteArray();
            // Everything but the hexadecimal string, its brackets included (ISO 32000-1, 12.8.1).
            int left = contents - 1;
            int right = contents + 2 * room + 1;
            byte[] numbers =
                    (" " + left + " " + right + " " + (file.length - right)).getBytes(StandardCharsets.US_ASCII);
            System.arraycopy(numbers, 0, file, range, numbers.length);
            byte[] content = new byte[left + file.length - right];
            System.arraycopy(file, 0, content, 0, left);
            System.arraycopy(file, right, content, left, file.length - right);
            byte[] signature = Der.hex(CmsSignature.sign(content, key));
            if (signature.length > 2 * room || before > left) {
                throw new IllegalStateException("no room for a signature of " + signature.length / 2 + " bytes");
            }
            System.arraycopy(signature, 0, file, contents, signature.length);
            return file;
        }

        private void text(String text) {
            out.writeBytes(text.getBytes(StandardCharsets.ISO_8859_1));
        }
    }
}
