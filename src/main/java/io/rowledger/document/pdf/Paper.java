package io.rowledger.document.pdf;

/** The sheet a report is laid out for; the name is the CSS page size (CSS Paged Media 3, section 7.1). */
public enum Paper {
    /** 8.5 by 11 inches (ANSI Y14.1 A). */
    LETTER("letter"),
    /** 210 by 297 mm (ISO 216). */
    A4("a4");

    private final String css;

    Paper(String css) {
        this.css = css;
    }

    /** The value of CSS {@code size}. */
    public String css() {
        return css;
    }
}
