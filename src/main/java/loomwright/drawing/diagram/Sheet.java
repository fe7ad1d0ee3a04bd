package loomwright.drawing.diagram;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.stream.Collectors;
import loomwright.answer.Progress;
import loomwright.circuit.Condition;
import loomwright.circuit.Plan;
import loomwright.circuit.PlanCautions;
import loomwright.circuit.Switch;
import loomwright.operation.PlanReadings.StepReadings;

/** Title above the circuit, legend below. */
final class Sheet {
    private static final double MARGIN_PX = 20;
    private static final double NARROWEST_PX = 720;
    private static final double HEAD_PX = 62;

    private Sheet() {}

    static Drawing of(Scene scene, String title, Map<String, String> changed, Progress progress) {
        Draft draft = Draft.of(scene, progress);
        double width = Math.max(NARROWEST_PX, draft.widthPx() + 2 * MARGIN_PX);
        double dx = (width - draft.widthPx()) / 2;
        Composition sheet = new Composition();
        String moment = moment(scene, changed);
        sheet.title(title, MARGIN_PX, width - 2 * MARGIN_PX);
        sheet.moment(moment, MARGIN_PX, 43, width - 2 * MARGIN_PX);
        sheet.add(draft, dx, HEAD_PX);
        double bottom = new Legend(sheet, MARGIN_PX, width - 2 * MARGIN_PX, HEAD_PX + draft.heightPx() + 8)
                .keys(scene.fed().isEmpty() ? Emphasis.NONE : Emphasis.BACKFEED)
                .colours(scene.plan().wires())
                .marks(scene.marks())
                .cautions(PlanCautions.of(scene.plan()))
                .bottom();
        return sheet.drawing(width, bottom + MARGIN_PX, title, description(scene, moment));
    }

    /** The step, its supply and where the free switches stand. */
    static String moment(Scene scene, Map<String, String> changed) {
        Plan plan = scene.plan();
        StepReadings readings = scene.readings();
        Condition condition = readings.step().condition();
        List<String> parts = new ArrayList<>();
        parts.add(readings.description().substring(0, 1).toUpperCase(Locale.ROOT)
                + readings.description().substring(1));
        parts.add("supply " + DiagramNumbers.volts(plan.supply(condition).emfV()));
        parts.add(plan.system().earthPolarity().name().toLowerCase(Locale.ROOT) + " earth");
        plan.listParts(Switch.class).stream()
                .filter(Switch::free)
                .forEach(s -> parts.add(s.displayName() + ": " + s.in(condition).name()));
        changed.forEach((id, position) -> {
            if (!(plan.findPart(id).orElseThrow() instanceof Switch)) {
                parts.add(plan.findPart(id).orElseThrow().displayName() + ": " + position);
            }
        });
        readings.findings().forEach(finding -> parts.add(finding.text()));
        return String.join(" · ", parts);
    }

    private static String description(Scene scene, String moment) {
        String live = scene.readings().wires().stream()
                .filter(wire -> wire.live())
                .map(wire -> wire.wire())
                .collect(Collectors.joining(", "));
        String marks = scene.marks().stream()
                .map(mark -> mark.number() + ". " + mark.text())
                .collect(Collectors.joining(" "));
        return "Circuit diagram, supply above, earths below. " + moment + ". Live wires: "
                + (live.isEmpty() ? "none" : live) + "." + (marks.isEmpty() ? "" : " Marked: " + marks);
    }
}
