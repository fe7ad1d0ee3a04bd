package loomwright.service.stream;

import com.fasterxml.jackson.databind.JsonNode;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.List;
import loomwright.bulk.Line;
import loomwright.bulk.Summary;
import loomwright.service.endpoint.Calculation.Worked;
import loomwright.service.form.EnumWords;
import loomwright.service.form.Table;
import loomwright.service.problem.Problem;
import org.jspecify.annotations.Nullable;

/**
 * One table: the rows of each answer behind the number and key of its line, the summary as its last rows.
 *
 * @param columns of the answers' tables
 * @param withFile whether the first column names the file
 */
public record CsvLineForm(List<String> columns, boolean withFile) implements LineForm {
    private static final int ANSWERED = 200;
    private static final String SUMMARY = "summary";

    @Override
    public byte[] head() {
        return rows(List.of(row("file", "line", "key", "status", "message", columns)));
    }

    @Override
    public byte[] answer(Line line, @Nullable JsonNode key, Worked worked) {
        List<List<@Nullable Object>> rows = worked.table().get().rows().stream()
                .map(cells -> row(line, key, ANSWERED, null, cells))
                .toList();
        // A line without a row would look lost.
        return rows(rows.isEmpty() ? List.of(row(line, key, ANSWERED, null, none())) : rows);
    }

    @Override
    public byte[] problem(Line line, @Nullable JsonNode key, Problem problem) {
        return rows(List.of(row(line, key, problem.status(), problem.detail(), none())));
    }

    @Override
    public byte[] beginning(Line line) {
        return (withFile ? "" : line.number() + ",").getBytes(StandardCharsets.UTF_8);
    }

    @Override
    public byte[] summary(Ended ended) {
        Summary s = ended.summary();
        List<List<@Nullable Object>> rows = new ArrayList<>();
        rows.add(summed("answers", null, s.answers()));
        rows.add(summed("problems", null, s.problems()));
        for (Summary.Count count : s.findings()) {
            rows.add(summed(EnumWords.of(count.severity()) + " " + count.code(), null, count.count()));
        }
        if (!s.complete() && !withFile) {
            rows.add(summed("next line", null, s.nextLine()));
        }
        Problem problem = ended.problem();
        if (problem != null) {
            rows.add(summed("problem", problem.status(), problem.detail()));
        }
        rows.add(summed("complete", null, s.complete() ? "yes" : "no"));
        return rows(rows);
    }

    /** One figure a row: its name under key, itself under message. */
    private List<@Nullable Object> summed(String name, @Nullable Integer status, Object value) {
        return row(null, SUMMARY, name, status, value, none());
    }

    byte[] line(Line line, @Nullable JsonNode key, int status, @Nullable String message, List<@Nullable Object> cells) {
        return rows(List.of(row(line, key, status, message, cells)));
    }

    private List<@Nullable Object> row(
            Line line,
            @Nullable JsonNode key,
            int status,
            @Nullable String message,
            List<? extends @Nullable Object> cells) {
        return row(line.file(), line.number(), key == null ? null : key.asText(), status, message, cells);
    }

    private List<@Nullable Object> row(
            @Nullable String file,
            @Nullable Object line,
            @Nullable String key,
            @Nullable Object status,
            @Nullable Object message,
            List<? extends @Nullable Object> cells) {
        List<@Nullable Object> row = new ArrayList<>(Arrays.asList(file, line, key, status, message));
        row.addAll(cells);
        return withFile ? row : row.subList(1, row.size());
    }

    private List<@Nullable Object> none() {
        return Collections.nCopies(columns.size(), null);
    }

    private static byte[] rows(List<List<@Nullable Object>> rows) {
        StringBuilder text = new StringBuilder();
        rows.forEach(row -> Table.writeRow(text, row));
        return text.toString().getBytes(StandardCharsets.UTF_8);
    }
}
