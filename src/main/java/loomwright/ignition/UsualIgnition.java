package loomwright.ignition;

/** What a battery and coil ignition of 12 V usually shows; other systems in proportion. Common practice, no source. */
public final class UsualIgnition {
    /** At a ballasted coil with the key on and contacts closed, at least. */
    public static final double COIL_LOW_V = 6;

    /** At a ballasted coil with the key on and contacts closed, at most. */
    public static final double COIL_HIGH_V = 8;

    /** What contact points of a plain system carry: 4 to 5 A (US Army TM 9-8000, chapter 15; read). */
    public static final double CONTACTS_A = 5;

    private UsualIgnition() {}
}
