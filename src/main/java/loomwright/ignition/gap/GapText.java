package loomwright.ignition.gap;

import loomwright.message.MessageCode;

/** How the gas in a gap and the voltage across it follow from what was given. */
public enum GapText implements MessageCode {
    CHARGE,
    GAS,
    REQUIRED_BY_FORMULA,
    REQUIRED_MIDDLE,
    SECOND_PLUG,
    PASCHEN_NUMBERS,
    LINEAR_NUMBERS,
    UNIFORM_FIELD_NUMBERS,
    ENGINE_CORRELATION_NUMBERS
}
