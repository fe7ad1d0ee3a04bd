package loomwright.operation;

import loomwright.message.MessageCode;

/** What counts where no law is known, as a sentence. */
enum ModelAssumptionText implements MessageCode {
    OPENING_TIMES,
    WARMING,
    LOW_BATTERY
}
