package loomwright.conductor;

import loomwright.message.MessageCode;

/** What is said about the figures of a conductor and of a table. */
public enum ConductorText implements MessageCode {
    AREA,
    RESISTANCE,
    RESISTANCE_LAW,
    STRANDING,
    AS_PRINTED,
    ABOVE_TABLE_AMBIENT,
    IN_BUNDLE,
    IN_ENGINE_SPACE
}
