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
    private static final double LEAST_GAP_MM = 0.2;
    private static final double MOST_GAP_MM = 3;
    private static final int GAP_STEPS = 140;
    private static final double GAP_TOLERANCE_MM = 1e-4;
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
                        AcceptedSpark.ABOVE_CRANKING)
                .reject();
        speedsRpm = List.copyOf(speedsRpm);
        suppliesV = List.copyOf(suppliesV);
    }

    /** The last speed, counted from cranking speed, at which the margin ratio is at least the one wanted. */
    Boundary endsRpm(SparkSystem system, double supplyV, boolean bypassed, double wantedRatio) {
        DoublePredicate holds =
                speedRpm -> system.at(speedRpm, supplyV, bypassed).margin().marginRatio() >= wantedRatio;
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
                system.at(crankingSpeedRpm, supplyV, crankingBypassed).margin().marginRatio() >= 1;
        if (!holds.test(MOST_SUPPLY_V)) {
            return new Boundary(Boundary.Kind.NEVER_THERE, MOST_SUPPLY_V);
        }
        return new Boundary(Boundary.Kind.AT, edge(holds, 0, MOST_SUPPLY_V, SUPPLY_TOLERANCE_V));
    }

    /** The widest plug gap that leaves the wanted reserve at one speed and supply; the lower end of the search where none does. */
    Boundary largestGapMm(SparkSystem system, SparkPoint at) {
        DoublePredicate holds = gapMm -> at.margin().availableV()
                >= reserveRatio
                        * system.demand().withGapMm(gapMm, system.firing()).requiredV();
        if (!holds.test(LEAST_GAP_MM)) {
            return new Boundary(Boundary.Kind.NEVER_THERE, LEAST_GAP_MM);
        }
        double narrower = LEAST_GAP_MM;
        for (int step = 1; step <= GAP_STEPS; step++) {
            double wider = LEAST_GAP_MM + (MOST_GAP_MM - LEAST_GAP_MM) * step / GAP_STEPS;
            if (!holds.test(wider)) {
                return new Boundary(Boundary.Kind.AT, edge(holds, wider, narrower, GAP_TOLERANCE_MM));
            }
            narrower = wider;
        }
        return new Boundary(Boundary.Kind.NOT_REACHED, MOST_GAP_MM);
    }

    private static double edge(DoublePredicate holds, double fails, double works, double tolerance) {
        return Bisection.root(x -> holds.test(x) ? 1 : -1, fails, works, tolerance);
    }
}
