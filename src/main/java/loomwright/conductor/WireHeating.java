package loomwright.conductor;

/** How warm a current makes a wire, and how fast. */
public final class WireHeating {
    private WireHeating() {}

    /**
     * Estimated conductor temperature under a steady current.
     *
     * <p>Up to the ampacity T2 = T1 + (TR - T1) sqrt(I2 / Imax), which errs high; above it T2 = T1 + (TR - T1) (I2 /
     * Imax)^2, since heat made grows with the square of the current. The two meet at I2 = Imax.
     *
     * @param ambientC T1, C
     * @param ratingC TR, temperature rating at which {@code ampacityA} holds, above {@code ambientC}
     * @param currentA I2, not negative
     * @param ampacityA Imax, above 0
     * @return conductor temperature, C
     *     <p>Source: FAA AC 43.13-1B change 1, paragraph 11-66 (the square root from memory). Departure: the square law
     *     above the ampacity, where the circular's formula would err low.
     */
    public static double estimatedTemperatureC(double ambientC, double ratingC, double currentA, double ampacityA) {
        double load = currentA / ampacityA;
        double share = load <= 1 ? Math.sqrt(load) : load * load;
        return ambientC + (ratingC - ambientC) * share;
    }

    /**
     * Thermal time constant of the bare conductor, insulation left out, so it errs short.
     *
     * <p>tau = c A dT / (Imax^2 R(TR)): the heat stored by the rise over the power that keeps it up.
     *
     * @param size the conductor
     * @param riseK dT, rise above ambient with {@code ampacityA}
     * @param ratingC TR, temperature reached with it, C
     * @param ampacityA continuous current, A
     * @return seconds; heat capacity 3.45e-3 J/(K mm3) of copper by IEC 60949, from memory
     */
    public static double timeConstantS(ConductorSize size, double riseK, double ratingC, double ampacityA) {
        double heatJPerKM = Copper.HEAT_CAPACITY_J_PER_K_MM3 * size.areaMm2() * 1000;
        return heatJPerKM * riseK / (ampacityA * ampacityA * size.resistanceOhmPerM(ratingC));
    }

    /**
     * Time until a conductor that loses heat reaches a limit, by its first-order heat balance.
     *
     * <p>t = tau ln((Tend - T0) / (Tend - Tlimit)).
     *
     * @return seconds; 0 if it starts at the limit or above; infinity if it never gets so warm
     */
    static double timeToLimitS(double startC, double limitC, double endC, double timeConstantS) {
        if (startC >= limitC) {
            return 0;
        }
        return endC <= limitC ? Double.POSITIVE_INFINITY : timeConstantS * Math.log((endC - startC) / (endC - limitC));
    }
}
