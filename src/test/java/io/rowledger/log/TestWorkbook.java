package io.rowledger.log;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.zip.ZipEntry;
import java.util.zip.ZipOutputStream;

/**
 * Writes workbooks as ISO/IEC 29500 has them, apart from any library: texts in the cells, numbers as stored. A number in
 * the first column is formatted as date and time.
 */
final class TestWorkbook {
    private static final String HEAD = "<?xml version=\"1.0\" encoding=\"UTF-8\" standalone=\"yes\"?>\n";
    private static final String MAIN = "http://schemas.openxmlformats.org/spreadsheetml/2006/main";
    private static final String RELATIONS = "http://schemas.openxmlformats.org/officeDocument/2006/relationships";
    private static final String PACKAGE = "http://schemas.openxmlformats.org/package/2006/";

    private final Map<String, List<List<Object>>> sheets = new LinkedHashMap<>();
    private boolean styles = true;

    /** Leaves out the part with number formats, which a workbook need not have. */
    TestWorkbook withoutStyles() {
        styles = false;
        return this;
    }

    /** Adds a sheet; cells are Strings, Doubles or null. */
    TestWorkbook sheet(String name, List<List<Object>> rows) {
        sheets.put(name, rows);
        return this;
    }

    Path writeTo(Path file) {
        try (ZipOutputStream zip = new ZipOutputStream(Files.newOutputStream(file))) {
            StringBuilder types = new StringBuilder();
            StringBuilder list = new StringBuilder();
            StringBuilder relations = new StringBuilder();
            int n = 0;
            for (Map.Entry<String, List<List<Object>>> sheet : sheets.entrySet()) {
                n++;
                types.append("<Override PartName=\"/xl/worksheets/sheet" + n + ".xml\" ContentType=\"application/vnd."
                        + "openxmlformats-officedocument.spreadsheetml.worksheet+xml\"/>");
                list.append("<sheet name=\"" + sheet.getKey() + "\" sheetId=\"" + n + "\" r:id=\"rId" + n + "\"/>");
                relations.append("<Relationship Id=\"rId" + n + "\" Type=\"" + RELATIONS
                        + "/worksheet\" Target=\"worksheets/sheet" + n + ".xml\"/>");
                entry(zip, "xl/worksheets/sheet" + n + ".xml", sheetXml(sheet.getValue()));
            }
            relations.append(
                    !styles
                            ? ""
                            : "<Relationship Id=\"rId90\" Type=\"" + RELATIONS + "/styles\" Target=\"styles.xml\"/>");
            entry(
                    zip,
                    "[Content_Types].xml",
                    "<Types xmlns=\"" + PACKAGE
                            + "content-types\"><Default Extension=\"rels\" ContentType=\"application/vnd."
                            + "openxmlformats-package.relationships+xml\"/><Default Extension=\"xml\" ContentType=\"application/"
                            + "xml\"/><Override PartName=\"/xl/workbook.xml\" ContentType=\"application/vnd.openxmlformats-"
                            + "officedocument.spreadsheetml.sheet.main+xml\"/><Override PartName=\"/xl/styles.xml\" ContentType="
                            + "\"application/vnd.openxmlformats-officedocument.spreadsheetml.styles+xml\"/>" + types
                            + "</Types>");
            entry(
                    zip,
                    "_rels/.rels",
                    "<Relationships xmlns=\"" + PACKAGE + "relationships\"><Relationship Id=\"rId1\" Type=\""
                            + RELATIONS + "/officeDocument\" Target=\"xl/workbook.xml\"/></Relationships>");
            entry(
                    zip,
                    "xl/workbook.xml",
                    "<workbook xmlns=\"" + MAIN + "\" xmlns:r=\"" + RELATIONS + "\"><sheets>" + list
                            + "</sheets></workbook>");
            entry(
                    zip,
                    "xl/_rels/workbook.xml.rels",
                    "<Relationships xmlns=\"" + PACKAGE + "relationships\">" + relations + "</Relationships>");
            // Style 1 is date and time, number format 22 (m/d/yy h:mm).
            entryIf(
                    styles,
                    zip,
                    "xl/styles.xml",
                    "<styleSheet xmlns=\"" + MAIN
                            + "\"><numFmts count=\"1\"><numFmt numFmtId=\"165\" formatCode=\"yyyy\\-mm\\-dd"
                            + "\\ hh:mm:ss.000\"/></numFmts><cellXfs count=\"2\"><xf numFmtId=\"0\"/><xf numFmtId=\"165\" "
                            + "applyNumberFormat=\"1\"/></cellXfs></styleSheet>");
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        return file;
    }

    private static void entryIf(boolean wanted, ZipOutputStream zip, String name, String text) throws IOException {
        if (wanted) {
            entry(zip, name, text);
        }
    }

    private static void entry(ZipOutputStream zip, String name, String text) throws IOException {
        zip.putNextEntry(new ZipEntry(name));
        zip.write((HEAD + text).getBytes(StandardCharsets.UTF_8));
        zip.closeEntry();
    }

    private static String sheetXml(List<List<Object>> rows) {
        StringBuilder xml = new StringBuilder("<worksheet xmlns=\"" + MAIN + "\"><sheetData>");
        for (int r = 0; r < rows.size(); r++) {
            if (rows.get(r).isEmpty()) {
                continue;
            }
            xml.append("<row r=\"" + (r + 1) + "\">");
            for (int c = 0; c < rows.get(r).size(); c++) {
                Object value = rows.get(r).get(c);
                String at = column(c) + (r + 1);
                if (value instanceof Double number) {
                    xml.append("<c r=\"" + at + "\"" + (c == 0 ? " s=\"1\"" : "") + "><v>" + number + "</v></c>");
                } else if (value instanceof String text) {
                    xml.append("<c r=\"" + at + "\" t=\"inlineStr\"><is><t>" + text + "</t></is></c>");
                }
            }
            xml.append("</row>");
        }
        return xml.append("</sheetData></worksheet>").toString();
    }

    private static String column(int c) {
        return c < 26 ? String.valueOf((char) ('A' + c)) : column(c / 26 - 1) + (char) ('A' + c % 26);
    }
}
