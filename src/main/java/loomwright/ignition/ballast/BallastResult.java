package loomwright.ignition.ballast;

import com.fasterxml.jackson.annotation.JsonUnwrapped;
import java.util.List;
import loomwright.answer.Finding;
import loomwright.circuit.Condition;
import loomwright.circuit.Plan;
import loomwright.ignition.FeedNeed;
import loomwright.message.Message;
import org.jspecify.annotations.Nullable;

/**
 * An ignition feed in every condition.
 *
 * @param conditions key on, cranking, running
 * @param crankingSupply what the battery shows while cranking, against the usual 10 V or less
 * @param elementFaults each element half shorted, shorted and open, with the key on and no bypass
 * @param warming cold start and hot idle; absent unless a thermal resistance was given
 * @param feedNeed what feed wire and fuse have to carry
 * @param findings what is wrong with it, the most serious first
 * @param plan the same feed as a plan of a vehicle, the bypass joined while cranking
 */
public record BallastResult(
        @JsonUnwrapped KeyOn keyOn,
        List<InCondition> conditions,
        Message crankingSupply,
        @JsonUnwrapped Turning turning,
        @JsonUnwrapped Bypassing bypassing,
        List<ElementFault> elementFaults,
        @Nullable Warming warming,
        FeedNeed feedNeed,
        List<Finding> findings,
        Plan plan) {

    public BallastResult {
        conditions = List.copyOf(conditions);
        elementFaults = List.copyOf(elementFaults);
        findings = List.copyOf(findings);
    }

    /**
     * One condition of the key.
     *
     * @param withBypass absent where there is no bypass
     */
    public record InCondition(
            Condition condition,
            double supplyV,
            FeedState withoutBypass,
            @Nullable FeedState withBypass) {}

    /**
     * The ballast end for end.
     *
     * @param sameAnswer whether every current stays what it was
     * @param elementsOhm the elements as they then lie, from the feed end
     * @param keyOnCoilV contacts closed, no bypass
     * @param crankingCoilV contacts closed, with the bypass if there is one
     * @param bypassedElements what the bypass then takes out, by the numbers before turning
     */
    public record Turned(
            boolean sameAnswer,
            List<Double> elementsOhm,
            double keyOnCoilV,
            double crankingCoilV,
            List<Integer> bypassedElements) {
        public Turned {
            elementsOhm = List.copyOf(elementsOhm);
            bypassedElements = List.copyOf(bypassedElements);
        }
    }

    /** What can be wrong with an element. */
    public enum Defect {
        /** Half its turns touch: half its resistance. */
        HALF_SHORTED,
        SHORTED,
        OPEN
    }

    /**
     * A faulty element, key on, no bypass.
     *
     * @param ballastOhm what an ohmmeter shows across the whole ballast taken off; absent where it is open
     * @param ballastOutV what a voltmeter shows at the coil's end of the ballast, contacts closed
     * @param effect what an owner would notice
     */
    public record ElementFault(
            int element,
            Defect defect,
            @Nullable Double ballastOhm,
            double currentA,
            double coilV,
            double ballastOutV,
            Message effect) {}

    /**
     * The coil with the key on and the contacts closed.
     *
     * @param coilKeyOnV across the coil with the key on, contacts closed, no bypass: the figure that is measured first
     * @param verdict that figure against the window
     */
    public record KeyOn(double coilKeyOnV, FeedState.Verdict verdict) {}

    /**
     * Which way round the ballast is joined.
     *
     * @param polarity what turning the ballast end for end does, in words
     * @param turned the ballast turned end for end
     */
    public record Turning(Message polarity, Turned turned) {}

    /**
     * What the bypass leaves out.
     *
     * @param bypassedElements the elements that the bypass takes out, read off the solved network while cranking
     * @param bypass what the bypass does, in words; absent without one
     */
    public record Bypassing(
            List<Integer> bypassedElements, @Nullable Message bypass) {
        public Bypassing {
            bypassedElements = List.copyOf(bypassedElements);
        }
    }
}
