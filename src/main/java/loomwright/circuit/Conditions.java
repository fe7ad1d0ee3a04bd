package loomwright.circuit;

import org.jspecify.annotations.Nullable;

/**
 * The supply in each condition; what is left out has the usual value for the system voltage.
 *
 * <p>These are {@link UsualVoltages} in proportion to the nominal voltage; 0.01 ohm inside, except that the cranking figure
 * is a terminal voltage and so stands for itself; 3 per cent either way (common practice, no source).
 */
public record Conditions(
        @Nullable Supply off,
        @Nullable Supply accessory,
        @Nullable Supply run,
        @Nullable Supply crank,
        @Nullable Supply running) {
    private static final double INTERNAL_OHM = 0.01;
    private static final double TOLERANCE_PERCENT = 3;

    public static final Conditions USUAL = new Conditions(null, null, null, null, null);

    /** The supply in {@code condition} with every value filled in. */
    public ResolvedSupply in(Condition condition, VehicleSystem system) {
        Supply given = switch (condition) {
            case OFF -> off;
            case ACCESSORY -> accessory;
            case RUN -> run;
            case CRANK -> crank;
            case RUNNING -> running;
        };
        double usualV = system.scaledFrom12V(
                switch (condition) {
                    case CRANK -> UsualVoltages.CRANKING_V;
                    case RUNNING -> UsualVoltages.CHARGING_V;
                    case OFF, ACCESSORY, RUN -> UsualVoltages.AT_REST_V;
                });
        if (given == null) {
            return new ResolvedSupply(usualV, condition == Condition.CRANK ? 0 : INTERNAL_OHM, TOLERANCE_PERCENT);
        }
        boolean usualCrank = condition == Condition.CRANK && given.emfV() == null;
        return new ResolvedSupply(
                Bounds.orElse(given.emfV(), usualV),
                Bounds.soundIfTiny(Bounds.orElse(given.internalResistanceOhm(), usualCrank ? 0 : INTERNAL_OHM)),
                Bounds.orElse(given.tolerancePercent(), TOLERANCE_PERCENT));
    }

    /** A supply with nothing left open. */
    public record ResolvedSupply(double emfV, double internalResistanceOhm, double tolerancePercent) {}
}
