package loomwright.operation;

import static loomwright.operation.O04_RelayTest.wires;
import static org.assertj.core.api.Assertions.assertThat;

import java.util.Set;
import loomwright.circuit.Plan;
import loomwright.circuit.Plans;
import loomwright.message.Argument;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Circuits that undo their own state are reported, not looped over. */
class O09_NoRestTest {
    private static final String RELAY = "'coilResistanceOhm':85,'pullInV':8,'dropOutV':1.5,'meantLive':[]}";

    @Test
    void aRelayThatCutsItsOwnFeedOscillates() {
        Plan buzzer = Plans.of(
                "{'kind':'battery','id':'B'},{'kind':'earth','id':'E'},{'kind':'relay','id':'R'," + RELAY,
                wires("B.plus R.30", "R.87a R.86", "R.85 E.31", "B.minus E.31"));
        SolvedStep solved = Solved.of(buzzer).in(Step.RUN);
        assertThat(solved.oscillating()).isTrue();
        assertThat(solved.movingParts()).containsExactly("R");
        assertThat(StepFindings.of(solved)).extracting(StepFinding::kind).contains(StepFinding.Kind.OSCILLATING);
    }

    /** No more than V^2/4R reaches a load behind R (maximum power transfer): here 12.6^2 / (4 x 3) = 13.2 W, a little less for what the battery has inside. */
    @ParameterizedTest(name = "{0} W behind 3 ohm")
    @CsvSource({"12.9, false", "13.4, true"})
    void constantWattsBehindAResistanceThatCannotPassThemComeOnAndDropOut(double powerW, boolean oscillates) {
        Plan plan = Plans.of(
                "{'kind':'battery','id':'B'},{'kind':'earth','id':'E'},{'kind':'load','id':'L','powerW':" + powerW
                        + ",'minimumV':6,'meantLive':[]}",
                "{'id':'feed','from':'B.plus','to':'L.a','resistanceOhm':3},"
                        + "{'id':'back','from':'L.b','to':'E.31','resistanceOhm':0.000001},"
                        + "{'id':'minus','from':'B.minus','to':'E.31','resistanceOhm':0.000001}");
        SolvedStep solved = Solved.of(plan).in(Step.RUN);
        assertThat(solved.oscillating()).isEqualTo(oscillates);
        assertThat(StepFindings.of(solved))
                .filteredOn(finding -> finding.kind() == StepFinding.Kind.OSCILLATING)
                .hasSize(oscillates ? 1 : 0)
                .allSatisfy(finding ->
                        assertThat(finding.message().arguments()).containsEntry("byOwnVoltage", new Argument.Count(1)));
    }

    @Test
    void twoRelaysThatLockEachOtherOutDependOnWhichIsQuicker() {
        Plan interlock = Plans.of(
                "{'kind':'battery','id':'B'},{'kind':'earth','id':'E'},{'kind':'relay','id':'R1'," + RELAY
                        + ",{'kind':'relay','id':'R2'," + RELAY,
                wires(
                        "B.plus R1.30",
                        "B.plus R2.30",
                        "R1.87a R2.86",
                        "R2.87a R1.86",
                        "R1.85 E.31",
                        "R2.85 E.31",
                        "B.minus E.31"));
        SolvedStep solved = Solved.of(interlock).in(Step.OFF);
        assertThat(solved.isRace()).isTrue();
        assertThat(solved.movingParts()).containsExactly("R1", "R2");
        assertThat(solved.isActive(interlock.findPart("R1").orElseThrow()))
                .isNotEqualTo(solved.isActive(interlock.findPart("R2").orElseThrow()));
    }

    /**
     * Each relay feeds the other's winding from its rest contact and, once in, its own from its working contact: together they
     * would both stay in, one after the other only the first comes in.
     */
    @Test
    void aRaceThatWouldSettleIfAllMovedAtOnceIsARaceAllTheSame() {
        Plan latching = Plans.of(
                "{'kind':'battery','id':'B'},{'kind':'earth','id':'E'},{'kind':'relay','id':'R1'," + RELAY
                        + ",{'kind':'relay','id':'R2'," + RELAY
                        + ",{'kind':'joint','id':'J1','terminals':['1','2','3']}"
                        + ",{'kind':'joint','id':'J2','terminals':['1','2','3']}",
                wires(
                        "B.plus R1.30",
                        "B.plus R2.30",
                        "R1.87a J2.1",
                        "R2.87 J2.2",
                        "J2.3 R2.86",
                        "R2.87a J1.1",
                        "R1.87 J1.2",
                        "J1.3 R1.86",
                        "R1.85 E.31",
                        "R2.85 E.31",
                        "B.minus E.31"));
        SolvedStep solved = Solved.of(latching).in(Step.OFF);
        assertThat(solved.isRace()).isTrue();
        assertThat(solved.raceComplete()).isTrue();
        assertThat(solved.raceOutcomes()).containsExactlyInAnyOrder(Set.of("R1"), Set.of("R2"));
    }

    @Test
    void relaysThatDoNotTouchEachOtherDoNotRace() {
        Plan apart = Plans.of(
                "{'kind':'battery','id':'B'},{'kind':'earth','id':'E'},{'kind':'relay','id':'R1'," + RELAY
                        + ",{'kind':'relay','id':'R2'," + RELAY,
                wires("B.plus R1.86", "B.plus R2.86", "R1.85 E.31", "R2.85 E.31", "B.minus E.31"));
        SolvedStep solved = Solved.of(apart).in(Step.OFF);
        assertThat(solved.isRace()).isFalse();
        assertThat(solved.active()).containsExactlyInAnyOrder("R1", "R2");
    }
}
