package loomwright.answer;

import loomwright.message.MessageCode;

/** How serious a finding is, worst first. */
public enum Severity implements MessageCode {
    /** Can hurt somebody, start a fire or start the engine unintentionally. */
    DANGER,
    /** Does not work as it should, or will wear something out. */
    WARNING,
    /** Worth knowing. */
    NOTE
}
