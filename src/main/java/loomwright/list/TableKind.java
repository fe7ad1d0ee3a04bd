package loomwright.list;

import java.util.Set;

/** The tables of a list. */
enum TableKind {
    WIRES,
    PARTS,
    SETTINGS,
    POSITIONS,
    CONNECTORS,
    CONDITIONS,
    NOTES,
    READINGS;

    /** Whether these columns make a row the header of such a table. */
    boolean isHeadedBy(Set<String> columns) {
        return switch (this) {
            case WIRES -> columns.containsAll(Set.of("from", "to"));
            case PARTS ->
                columns.contains("part")
                        && (columns.contains("kind") || columns.contains("value") || columns.contains("works when"));
            case SETTINGS -> columns.containsAll(Set.of("setting", "value"));
            case POSITIONS -> columns.containsAll(Set.of("switch", "joins"));
            case CONNECTORS -> columns.containsAll(Set.of("connector", "first half", "second half"));
            case CONDITIONS -> columns.containsAll(Set.of("condition", "volts"));
            case NOTES -> columns.contains("plan note");
            case READINGS -> columns.containsAll(Set.of("point", "reading"));
        };
    }
}
