package io.rowledger.maps;

import io.rowledger.finding.UnusableInputException;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.Charset;
import java.nio.charset.IllegalCharsetNameException;
import java.nio.charset.StandardCharsets;
import java.nio.charset.UnsupportedCharsetException;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.jspecify.annotations.Nullable;

/**
 * The attributes of a shapefile: dBASE III and later (header of 32 bytes, 32 a field, records of fixed width). Texts are in
 * the character set of the .cpg file; without one in UTF-8 where they are valid UTF-8, else in windows-1252.
 */
final class DbfTable {
    private static final int HEADER = 32;
    private static final int FIELD = 32;
    private static final int NAME = 11;
    private static final byte END_OF_FIELDS = 0x0D;

    private final ShapefileParts parts;
    private final byte[] bytes;
    private final int records;
    private final int headerLength;
    private final int recordLength;
    private final @Nullable Charset charset;
    private final List<Field> fields = new ArrayList<>();

    private record Field(String name, char type, int at, int width) {}

    DbfTable(ShapefileParts parts, byte[] bytes) {
        this.parts = parts;
        this.bytes = bytes;
        this.charset = charset(parts);
        if (bytes.length < HEADER + 1) {
            throw damaged("cut short");
        }
        ByteBuffer in = ByteBuffer.wrap(bytes).order(ByteOrder.LITTLE_ENDIAN);
        this.records = in.getInt(4);
        this.headerLength = in.getShort(8) & 0xFFFF;
        this.recordLength = in.getShort(10) & 0xFFFF;
        fields();
        long needed = headerLength + (long) records * recordLength;
        if (records < 0 || recordLength < 1 || needed > bytes.length) {
            throw damaged("cut short");
        }
    }

    private void fields() {
        int at = 1;
        for (int from = HEADER; from < headerLength && from < bytes.length; from += FIELD) {
            if (bytes[from] == END_OF_FIELDS) {
                break;
            }
            if (from + FIELD > bytes.length) {
                throw damaged("cut short");
            }
            int length = 0;
            while (length < NAME && bytes[from + length] != 0) {
                length++;
            }
            int width = bytes[from + 16] & 0xFF;
            char type = (char) (bytes[from + NAME] & 0xFF);
            // Long texts use the place of the decimals as well.
            width += type == 'C' ? (bytes[from + 17] & 0xFF) << 8 : 0;
            fields.add(new Field(text(from, length).strip(), type, at, width));
            at += width;
        }
        if (at > recordLength) {
            throw damaged("with fields wider than its records");
        }
    }

    private static @Nullable Charset charset(ShapefileParts parts) {
        String name = parts.text("cpg");
        if (name.isEmpty()) {
            return null;
        }
        String plain = name.toLowerCase(Locale.ROOT).replaceFirst("^(ansi|oem|cp)[ _-]?(?=\\d)", "");
        if (plain.matches("\\d{3,5}")) {
            int number = Integer.parseInt(plain);
            plain = number == 65001
                    ? "utf-8"
                    : number > 28590 && number < 28606
                            ? "iso-8859-" + (number - 28590)
                            : (number >= 1250 && number <= 1258 ? "windows-" : "ibm") + number;
        } else if (plain.matches("(iso[ _-]?)?8859[ _-]?\\d{1,2}")) {
            plain = "iso-8859-" + plain.replaceFirst(".*8859[ _-]?", "");
        }
        try {
            return Charset.forName(plain);
        } catch (IllegalCharsetNameException | UnsupportedCharsetException e) {
            throw parts.fault("the character set \"" + name.substring(0, Math.min(40, name.length()))
                            + "\" in the .cpg file")
                    .expected("a name such as UTF-8 or 1252")
                    .hint("write UTF-8 into the .cpg file, or export the shapefile again");
        }
    }

    int records() {
        return records;
    }

    /** True for a record that was deleted but is still in the file. */
    boolean isDeleted(int record) {
        return bytes[headerLength + record * recordLength] == '*';
    }

    /** What a record says; nothing for empty fields and for those that stand in another file. */
    List<MapProperty> properties(int record) {
        List<MapProperty> out = new ArrayList<>();
        int from = headerLength + record * recordLength;
        for (Field field : fields) {
            MapProperty property = property(field, from + field.at);
            if (property != null) {
                out.add(property);
            }
        }
        return out;
    }

    private @Nullable MapProperty property(Field field, int from) {
        ByteBuffer in = ByteBuffer.wrap(bytes).order(ByteOrder.LITTLE_ENDIAN);
        switch (field.type) {
            case 'C', 'D', 'L' -> {
                String text = text(from, field.width).replace("\0", "").strip();
                boolean none = text.isEmpty() || (field.type == 'L' && text.equals("?"));
                return none ? null : new MapProperty(field.name, text, Double.NaN, 0);
            }
            case 'N', 'F' -> {
                String text = text(from, field.width).replace("\0", "").strip();
                double number = Numbers.of(text);
                return Double.isNaN(number) ? null : new MapProperty(field.name, text, number, 0);
            }
            case 'I', '+' -> {
                return field.width == 4 ? number(field, in.getInt(from)) : null;
            }
            case 'O', 'B' -> {
                return field.width == 8 ? number(field, in.getDouble(from)) : null;
            }
            default -> {
                return null;
            }
        }
    }

    private static @Nullable MapProperty number(Field field, double value) {
        String text = value == Math.rint(value) && Math.abs(value) < 1e15
                ? Long.toString((long) value)
                : Double.toString(value);
        return Double.isFinite(value) ? new MapProperty(field.name, text, value, 0) : null;
    }

    private String text(int from, int length) {
        if (charset != null) {
            return new String(bytes, from, length, charset);
        }
        try {
            return StandardCharsets.UTF_8
                    .newDecoder()
                    .decode(ByteBuffer.wrap(bytes, from, length))
                    .toString();
        } catch (CharacterCodingException e) {
            return new String(bytes, from, length, Charset.forName("windows-1252"));
        }
    }

    private UnusableInputException damaged(String how) {
        return parts.fault("a .dbf file " + how)
                .expected("a dBASE table with the attributes of the shapes")
                .hint("copy the .dbf file again, or export the shapefile again");
    }
}
