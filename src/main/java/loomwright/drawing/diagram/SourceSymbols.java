package loomwright.drawing.diagram;

import java.util.List;
import loomwright.circuit.Alternator;
import loomwright.circuit.Battery;
import loomwright.circuit.ControlBox;
import loomwright.circuit.Dynamo;
import loomwright.circuit.Stabiliser;
import loomwright.drawing.diagram.Shape.Paint;

/** What feeds the circuit. */
final class SourceSymbols {
    private SourceSymbols() {}

    /** Two cells lying between the poles, which both come out below. */
    static Body battery(Battery battery, Setting setting) {
        List<String> poles = setting.sorted(List.of(Battery.PLUS, Battery.MINUS));
        double left = 16;
        double right = left + Math.max(setting.pitch(poles.get(0)), 70);
        double way = poles.get(0).equals(Battery.PLUS) ? 1 : -1;
        double middle = (left + right) / 2;
        double y = 22;
        double height = 44;
        double from = middle - way * 11;
        Sketch sketch = new Sketch()
                .pin(poles.get(0), Side.BOTTOM, left)
                .pin(poles.get(1), Side.BOTTOM, right)
                .line(left, height, left, y, middle - 11, y)
                .line(right, height, right, y, middle + 11, y);
        for (int cell = 0; cell < 2; cell++) {
            double x = from + way * cell * 15;
            sketch.line(x, y - 15, x, y + 15).line(Paint.THICK, x + way * 7, y - 8, x + way * 7, y + 8);
        }
        double sign = from - way * 12;
        sketch.line(sign - 4, y - 11, sign + 4, y - 11).line(sign, y - 15, sign, y - 7);
        return sketch.body(right + 24, height);
    }

    static Body dynamo(Dynamo dynamo, Setting setting) {
        List<String> above = setting.sorted(List.of(Dynamo.ARMATURE, Dynamo.FIELD));
        double[] x = Symbols.columns(22, above, setting);
        double right = Math.max(x[1] + 22, 84);
        return new Sketch()
                .pin(above.get(0), Side.TOP, x[0])
                .pin(above.get(1), Side.TOP, x[1])
                .pin(Dynamo.EARTH, Side.BOTTOM, x[0])
                .line(x[0], 0, x[0], 8)
                .line(x[1], 0, x[1], 8)
                .line(x[0], 52, x[0], 60)
                .rect(Paint.BODY, 2, 8, right - 2, 44)
                .circle(setting.inState("charging") ? Paint.LIT : Paint.BODY, right / 2, 30, 15)
                .glyph("G", right / 2, 34, 14)
                .line(right / 2 - 5, 38, right / 2 + 5, 38)
                .body(right, 60);
    }

    /** The contact of the cut-out beside its coil. */
    static Body controlBox(ControlBox box, Setting setting) {
        List<String> above =
                setting.sorted(List.of(ControlBox.BATTERY, ControlBox.LOADS, ControlBox.ARMATURE, ControlBox.FIELD));
        double[] x = Symbols.columns(18, above, setting);
        double right = Math.max(x[3] + 18, 100);
        Sketch sketch = new Sketch().pin(ControlBox.EARTH, Side.BOTTOM, x[0]).line(x[0], 52, x[0], 60);
        for (int i = 0; i < above.size(); i++) {
            sketch.pin(above.get(i), Side.TOP, x[i]).line(x[i], 0, x[i], 8);
        }
        double middle = right / 2;
        boolean closed = setting.inState("closed");
        return sketch.rect(Paint.BODY, 2, 8, right - 2, 44)
                .rect(closed ? Paint.LIT : Paint.BODY, middle - 24, 22, 12, 20)
                .line(middle - 24, 42, middle - 12, 22)
                .line(middle - 2, 32, middle + 8, 32)
                .line(middle + 8, 32, middle + 24, closed ? 32 : 24)
                .line(middle + 24, 32, middle + 34, 32)
                .body(right, 60);
    }

    /** A box with the sign of its output. */
    static Body stabiliser(Stabiliser stabiliser, Setting setting) {
        List<String> above = setting.sorted(List.of(Stabiliser.FEED, Stabiliser.OUTPUT));
        double[] x = Symbols.columns(18, above, setting);
        double right = Math.max(x[1] + 18, 70);
        return new Sketch()
                .pin(above.get(0), Side.TOP, x[0])
                .pin(above.get(1), Side.TOP, x[1])
                .pin(Stabiliser.EARTH, Side.BOTTOM, x[0])
                .line(x[0], 0, x[0], 8)
                .line(x[1], 0, x[1], 8)
                .line(x[0], 44, x[0], 52)
                .rect(setting.inState("regulating") ? Paint.LIT : Paint.BODY, 2, 8, right - 2, 36)
                .glyph("U", right / 2, 31, 14)
                .line(right / 2 - 6, 35, right / 2 + 6, 35)
                .body(right, 52);
    }

    static Body alternator(Alternator alternator, Setting setting) {
        boolean earthedOutput = !setting.fromAbove(Alternator.OUTPUT) && setting.fromAbove(Alternator.RETURN);
        String main = earthedOutput ? Alternator.RETURN : Alternator.OUTPUT;
        String other = earthedOutput ? Alternator.OUTPUT : Alternator.RETURN;
        List<String> above = setting.sorted(List.of(main, Alternator.WARNING_LAMP));
        double[] x = Symbols.columns(18, above, setting);
        double right = Math.max(x[1] + 18, 84);
        double centre = right / 2 - 10;
        Sketch sketch = new Sketch()
                .pin(above.get(0), Side.TOP, x[0])
                .pin(above.get(1), Side.TOP, x[1])
                .pin(other, Side.BOTTOM, x[0])
                .line(x[0], 0, x[0], 8)
                .line(x[1], 0, x[1], 8)
                .line(x[0], 52, x[0], 60)
                .rect(Paint.BODY, 2, 8, right - 2, 44)
                .circle(setting.inState("charging") ? Paint.LIT : Paint.BODY, centre, 30, 15)
                .glyph("G", centre, 35, 14);
        double d = centre + 30;
        return sketch.line(centre + 15, 30, d + 14, 30)
                .path(Paint.BODY, "M" + (d - 6) + " 24v12l11 -6z")
                .line(d + 5, 24, d + 5, 36)
                .body(right, 60);
    }
}
