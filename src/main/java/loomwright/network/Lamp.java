package loomwright.network;

import loomwright.answer.InputErrors;

/**
 * A filament lamp: |i| = (W/V)·(|v|/V)^0.55, but its resistance is never less than the cold one, a fraction of the hot
 * one V²/W.
 *
 * <p>Exponent 0.55: standard handbook for electrical engineers, 11th edition, 22-8, as an encyclopaedia quotes it; 0.526 in
 * the SPIE field guide to illumination; 0.48 to 0.49 measured near the rated volts, 0.30 far below them.
 *
 * @param ratedV V, 1e-3 to 1e6 V
 * @param ratedW W, 1e-6 to 1e9 W
 * @param coldFraction cold resistance as a fraction of the hot one, 0.01 to 1
 */
public record Lamp(String id, int from, int to, double ratedV, double ratedW, double coldFraction) implements Element {
    /** Exponent of current against voltage. */
    public static final double EXPONENT = 0.55;

    public Lamp {
        new InputErrors()
                .range("/ratedV", ratedV, 1e-3, MAXIMUM_V)
                .range("/ratedW", ratedW, 1e-6, MAXIMUM_W)
                .range("/coldFraction", coldFraction, 0.01, 1)
                .reject();
    }
}
