package loomwright.answer;

/** How serious a finding is, worst first. */
public enum Severity {
    /** Can hurt somebody, start a fire or start the engine unasked. */
    DANGER,
    /** Does not work as it should, or will wear something out. */
    WARNING,
    /** Worth knowing. */
    NOTE
}
