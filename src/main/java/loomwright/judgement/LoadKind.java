package loomwright.judgement;

import loomwright.answer.Basis;

/**
 * When each kind of load counts as working, weak, creeping or dead. What is judged is a share: of the volts the load is
 * made for, or for an LED of its current.
 */
public enum LoadKind {
    /** Volts over test volts, see {@link LampLaw}: from 0.85 it has 58 % of its light; below 0.05 it cannot glow. */
    FILAMENT(
            0.85,
            0.5,
            0.05,
            Basis.verified(
                    "filament lamp: works from 0.85 of its test volts, dim from 0.5, glows from 0.05",
                    "light by volts to the power of 3.4 (handbook for electrical engineers); temperature by volts to the"
                            + " power of 0.42 reaches the Draper point, 798 K, at 0.05 of them")),
    /** Current over rated current, never volts. */
    LED(
            0.5,
            0.1,
            0.005,
            Basis.commonPractice("LED lamp: works from 0.5 of its current, dim from 0.1, seen from 0.005")),
    /** Volts over nominal volts; for a coil that does not state its own. */
    RELAY(
            8.0 / 12,
            1.5 / 12,
            1.5 / 12,
            Basis.verified(
                    "relay: pulls in from 8 V, has let go below 1.5 V, at 12 V (16 and 3 V at 24 V)",
                    "makers' data of relays in the pin layout of ISO 7588, 85 and 255 ohm, 23 C")),
    /** Volts over nominal volts. */
    SOLENOID(
            8.0 / 12,
            3.0 / 12,
            3.0 / 12,
            Basis.verified(
                    "starter solenoid: closes from 8 V, has let go below 3 V, at 12 V",
                    "service manual (8 V); that it holds down to 3 V is common practice")),
    /** Volts over nominal volts: fan, wiper, pump, starter. Between 0.15 and 0.5 it may stand and heat. */
    MOTOR(
            0.8,
            0.5,
            0.15,
            Basis.commonPractice("motor: works from 0.8 of its volts, slow from 0.5, may stand and heat from 0.15")),
    /** Volts over nominal volts. */
    HORN(
            0.85,
            0.6,
            0.4,
            Basis.commonPractice("horn: works from 0.85 of its volts, weak from 0.6, silent below 0.4 (set at 12.4 V:"
                    + " US Army TM 9-2320-285-24-1)")),
    /** Volts over nominal volts: radio, module, and any load of which nothing else is known. */
    ELECTRONIC(
            0.75,
            0.5,
            0.5,
            Basis.fromMemory(
                    "electronic device: works from 0.75 of its volts, unsure from 0.5",
                    "ISO 16750-2, supply voltage codes")),
    /** Volts over nominal volts, of a coil as a load that a backfeed reaches. How well it sparks is judged elsewhere. */
    COIL(
            0.35,
            0.2,
            0.2,
            Basis.commonPractice("ignition coil: can spark from 0.35 of the nominal volts, cannot below 0.2; or from"
                    + " 2.8 A and below 1.6 A where it has few ohms"));

    /** A coil of few ohms never has much voltage behind a module: from this current it can spark in any case. */
    public static final double COIL_SPARKS_A = 2.8;
    /** Below this current no coil sparks. */
    public static final double COIL_DEAD_A = 1.6;

    /** A gauge reads right up to this share of its (stabilised) volts. Common practice, no source. */
    public static final double GAUGE_MOST = 1.15;

    private final double works;
    private final double weak;
    private final double creeps;
    // A record of texts and a word.
    @SuppressWarnings("ImmutableEnumChecker")
    private final Basis basis;

    LoadKind(double works, double weak, double creeps, Basis basis) {
        this.works = works;
        this.weak = weak;
        this.creeps = creeps;
        this.basis = basis;
    }

    /** The share from which it works. */
    public double worksFrom() {
        return works;
    }

    /** The share from which it is dim, slow, unsure or holds; equal to {@link #creepsFrom} where nothing lies between. */
    public double weakFrom() {
        return weak;
    }

    /** The share below which it is dead. */
    public double creepsFrom() {
        return creeps;
    }

    public Basis basis() {
        return basis;
    }

    /**
     * What it does at a share of its volts (LED: of its current).
     *
     * @param share 0 or more
     */
    public Strength at(double share) {
        return at(share, works, creeps);
    }

    /**
     * The same for a load that states its own figures.
     *
     * @param worksFrom the share from which it works
     * @param deadBelow the share below which it is dead, or has let go; at most {@code worksFrom}
     */
    public Strength at(double share, double worksFrom, double deadBelow) {
        if (share >= worksFrom) {
            return Strength.WORKS;
        } else if (share < deadBelow) {
            return Strength.DEAD;
        }
        boolean nothingBetween = weak == creeps;
        return nothingBetween || share >= weak ? Strength.WEAK : Strength.CREEPS;
    }
}
