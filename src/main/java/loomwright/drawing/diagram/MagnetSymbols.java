package loomwright.drawing.diagram;

import java.util.List;
import loomwright.circuit.Relay;
import loomwright.circuit.Solenoid;
import loomwright.drawing.diagram.Shape.Paint;

/** Windings that move contacts. */
final class MagnetSymbols {
    private static final double LEFT = 20;
    private static final double HEIGHT = 52;
    private static final double PIVOT_Y = 12;
    private static final double TIP_Y = 36;

    private MagnetSymbols() {}

    private static Sketch winding(Sketch sketch, boolean pulledIn) {
        return sketch.line(LEFT, 0, LEFT, HEIGHT).rect(pulledIn ? Paint.LIT : Paint.BODY, LEFT - 15, 16, 30, 18);
    }

    static Body relay(Relay relay, Setting setting) {
        boolean pulledIn = setting.inState("pulled-in");
        String above = setting.upper(Relay.COIL_FEED, Relay.COIL_RETURN);
        String below = above.equals(Relay.COIL_FEED) ? Relay.COIL_RETURN : Relay.COIL_FEED;
        double rest = LEFT + Math.max(setting.pitch(below), 44);
        double pivot = Math.max(LEFT + setting.pitch(above), rest + 13);
        double make = Math.max(pivot + 13, rest + setting.pitch(Relay.BREAK));
        double right = Math.max(make + 22, pivot + 40);
        double tip = pulledIn ? pivot + 13 : pivot - 13;
        Sketch sketch = new Sketch()
                .pin(above, Side.TOP, LEFT)
                .pin(Relay.COMMON, Side.TOP, pivot)
                .pin(below, Side.BOTTOM, LEFT)
                .pin(Relay.BREAK, Side.BOTTOM, rest)
                .pin(Relay.MAKE, Side.BOTTOM, make)
                .line(pivot, 0, pivot, PIVOT_Y)
                .line(rest, HEIGHT, rest, HEIGHT - 8, pivot - 13, HEIGHT - 8, pivot - 13, TIP_Y)
                .line(make, HEIGHT, make, HEIGHT - 8, pivot + 13, HEIGHT - 8, pivot + 13, TIP_Y)
                .circle(Paint.BODY, pivot - 13, TIP_Y, 2.2)
                .circle(Paint.BODY, pivot + 13, TIP_Y, 2.2)
                .circle(Paint.SOLID, pivot, PIVOT_Y, 1.8)
                .line(Paint.THICK, pivot, PIVOT_Y, tip, TIP_Y)
                .line(Paint.LINKAGE, LEFT + 15, 25, (pivot + tip) / 2, 25);
        return winding(sketch, pulledIn).body(right, HEIGHT);
    }

    /** Two make contacts from 30: to the motor and to the bypass. */
    static Body solenoid(Solenoid solenoid, Setting setting) {
        boolean pulledIn = setting.inState("pulled-in");
        List<String> made = setting.sorted(List.of(Solenoid.MOTOR, Solenoid.BYPASS));
        double start = Math.max(LEFT + Math.max(setting.pitch(Solenoid.CONTROL), setting.pitch(Solenoid.RETURN)), 60);
        double[] x = Symbols.columns(start, made, setting);
        Sketch sketch = new Sketch()
                .pin(Solenoid.CONTROL, Side.TOP, LEFT)
                .pin(Solenoid.SUPPLY, Side.TOP, x[0])
                .pin(Solenoid.RETURN, Side.BOTTOM, LEFT)
                .line(x[0], 0, x[0], PIVOT_Y)
                .line(x[0], PIVOT_Y, x[1], PIVOT_Y)
                .line(Paint.LINKAGE, LEFT + 15, 25, x[1] - 4, 25);
        for (int i = 0; i < 2; i++) {
            sketch.pin(made.get(i), Side.BOTTOM, x[i])
                    .line(x[i], TIP_Y, x[i], HEIGHT)
                    .contact(x[i], PIVOT_Y, TIP_Y, pulledIn);
        }
        winding(sketch, pulledIn);
        if (solenoid.pullInResistanceOhm() != null) {
            // The second winding, on the same core.
            sketch.line(LEFT - 15, 25, LEFT + 15, 25);
        }
        return sketch.body(x[1] + 24, HEIGHT);
    }
}
