package loomwright.drawing.diagram;

import java.util.ArrayList;
import java.util.List;
import loomwright.circuit.Alternator;
import loomwright.circuit.Battery;
import loomwright.circuit.ControlBox;
import loomwright.circuit.Dynamo;
import loomwright.circuit.Flasher;
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
        Box box = Box.of(List.of(Dynamo.ARMATURE, Dynamo.FIELD), List.of(Dynamo.EARTH), 84, 44, setting);
        return box.filled(Paint.BODY)
                .circle(setting.inState("charging") ? Paint.LIT : Paint.BODY, box.middle(), 30, 15)
                .glyph("G", box.middle(), 34, 14)
                .line(box.middle() - 5, 38, box.middle() + 5, 38)
                .body(box.widthPx(), 60);
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
        Box box = Box.of(List.of(Stabiliser.FEED, Stabiliser.OUTPUT), List.of(Stabiliser.EARTH), 70, 36, setting);
        return box.filled(setting.inState("regulating") ? Paint.LIT : Paint.BODY)
                .glyph("U", box.middle(), 31, 14)
                .line(box.middle() - 6, 35, box.middle() + 6, 35)
                .body(box.widthPx(), 52);
    }

    /** A box with the pulses that it makes. */
    static Body flasher(Flasher flasher, Setting setting) {
        Box box = Box.of(
                List.of(Flasher.FEED), List.of(Flasher.OUTPUT, Flasher.TELL_TALE, Flasher.EARTH), 90, 36, setting);
        boolean flashes = setting.inState("flashing") || setting.inState("fast") || setting.inState("overloaded");
        return box.filled(flashes ? Paint.LIT : Paint.BODY)
                .path(Paint.LINE, "M" + (box.middle() - 22) + " 32h7v-12h8v12h7v-12h8v12h7v-12h7")
                .body(box.widthPx(), 52);
    }

    /** A box between the leads of its terminals. */
    private record Box(Sketch sketch, double widthPx, double heightPx) {
        private static final double LEAD = 8;

        static Box of(List<String> tops, List<String> bottoms, double least, double heightPx, Setting setting) {
            List<String> above = setting.sorted(tops);
            List<String> below = setting.sorted(bottoms);
            double[] x = Symbols.columns(20, above, setting);
            double[] y = Symbols.columns(20, below, setting);
            double foot = LEAD + heightPx;
            Sketch sketch = new Sketch();
            for (int i = 0; i < above.size(); i++) {
                sketch.pin(above.get(i), Side.TOP, x[i]).line(x[i], 0, x[i], LEAD);
            }
            for (int i = 0; i < below.size(); i++) {
                sketch.pin(below.get(i), Side.BOTTOM, y[i]).line(y[i], foot, y[i], foot + LEAD);
            }
            double right = Math.max(x[above.size() - 1], y[below.size() - 1]) + 20;
            return new Box(sketch, Math.max(right, least), heightPx);
        }

        double middle() {
            return widthPx / 2;
        }

        Sketch filled(Paint paint) {
            return sketch.rect(paint, 2, LEAD, widthPx - 2, heightPx);
        }
    }

    static Body alternator(Alternator alternator, Setting setting) {
        boolean earthedOutput = !setting.fromAbove(Alternator.OUTPUT) && setting.fromAbove(Alternator.RETURN);
        String main = earthedOutput ? Alternator.RETURN : Alternator.OUTPUT;
        String other = earthedOutput ? Alternator.OUTPUT : Alternator.RETURN;
        List<String> pins = new ArrayList<>(List.of(main, Alternator.WARNING_LAMP));
        if (alternator.terminals().contains(Alternator.SENSE)) {
            pins.add(Alternator.SENSE);
        }
        List<String> above = setting.sorted(pins);
        double[] x = Symbols.columns(18, above, setting);
        double right = Math.max(x[above.size() - 1] + 18, 84);
        double centre = right / 2 - 10;
        Sketch sketch = new Sketch().pin(other, Side.BOTTOM, x[0]).line(x[0], 52, x[0], 60);
        for (int i = 0; i < above.size(); i++) {
            sketch.pin(above.get(i), Side.TOP, x[i]).line(x[i], 0, x[i], 8);
        }
        sketch.rect(Paint.BODY, 2, 8, right - 2, 44)
                .circle(setting.inState("charging") ? Paint.LIT : Paint.BODY, centre, 30, 15)
                .glyph("G", centre, 35, 14);
        double d = centre + 30;
        return sketch.line(centre + 15, 30, d + 14, 30)
                .path(Paint.BODY, "M" + (d - 6) + " 24v12l11 -6z")
                .line(d + 5, 24, d + 5, 36)
                .body(right, 60);
    }
}
