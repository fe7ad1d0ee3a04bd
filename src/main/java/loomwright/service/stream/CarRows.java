package loomwright.service.stream;

import com.fasterxml.jackson.databind.JsonNode;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.Comparator;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import loomwright.answer.Severity;
import loomwright.bulk.Line;
import loomwright.bulk.LineAnswer.Found;
import loomwright.service.endpoint.Calculation.Worked;
import loomwright.service.problem.Problem;
import org.jspecify.annotations.Nullable;

/** One row for each car: the worst that was found, how much of each severity, and the one thing to act on first. */
public final class CarRows implements LineForm {
    static final List<String> COLUMNS =
            List.of("severity", "danger", "warning", "note", "code", "text", "remedy", "questions", "assumptions");

    private static final int ANSWERED = 200;

    private final boolean worstFirst;
    private final CsvLineForm table;
    /** Those that wait for the end of the run, to be put in order. */
    private final List<Row> waiting = Collections.synchronizedList(new ArrayList<>());

    /**
     * One form for one run.
     *
     * @param withFile whether the first column names the file
     * @param worstFirst whether the rows stand in order of severity; nothing is written then before the end
     */
    public CarRows(boolean withFile, boolean worstFirst) {
        this.worstFirst = worstFirst;
        this.table = new CsvLineForm(COLUMNS, withFile);
    }

    /** A row and its place among the others: what could not be answered may hide anything and stands first. */
    private record Row(
            Line line, boolean answered, @Nullable Severity severity, long danger, long warning, String text) {
        private static final Comparator<Row> WORST_FIRST = Comparator.comparing(Row::answered)
                .thenComparing(Row::severity, Comparator.nullsLast(Comparator.naturalOrder()))
                .thenComparing(Comparator.comparingLong(Row::danger).reversed())
                .thenComparing(Comparator.comparingLong(Row::warning).reversed())
                .thenComparing(row -> row.line().file(), Comparator.nullsFirst(Comparator.naturalOrder()))
                .thenComparing(row -> row.line().number());
    }

    @Override
    public byte[] head() {
        return table.head();
    }

    @Override
    public byte[] answer(Line line, @Nullable JsonNode key, Worked worked) {
        Map<Severity, Long> counts = new EnumMap<>(Severity.class);
        for (Found found : worked.findings()) {
            counts.merge(found.severity(), 1L, Long::sum);
        }
        @Nullable
        Found worst = worked.findings().stream()
                .min(Comparator.comparing(Found::severity))
                .orElse(null);
        List<@Nullable Object> cells = Arrays.asList(
                worst == null ? null : worst.severity(),
                counts.getOrDefault(Severity.DANGER, 0L),
                counts.getOrDefault(Severity.WARNING, 0L),
                counts.getOrDefault(Severity.NOTE, 0L),
                worst == null ? null : worst.code(),
                worst == null ? null : worst.text(),
                worst == null ? null : worst.remedy(),
                worked.questions(),
                worked.answer().assumptions().size());
        return placed(new Row(
                line,
                true,
                worst == null ? null : worst.severity(),
                counts.getOrDefault(Severity.DANGER, 0L),
                counts.getOrDefault(Severity.WARNING, 0L),
                text(table.line(line, key, ANSWERED, null, cells))));
    }

    @Override
    public byte[] problem(Line line, @Nullable JsonNode key, Problem problem) {
        return placed(new Row(line, false, null, 0, 0, text(table.problem(line, key, problem))));
    }

    private static String text(byte[] utf8) {
        return new String(utf8, StandardCharsets.UTF_8);
    }

    private byte[] placed(Row row) {
        if (!worstFirst) {
            return row.text().getBytes(StandardCharsets.UTF_8);
        }
        waiting.add(row);
        return new byte[0];
    }

    @Override
    public byte[] beginning(Line line) {
        return worstFirst ? new byte[0] : table.beginning(line);
    }

    @Override
    public byte[] summary(Ended ended) {
        StringBuilder rows = new StringBuilder();
        waiting.stream().sorted(Row.WORST_FIRST).forEach(row -> rows.append(row.text()));
        rows.append(text(table.summary(ended)));
        return rows.toString().getBytes(StandardCharsets.UTF_8);
    }
}
