package loomwright.sizing;

import loomwright.message.MessageCode;

/** What is wrong with a run, a wire or a fuse that is asked about alone. */
enum SizingFinding implements MessageCode {
    CURRENT_IMPOSSIBLE,
    VOLTAGE_DROP,
    STARTER_CABLES_THIN,
    WIRE_OVERLOADED,
    FUSE_NEAR_LIMIT,
    FUSE_OVERLOADED,
    FUSE_TOO_LARGE,
    NO_SUCH_FUSE,
    FUSE_SLOW_IN_SHORT,
    NO_SUCH_SIZE
}
