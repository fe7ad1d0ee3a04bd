package loomwright.drawing.diagram;

import java.util.ArrayList;
import java.util.Collections;
import java.util.EnumSet;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import loomwright.message.MessageCode;

/**
 * One sheet of a plan that is too large for one: circuits that belong together, by what feeds them.
 *
 * @param number from 1 on
 * @param title what is on it and what feeds it
 * @param purposes what its circuits are for
 * @param wires ids; each wire of the plan is on one sheet
 * @param parts ids; a part whose wires are on several sheets is on each of them
 */
public record CircuitSheet(int number, String title, Set<Purpose> purposes, List<String> wires, List<String> parts) {
    public CircuitSheet {
        EnumSet<Purpose> sorted = EnumSet.noneOf(Purpose.class);
        sorted.addAll(purposes);
        purposes = Collections.unmodifiableSet(sorted);
        wires = List.copyOf(wires);
        parts = List.copyOf(parts);
    }

    /** What a circuit is for. */
    public enum Purpose implements MessageCode {
        SUPPLY,
        STARTING,
        IGNITION,
        CHARGING,
        LIGHTING,
        OTHER
    }

    /** Its wires and parts. */
    Set<String> ids() {
        Set<String> ids = new LinkedHashSet<>(wires);
        ids.addAll(parts);
        return ids;
    }

    /** The numbers of the sheets, other than this, that a part is on. */
    List<Integer> others(String part, List<CircuitSheet> all) {
        List<Integer> others = new ArrayList<>();
        for (CircuitSheet sheet : all) {
            if (sheet.number() != number && sheet.parts().contains(part)) {
                others.add(sheet.number());
            }
        }
        return others;
    }
}
