package loomwright.operation;

import loomwright.message.MessageCode;

/** How the readings of a plan came about. */
enum SolutionWorking implements MessageCode {
    WIRES,
    ORDER,
    STEP,
    STEP_WITHOUT_SOLUTION,
    /** What a battery shows between its terminals, as part of {@link #STEP}. */
    BATTERY
}
