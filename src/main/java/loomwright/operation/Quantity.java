package loomwright.operation;

/** What a meter measures. */
public enum Quantity {
    /** Direct volts, the circuit at work. */
    VOLTS,
    /** Ohms, the battery disconnected. */
    OHMS
}
