package loomwright.comparison;

import loomwright.message.MessageCode;

/** How two plans are compared. */
enum ComparisonWorking implements MessageCode {
    MATCHING,
    READINGS,
    FINDINGS,
    DEAD_ENDS,
    NO_DIFFERENCE,
    LEFT_BEHIND,
    APPEARS,
    DISAPPEARS
}
