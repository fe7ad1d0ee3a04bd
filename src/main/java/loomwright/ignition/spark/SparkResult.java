package loomwright.ignition.spark;

import java.util.List;
import loomwright.answer.Finding;
import loomwright.ignition.FeedNeed;
import loomwright.ignition.SelfHeating;
import org.jspecify.annotations.Nullable;

/**
 * What an ignition has to give, and what it is asked for.
 *
 * @param at the spark at the speed and supply asked about
 * @param demand what the gap asks for and how sure that is
 * @param closed key on, engine stopped, primary closed
 * @param speedSweep over speed, at the supply asked about; empty if not asked for
 * @param supplySweep over supply, at the speed asked about; empty if not asked for
 * @param feedNeed what feed wire and fuse have to carry
 * @param hotCoil the coil heated up at the speed asked about, if a thermal resistance was given
 * @param findings what an adviser would add to the figures, the most serious first
 */
public record SparkResult(
        SparkPoint at,
        Demand demand,
        Closed closed,
        SparkEnds ends,
        List<SparkPoint> speedSweep,
        List<SparkPoint> supplySweep,
        FeedNeed feedNeed,
        @Nullable HotCoil hotCoil,
        List<Finding> findings) {

    public SparkResult {
        speedSweep = List.copyOf(speedSweep);
        supplySweep = List.copyOf(supplySweep);
        findings = List.copyOf(findings);
    }

    /**
     * Key on, engine stopped, primary closed: what one coil draws for as long as that lasts. A module that switches off
     * by itself then draws nothing.
     */
    public record Closed(double currentA, double coilV, double coilHeatW, double ballastHeatW) {}

    /**
     * The two ends of a coil's warming.
     *
     * @param end where the heating ends; its cold state is the temperature given
     * @param atHot the spark with the coil settled; absent if it doesn't settle
     */
    public record HotCoil(SelfHeating.End end, @Nullable SparkPoint atHot) {}

    /**
     * Where the spark ends.
     *
     * @param marginEndsRpm the speed from which the spark fails, searched upward from cranking speed
     * @param reserveEndsRpm the speed from which less than the wanted reserve is left
     * @param startsAboveV the supply below which it won't start, at cranking speed
     * @param largestGapMm the widest plug gap that leaves the wanted reserve at the speed and supply asked about
     */
    public record SparkEnds(
            Boundary marginEndsRpm, Boundary reserveEndsRpm, Boundary startsAboveV, Boundary largestGapMm) {}
}
