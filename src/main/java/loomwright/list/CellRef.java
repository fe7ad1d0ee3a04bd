package loomwright.list;

/**
 * Where in a list something stands, as the person who wrote it sees it.
 *
 * @param sheet the worksheet; empty in a text
 * @param row from 1
 * @param column its heading; empty for the whole row
 */
public record CellRef(String sheet, int row, String column) {
    CellRef in(String otherColumn) {
        return new CellRef(sheet, row, otherColumn);
    }
}
