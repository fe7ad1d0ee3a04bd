package loomwright.conductor;

/** How warm a current makes a wire, and how fast. */
public final class WireHeating {
    private WireHeating() {}

    /**
     * Time until a conductor that loses heat reaches a limit, by its first-order heat balance.
     *
     * <p>t = tau ln((Tend - T0) / (Tend - Tlimit)).
     *
     * @return seconds; 0 if it starts at the limit or above; infinity if it never gets so warm
     */
    public static double timeToLimitS(double startC, double limitC, double endC, double timeConstantS) {
        if (startC >= limitC) {
            return 0;
        }
        return endC <= limitC ? Double.POSITIVE_INFINITY : timeConstantS * Math.log((endC - startC) / (endC - limitC));
    }
}
