package loomwright.review;

import static loomwright.review.Reviews.find;
import static loomwright.review.Reviews.findings;
import static loomwright.review.Reviews.get;
import static loomwright.review.Reviews.plan;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import loomwright.answer.RejectedInput;
import loomwright.answer.Severity;
import loomwright.circuit.Plan;
import loomwright.circuit.TerminalRef;
import loomwright.operation.Solved;
import loomwright.operation.SolvedStep;
import loomwright.operation.Step;
import loomwright.review.context.FindingCode;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Contacts of which the plan says that they are stuck, open, worn or bridged. */
class FaultyContactTest {
    /** A lighting switch with side and head lamps; no load says when it should be live. */
    private static Plan lights(String position, String faults) {
        return plan(
                "{'kind':'switch','id':'lights','terminals':['30','58','56'],'positions':[{'name':'off','joins':[]},"
                        + "{'name':'side','joins':[['30','58']]},{'name':'head','joins':[['30','58','56']]}],'position':'"
                        + position + "','contactFaults':[" + faults + "]},"
                        + "{'kind':'load','id':'side','resistanceOhm':12},{'kind':'load','id':'head','resistanceOhm':2}",
                "{'id':'W1','from':'battery.plus','to':'lights.30','resistanceOhm':0.01},"
                        + "{'id':'W2','from':'lights.58','to':'side.a','resistanceOhm':0.01},"
                        + "{'id':'W3','from':'lights.56','to':'head.a','resistanceOhm':0.01},"
                        + "{'id':'W4','from':'side.b','to':'body.31','resistanceOhm':0.01},"
                        + "{'id':'W5','from':'head.b','to':'body.31','resistanceOhm':0.01}");
    }

    private static double acrossV(Plan plan, String load) {
        SolvedStep run = Solved.of(plan).in(Step.RUN);
        return run.acrossV(TerminalRef.parse(load + ".a"), TerminalRef.parse(load + ".b"));
    }

    /** By hand: what is left of some 12.5 V. */
    @ParameterizedTest
    @CsvSource({
        "off, stuck, 56, '', head, 12.2, 12.8",
        "head, open, 56, '', head, 0, 0.001",
        "head, open, 56, '', side, 12.2, 12.8",
        "head, worn, 56, ',\"resistanceOhm\":2', head, 6.0, 6.4",
        "side, bridged, 56, ',\"resistanceOhm\":10', head, 2.0, 2.1",
    })
    void thePlanIsSolvedWithIt(
            String position, String state, String to, String ohm, String load, double leastV, double mostV) {
        Plan plan = lights(position, "{'state':'" + state + "','between':['30','" + to + "']" + ohm + "}");
        assertThat(acrossV(plan, load)).isBetween(leastV, mostV);
    }

    /** The owner hears of the contact itself, and of what it does: the lamps were never meant to be on with the switch off. */
    @Test
    void aStuckContactIsAFindingAndWhatItFeedsIsOne() {
        Plan plan = lights("off", "{'state':'stuck','between':['30','56']}");
        assertThat(get(plan, FindingCode.CONTACT_FAULTY).severity()).isEqualTo(Severity.WARNING);
        assertThat(get(plan, FindingCode.CONTACT_FAULTY).ids()).containsExactly("lights");
        assertThat(findings(plan))
                .anyMatch(finding ->
                        finding.code().equals("backfeed") && finding.ids().contains("head"));
        assertThat(find(lights("off", ""), FindingCode.CONTACT_FAULTY)).isEmpty();
    }

    @Test
    void aWornOneIsANoteWithItsResistance() {
        Plan plan = lights("off", "{'state':'worn','between':['56','30'],'resistanceOhm':0.5}");
        assertThat(get(plan, FindingCode.CONTACT_FAULTY).severity()).isEqualTo(Severity.NOTE);
        assertThat(Reviews.figure(get(plan, FindingCode.CONTACT_FAULTY), "resistanceOhm"))
                .isCloseTo(0.5, within(1e-12));
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "{'state':'worn','between':['30','56']}",
                "{'state':'open','between':['30','56'],'resistanceOhm':1}",
                "{'state':'stuck','between':['58','56']}",
                "{'state':'stuck','between':['30','57']}",
                "{'state':'stuck','between':['30','30']}"
            })
    void whatContradictsItselfIsRefused(String fault) {
        assertThatThrownBy(() -> lights("off", fault)).hasRootCauseInstanceOf(RejectedInput.class);
    }
}
