package loomwright.diagnosis;

import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import loomwright.circuit.fault.SingleFault;
import loomwright.circuit.fault.SingleFault.Kind;

/**
 * How likely faults are before anything is measured, beside no fault at all (common practice, no source: flat batteries and
 * want of charge are found more often than corrosion, loose wires and blown fuses, these more often than contacts that weld,
 * and these more often than wires on wrong terminals).
 * They decide only where the readings do not.
 */
final class Priors {
    private static final Map<Kind, Double> ODDS = new EnumMap<>(Map.ofEntries(
            Map.entry(Kind.BATTERY_DISCHARGED, 0.05),
            Map.entry(Kind.BATTERY_WORN, 0.02),
            Map.entry(Kind.NOT_CHARGING, 0.05),
            Map.entry(Kind.BAD_JOINT, 0.02),
            Map.entry(Kind.FUSE_BLOWN, 0.02),
            Map.entry(Kind.WIRE_OFF, 0.01),
            Map.entry(Kind.OPEN_INSIDE, 0.01),
            Map.entry(Kind.EARTH_LOST, 0.01),
            Map.entry(Kind.RELAY_STUCK_OPEN, 0.01),
            Map.entry(Kind.RELAY_STUCK_CLOSED, 0.005),
            Map.entry(Kind.SHORT_TO_EARTH, 0.005),
            Map.entry(Kind.LEADS_SWAPPED, 0.002),
            Map.entry(Kind.CONNECTORS_CROSSED, 0.002),
            Map.entry(Kind.WIRE_MISPLACED, 0.001)));

    private Priors() {}

    /** Natural logarithm of the odds of faults that come about each by itself. */
    static double log(List<SingleFault> faults) {
        return faults.stream()
                .mapToDouble(f -> Math.log(ODDS.getOrDefault(f.kind(), 0.001)))
                .sum();
    }
}
