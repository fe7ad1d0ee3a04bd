package loomwright.list;

/**
 * How much a list may hold, so that no file can take more memory or time than its size promises.
 *
 * @param rows in all sheets
 * @param columns of a row
 * @param cellChars characters of a cell
 * @param unpackedBytes of all entries of a workbook together
 * @param entries files inside a workbook
 */
public record ListLimits(int rows, int columns, int cellChars, long unpackedBytes, int entries) {
    public ListLimits {
        if (rows < 1 || columns < 1 || cellChars < 1 || unpackedBytes < 1 || entries < 1) {
            throw new IllegalArgumentException("limits must be positive");
        }
    }

    /** Enough for a plan of the largest size many times over. */
    public static ListLimits defaults() {
        return new ListLimits(20_000, 200, 2_000, 50_000_000, 500);
    }
}
