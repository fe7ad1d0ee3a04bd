package loomwright.circuit;

import com.fasterxml.jackson.annotation.JsonProperty;

/** Operating condition of the vehicle. */
public enum Condition {
    /** Key off. */
    @JsonProperty("off")
    OFF,
    /** Key at accessory. */
    @JsonProperty("accessory")
    ACCESSORY,
    /** Key on, engine stopped. */
    @JsonProperty("run")
    RUN,
    /** Starter turning the engine. */
    @JsonProperty("crank")
    CRANK,
    /** Engine running and charging. */
    @JsonProperty("running")
    RUNNING;

    /** Whether the engine turns. */
    public boolean engineTurns() {
        return this == CRANK || this == RUNNING;
    }
}
