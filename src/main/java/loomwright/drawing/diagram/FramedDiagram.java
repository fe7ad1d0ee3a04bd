package loomwright.drawing.diagram;

import static loomwright.message.Arg.arg;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import java.util.stream.Collectors;
import loomwright.circuit.Condition;
import loomwright.circuit.ContactBreaker;
import loomwright.circuit.Plan;
import loomwright.circuit.PlanCautions;
import loomwright.circuit.Switch;
import loomwright.drawing.diagram.DiagramOptions.LegendText;
import loomwright.operation.PlanReadings.StepReadings;
import loomwright.operation.PlanReadings.WireReading;
import org.jspecify.annotations.Nullable;

/** Title above the circuit, legend below. */
final class FramedDiagram {
    private static final double MARGIN_PX = 20;
    private static final double NARROWEST_PX = 560;
    private static final double HEAD_PX = 62;
    private static final double BLOCK_HEAD_PX = 60;

    /** Of a sheet with several circuits, about. */
    private static final double WIDTH_TO_HEIGHT = 1.3;

    private FramedDiagram() {}

    /**
     * A circuit of a sheet.
     *
     * @param sheet whose number and title stand above it, among others; none where it is alone
     */
    record Block(@Nullable CircuitSheet sheet, Scene scene, Draft draft) {
        double heightPx() {
            return draft.heightPx() + headPx();
        }

        double headPx() {
            return sheet == null ? 0 : BLOCK_HEAD_PX;
        }
    }

    /**
     * One step of a circuit, or of several in rows.
     *
     * @param scene of all of it
     * @param emphasis what stands out in this or any step that was placed together with it
     */
    static Drawing of(Scene scene, List<Block> blocks, String title, LegendText legend, Set<Emphasis> emphasis) {
        List<DiagramPoint> places = rows(blocks);
        double right = 0;
        double lowest = 0;
        for (int i = 0; i < blocks.size(); i++) {
            right = Math.max(right, places.get(i).x() + blocks.get(i).draft().widthPx());
            lowest = Math.max(lowest, places.get(i).y() + blocks.get(i).heightPx());
        }
        double width = Math.max(NARROWEST_PX, right + 2 * MARGIN_PX);
        double dx = (width - right) / 2;
        Composition sheet = new Composition();
        String moment = moment(scene);
        sheet.title(title, MARGIN_PX, width - 2 * MARGIN_PX);
        sheet.moment(moment, MARGIN_PX, 43, width - 2 * MARGIN_PX);
        for (int i = 0; i < blocks.size(); i++) {
            Block block = blocks.get(i);
            DiagramPoint at = places.get(i);
            if (block.sheet() != null) {
                sheet.head(
                        block.sheet(),
                        dx + at.x(),
                        HEAD_PX + at.y() + 46,
                        block.draft().widthPx());
            }
            sheet.add(block.draft(), dx + at.x(), HEAD_PX + at.y() + block.headPx());
        }
        double bottom = HEAD_PX + lowest + 8;
        if (legend != LegendText.NONE) {
            Legend below = new Legend(sheet, MARGIN_PX, width - 2 * MARGIN_PX, bottom)
                    .keys(emphasis)
                    .colours(scene.colourWords() ? List.of() : scene.plan().wires())
                    .marks(legend == LegendText.KEYS ? List.of() : scene.allMarks(), legend);
            bottom = (legend == LegendText.FULL ? below.cautions(PlanCautions.of(scene.plan())) : below).bottom();
        }
        return sheet.drawing(
                width,
                bottom + MARGIN_PX,
                title,
                moment,
                description(scene, moment),
                scene.marks().stream().map(Mark::number).toList(),
                scene.readings().nodes());
    }

    /** One beside the other until a row is about as wide as all are high. */
    private static List<DiagramPoint> rows(List<Block> blocks) {
        double area = blocks.stream()
                .mapToDouble(block -> block.draft().widthPx() * block.heightPx())
                .sum();
        double widest = Math.sqrt(WIDTH_TO_HEIGHT * area);
        List<DiagramPoint> places = new ArrayList<>();
        double x = 0;
        double y = 0;
        double rowHeight = 0;
        for (Block block : blocks) {
            if (x > 0 && x + block.draft().widthPx() > widest) {
                x = 0;
                y += rowHeight + MARGIN_PX;
                rowHeight = 0;
            }
            places.add(new DiagramPoint(x, y));
            x += block.draft().widthPx() + MARGIN_PX;
            rowHeight = Math.max(rowHeight, block.heightPx());
        }
        return places;
    }

    /** The step, its supply and where the free switches stand. */
    private static String moment(Scene scene) {
        Plan plan = scene.plan();
        StepReadings readings = scene.readings();
        Condition condition = readings.step().condition();
        List<String> parts = new ArrayList<>();
        String moment = DiagramText.MOMENT
                .with(
                        arg("step", readings.step()),
                        arg("supplyV", plan.batterySupply(condition).emfV()),
                        arg("polarity", plan.system().earthPolarity().name().toLowerCase(Locale.ROOT)))
                .text();
        parts.add(moment.substring(0, 1).toUpperCase(Locale.ROOT) + moment.substring(1));
        plan.listParts(Switch.class).stream()
                .filter(Switch::free)
                .forEach(
                        s -> parts.add(position(s.displayName(), s.in(condition).name())));
        if (!readings.step().engineTurning()) {
            plan.listParts(ContactBreaker.class)
                    .forEach(b -> parts.add(position(b.displayName(), b.closedWhenStopped() ? "closed" : "open")));
        }
        readings.findings().forEach(finding -> parts.add(finding.text()));
        return String.join(" · ", parts);
    }

    private static String position(String part, String position) {
        return DiagramText.POSITION
                .with(arg("part", part), arg("position", position))
                .text();
    }

    private static String description(Scene scene, String moment) {
        List<String> live = scene.readings().wires().stream()
                .filter(WireReading::live)
                .map(WireReading::wire)
                .toList();
        String marks = scene.marks().stream()
                .map(mark -> mark.number() + ". " + mark.text())
                .collect(Collectors.joining(" "));
        String description = DiagramText.DESCRIPTION
                .with(arg("moment", moment), arg("wires", String.join(", ", live)), arg("live", live.size()))
                .text();
        return marks.isEmpty()
                ? description
                : description + " "
                        + DiagramText.DESCRIPTION_MARKS
                                .with(arg("marks", marks))
                                .text();
    }
}
