package loomwright.service.form;

import java.math.BigDecimal;
import java.math.MathContext;
import java.math.RoundingMode;
import java.util.List;
import java.util.Locale;
import java.util.function.Predicate;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import loomwright.answer.Answer;
import loomwright.answer.Assumption;
import loomwright.answer.Basis;
import loomwright.answer.Caution;
import loomwright.message.Message;
import loomwright.message.PropertyName;
import org.jspecify.annotations.Nullable;

/** Text with headings, lists and tables as forums and wikis take it. {@link TruncatedMarkdown} makes it fit into a post. */
public final class Markdown {
    private static final int LONGEST_TITLE = 150;
    private static final String WORD_JOINER = "\u2060";
    private static final Pattern AT_A_NAME = Pattern.compile("@(?=\\S)");
    /** What forums make a link of without any markup. */
    private static final Pattern SCHEME =
            Pattern.compile("\\b(https?|ftp|mailto|www)([:.])(?=\\S)", Pattern.CASE_INSENSITIVE);

    private final StringBuilder out = new StringBuilder();

    /** Any answer that has a table: the table, the cautions, how it was worked out, on what it rests. */
    public static String of(Answer<?> answer, Table table) {
        return new Markdown()
                .section(PostText.RESULT.text())
                .table(table)
                .close(answer)
                .toString();
    }

    /** What stands at the end of every answer. */
    public Markdown close(Answer<?> answer) {
        return cautions(answer).grounds(answer);
    }

    /** What was assumed, how the answer was worked out, and on what it rests. */
    public Markdown grounds(Answer<?> answer) {
        List<String> read = texts(answer, Assumption::isOfReading);
        if (!read.isEmpty()) {
            first(new Markdown()
                    .bulletsUnder(PostText.QUESTIONS.text(), texts(answer, Assumption::isQuestion))
                    .bulletsUnder(
                            PostText.AS_READ.text(), texts(answer, one -> one.isOfReading() && !one.isQuestion())));
        }
        bulletsUnder(PostText.ASSUMPTIONS.text(), texts(answer, one -> !one.isOfReading()));
        if (!answer.working().isEmpty()) {
            section(PostText.WORKING.text())
                    .bullets(answer.working().stream().map(Message::text).toList());
        }
        if (!answer.basis().isEmpty()) {
            section(PostText.SOURCES.text())
                    .bullets(answer.basis().stream().map(Basis::inWords).toList());
        }
        return this;
    }

    private static List<String> texts(Answer<?> answer, Predicate<Assumption> which) {
        return answer.assumptions().stream()
                .filter(which)
                .map(one -> one.text().text())
                .toList();
    }

    private Markdown bulletsUnder(String title, List<String> lines) {
        return lines.isEmpty() ? this : section(title).bullets(lines);
    }

    /** Puts sections before all others. */
    private void first(Markdown sections) {
        int other = out.indexOf("\n## ");
        int end = other < 0 ? out.length() : other + 1;
        out.insert(out.indexOf("## ") == 0 ? 0 : end, sections);
    }

    public Markdown cautions(Answer<?> answer) {
        return answer.cautions().isEmpty()
                ? this
                : section(PostText.CAUTIONS.text())
                        .bullets(answer.cautions().stream().map(Caution::text).toList());
    }

    /** The first line; a very long one is cut off. */
    public Markdown title(String text) {
        String title = text.length() <= LONGEST_TITLE ? text : text.substring(0, LONGEST_TITLE - 1) + "…";
        out.append("# ").append(line(title)).append("\n\n");
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
            return paragraph(PostText.NOTHING.text());
        }
        lines.forEach(text -> out.append("- ").append(line(text)).append('\n'));
        out.append('\n');
        return this;
    }

    /** One entry of a list that begins with a word in bold. */
    public Markdown bullet(String bold, String text) {
        out.append("- **").append(line(bold)).append("**: ").append(line(text)).append('\n');
        return this;
    }

    /** Ends a list of {@link #bullet}s. */
    public Markdown end() {
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

    /** A table as people read it: columns without any value are left out; says so if there is no row. */
    public Markdown table(Table table) {
        if (table.rows().isEmpty()) {
            return paragraph(PostText.NOTHING.text());
        }
        List<Integer> used = IntStream.range(0, table.columns().size())
                .filter(column -> table.rows().stream().anyMatch(row -> row.get(column) != null))
                .boxed()
                .toList();
        return table(
                used.stream()
                        .map(column ->
                                PropertyName.of(table.columns().get(column)).heading())
                        .toList(),
                table.rows().stream()
                        .map(row -> used.stream()
                                .map(column -> cell(row.get(column)))
                                .toList())
                        .toList());
    }

    private static String cell(@Nullable Object value) {
        if (value == null) {
            return "";
        }
        if (value instanceof Number number) {
            return fourDigits(number.doubleValue());
        }
        if (value instanceof Boolean yes) {
            return (yes ? PostText.YES : PostText.NO).text();
        }
        return value instanceof Enum<?> word ? EnumWords.of(word) : value.toString();
    }

    private void row(List<String> cells) {
        out.append(cells.stream().map(Markdown::line).collect(Collectors.joining(" | ", "| ", " |\n")));
    }

    /**
     * Texts come from the plan: what would begin a heading, a table cell, a tag or another line is taken as it stands. Nobody is
     * called by {@code @name}, and an address does not become a link: a word joiner and an escape, which nobody sees, stand within.
     */
    private static String line(String text) {
        return SCHEME.matcher(AT_A_NAME.matcher(marked(text)).replaceAll("@" + WORD_JOINER))
                .replaceAll("$1\\\\$2");
    }

    private static String marked(String text) {
        return text.replaceAll("\\R|[\\t\\p{Cntrl}]", " ")
                .replaceAll("([|<>\\[\\]`*_~\\\\])", "\\\\$1")
                .replaceFirst("^(\\s*)([#+-]|\\d+(?=[.)]\\s))(?=\\s|#|[.)])", "$1\\\\$2");
    }

    /** Four digits, all of them before the decimal point. */
    static String fourDigits(double value) {
        BigDecimal exact = BigDecimal.valueOf(value);
        BigDecimal rounded =
                Math.abs(value) >= 1000 ? exact.setScale(0, RoundingMode.HALF_EVEN) : exact.round(new MathContext(4));
        return rounded.signum() == 0 ? "0" : rounded.stripTrailingZeros().toPlainString();
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
