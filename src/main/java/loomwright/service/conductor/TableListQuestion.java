package loomwright.service.conductor;

import java.util.List;
import loomwright.answer.Answer;
import loomwright.answer.Basis;
import loomwright.answer.Caution;
import loomwright.conductor.ReferenceTable;
import loomwright.conductor.ReferenceTables;
import loomwright.service.form.Table;
import org.jspecify.annotations.Nullable;

/** Which reference tables there are: nothing to choose. */
public record TableListQuestion() {

    /**
     * One table in the list.
     *
     * @param status how far its figures were compared with the source, in words
     * @param rows how many rows it has
     * @param href where it is
     */
    public record Entry(
            String name,
            String title,
            String source,
            String edition,
            String section,
            String status,
            int rows,
            String href) {
        static Entry of(ReferenceTable table) {
            return new Entry(
                    table.name(),
                    table.title(),
                    table.source(),
                    table.edition(),
                    table.section(),
                    table.status(),
                    table.rows().size(),
                    "/v1/tables/" + table.name());
        }
    }

    /** The tables in a fixed order. */
    public record Listing(List<Entry> tables) {
        public Listing {
            tables = List.copyOf(tables);
        }
    }

    /** Lists the tables with their sources. */
    public Answer<Listing> answer() {
        List<ReferenceTable> tables = ReferenceTables.list();
        return new Answer<>(
                new Listing(tables.stream().map(Entry::of).toList()),
                List.of(),
                tables.stream().map(table -> basis(table)).toList(),
                List.of(Caution.LOCAL_CODES));
    }

    static Basis basis(ReferenceTable table) {
        return table.basis("figures of the table " + table.name());
    }

    /** One row per table. */
    public static Table table(Listing listing) {
        return new Table(
                List.of("name", "title", "source", "edition", "section", "status", "rows", "href"),
                listing.tables().stream()
                        .map(one -> List.<@Nullable Object>of(
                                one.name(),
                                one.title(),
                                one.source(),
                                one.edition(),
                                one.section(),
                                one.status(),
                                one.rows(),
                                one.href()))
                        .toList());
    }
}
