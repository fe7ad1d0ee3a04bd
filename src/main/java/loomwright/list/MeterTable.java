package loomwright.list;

import java.util.List;
import java.util.Map;

/**
 * Readings of a meter as a list has them.
 *
 * @param readings each with {@code from}, {@code to}, {@code condition} and one of {@code voltageV}, {@code resistanceOhm} and
 *     {@code open}
 * @param places where each stands, in the same order
 */
public record MeterTable(List<Map<String, Object>> readings, List<CellRef> places) {
    static final MeterTable NONE = new MeterTable(List.of(), List.of());

    public MeterTable {
        readings = List.copyOf(readings);
        places = List.copyOf(places);
    }
}
