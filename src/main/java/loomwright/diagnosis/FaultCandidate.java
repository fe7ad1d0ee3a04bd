package loomwright.diagnosis;

import java.util.List;
import java.util.Set;
import loomwright.circuit.fault.SingleFault;

/**
 * Faults that may be there together, and how well they go with the readings.
 *
 * @param faults none, one or two; bad joints as large as fits best
 * @param fusesBlown what they have blown by the time of the readings
 * @param opening fuses that carry more than opens them
 * @param openingBeforeAReading those of them that open before a reading could be taken
 * @param melts whether a wire melts before a reading could be taken
 * @param figures what the meter would show
 * @param logWeight natural logarithm of prior odds times likelihood
 */
record FaultCandidate(
        List<SingleFault> faults,
        Set<String> fusesBlown,
        Set<String> opening,
        Set<String> openingBeforeAReading,
        boolean melts,
        PredictedFigures figures,
        Fit fit,
        double logWeight) {
    FaultCandidate {
        faults = List.copyOf(faults);
        fusesBlown = Set.copyOf(fusesBlown);
        opening = Set.copyOf(opening);
        openingBeforeAReading = Set.copyOf(openingBeforeAReading);
    }

    boolean sound() {
        return faults.isEmpty();
    }
}
