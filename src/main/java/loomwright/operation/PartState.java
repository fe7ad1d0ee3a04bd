package loomwright.operation;

import java.util.Arrays;
import java.util.Optional;
import loomwright.message.MessageCode;

/** What a part does that works in one way or another. A switch has positions of its own instead. */
public enum PartState implements MessageCode {
    PULLED_IN,
    RELEASED,
    CLOSED,
    OPEN,
    CONDUCTING,
    BLOCKING,
    REGULATING,
    NOT_REGULATING,
    CHARGING,
    NOT_CHARGING,
    ZERO,
    CHARGE,
    DISCHARGE,
    STALLED,
    RUNNING_DOWN,
    OFF,
    STANDBY,
    NOT_FLASHING,
    FLASHING,
    FAST,
    OVERLOADED;

    /** The state that is written so in the contract; empty if it is a position of a switch. */
    public static Optional<PartState> of(String code) {
        return Arrays.stream(values())
                .filter(state -> state.code().equals(code))
                .findFirst();
    }
}
