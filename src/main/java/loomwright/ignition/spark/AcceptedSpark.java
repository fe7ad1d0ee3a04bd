package loomwright.ignition.spark;

import loomwright.message.MessageCode;

/** What the conditions of a spark may be. */
enum AcceptedSpark implements MessageCode {
    PRESSURE_AND_TEMPERATURE,
    PRESSURE_OR_COMPRESSION,
    NO_LIMIT,
    FIXED_ANGLE,
    ABOVE_CRANKING,
    SPEED,
    COOL_START,
    DWELL
}
