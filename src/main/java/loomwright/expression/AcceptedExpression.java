package loomwright.expression;

import loomwright.message.MessageCode;

/** What belongs at a place of an expression of resistors. */
enum AcceptedExpression implements MessageCode {
    RESISTANCE,
    JOIN,
    TWO_STROKES,
    CLOSING,
    NO_CLOSING,
    POINT,
    OHMS,
    EXPONENT,
    DEPTH,
    END_OF_TEXT,
    AT_CHARACTER,
    OHMS_UNDER_VOLTS
}
