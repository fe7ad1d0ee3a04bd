package loomwright.drawing.diagram;

import java.util.List;
import loomwright.answer.Progress;
import loomwright.backfeed.BackfeedLimits;
import loomwright.circuit.Plan;
import loomwright.circuit.Plans;
import loomwright.drawing.diagram.DiagramOptions.Marks;
import loomwright.drawing.diagram.Drawing.Line;
import loomwright.drawing.diagram.Drawing.Symbol;
import loomwright.network.NetworkLimits;
import loomwright.operation.Step;

/** Drawings for tests. One remedy is tried at most: a drawing tells none. */
final class Drawn {
    static final List<String> EXAMPLES = Plans.exampleNames();

    static final BackfeedLimits LIMITS = new BackfeedLimits(262_144, 64, 4, 1, 20_000);

    private Drawn() {}

    static Drawing of(Plan plan, Step step, Marks... marks) {
        return Diagram.of(plan, options(step, marks), LIMITS, NetworkLimits.defaults(), Progress.UNWATCHED)
                .drawing();
    }

    static DiagramOptions options(Step step, Marks... marks) {
        return new DiagramOptions(step, List.of(marks), null, null, null, null, null, null, null, null);
    }

    static Drawing example(String name, Step step, Marks... marks) {
        return of(Plans.example(name), step, marks);
    }

    static Line wire(Drawing drawing, String id) {
        return drawing.wires().stream()
                .filter(wire -> wire.said().id().equals(id))
                .findFirst()
                .orElseThrow();
    }

    static Symbol symbol(Drawing drawing, String id) {
        return drawing.symbols().stream()
                .filter(symbol -> symbol.ids().contains(id))
                .findFirst()
                .orElseThrow();
    }

    /** All texts that belong to a part or wire. */
    static List<String> texts(Drawing drawing, String owner) {
        return drawing.texts().stream()
                .filter(text -> text.owner().equals(owner))
                .map(Text::text)
                .toList();
    }
}
