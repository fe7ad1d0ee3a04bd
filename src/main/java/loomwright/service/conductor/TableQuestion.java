package loomwright.service.conductor;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import loomwright.answer.Answer;
import loomwright.answer.Caution;
import loomwright.answer.InputError;
import loomwright.answer.RejectedInput;
import loomwright.conductor.ConductorText;
import loomwright.conductor.ReferenceTable;
import loomwright.conductor.ReferenceTables;
import loomwright.service.form.Table;
import org.jspecify.annotations.Nullable;

/**
 * A reference table by its name.
 *
 * @param name from the list of tables
 */
public record TableQuestion(String name) {

    /**
     * A table as it is sent.
     *
     * @param columns names of the columns in order
     * @param rows one object per row, a number where the column is numeric, nothing where the print is blank
     */
    public record Report(
            String name,
            String title,
            String source,
            String edition,
            String section,
            String status,
            List<String> notes,
            List<String> columns,
            List<Map<String, Object>> rows) {}

    /**
     * Finds the table.
     *
     * @throws RejectedInput if there is none of that name
     */
    public Answer<Report> answer() {
        ReferenceTable table = ReferenceTables.find(name)
                .orElseThrow(() -> new RejectedInput(
                        new InputError(InputError.Code.UNKNOWN_REFERENCE, "/name", name, AcceptedInList.TABLE.with())));
        return new Answer<>(
                new Report(
                        table.name(),
                        table.title(),
                        table.source(),
                        table.edition(),
                        table.section(),
                        table.status(),
                        table.notes(),
                        table.columns().stream()
                                .map(ReferenceTable.Column::name)
                                .toList(),
                        table.rows().stream().map(row -> named(table, row)).toList()),
                List.of(ConductorText.AS_PRINTED.with()),
                List.of(TableListQuestion.basis(table)),
                List.of(Caution.LOCAL_CODES));
    }

    private static Map<String, Object> named(ReferenceTable table, List<String> row) {
        Map<String, Object> named = new LinkedHashMap<>();
        for (int i = 0; i < row.size(); i++) {
            ReferenceTable.Column column = table.columns().get(i);
            String cell = row.get(i);
            if (!cell.isBlank()) {
                named.put(column.name(), column.numeric() ? Double.valueOf(cell) : cell);
            }
        }
        return named;
    }

    /** The rows with source and status of the table in each of them, so that a pasted row keeps them. */
    public static Table table(Report report) {
        List<String> columns = new ArrayList<>(report.columns());
        columns.addAll(List.of("tableSource", "tableStatus"));
        String source = report.source() + ", " + report.edition() + ", " + report.section();
        List<List<@Nullable Object>> rows = new ArrayList<>();
        for (Map<String, Object> named : report.rows()) {
            List<@Nullable Object> row = new ArrayList<>();
            report.columns().forEach(column -> row.add(named.get(column)));
            row.add(source);
            row.add(report.status());
            rows.add(row);
        }
        return new Table(columns, rows);
    }
}
