package loomwright.drawing.diagram;

import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import loomwright.circuit.Joint;
import loomwright.circuit.Part;
import loomwright.operation.FeedStrength;
import loomwright.operation.PlanReadings.PartReading;
import org.jspecify.annotations.Nullable;

/**
 * What the drawing of a part has to know besides the part.
 *
 * @param flow which way is down
 * @param wiresAt the wires at each of its terminals, in the order in which they are drawn
 * @param order wished place of each terminal from left to right; empty while none is known
 * @param reading what it does; absent where the step has no solution
 */
record Setting(
        Part part,
        Flow flow,
        Map<String, List<String>> wiresAt,
        Map<String, Double> order,
        @Nullable PartReading reading) {
    /** Room between the leads of one terminal. */
    static final double LEAD_PX = 14;
    /** From a lead to its terminal's name, from there to the volts, and after them. */
    static final double GAP_PX = 5;

    /** From a wire to a text beside it: clear of the band of a backfeed. */
    static final double CLEAR_PX = 10;

    private static final double VOLTS_PX = Text.Role.VOLTS.widthPx("-12.4 V");
    private static final double BARE_PX = 24;

    boolean wired(String terminal) {
        return !wires(terminal).isEmpty();
    }

    List<String> wires(String terminal) {
        return wiresAt.getOrDefault(terminal, List.of());
    }

    /** Width of a terminal's column. */
    double pitch(String terminal) {
        int leads = wires(terminal).size();
        double name = CLEAR_PX + Text.Role.TERMINAL.widthPx(terminal);
        double volts = leads == 0 || part instanceof Joint ? GAP_PX : 2 * GAP_PX + VOLTS_PX;
        return Math.max(BARE_PX, Math.max(0, leads - 1) * LEAD_PX + name + volts + 2);
    }

    boolean fromAbove(String terminal) {
        return flow.fromAbove(part.terminal(terminal));
    }

    /** The side of a terminal that may be on either. */
    Side side(String terminal) {
        return fromAbove(terminal) ? Side.TOP : Side.BOTTOM;
    }

    /** Of two ends that are alike, the one that is nearer the supply. */
    String upper(String one, String other) {
        return flow.isTurned(part.terminal(one), part.terminal(other)) ? other : one;
    }

    /** Terminals from left to right. */
    List<String> sorted(List<String> terminals) {
        Map<String, Double> place = new HashMap<>();
        for (int i = 0; i < terminals.size(); i++) {
            place.put(terminals.get(i), order.getOrDefault(terminals.get(i), order.isEmpty() ? i : 1e9 + i));
        }
        return terminals.stream()
                .sorted(Comparator.comparingDouble(t -> place.getOrDefault(t, 0.0)))
                .toList();
    }

    boolean inState(String state) {
        return reading != null && state.equals(reading.state());
    }

    /** Whether it does what it is for. */
    boolean works() {
        return reading != null && reading.activity() == FeedStrength.OPERATES;
    }

    /** How its body is filled. */
    Shape.Paint body() {
        return works() ? Shape.Paint.LIT : Shape.Paint.BODY;
    }
}
