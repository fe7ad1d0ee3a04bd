package loomwright.sizing;

import loomwright.message.MessageCode;

/** What is said about a circuit that was sized as a whole. */
enum CircuitMessage implements MessageCode {
    LOAD_DRAWS,
    LOAD_SURGES,
    WIRE_CHOSEN,
    FUSE_CHOSEN,
    BUDGET_SPLIT,
    NO_WIRE_WILL_DO,
    SHORTEN_OR_DIVIDE
}
