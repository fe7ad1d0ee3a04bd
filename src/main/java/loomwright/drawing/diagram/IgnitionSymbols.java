package loomwright.drawing.diagram;

import loomwright.circuit.Coil;
import loomwright.circuit.ContactBreaker;
import loomwright.circuit.IgnitionModule;
import loomwright.drawing.diagram.Shape.Paint;

/** Coil and what switches it. */
final class IgnitionSymbols {
    private static final double AXIS = TwoEndSymbols.AXIS;

    private IgnitionSymbols() {}

    /** Two windings on a core; the second leads to the spark gap. */
    static Body coil(Coil coil, Setting setting) {
        Sketch sketch = TwoEndSymbols.ends(Coil.FEED, Coil.SWITCHED, setting)
                .rect(setting.body(), AXIS - 10, 6, 36, 48)
                .line(AXIS, 0, AXIS, 14)
                .line(AXIS, 46, AXIS, 60)
                .path(Paint.LINE, "M" + AXIS + " 14" + "a4 4 0 0 1 0 8".repeat(4))
                .line(Paint.THICK, AXIS + 8, 13, AXIS + 8, 47)
                .path(Paint.LINE, "M" + (AXIS + 17) + " 14" + "a3.2 3.2 0 0 0 0 6.4".repeat(5))
                .line(AXIS + 17, 46, AXIS, 46)
                .line(AXIS + 17, 14, AXIS + 17, 6)
                .path(Paint.SOLID, "M" + (AXIS + 17) + " 0l-3.5 7h7z");
        return sketch.body(50, 60);
    }

    /** A contact that a cam opens. */
    static Body breaker(ContactBreaker breaker, Setting setting) {
        boolean closed = setting.inState("closed");
        return TwoEndSymbols.ends(ContactBreaker.SWITCHED, ContactBreaker.RETURN, setting)
                .line(AXIS, 0, AXIS, 12)
                .line(AXIS, 36, AXIS, 48)
                .contact(AXIS, 12, 36, closed)
                .line(Paint.LINKAGE, AXIS - 13, 25, AXIS - (closed ? 0 : 5), 25)
                .path(Paint.BODY, "M2 25l6 -5l6 5l-6 5z")
                .body(TwoEndSymbols.WIDTH, TwoEndSymbols.HEIGHT);
    }

    /** A box with an electronic switch in it. */
    static Body module(IgnitionModule module, Setting setting) {
        double supply = 20;
        double switched = supply + setting.pitch(IgnitionModule.SUPPLY);
        double right = switched + 26;
        return new Sketch()
                .pin(IgnitionModule.SUPPLY, Side.TOP, supply)
                .pin(IgnitionModule.SWITCHED, Side.TOP, switched)
                .pin(IgnitionModule.RETURN, Side.BOTTOM, switched)
                .rect(setting.inState("conducting") ? Paint.LIT : Paint.BODY, 4, 8, right - 4, 48)
                .line(supply, 0, supply, 32, switched - 12, 32)
                .line(Paint.THICK, switched - 12, 22, switched - 12, 42)
                .line(switched, 0, switched, 20, switched - 12, 28)
                .line(switched - 12, 36, switched, 44, switched, 64)
                .path(Paint.SOLID, "M" + switched + " 44l-7.5 -1l4 -5.5z")
                .body(right, 64);
    }
}
