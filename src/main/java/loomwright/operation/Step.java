package loomwright.operation;

import java.util.Arrays;
import java.util.Map;
import java.util.Optional;
import loomwright.circuit.Condition;
import loomwright.circuit.Plan;
import loomwright.message.Argument.Instant;
import loomwright.message.Argument.SwitchPosition;
import loomwright.message.MessageCode;

/**
 * One stretch of time in the life of the circuit. They are solved in this order, each beginning in the state that the
 * one before left, so that a relay which a backfeed could not pull in but holds is found.
 */
public enum Step implements MessageCode {
    OFF(0, Condition.OFF, false, false),
    ACCESSORY(1, Condition.ACCESSORY, false, false),
    RUN(2, Condition.RUN, false, false),
    CRANK(3, Condition.CRANK, true, false),
    RUNNING(4, Condition.RUNNING, true, true),
    /** The moment after the key is turned off: the engine still turns and the alternator still generates. */
    OFF_ENGINE_TURNING(5, Condition.OFF, true, true),
    /** Key off and the engine stopped again. */
    OFF_AGAIN(6, Condition.OFF, false, false);

    private final int place;
    private final Condition condition;
    private final boolean engineTurning;
    private final boolean charging;

    Step(int place, Condition condition, boolean engineTurning, boolean charging) {
        this.place = place;
        this.condition = condition;
        this.engineTurning = engineTurning;
        this.charging = charging;
    }

    /** The step that is written so in the contract; empty if there is none. */
    public static Optional<Step> of(String code) {
        return Arrays.stream(values()).filter(step -> step.code().equals(code)).findFirst();
    }

    /** Its place in the order in which the steps are solved, from 0. */
    public int place() {
        return place;
    }

    /** Where the key stands. */
    public Condition condition() {
        return condition;
    }

    public boolean engineTurning() {
        return engineTurning;
    }

    /** Whether the engine turns fast enough for the alternator. */
    public boolean charging() {
        return charging;
    }

    /**
     * Whether the condition is on its way to another: such a step shows what lingers, and what a load does in it is no
     * measure of whether it works.
     */
    public boolean passing() {
        return this == OFF_ENGINE_TURNING || this == OFF_AGAIN;
    }

    /**
     * This step in a plan.
     *
     * @param switches the position of each switch that does not stand as in the plan, by its id
     */
    public Instant in(Plan plan, Map<String, String> switches) {
        return new Instant(
                this,
                switches.entrySet().stream()
                        .map(e -> new SwitchPosition(plan.thing(e.getKey()), e.getValue()))
                        .toList());
    }

    /** In words, for a sentence. */
    public String description() {
        return text();
    }
}
