package loomwright.operation;

import loomwright.message.MessageCode;

/** What is said of a meter and its leads. */
public enum MeterText implements MessageCode {
    VOLTS,
    OHMS,
    BARE_METAL
}
