package loomwright.ignition.spark;

import java.util.List;
import java.util.function.DoublePredicate;
import loomwright.answer.InputError;
import loomwright.answer.InputErrors;
import loomwright.ignition.Bisection;

/** Where the margin ends: over speed at one supply, and over supply at cranking speed. Parameters: {@link SearchInput}. */
record MarginSearch(
        double reserveRatio,
        double topSpeedRpm,
        double crankingSpeedRpm,
        boolean crankingBypassed,
        List<Double> speedsRpm,
        List<Double> suppliesV) {

    /** The margin falls with speed but for kinks, where the residual current sets in: no dip is narrower than this. */
    private static final int SPEED_STEPS = 200;

    private static final double SPEED_TOLERANCE_RPM = 0.5;
    private static final double MOST_SUPPLY_V = 60;
    private static final double SUPPLY_TOLERANCE_V = 1e-4;

    MarginSearch {
        new InputErrors()
                .range("/reserveRatio", reserveRatio, 1, 5)
                .range("/topSpeedRpm", topSpeedRpm, 20, 20_000)
                .range("/crankingSpeedRpm", crankingSpeedRpm, 20, 2000)
                .check(
                        topSpeedRpm > crankingSpeedRpm,
                        InputError.Code.CONTRADICTION,
                        "/topSpeedRpm",
                        topSpeedRpm,
                        "more than the cranking speed")
                .reject();
        speedsRpm = List.copyOf(speedsRpm);
        suppliesV = List.copyOf(suppliesV);
    }

    /** The last speed, counted from cranking speed, at which the margin ratio is at least the one wanted. */
    Boundary endsRpm(SparkSystem system, double supplyV, boolean bypassed, double wantedRatio) {
        DoublePredicate holds =
                speedRpm -> system.at(speedRpm, supplyV, bypassed).marginRatio() >= wantedRatio;
        if (!holds.test(crankingSpeedRpm)) {
            return new Boundary(Boundary.Kind.NEVER_THERE, crankingSpeedRpm);
        }
        double lower = crankingSpeedRpm;
        for (int step = 1; step <= SPEED_STEPS; step++) {
            double upper = crankingSpeedRpm + (topSpeedRpm - crankingSpeedRpm) * step / SPEED_STEPS;
            if (!holds.test(upper)) {
                return new Boundary(Boundary.Kind.AT, edge(holds, upper, lower, SPEED_TOLERANCE_RPM));
            }
            lower = upper;
        }
        return new Boundary(Boundary.Kind.NOT_REACHED, topSpeedRpm);
    }

    /** The least supply at which a spark crosses the gap at cranking speed; the current rises with the supply. */
    Boundary startsAboveV(SparkSystem system) {
        DoublePredicate holds = supplyV ->
                system.at(crankingSpeedRpm, supplyV, crankingBypassed).marginRatio() >= 1;
        if (!holds.test(MOST_SUPPLY_V)) {
            return new Boundary(Boundary.Kind.NEVER_THERE, MOST_SUPPLY_V);
        }
        return new Boundary(Boundary.Kind.AT, edge(holds, 0, MOST_SUPPLY_V, SUPPLY_TOLERANCE_V));
    }

    private static double edge(DoublePredicate holds, double fails, double works, double tolerance) {
        return Bisection.root(x -> holds.test(x) ? 1 : -1, fails, works, tolerance);
    }
}
