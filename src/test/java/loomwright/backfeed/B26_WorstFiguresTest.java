package loomwright.backfeed;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Map;
import java.util.TreeMap;
import loomwright.answer.Progress;
import loomwright.backfeed.Survey.Moment;
import loomwright.circuit.Consumer;
import loomwright.circuit.Plan;
import loomwright.circuit.WholeCar;
import loomwright.network.NetworkLimits;
import loomwright.operation.Step;
import org.junit.jupiter.api.Test;

/** Of the few combinations solved with all figures some are those in which loads have the fewest volts and the most. */
class B26_WorstFiguresTest {
    private static final int FEW = 64;

    private static Survey survey(Plan plan, int solved) {
        return new BackfeedSearch(new BackfeedLimits(262_144, solved, 1, 0, 3_600_000), NetworkLimits.defaults())
                .search(plan, Progress.UNWATCHED)
                .survey();
    }

    /** The fewest volts of each load that is fed when it is meant to be. */
    private static Map<String, Double> fewestV(Survey survey) {
        Map<String, Double> fewest = new TreeMap<>();
        double fedV = 0.1 * survey.plan().system().nominalVoltageV();
        for (Moment moment : survey.solvedMoments()) {
            for (Consumer load : survey.consumers()) {
                double volts = moment.solved().effectiveV(load);
                if (moment.isMeant(load) && volts > fedV && moment.solved().step() != Step.OFF_ENGINE_TURNING) {
                    boolean cranking = moment.solved().step() == Step.CRANK;
                    fewest.merge(load.id() + (cranking ? " cranking" : ""), volts, Math::min);
                }
            }
        }
        return fewest;
    }

    /** 512 combinations, of which 64 are solved. */
    @Test
    void theFewestVoltsOfEachLoadAreAmongThem() {
        Plan plan = WholeCar.of(48, 8, 1);
        Map<String, Double> few = fewestV(survey(plan, FEW));
        Map<String, Double> all = fewestV(survey(plan, 65_536));
        assertThat(few.keySet()).isEqualTo(all.keySet());
        all.forEach((load, volts) -> assertThat(few.get(load)).as(load).isCloseTo(volts, within(1e-4)));
    }
}
