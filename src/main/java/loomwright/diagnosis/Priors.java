package loomwright.diagnosis;

import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import loomwright.circuit.fault.DischargedBattery;
import loomwright.circuit.fault.SingleFault;
import loomwright.circuit.fault.SingleFault.Kind;
import loomwright.circuit.fault.SizedFault;

/**
 * How likely faults are before anything is measured, beside no fault at all (common practice, no source: flat batteries and
 * want of charge are found more often than corrosion, loose wires and blown fuses, these more often than contacts that weld
 * and parts of a wrong value, and these more often than wires on wrong terminals; what a plan says of a contact is wrong as often as a
 * joint is bad). They decide only where the readings do
 * not.
 *
 * <p>A size may be anything between its least and its most, by its logarithm; a meter pins it to about a tenth, a sign to a
 * factor of five. That share of its range is what the best size has of the fault's odds (D. J. C. MacKay, Bayesian interpolation,
 * 1992: the Occam factor, from memory).
 */
final class Priors {
    /** Of something that was not thought of: crossed looms, a part of another kind, three faults at once. */
    static final double UNEXPLAINED = 0.01;

    /** Half a reading's width of the logarithm of a size. */
    private static final double PINNED = 0.1 * Math.sqrt(2 * Math.PI);

    private static final double PINNED_BY_SIGN = Math.log(5);

    /** Unless a meter says so, a battery that is as good as gone is no more likely than a contact that welds (common practice, no source). */
    private static final double GONE = 0.1;
    /** It has less than this share of its volts left: two dead cells of six. */
    private static final double GONE_SHARE = 0.67;

    private static final Map<Kind, Double> ODDS = new EnumMap<>(Map.ofEntries(
            Map.entry(Kind.BATTERY_DISCHARGED, 0.2),
            Map.entry(Kind.BATTERY_WORN, 0.1),
            Map.entry(Kind.NOT_CHARGING, 0.05),
            Map.entry(Kind.BAD_JOINT, 0.02),
            Map.entry(Kind.FUSE_BLOWN, 0.02),
            Map.entry(Kind.CONTACTS_WORN, 0.02),
            Map.entry(Kind.WIRE_OFF, 0.01),
            Map.entry(Kind.OPEN_INSIDE, 0.01),
            Map.entry(Kind.EARTH_LOST, 0.01),
            Map.entry(Kind.RELAY_STUCK_OPEN, 0.01),
            Map.entry(Kind.REGULATOR_OFF, 0.01),
            Map.entry(Kind.VALUE_OFF, 0.007),
            Map.entry(Kind.RELAY_STUCK_CLOSED, 0.005),
            Map.entry(Kind.SWITCH_STUCK, 0.005),
            Map.entry(Kind.CONTACT_OPEN, 0.005),
            Map.entry(Kind.CONTACT_WORN, 0.01),
            Map.entry(Kind.CONTACT_SOUND, 0.02),
            Map.entry(Kind.SHORT_TO_EARTH, 0.008),
            Map.entry(Kind.SHORT_INSIDE, 0.004),
            Map.entry(Kind.LEADS_SWAPPED, 0.002),
            Map.entry(Kind.CONNECTORS_CROSSED, 0.002),
            Map.entry(Kind.WIRE_MISPLACED, 0.001),
            Map.entry(Kind.WIRES_TOUCH, 0.0005)));

    private Priors() {}

    /**
     * Natural logarithm of the odds of faults that come about each by itself.
     *
     * @param measured whether a meter pins their sizes, and not only what was seen
     */
    static double log(List<SingleFault> faults, boolean measured) {
        double pinned = measured ? PINNED : PINNED_BY_SIGN;
        double log = 0;
        for (SingleFault fault : faults) {
            log += Math.log(ODDS.getOrDefault(fault.kind(), 0.001));
            if (!measured
                    && fault instanceof DischargedBattery battery
                    && battery.leftV() < GONE_SHARE * battery.restV()) {
                log += Math.log(GONE);
            }
            if (fault instanceof SizedFault sized) {
                log += Math.log(Math.min(1, pinned / Math.log(sized.largest() / sized.smallest())));
            }
        }
        return log;
    }
}
