package loomwright.drawing.diagram;

import java.util.ArrayList;
import java.util.List;
import loomwright.circuit.Switch;
import loomwright.drawing.diagram.Shape.Paint;

/**
 * A switch: the terminals that are fed above, the others below, a blade from each of those to the fed one that some
 * position joins it to. The blades move together. A contact that the plan states to be faulty is drawn as it is, with the
 * sign of a fault beside it: the lightning flash of IEC 60617 (from memory).
 */
final class SwitchSymbols {
    private static final double LEFT = 20;
    private static final double BAR_Y = 12;
    private static final double BAR_STEP = 7;
    private static final double BLADE_PX = 22;

    private final Switch part;
    private final Setting setting;
    private final List<String> above = new ArrayList<>();
    private final List<String> below;

    private SwitchSymbols(Switch part, Setting setting) {
        this.part = part;
        this.setting = setting;
        List<String> fed = new ArrayList<>();
        List<String> others = new ArrayList<>();
        for (String terminal : part.terminals()) {
            (setting.side(terminal) == Side.TOP ? fed : others).add(terminal);
        }
        if (fed.isEmpty()) {
            fed.add(others.remove(0));
        }
        above.addAll(setting.sorted(fed));
        below = setting.sorted(others);
    }

    static Body of(Switch part, Setting setting) {
        return new SwitchSymbols(part, setting).draw();
    }

    private Body draw() {
        double[] top = Symbols.columns(LEFT, above, setting);
        double[] bottom = Symbols.columns(LEFT, below, setting);
        double bladeY = BAR_Y + (above.size() - 1) * BAR_STEP;
        double height = bladeY + BLADE_PX + 12;
        double width = Math.max(top[above.size() - 1], below.isEmpty() ? 0 : bottom[below.size() - 1]) + 20;
        Sketch sketch = new Sketch();
        for (int i = 0; i < above.size(); i++) {
            sketch.pin(above.get(i), Side.TOP, top[i]).line(top[i], 0, top[i], BAR_Y + i * BAR_STEP);
        }
        for (int i = 0; i < below.size(); i++) {
            sketch.pin(below.get(i), Side.BOTTOM, bottom[i]).line(bottom[i], bladeY + BLADE_PX, bottom[i], height);
            int partner = partner(below.get(i));
            if (partner >= 0) {
                double y = BAR_Y + partner * BAR_STEP;
                sketch.line(top[partner], y, bottom[i], y)
                        .line(bottom[i], y, bottom[i], bladeY)
                        .contact(bottom[i], bladeY, bladeY + BLADE_PX, joined(below.get(i), above.get(partner)));
            }
        }
        joinedAbove(sketch, top);
        joinedBelow(sketch, bottom, height - 6);
        part.faults().forEach(fault -> {
            int i = below.indexOf(fault.between().get(0));
            int k = below.indexOf(fault.between().get(1));
            int one = above.indexOf(fault.between().get(0));
            int other = above.indexOf(fault.between().get(1));
            if (i >= 0 && k >= 0) {
                flash(sketch, (bottom[i] + bottom[k]) / 2, height - 6);
            } else if (one >= 0 && other >= 0) {
                sketch.line(Paint.THICK, top[one], BAR_Y / 2, top[other], BAR_Y / 2);
                flash(sketch, (top[one] + top[other]) / 2, BAR_Y / 2);
            } else {
                flash(sketch, bottom[Math.max(i, k)] + 8, bladeY + BLADE_PX / 2);
            }
        });
        if (below.size() > 1) {
            double y = bladeY + BLADE_PX / 2;
            sketch.line(Paint.LINKAGE, LEFT - 5, y, bottom[below.size() - 1] - 5, y);
        }
        return sketch.body(width, height);
    }

    /** The fed terminal that some position joins a terminal to; the one of the present position first. */
    private int partner(String terminal) {
        for (int i = 0; i < above.size(); i++) {
            if (joined(terminal, above.get(i))) {
                return i;
            }
        }
        for (int i = 0; i < above.size(); i++) {
            String fed = above.get(i);
            if (part.positions().stream().anyMatch(p -> isOneGroup(p.joins(), terminal, fed))) {
                return i;
            }
        }
        return -1;
    }

    private boolean joined(String one, String other) {
        return part.positions().stream()
                .anyMatch(p -> setting.inState(p.name()) && isOneGroup(part.joinsIn(p), one, other));
    }

    private static boolean isOneGroup(List<List<String>> groups, String one, String other) {
        return groups.stream().anyMatch(group -> group.contains(one) && group.contains(other));
    }

    private static void flash(Sketch sketch, double x, double y) {
        sketch.line(x + 3, y - 9, x - 2, y + 1, x + 2, y + 1, x - 2, y + 9)
                .line(x - 2.5, y + 4.5, x - 2, y + 9, x + 2, y + 6.5);
    }

    /** What the present position joins of those that are fed, as batteries in parallel. */
    private void joinedAbove(Sketch sketch, double[] x) {
        for (int i = 0; i < above.size(); i++) {
            for (int k = i + 1; k < above.size(); k++) {
                if (joined(above.get(i), above.get(k))) {
                    sketch.line(Paint.THICK, x[i], BAR_Y / 2, x[k], BAR_Y / 2);
                }
            }
        }
    }

    /** What the present position joins though no fed terminal is among it, and what is bridged. */
    private void joinedBelow(Sketch sketch, double[] x, double y) {
        for (int i = 0; i < below.size(); i++) {
            for (int k = i + 1; k < below.size(); k++) {
                String one = below.get(i);
                String other = below.get(k);
                boolean bridged = part.alwaysClosed().stream()
                        .anyMatch(closed -> List.of(closed.from(), closed.to()).containsAll(List.of(one, other)));
                if (bridged || (joined(one, other) && above.stream().noneMatch(fed -> joined(one, fed)))) {
                    sketch.line(Paint.THICK, x[i], y, x[k], y);
                }
            }
        }
    }
}
