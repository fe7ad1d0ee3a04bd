package loomwright.judgement.ignition;

/**
 * What a coil is made for, told by its ohms alone. At 12 V: below 1.15 ohm a high-energy coil, to 2.2 ohm a coil for use
 * with a ballast, above it one for direct feed. At 6 V half of these ohms, at 24 V 3.3 times. Common practice, no source.
 */
public enum CoilKind {
    /** For a module that limits the current. */
    HIGH_ENERGY,
    WITH_BALLAST,
    DIRECT;

    static final double HIGH_ENERGY_MOST_OHM = 1.15;
    static final double BALLAST_COIL_MOST_OHM = 2.2;

    private static final double TABLE_NOMINAL_V = 12;
    /** By this an ohm of a 24 V coil stands for a 12 V one. */
    private static final double SCALE_24V = 1 / 3.3;

    private static final double SCALE_6V = 2;

    /**
     * The kind of a coil.
     *
     * @param primaryOhm at 20 degrees, above 0
     * @param nominalV of the vehicle: 6, 12 or 24
     */
    public static CoilKind ofOhm(double primaryOhm, double nominalV) {
        double ohm = ohmAt12V(primaryOhm, nominalV);
        return ohm < HIGH_ENERGY_MOST_OHM ? HIGH_ENERGY : ohm < BALLAST_COIL_MOST_OHM ? WITH_BALLAST : DIRECT;
    }

    /** Ohms as they would be at 12 V. */
    public static double ohmAt12V(double ohm, double nominalV) {
        return ohm * (nominalV == 6 ? SCALE_6V : nominalV == TABLE_NOMINAL_V ? 1 : SCALE_24V);
    }
}
