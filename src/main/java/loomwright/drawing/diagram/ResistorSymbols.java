package loomwright.drawing.diagram;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import loomwright.circuit.Ballast;
import loomwright.circuit.FixedResistor;
import loomwright.drawing.diagram.Shape.Paint;

/** Resistors: boxes, one for each element. */
final class ResistorSymbols {
    private static final double ELEMENT_PX = 26;
    private static final double GAP_PX = 12;

    private ResistorSymbols() {}

    static Body resistor(FixedResistor resistor, Setting setting) {
        double middle = TwoEndSymbols.HEIGHT / 2;
        return TwoEndSymbols.ends("a", "b", setting)
                .line(TwoEndSymbols.AXIS, 0, TwoEndSymbols.AXIS, TwoEndSymbols.HEIGHT)
                .rect(Paint.BODY, TwoEndSymbols.AXIS - 8, middle - 16, 16, 32)
                .body(TwoEndSymbols.WIDTH, TwoEndSymbols.HEIGHT);
    }

    /** Elements one above the other; the taps come out on the left. */
    static Body ballast(Ballast ballast, Setting setting) {
        List<String> downwards = new ArrayList<>(ballast.terminals());
        if (setting.upper("a", "b").equals("b")) {
            Collections.reverse(downwards);
        }
        List<String> taps = setting.sorted(downwards.subList(1, downwards.size() - 1));
        double[] column = Symbols.columns(12, taps, setting);
        double axis = taps.isEmpty() ? TwoEndSymbols.AXIS : column[taps.size()] + 10;
        double height = GAP_PX + ballast.elementsOhm().size() * (ELEMENT_PX + GAP_PX);
        Sketch sketch = new Sketch()
                .pin(downwards.get(0), Side.TOP, axis)
                .pin(downwards.get(downwards.size() - 1), Side.BOTTOM, axis)
                .line(axis, 0, axis, height);
        for (int i = 0; i < ballast.elementsOhm().size(); i++) {
            sketch.rect(Paint.BODY, axis - 8, GAP_PX + i * (ELEMENT_PX + GAP_PX), 16, ELEMENT_PX);
        }
        for (int i = 0; i < taps.size(); i++) {
            String tap = taps.get(i);
            double y = downwards.indexOf(tap) * (ELEMENT_PX + GAP_PX) + GAP_PX / 2;
            Side side = setting.side(tap);
            sketch.pin(tap, side, column[i])
                    .line(column[i], side == Side.TOP ? 0 : height, column[i], y, axis, y)
                    .circle(Paint.SOLID, axis, y, 2.5);
        }
        return sketch.body(axis + TwoEndSymbols.WIDTH - TwoEndSymbols.AXIS, height);
    }
}
