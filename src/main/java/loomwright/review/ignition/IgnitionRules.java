package loomwright.review.ignition;

import loomwright.answer.Basis;

/** How parts of a battery and coil ignition are told apart, and what its findings rest on. Common practice, no source. */
final class IgnitionRules {
    /** A ballast has 0.9 to 2 ohm; what has less than this is none. */
    static final double LEAST_BALLAST_OHM = 0.3;
    /** A coil that draws more needs a module with a limit, which lies at 5 to 8 A. */
    static final double MODULE_A = 8;
    /** A current below this through the coil is no ignition current but what something else lets through. */
    static final double IGNITION_A = 0.1;

    static final Basis COIL = Basis.commonPractice("6 to 8 V at a ballasted coil with the key on, contacts closed");
    static final Basis CRANKING = Basis.commonPractice("about 10 V at the battery while cranking");
    static final Basis COILS =
            Basis.commonPractice("coil for use with a ballast 1.2 to 1.8 ohm, for direct feed 2.8 to 3.6 ohm at 12 V");
    static final Basis MODULES =
            Basis.commonPractice("a coil of 0.4 to 1 ohm always with a module that limits the current to 5 to 8 A");

    private IgnitionRules() {}
}
