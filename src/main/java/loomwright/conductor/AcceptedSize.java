package loomwright.conductor;

import loomwright.message.MessageCode;

/** How the size of a conductor is written. */
enum AcceptedSize implements MessageCode {
    LENGTH,
    AREA_NOT_DIAMETER,
    NUMBER_WITH_UNIT,
    ONE_STANDARD,
    PLAIN_CHARACTERS,
    KNOWN_UNIT,
    GAUGE,
    GAUGE_NUMBER,
    DECIMAL_AREA,
    SAE_SIZE,
    IEC_AREA,
    ISO_AREA,
    AREA,
    GAUGE_OR_AREA
}
