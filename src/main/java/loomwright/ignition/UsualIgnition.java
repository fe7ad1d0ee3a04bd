package loomwright.ignition;

/** What a battery and coil ignition usually has. Common practice, no source. */
public final class UsualIgnition {
    /** Feed and return of a coil without ballast. */
    public static final double FEED_OHM = 0.05;

    private UsualIgnition() {}
}
