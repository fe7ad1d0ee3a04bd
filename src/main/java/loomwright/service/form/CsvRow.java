package loomwright.service.form;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * Takes one row of separated values apart (RFC 4180, but for blanks around a value and the choice of separator), a row being
 * one line.
 */
public final class CsvRow {
    private final String line;
    private final char separator;
    private int at;

    private CsvRow(String line, char separator) {
        this.line = line;
        this.separator = separator;
    }

    /** What separates the names of a header: a tab or a semicolon if it holds one, else the comma. */
    public static char separatorOf(String header) {
        return header.indexOf('\t') >= 0 ? '\t' : header.indexOf(';') >= 0 ? ';' : ',';
    }

    /**
     * The cells of a row, blanks around them left out unless they are quoted.
     *
     * @return empty if quotes are opened and not closed, or something stands beside them
     */
    public static Optional<List<String>> parse(String line, char separator) {
        return new CsvRow(line, separator).cells();
    }

    private Optional<List<String>> cells() {
        List<String> cells = new ArrayList<>();
        while (true) {
            Optional<String> cell = isQuoted() ? quoted() : Optional.of(plain());
            if (cell.isEmpty()) {
                return Optional.empty();
            }
            cells.add(cell.get());
            if (at == line.length()) {
                return Optional.of(cells);
            }
            if (line.charAt(at) != separator) {
                return Optional.empty();
            }
            at++;
        }
    }

    private boolean isQuoted() {
        int first = at;
        while (first < line.length() && line.charAt(first) == ' ') {
            first++;
        }
        if (first < line.length() && line.charAt(first) == '"') {
            at = first + 1;
            return true;
        }
        return false;
    }

    private String plain() {
        int next = line.indexOf(separator, at);
        int end = next < 0 ? line.length() : next;
        String cell = line.substring(at, end).strip();
        at = end;
        return cell;
    }

    private Optional<String> quoted() {
        StringBuilder cell = new StringBuilder();
        while (at < line.length()) {
            char c = line.charAt(at++);
            if (c != '"') {
                cell.append(c);
            } else if (at < line.length() && line.charAt(at) == '"') {
                cell.append('"');
                at++;
            } else {
                while (at < line.length() && line.charAt(at) == ' ') {
                    at++;
                }
                return Optional.of(cell.toString());
            }
        }
        return Optional.empty();
    }
}
