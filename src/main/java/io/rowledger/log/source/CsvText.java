package io.rowledger.log.source;

import java.io.Closeable;
import java.io.IOException;
import java.io.Reader;
import java.util.Iterator;
import java.util.List;

/** Rows of a table as CSV (RFC 4180) text, made while it is read, so that the table itself need not fit in memory as text. */
public final class CsvText extends Reader {
    private final Iterator<List<String>> rows;
    private final Closeable source;
    private String line = "";
    private int at;

    /** Takes the header as first row; closes the source when it is closed. */
    CsvText(Iterator<List<String>> rows, Closeable source) {
        this.rows = rows;
        this.source = source;
    }

    @Override
    public int read(char[] into, int from, int length) throws IOException {
        if (at == line.length()) {
            if (!rows.hasNext()) {
                return -1;
            }
            line = line(rows.next());
            at = 0;
        }
        int count = Math.min(length, line.length() - at);
        line.getChars(at, at + count, into, from);
        at += count;
        return count;
    }

    /** One row as a line; fields with commas, quotes or line breaks in quotes. */
    public static String line(List<String> fields) {
        StringBuilder line = new StringBuilder();
        for (int i = 0; i < fields.size(); i++) {
            String field = fields.get(i);
            boolean quote = field.indexOf(',') >= 0
                    || field.indexOf('"') >= 0
                    || field.indexOf('\n') >= 0
                    || field.indexOf('\r') >= 0;
            line.append(i == 0 ? "" : ",");
            line.append(quote ? '"' + field.replace("\"", "\"\"") + '"' : field);
        }
        return line.append('\n').toString();
    }

    @Override
    public void close() throws IOException {
        source.close();
    }
}
