package loomwright.ignition.spark;

import java.util.List;
import loomwright.answer.InputErrors;
import loomwright.ignition.AssumedValue;
import loomwright.ignition.Assumptions;
import org.jspecify.annotations.Nullable;

/**
 * What is to be found beside the one point.
 *
 * @param reserveRatio available over required kilovolts that a sound system keeps, 1 to 5; 1.5 if left out
 * @param topSpeedRpm to which the end of the margin is searched, 20 to 20 000; 8000 if left out
 * @param crankingSpeedRpm where that search begins and the supply is searched, 20 to 2000; 200 if left out
 * @param crankingBypassed whether the ballast is bypassed while cranking; as while running if left out
 * @param speedSweep speeds to tabulate at the one supply
 * @param supplySweep supplies to tabulate at the one speed
 */
public record SearchInput(
        @Nullable Double reserveRatio,
        @Nullable Double topSpeedRpm,
        @Nullable Double crankingSpeedRpm,
        @Nullable Boolean crankingBypassed,
        @Nullable SweepRange speedSweep,
        @Nullable SweepRange supplySweep) {

    /** Everything as is common, and no sweep. */
    public static final SearchInput COMMON = new SearchInput(null, null, null, null, null, null);

    MarginSearch resolve(Assumptions assumptions, FeedInput feed) {
        InputErrors faults = assumptions.faults();
        if (speedSweep != null) {
            speedSweep.ends(faults, "/speedSweep", 20, 20_000);
        }
        if (supplySweep != null) {
            supplySweep.ends(faults, "/supplySweep", 1, 60);
        }
        return new MarginSearch(
                assumptions.or(reserveRatio, AssumedValue.RESERVE_RATIO, 1.5, ""),
                assumptions.or(topSpeedRpm, AssumedValue.TOP_SPEED, 8000, "rpm"),
                assumptions.or(crankingSpeedRpm, AssumedValue.CRANKING_SPEED, 200, "rpm"),
                crankingBypassed == null ? feed.bypassedOrNot() : crankingBypassed,
                speedSweep == null ? List.of() : speedSweep.values(),
                supplySweep == null ? List.of() : supplySweep.values());
    }
}
