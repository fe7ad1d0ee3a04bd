package loomwright.comparison;

import loomwright.message.MessageCode;

/** Things of a plan in a few words. */
enum ItemText implements MessageCode {
    PART,
    CONNECTOR,
    WIRE,
    RUN,
    LENGTH,
    RESISTANCE
}
