package loomwright.review;

import static loomwright.review.Reviews.find;
import static loomwright.review.Reviews.findings;
import static loomwright.review.Reviews.get;
import static org.assertj.core.api.Assertions.assertThat;

import loomwright.answer.Finding;
import loomwright.answer.Severity;
import loomwright.circuit.ForEachExample;
import loomwright.circuit.Plan;
import loomwright.circuit.Plans;
import org.junit.jupiter.api.Test;

/** The pole that the plan says is earthed against the one that is. */
class EarthedPoleTest {
    private static final FindingCode CODE = FindingCode.EARTH_POLARITY_CONTRADICTED;

    private static Plan plan(String earth, String live, String earthLead) {
        return Plans.of(
                12,
                earth,
                "{'kind':'battery','id':'battery'},{'kind':'earth','id':'body','resistanceOhm':0.3},"
                        + "{'kind':'earth','id':'wing'},"
                        + "{'kind':'joint','id':'stud','terminals':['1','2']},"
                        + "{'kind':'lamp','id':'lamp','ratedV':12,'ratedW':10," + Reviews.ALWAYS + "}",
                earthLead + "{'id':'W1','from':'battery." + live + "','to':'lamp.a','resistanceOhm':0.01},"
                        + "{'id':'W2','from':'lamp.b','to':'wing.31','resistanceOhm':0.01}");
    }

    private static String lead(String pole) {
        return "{'id':'W0','from':'battery." + pole + "','to':'stud.1','resistanceOhm':0.01},"
                + "{'id':'W3','from':'stud.2','to':'body.31','resistanceOhm':0.01},";
    }

    private static final String LOOSE = "{'id':'W0','from':'battery.minus','to':'stud.1','resistanceOhm':0.01},";

    /** However bad the way is: the body has 0.3 ohm. */
    @Test
    void theOtherPoleOnTheChassisIsADangerAndToldFirst() {
        Plan plan = plan("negative", "minus", lead("plus"));
        Finding first = findings(plan).get(0);
        assertThat(first).isEqualTo(get(plan, CODE));
        assertThat(first.severity()).isEqualTo(Severity.DANGER);
        assertThat(first.ids()).containsExactly("battery");
        assertThat(first.text()).contains("negative pole is earthed", "battery.plus", "alternator");
        assertThat(get(plan("positive", "plus", lead("minus")), CODE).text())
                .contains("positive pole is earthed", "battery.minus");
    }

    @Test
    void thePoleThatIsNamedIsNoFault() {
        assertThat(find(plan("negative", "plus", lead("minus")), CODE)).isEmpty();
        assertThat(find(plan("positive", "minus", lead("plus")), CODE)).isEmpty();
    }

    /** Through the lamp the live pole is then at the chassis' volts; it is not earthed for that. */
    @Test
    void aBatteryWithoutAnEarthLeadIsNotToldAsTurned() {
        assertThat(find(plan("negative", "plus", LOOSE), CODE)).isEmpty();
    }

    @Test
    void ofTwoInSeriesOnlyTheEarthedEndCounts() {
        Plan plan = Plans.of(
                24,
                "positive",
                "{'kind':'battery','id':'B1','nominalVoltageV':12},{'kind':'battery','id':'B2','nominalVoltageV':12},"
                        + "{'kind':'earth','id':'body'},{'kind':'joint','id':'stud','terminals':['1','2']}",
                "{'id':'W2','from':'B2.minus','to':'stud.1','resistanceOhm':0.001},{'id':'W0','from':'B1.plus','to':'body.31','resistanceOhm':0.001},"
                        + "{'id':'W1','from':'B1.minus','to':'B2.plus','resistanceOhm':0.001}");
        assertThat(find(plan, CODE)).isEmpty();
    }

    @ForEachExample
    void noExampleHasOne(String name) {
        assertThat(find(Plans.example(name), CODE)).isEmpty();
    }
}
