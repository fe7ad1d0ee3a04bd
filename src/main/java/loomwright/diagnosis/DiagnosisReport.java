package loomwright.diagnosis;

import java.util.List;
import java.util.Map;
import loomwright.circuit.Condition;
import loomwright.circuit.fault.SingleFault;
import loomwright.operation.Quantity;
import org.jspecify.annotations.Nullable;

/**
 * The faults that explain what was measured.
 *
 * @param plan its name
 * @param summary the outcome in a sentence or two
 * @param readings each reading beside what the plan as drawn would show
 * @param explanations likeliest first; if none of them explains all readings, those that come nearest
 * @param nextReadings what to measure next, the most telling first, each chosen to add to those before it
 * @param tried how much was tried
 */
public record DiagnosisReport(
        String plan,
        Verdict verdict,
        String summary,
        List<ReadingCheck> readings,
        List<Explanation> explanations,
        List<NextReading> nextReadings,
        Tried tried) {
    public DiagnosisReport {
        readings = List.copyOf(readings);
        explanations = List.copyOf(explanations);
        nextReadings = List.copyOf(nextReadings);
    }

    /** The outcome. */
    public enum Verdict {
        /** The plan as drawn explains the readings, and nothing does so better. */
        PLAN_CONSISTENT,
        SINGLE_FAULT,
        FAULT_PAIR,
        /** Neither the plan as drawn nor a fault that was tried explains all readings. */
        UNEXPLAINED
    }

    /** What a meter shows, in one of three ways. */
    public record Shown(
            @Nullable Double voltageV,
            @Nullable Double resistanceOhm,
            @Nullable Boolean open) {
        static Shown of(Quantity quantity, double figure) {
            if (quantity == Quantity.VOLTS) {
                return new Shown(figure, null, null);
            }
            return figure >= Bench.OPEN_OHM ? new Shown(null, null, true) : new Shown(null, figure, null);
        }
    }

    /**
     * One reading.
     *
     * @param reading its index
     * @param planned what the plan as drawn would show; absent if it has no solution
     * @param deviation measured less planned in standard deviations; absent likewise
     * @param deviates whether that is more than meter and tolerances account for
     */
    public record ReadingCheck(
            int reading,
            String from,
            String to,
            Condition condition,
            Map<String, String> switches,
            Shown measured,
            @Nullable Shown planned,
            @Nullable Double deviation,
            boolean deviates) {}

    /**
     * Faults that the readings cannot tell apart.
     *
     * @param rank 1 for the likeliest
     * @param faultCount 0 for the plan as drawn, 1 or 2
     * @param explains whether it goes with every reading
     * @param probability of one of these being it, if it is anything that was tried
     * @param worstDeviation largest deviation of a reading, standard deviations
     * @param notExplained indices of the readings that do not go with it
     * @param candidates likeliest first; more than one is a tie
     * @param predicted what the first of them would show, for each reading, the supply as fitted
     * @param supply EMF as fits best, in each condition with volts
     */
    public record Explanation(
            int rank,
            int faultCount,
            boolean explains,
            double probability,
            double worstDeviation,
            List<Integer> notExplained,
            List<Suspect> candidates,
            List<Shown> predicted,
            List<SupplyFit> supply) {}

    /** One way to explain. */
    public record Suspect(String description, List<SuspectFault> faults, List<String> fusesBlown, double probability) {}

    /**
     * One fault.
     *
     * @param resistanceOhm what a bad joint adds, or a worn battery inside, as fits best; absent for other faults
     * @param restV EMF of a discharged battery at rest, as fits best; absent for other faults
     */
    public record SuspectFault(
            SingleFault.Kind kind,
            List<String> ids,
            String description,
            @Nullable Double resistanceOhm,
            @Nullable Double restV) {}

    /** The supply as fits best. */
    public record SupplyFit(Condition condition, double emfV) {}

    /**
     * Something to measure.
     *
     * @param gainBits by how much it narrows down what it is, together with those before it
     * @param expected what each of the leading candidates would show
     */
    public record NextReading(
            String from,
            String to,
            Condition condition,
            Map<String, String> switches,
            Quantity quantity,
            String description,
            double gainBits,
            List<Expected> expected) {}

    /** What one candidate would show. */
    public record Expected(int rank, String description, Shown shown) {}

    /**
     * What the answer rests on.
     *
     * @param singleFaults how many were tried
     * @param pairs how many were tried; 0 where a single fault explains the readings
     * @param notShown single faults that would change none of the readings, so that nothing is known of them
     * @param withoutSolution trials that could not be solved
     */
    public record Tried(int singleFaults, int pairs, int notShown, int withoutSolution) {}
}
