package loomwright.drawing.diagram;

import loomwright.circuit.Ammeter;
import loomwright.circuit.Capacitor;
import loomwright.circuit.Diode;
import loomwright.circuit.FilamentLamp;
import loomwright.circuit.Fuse;
import loomwright.circuit.FusibleLink;
import loomwright.circuit.LedLamp;
import loomwright.circuit.Load;
import loomwright.circuit.Motor;
import loomwright.drawing.diagram.Shape.Paint;

/** Parts with one end above and one below. */
final class TwoEndSymbols {
    /** The axis of a part with two ends. */
    static final double AXIS = 20;

    static final double WIDTH = 40;
    static final double HEIGHT = 48;
    private static final double MIDDLE = HEIGHT / 2;

    private TwoEndSymbols() {}

    /** A sketch with the two ends; whichever is nearer the supply is above. */
    static Sketch ends(String one, String other, Setting setting) {
        String upper = setting.upper(one, other);
        return new Sketch().pin(upper, Side.TOP, AXIS).pin(upper.equals(one) ? other : one, Side.BOTTOM, AXIS);
    }

    private static Sketch stubs(Sketch sketch, double half) {
        return sketch.line(AXIS, 0, AXIS, MIDDLE - half).line(AXIS, MIDDLE + half, AXIS, HEIGHT);
    }

    static Body motor(Motor motor, Setting setting) {
        return stubs(ends(Motor.FEED, Motor.RETURN, setting), 16)
                .circle(setting.body(), AXIS, MIDDLE, 16)
                .glyph("M", AXIS, MIDDLE + 5.5, 15)
                .body(WIDTH, HEIGHT);
    }

    static Body lamp(FilamentLamp lamp, Setting setting) {
        double d = 14 * Math.sqrt(0.5);
        return stubs(ends("a", "b", setting), 14)
                .circle(setting.body(), AXIS, MIDDLE, 14)
                .line(AXIS - d, MIDDLE - d, AXIS + d, MIDDLE + d)
                .line(AXIS - d, MIDDLE + d, AXIS + d, MIDDLE - d)
                .body(WIDTH, HEIGHT);
    }

    static Body ammeter(Ammeter ammeter, Setting setting) {
        return stubs(ends("a", "b", setting), 14)
                .circle(Paint.BODY, AXIS, MIDDLE, 14)
                .glyph("A", AXIS, MIDDLE + 5.5, 15)
                .body(WIDTH, HEIGHT);
    }

    /** A diode with two arrows that lead away from it. */
    static Body led(LedLamp led, Setting setting) {
        boolean plusAbove = setting.upper(led.plus(), led.minus()).equals(led.plus());
        double tip = plusAbove ? MIDDLE + 9 : MIDDLE - 9;
        double base = plusAbove ? MIDDLE - 9 : MIDDLE + 9;
        return ends(led.plus(), led.minus(), setting)
                .line(AXIS, 0, AXIS, HEIGHT)
                .path(setting.body(), "M" + (AXIS - 11) + " " + base + "h22L" + AXIS + " " + tip + "z")
                .line(Paint.THICK, AXIS - 11, tip, AXIS + 11, tip)
                .line(AXIS + 12, MIDDLE - 4, AXIS + 19, MIDDLE - 11)
                .line(AXIS + 12, MIDDLE + 4, AXIS + 19, MIDDLE - 3)
                .line(AXIS + 15, MIDDLE - 11, AXIS + 19, MIDDLE - 11, AXIS + 19, MIDDLE - 7)
                .line(AXIS + 15, MIDDLE - 3, AXIS + 19, MIDDLE - 3, AXIS + 19, MIDDLE + 1)
                .body(WIDTH, HEIGHT);
    }

    static Body load(Load load, Setting setting) {
        return stubs(ends("a", "b", setting), 15)
                .rect(setting.body(), AXIS - 14, MIDDLE - 15, 28, 30)
                .body(WIDTH, HEIGHT);
    }

    static Body capacitor(Capacitor capacitor, Setting setting) {
        return stubs(ends("a", "b", setting), 3.5)
                .line(Paint.THICK, AXIS - 13, MIDDLE - 3.5, AXIS + 13, MIDDLE - 3.5)
                .line(Paint.THICK, AXIS - 13, MIDDLE + 3.5, AXIS + 13, MIDDLE + 3.5)
                .body(WIDTH, HEIGHT);
    }

    static Body diode(Diode diode, Setting setting) {
        boolean anodeAbove = setting.upper(Diode.ANODE, Diode.CATHODE).equals(Diode.ANODE);
        double tip = anodeAbove ? MIDDLE + 9 : MIDDLE - 9;
        double base = anodeAbove ? MIDDLE - 9 : MIDDLE + 9;
        Sketch sketch = ends(Diode.ANODE, Diode.CATHODE, setting).line(AXIS, 0, AXIS, HEIGHT);
        String triangle = "M" + (AXIS - 11) + " " + base + "h22L" + AXIS + " " + tip + "z";
        return sketch.path(setting.inState("conducting") ? Paint.LIT : Paint.BODY, triangle)
                .line(Paint.THICK, AXIS - 11, tip, AXIS + 11, tip)
                .body(WIDTH, HEIGHT);
    }

    static Body fuse(Fuse fuse, Setting setting) {
        return ends("a", "b", setting)
                .rect(Paint.BODY, AXIS - 7, MIDDLE - 16, 14, 32)
                .line(AXIS, 0, AXIS, HEIGHT)
                .body(WIDTH, HEIGHT);
    }

    /** A length of thin wire: a wave between two crimps. */
    static Body link(FusibleLink link, Setting setting) {
        return stubs(ends("a", "b", setting), 17)
                .circle(Paint.SOLID, AXIS, MIDDLE - 17, 2.5)
                .circle(Paint.SOLID, AXIS, MIDDLE + 17, 2.5)
                .path(Paint.THICK, "M" + AXIS + " " + (MIDDLE - 17) + "c-15 6 -15 11 0 17s15 11 0 17")
                .body(WIDTH, HEIGHT);
    }
}
