package loomwright.operation;

import static loomwright.operation.O04_RelayTest.wires;
import static org.assertj.core.api.Assertions.assertThat;

import loomwright.circuit.Plan;
import loomwright.circuit.Plans;
import org.junit.jupiter.api.Test;

/** Feature 22: where two relays want to change at once, it is said if the outcome hangs on which is quicker. */
class O22_RaceTest {
    private static final String RELAY = "'coilResistanceOhm':85,'meantLive':[]}";

    private static Plan relays(String... joined) {
        return Plans.of(
                "{'kind':'battery','id':'B'},{'kind':'earth','id':'E'},{'kind':'relay','id':'R1'," + RELAY
                        + ",{'kind':'relay','id':'R2'," + RELAY,
                wires(joined));
    }

    /**
     * R1 is fed straight, R2 through R1's break contact, and holds itself once it is in. Together both come in; with R1 the
     * quicker R2 never does.
     */
    @Test
    void aRaceThatHappensToSettleIsStillARace() {
        Plan plan = relays(
                "B.minus E.31",
                "B.plus R1.86",
                "R1.85 E.31",
                "B.plus R1.30",
                "R1.87a R2.86",
                "R2.85 E.31",
                "B.plus R2.30",
                "R2.87 R2.86");
        SolvedStep solved = Solved.of(plan).in(Step.OFF);
        assertThat(solved.oscillating()).isFalse();
        assertThat(solved.isRace()).isTrue();
        assertThat(solved.movingParts()).contains("R2");
    }

    @Test
    void relaysThatHaveNothingToDoWithEachOtherDoNotRace() {
        Plan plan = relays("B.minus E.31", "B.plus R1.86", "R1.85 E.31", "B.plus R2.86", "R2.85 E.31");
        SolvedStep solved = Solved.of(plan).in(Step.OFF);
        assertThat(solved.isRace()).isFalse();
        assertThat(solved.isActive(plan.findPart("R1").orElseThrow())).isTrue();
        assertThat(solved.isActive(plan.findPart("R2").orElseThrow())).isTrue();
    }

    /** Each feeds the other once it is in: in whatever order, both are. */
    @Test
    void relaysThatHelpEachOtherDoNotRace() {
        Plan plan = relays(
                "B.minus E.31",
                "B.plus R1.86",
                "R1.85 E.31",
                "B.plus R2.86",
                "R2.85 E.31",
                "B.plus R1.30",
                "R1.87 R2.86",
                "B.plus R2.30",
                "R2.87 R1.86");
        assertThat(Solved.of(plan).in(Step.OFF).isRace()).isFalse();
    }
}
