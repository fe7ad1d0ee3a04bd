package loomwright.expression;

import loomwright.message.MessageCode;

/** What a step of a reduction does, for a person to follow. */
enum ReductionText implements MessageCode {
    RESISTANCE,
    SERIES,
    PARALLEL,
    DEAD_END,
    BOTH_ENDS_AT_ONE_NODE,
    STAR_DELTA,
    DELTA_SIDE,
    SOLVED
}
