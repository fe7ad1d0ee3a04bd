package loomwright.review;

import static loomwright.review.Reviews.figure;
import static loomwright.review.Reviews.find;
import static loomwright.review.Reviews.get;
import static loomwright.review.Reviews.plan;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Objects;
import loomwright.answer.Finding;
import loomwright.answer.Severity;
import loomwright.circuit.Plan;
import loomwright.message.Argument;
import loomwright.review.context.FindingCode;
import loomwright.review.context.ReviewText;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Alternators that are not excited, have a faulty diode, or let current back with the key off. */
class ExcitationTest {
    private static Plan car(String alternator, String indicator, String wires) {
        return plan(
                "{'kind':'alternator','id':'alternator'" + alternator + "},"
                        + "{'kind':'switch','id':'key','terminals':['30','15'],'positions':[{'name':'off','joins':[]},"
                        + "{'name':'on','joins':[['30','15']]}],'positionByCondition':{'off':'off','accessory':'off','run':'on',"
                        + "'crank':'on','running':'on'}}" + indicator,
                "{'id':'W1','from':'battery.plus','to':'alternator.B+','size':'10 mm2','lengthM':1},"
                        + "{'id':'W2','from':'alternator.B-','to':'body.31','size':'10 mm2','lengthM':0.3},"
                        + "{'id':'W3','from':'battery.plus','to':'key.30','size':'2.5 mm2','lengthM':1}" + wires);
    }

    private static Plan lamp(String alternator, String indicator) {
        return car(
                alternator,
                "," + indicator,
                ",{'id':'W4','from':'key.15','to':'lamp.a','size':'1 mm2','lengthM':1},"
                        + "{'id':'W5','from':'lamp.b','to':'alternator.D+','size':'1 mm2','lengthM':1}");
    }

    /** 2 W at 12 V is 0.17 A; an LED takes 0.02 A, and 0.1 A is needed. */
    @Test
    void anLedAloneDoesNotExciteAndABulbDoes() {
        Plan led = lamp("", "{'kind':'led','id':'lamp','currentA':0.02}");
        assertThat(get(led, FindingCode.NOT_EXCITED).ids()).contains("alternator");
        assertThat(figure(get(led, FindingCode.NOT_EXCITED), "exciterA")).isBetween(0.015, 0.025);
        Plan bulb = lamp("", "{'kind':'lamp','id':'lamp','ratedV':12,'ratedW':2}");
        assertThat(find(bulb, FindingCode.NOT_EXCITED)).isEmpty();
    }

    /** The remedy works: 12 V over 100 and 4 ohm are more than 0.1 A. */
    @Test
    void aResistorBesideTheLedExcites() {
        Plan both = car(
                "",
                ",{'kind':'led','id':'lamp','currentA':0.02},{'kind':'resistor','id':'beside','resistanceOhm':100}",
                ",{'id':'W4','from':'key.15','to':'lamp.a','size':'1 mm2','lengthM':1},"
                        + "{'id':'W5','from':'lamp.b','to':'alternator.D+','size':'1 mm2','lengthM':1},"
                        + "{'id':'W6','from':'lamp.a','to':'beside.a','size':'1 mm2','lengthM':0.1},"
                        + "{'id':'W7','from':'lamp.b','to':'beside.b','size':'1 mm2','lengthM':0.1}");
        assertThat(find(both, FindingCode.NOT_EXCITED)).isEmpty();
    }

    @Test
    void aMachineOfOneWireNeedsNoneAndOneWithoutAWireThereMayNotBegin() {
        Plan alone = lamp(",'selfExciting':true", "{'kind':'led','id':'lamp','currentA':0.02}");
        assertThat(find(alone, FindingCode.NOT_EXCITED)).isEmpty();
        assertThat(find(car(",'selfExciting':true", "", ""), FindingCode.NOT_EXCITED))
                .isEmpty();
        Finding open = get(car("", "", ""), FindingCode.NOT_EXCITED);
        assertThat(open.severity()).isEqualTo(Severity.NOTE);
        assertThat(open.ids()).contains("alternator");
        assertThat(Objects.requireNonNull(open.remedy()).code()).isEqualTo(ReviewText.JOIN_EXCITER);
    }

    /** About two thirds and one third of 30 A. */
    @ParameterizedTest
    @CsvSource({"diode-open, 20.1", "diode-shorted, 9.9"})
    void aFaultyDiodeIsAFindingWithWhatIsLeft(String state, double mostA) {
        Plan plan =
                lamp(",'limitA':30,'rectifier':'" + state + "'", "{'kind':'lamp','id':'lamp','ratedV':12,'ratedW':2}");
        assertThat(figure(get(plan, FindingCode.RECTIFIER_FAULTY), "mostA")).isCloseTo(mostA, within(1e-9));
        assertThat(find(lamp("", "{'kind':'lamp','id':'lamp','ratedV':12,'ratedW':2}"), FindingCode.RECTIFIER_FAULTY))
                .isEmpty();
    }

    @Test
    void whatItsDiodesLetBackIsADrain() {
        Plan plan = lamp(",'leakageA':0.5", "{'kind':'lamp','id':'lamp','ratedV':12,'ratedW':2}");
        Finding drain = get(plan, FindingCode.KEY_OFF_DRAIN);
        assertThat(drain.ids()).containsExactly("alternator");
        assertThat(drain.message().arguments().get("loads"))
                .isInstanceOfSatisfying(
                        Argument.Listing.class,
                        loads -> assertThat(loads.items()).hasSize(1));
        assertThat(Objects.requireNonNull(drain.remedy()).code()).isEqualTo(ReviewText.REPAIR_RECTIFIER);
        assertThat(figure(get(plan, FindingCode.KEY_OFF_DRAIN), "currentA")).isBetween(0.45, 0.6);
    }
}
