package loomwright.circuit;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.groups.Tuple.tuple;

import loomwright.answer.InputError;
import loomwright.answer.InputError.Code;
import org.junit.jupiter.api.Test;

/** A plan that a person hands in must make sense as a circuit. */
class P03_PlanCheckTest {
    private static final String BATTERY = "{'kind':'battery','id':'B'}";
    private static final String STRAP = "{'id':'W0','from':'B.minus','to':'E.31','resistanceOhm':0.001}";
    private static final String EARTH = "{'kind':'earth','id':'E'}";

    @ForEachExample
    void theExamplesAreSound(String name) {
        assertThat(PlanCheck.check(Plans.example(name))).isEmpty();
    }

    @Test
    void aFaultOfTheVehicleIsAValidPlan() {
        String lamp = "{'kind':'lamp','id':'L','ratedV':12,'ratedW':5,'meantLive':[]}";
        Plan plan = Plans.of(
                BATTERY + "," + EARTH + "," + lamp,
                STRAP + ",{'id':'W1','from':'B.plus','to':'L.a','resistanceOhm':0.1}");
        assertThat(PlanCheck.check(plan)).isEmpty();
    }

    @Test
    void aSparePartWithNoWireAtAllIsNoFault() {
        String lamp = "{'kind':'lamp','id':'L','ratedV':12,'ratedW':5,'meantLive':[]}";
        Plan plan = Plans.of(
                BATTERY + "," + EARTH + "," + lamp,
                STRAP + ",{'id':'W1','from':'B.plus','to':'E.31','resistanceOhm':0.1}");
        assertThat(PlanCheck.check(plan)).isEmpty();
    }

    @Test
    void aRelayThatTheSystemCanNeverPullInIsAnImpossibleRating() {
        String relay = "{'kind':'relay','id':'R','coilResistanceOhm':85,'pullInV':20,'meantLive':[]}";
        assertThat(PlanCheck.check(Plans.of(BATTERY + "," + relay, "")))
                .extracting(InputError::code, InputError::pointer)
                .containsExactly(tuple(Code.CONTRADICTION, "/parts/1/pullInV"));
    }

    @Test
    void aPlanNeedsASource() {
        assertThat(PlanCheck.check(Plans.of(EARTH, "")))
                .extracting(InputError::code, InputError::pointer)
                .containsExactly(tuple(Code.MISSING, "/parts"));
    }
}
