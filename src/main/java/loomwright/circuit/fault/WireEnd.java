package loomwright.circuit.fault;

import loomwright.circuit.TerminalRef;
import loomwright.circuit.Wire;

/** One of the two ends of a wire. */
public enum WireEnd {
    FROM,
    TO;

    public TerminalRef of(Wire wire) {
        return this == FROM ? wire.from() : wire.to();
    }
}
