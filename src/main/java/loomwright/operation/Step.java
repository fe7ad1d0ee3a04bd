package loomwright.operation;

import loomwright.circuit.Condition;
import loomwright.message.MessageCode;

/**
 * One stretch of time in the life of the circuit. They are solved in this order, each beginning in the state that the
 * one before left, so that a relay which a backfeed could not pull in but holds is found.
 */
public enum Step implements MessageCode {
    OFF(Condition.OFF, false, false),
    ACCESSORY(Condition.ACCESSORY, false, false),
    RUN(Condition.RUN, false, false),
    CRANK(Condition.CRANK, true, false),
    RUNNING(Condition.RUNNING, true, true),
    /** The moment after the key is turned off: the engine still turns and the alternator still generates. */
    OFF_ENGINE_TURNING(Condition.OFF, true, true),
    /** Key off and the engine stopped again. */
    OFF_AGAIN(Condition.OFF, false, false);

    private final Condition condition;
    private final boolean engineTurning;
    private final boolean charging;

    Step(Condition condition, boolean engineTurning, boolean charging) {
        this.condition = condition;
        this.engineTurning = engineTurning;
        this.charging = charging;
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

    /** In words, for a sentence. */
    public String description() {
        return text();
    }
}
