package loomwright.drawing.diagram;

import java.util.ArrayList;
import java.util.List;
import loomwright.circuit.ConnectorHalf;
import loomwright.circuit.EarthPoint;
import loomwright.circuit.Joint;
import loomwright.drawing.diagram.Shape.Paint;

/** Where wires meet. */
final class JunctionSymbols {
    private static final double LEFT = 16;

    private JunctionSymbols() {}

    /** A bar that all its terminals sit on. */
    static Body joint(Joint joint, Setting setting) {
        List<String> above = new ArrayList<>();
        List<String> below = new ArrayList<>();
        for (String terminal : joint.terminals()) {
            (setting.side(terminal) == Side.TOP ? above : below).add(terminal);
        }
        Sketch sketch = new Sketch();
        double end = LEFT;
        double height = 18;
        for (List<String> side : List.of(setting.sorted(above), setting.sorted(below))) {
            boolean top = sideIsTop(side, above);
            double[] x = Symbols.columns(LEFT, side, setting);
            for (int i = 0; i < side.size(); i++) {
                double last = x[i] + Math.max(0, setting.wires(side.get(i)).size() - 1) * Setting.LEAD_PX;
                end = Math.max(end, last);
                sketch.pin(side.get(i), top ? Side.TOP : Side.BOTTOM, x[i])
                        .line(x[i], top ? 0 : height, x[i], height / 2)
                        .circle(Paint.SOLID, x[i], height / 2, 3.5);
            }
        }
        return sketch.line(Paint.THICK, LEFT, height / 2, end, height / 2).body(Math.max(end + 24, 40), height);
    }

    private static boolean sideIsTop(List<String> side, List<String> above) {
        return !side.isEmpty() && above.contains(side.get(0));
    }

    static Body earth(EarthPoint earth, Setting setting) {
        double x = LEFT;
        return new Sketch()
                .pin(EarthPoint.TERMINAL, Side.TOP, x)
                .line(x, 0, x, 4)
                .line(Paint.THICK, x - 11, 4, x + 11, 4)
                .line(Paint.THICK, x - 7, 8.5, x + 7, 8.5)
                .line(Paint.THICK, x - 3, 13, x + 3, 13)
                .body(34, 16);
    }

    /** A half that is pushed into nothing. */
    static Body half(ConnectorHalf half, Setting setting) {
        Sketch sketch = new Sketch();
        double height = 26;
        List<String> above = new ArrayList<>();
        List<String> below = new ArrayList<>();
        for (String way : half.terminals()) {
            (setting.side(way) == Side.TOP ? above : below).add(way);
        }
        double[] top = Symbols.columns(LEFT, setting.sorted(above), setting);
        double[] bottom = Symbols.columns(LEFT, setting.sorted(below), setting);
        double right = Math.max(last(top), last(bottom)) + 14;
        sketch.rect(Paint.CASE, 2, 3, right - 2, height - 6);
        for (int i = 0; i < above.size(); i++) {
            sketch.pin(setting.sorted(above).get(i), Side.TOP, top[i]);
            contact(sketch, half, top[i], 0, 1);
        }
        for (int i = 0; i < below.size(); i++) {
            sketch.pin(setting.sorted(below).get(i), Side.BOTTOM, bottom[i]);
            contact(sketch, half, bottom[i], height, -1);
        }
        return sketch.body(right, height);
    }

    /** Two halves together: a pin in a socket for each way. */
    static Body mated(ConnectorHalf upper, Setting above, ConnectorHalf lower, Setting below) {
        List<String> ways = above.sorted(upper.terminals());
        Sketch sketch = new Sketch();
        double height = 34;
        double x = LEFT;
        double last = LEFT;
        for (String way : ways) {
            last = x;
            sketch.pin(upper.terminal(way).toString(), Side.TOP, x)
                    .pin(lower.terminal(way).toString(), Side.BOTTOM, x);
            contact(sketch, upper, x, 0, 1);
            boolean male = upper.gender() == ConnectorHalf.Gender.MALE;
            sketch.line(x, height, x, male ? 22 : 12);
            if (male) {
                socket(sketch, x, 22, 1);
            } else {
                pin(sketch, x, 12, 22);
            }
            x += Math.max(above.pitch(way), below.pitch(way));
        }
        double right = last + 14;
        return sketch.rect(Paint.CASE, 2, 3, right - 2, height - 6).body(right, height);
    }

    /** The last of some columns. */
    private static double last(double[] columns) {
        return columns[Math.max(0, columns.length - 2)];
    }

    private static void contact(Sketch sketch, ConnectorHalf half, double x, double edge, int way) {
        if (half.gender() == ConnectorHalf.Gender.MALE) {
            sketch.line(x, edge, x, edge + way * 12);
            pin(sketch, x, edge + way * 10, edge + way * 20);
        } else {
            sketch.line(x, edge, x, edge + way * 12);
            socket(sketch, x, edge + way * 12, -way);
        }
    }

    private static void pin(Sketch sketch, double x, double from, double to) {
        sketch.rect(Paint.SOLID, x - 2, Math.min(from, to), 4, Math.abs(to - from));
    }

    /** An arc open towards the other half. */
    private static void socket(Sketch sketch, double x, double y, int bulge) {
        String sweep = bulge < 0 ? "1" : "0";
        double open = y - bulge * 6;
        sketch.path(Paint.LINE, "M" + (x - 6) + " " + open + "A6 6 0 0 " + sweep + " " + (x + 6) + " " + open);
    }
}
