package loomwright.service.form;

import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;

/** Text with headings, lists and tables as forums and wikis take it. */
public final class Markdown {
    private final StringBuilder out = new StringBuilder();

    public Markdown title(String text) {
        out.append("# ").append(line(text)).append("\n\n");
        return this;
    }

    public Markdown section(String text) {
        out.append("## ").append(line(text)).append("\n\n");
        return this;
    }

    public Markdown paragraph(String text) {
        out.append(line(text)).append("\n\n");
        return this;
    }

    /** A list; says so if there is nothing in it. */
    public Markdown bullets(List<String> lines) {
        if (lines.isEmpty()) {
            return paragraph("Nothing.");
        }
        lines.forEach(text -> out.append("- ").append(line(text)).append('\n'));
        out.append('\n');
        return this;
    }

    public Markdown table(List<String> columns, List<List<String>> rows) {
        row(columns);
        row(columns.stream().map(c -> "---").toList());
        rows.forEach(this::row);
        out.append('\n');
        return this;
    }

    private void row(List<String> cells) {
        out.append(cells.stream().map(Markdown::line).collect(Collectors.joining(" | ", "| ", " |\n")));
    }

    /** Texts come from the plan: what would begin a table cell, a tag or another line is taken as it stands. */
    private static String line(String text) {
        return text.replaceAll("[\\r\\n\\t]+", " ").replaceAll("([|<>\\[\\]`*_\\\\])", "\\\\$1");
    }

    /** A figure as one writes it on paper: three digits, and no more than a meter shows. */
    public static String figure(double value) {
        double amount = Math.abs(value);
        if (amount < 0.0005) {
            return "0";
        }
        String form = amount >= 100 ? "%.0f" : amount >= 10 ? "%.1f" : amount >= 1 ? "%.2f" : "%.3f";
        return String.format(Locale.ROOT, form, value);
    }

    @Override
    public String toString() {
        return out.toString();
    }
}
