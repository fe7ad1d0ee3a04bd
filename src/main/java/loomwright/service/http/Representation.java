package loomwright.service.http;

import java.util.Locale;

/** The forms an answer can take: chosen by {@code format=} or by {@code Accept}. */
public enum Representation {
    JSON("application/json"),
    /** One bare figure without a line end: what a spreadsheet cell can turn into a number. */
    TEXT("text/plain; charset=utf-8"),
    /** One table (RFC 4180). */
    CSV("text/csv; charset=utf-8"),
    MARKDOWN("text/markdown; charset=utf-8"),
    SVG("image/svg+xml"),
    PNG("image/png"),
    HTML("text/html; charset=utf-8"),
    /** A workbook (ISO/IEC 29500). */
    XLSX("application/vnd.openxmlformats-officedocument.spreadsheetml.sheet"),
    /** A workbook (ISO/IEC 26300). */
    ODS("application/vnd.oasis.opendocument.spreadsheet");

    private final String contentType;

    Representation(String contentType) {
        this.contentType = contentType;
    }

    public String contentType() {
        return contentType;
    }

    /** The media type without parameters. */
    public String mediaType() {
        int end = contentType.indexOf(';');
        return end < 0 ? contentType : contentType.substring(0, end);
    }

    /** The word for {@code format=}. */
    public String word() {
        return name().toLowerCase(Locale.ROOT);
    }
}
