package loomwright.circuit;

/** What the battery of a 12 V vehicle shows; others in proportion. Common practice, no source. */
public final class UsualVoltages {
    /** Engine stopped, little or nothing switched on. */
    public static final double AT_REST_V = 12.6;

    /** While cranking. */
    public static final double CRANKING_V = 10;

    /** While charging, as its regulator holds it. */
    public static final double CHARGING_V = 14.2;

    private UsualVoltages() {}
}
