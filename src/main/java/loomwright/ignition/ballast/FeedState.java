package loomwright.ignition.ballast;

import com.fasterxml.jackson.annotation.JsonUnwrapped;
import java.util.List;
import loomwright.message.Message;

/**
 * The feed in one condition, with the bypass joined or not, read off the solved plan.
 *
 * @param elements the elements of the ballast from the feed end
 * @param verdict the coil's voltage against the window
 * @param verdictText what that means in this condition
 * @param readings what a meter shows from the battery's minus terminal
 */
public record FeedState(
        @JsonUnwrapped Electric electric,
        List<ElementState> elements,
        @JsonUnwrapped HeatShares heat,
        Verdict verdict,
        Message verdictText,
        List<Reading> readings) {

    public FeedState {
        elements = List.copyOf(elements);
        readings = List.copyOf(readings);
    }

    /** The coil's voltage with contacts closed against the window. */
    public enum Verdict {
        BELOW_WINDOW,
        WITHIN_WINDOW,
        ABOVE_WINDOW
    }

    /**
     * One element of the ballast.
     *
     * @param element 1 for the one at the feed end
     * @param resistanceOhm at its temperature
     * @param currentA towards the coil
     * @param heatW contacts closed
     * @param averageHeatW over the dwell
     * @param carriesNothing whether its current is less than any meter shows: 1 mA
     */
    public record ElementState(
            int element,
            double resistanceOhm,
            double currentA,
            double voltageV,
            double heatW,
            double averageHeatW,
            boolean carriesNothing) {}

    /**
     * What a meter shows at a terminal.
     *
     * @param contactsClosedV with the primary closed: divided
     * @param contactsOpenV with it open: the full supply on the feed side of the break, nothing behind it
     */
    public record Reading(String terminal, double contactsClosedV, double contactsOpenV) {}

    /**
     * Volts and currents.
     *
     * @param currentA through the coil, contacts closed
     * @param coilV across the coil, contacts closed
     * @param averageA the same current over the time that the contacts are closed and open: times the dwell fraction
     * @param averageCoilV the same of the voltage
     * @param feedA from the battery to the ballast; negative where the bypass feeds back into it
     * @param bypassA through the bypass
     */
    public record Electric(
            double currentA, double coilV, double averageA, double averageCoilV, double feedA, double bypassA) {}

    /**
     * Where the power goes.
     *
     * @param coilHeatW in the coil, contacts closed
     * @param averageCoilHeatW over the dwell
     * @param ballastHeatW in all elements, contacts closed
     * @param switchHeatW in contacts or module
     * @param wireHeatW in feed, bypass, return and their joints
     * @param supplyPowerW from the battery; the heats add up to it
     */
    public record HeatShares(
            double coilHeatW,
            double averageCoilHeatW,
            double ballastHeatW,
            double switchHeatW,
            double wireHeatW,
            double supplyPowerW) {}
}
