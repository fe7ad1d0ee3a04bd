package loomwright.review.ignition;

import loomwright.answer.Basis;

/** How parts of a battery and coil ignition are distinguished, and what its findings rest on. Common practice, no source. */
final class IgnitionRules {
    /** A current below this through the coil is no ignition current but what something else lets through. */
    static final double IGNITION_A = 0.1;

    /** A module with less than this is not fed at all: what lacks then is its feed, not volts. */
    static final double FED_V = 0.5;

    static final Basis CRANKING = Basis.commonPractice("about 10 V at the battery while cranking");
    static final Basis MODULES =
            Basis.commonPractice("a coil of 0.4 to 1 ohm always with a module that limits the current to 5 to 8 A");

    private IgnitionRules() {}
}
