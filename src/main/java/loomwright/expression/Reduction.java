package loomwright.expression;

import java.util.List;
import loomwright.message.Message;

/**
 * A network of resistors taken together to one.
 *
 * @param totalOhm the resistance between its ends
 * @param steps how, in the order done; none for a single resistor
 * @param shares voltage, current and power of each resistor, in reading order; none if no voltage was given
 */
public record Reduction(double totalOhm, List<Step> steps, List<Share> shares) {
    public Reduction {
        steps = List.copyOf(steps);
        shares = List.copyOf(shares);
    }

    /** What a step does. */
    public enum Rule {
        SERIES,
        PARALLEL,
        STAR_DELTA,
        /** Something that carries no current is left out. */
        LEFT_OUT,
        /** The equations of the whole were solved. */
        SOLVED
    }

    /**
     * One step.
     *
     * @param resultOhm what it comes to; for a star-delta step the first of the three, for one that leaves something
     *     out the resistance left out
     * @param working the step for a person to follow
     */
    public record Step(Rule rule, double resultOhm, Message working) {}

    /**
     * What one resistor has of the whole.
     *
     * @param name R1, R2 … in reading order
     */
    public record Share(String name, double resistanceOhm, double voltageV, double currentA, double powerW) {}
}
