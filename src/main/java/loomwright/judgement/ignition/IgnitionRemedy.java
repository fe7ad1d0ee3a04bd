package loomwright.judgement.ignition;

import loomwright.message.MessageCode;

/**
 * What cures a mistake of an ignition's primary circuit.
 *
 * @param kind what to do
 * @param ohm of the ballast or coil to fit; 0 where nothing of the kind is fitted
 * @param cured the circuit with it
 */
public record IgnitionRemedy(Kind kind, double ohm, PrimaryLoop cured) {

    /** The remedies there are. A relay is none of them: it does not lower the current of contacts. */
    public enum Kind implements MessageCode {
        FREE_BYPASS,
        FIT_BALLAST,
        REMOVE_BALLAST,
        FIT_COIL,
        FIT_COIL_AND_BALLAST,
        FIT_LIMITING_MODULE
    }
}
