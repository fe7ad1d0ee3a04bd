package loomwright.review;

import static loomwright.review.Reviews.codes;
import static loomwright.review.Reviews.figure;
import static loomwright.review.Reviews.get;
import static org.assertj.core.api.Assertions.assertThat;

import loomwright.answer.Finding;
import loomwright.answer.Severity;
import loomwright.circuit.Plan;
import loomwright.circuit.Plans;
import loomwright.review.context.FindingCode;
import loomwright.review.context.ReviewText;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Spike diodes across windings, in circuits without a fuse. */
class ReversedDiodeTest {
    /** Battery, 5 m of thin wire, a relay with a diode, back through an earth. */
    private static Plan relay(String earth, String atFeed, String atReturn, String rating) {
        boolean negative = earth.equals("negative");
        return Plans.of(
                12,
                earth,
                "{'kind':'battery','id':'battery'},{'kind':'earth','id':'body'},"
                        + "{'kind':'relay','id':'relay','coilResistanceOhm':85," + Reviews.ALWAYS + "},"
                        + "{'kind':'diode','id':'spike'" + rating + "}",
                "{'id':'W0','from':'battery." + (negative ? "minus" : "plus")
                        + "','to':'body.31','resistanceOhm':0.001},{'id':'W1','from':'battery."
                        + (negative ? "plus" : "minus") + "','to':'relay.86','size':'0.75 mm2','lengthM':5},"
                        + "{'id':'W2','from':'relay.85','to':'body.31','resistanceOhm':0.001},"
                        + "{'id':'W3','from':'relay.86','to':'spike." + atFeed + "','resistanceOhm':0.001},"
                        + "{'id':'W4','from':'spike." + atReturn + "','to':'body.31','resistanceOhm':0.001}");
    }

    @ParameterizedTest
    @CsvSource({"negative, anode, cathode", "positive, cathode, anode"})
    void oneTheWrongWayRoundIsToldAsThatAndNotAsTooSmall(String earth, String atFeed, String atReturn) {
        Plan plan = relay(earth, atFeed, atReturn, ",'ratingA':1");
        Finding finding = get(plan, FindingCode.DIODE_REVERSED);
        assertThat(finding.severity()).isEqualTo(Severity.DANGER);
        assertThat(finding.ids()).containsExactly("spike", "relay");
        assertThat(figure(finding, "currentA")).isGreaterThan(20);
        assertThat(finding.remedy()).isEqualTo(ReviewText.SWAP_DIODE_LEADS.with());
        assertThat(codes(plan)).doesNotContain("diode-overloaded");
    }

    @Test
    void soItIsIfThePlanDoesNotSayWhatItMayCarry() {
        assertThat(codes(relay("negative", "anode", "cathode", ""))).contains("diode-reversed");
    }

    @ParameterizedTest
    @CsvSource({"negative, cathode, anode", "positive, anode, cathode"})
    void oneTheRightWayRoundIsNoFault(String earth, String atFeed, String atReturn) {
        assertThat(codes(relay(earth, atFeed, atReturn, ",'ratingA':1"))).doesNotContain("diode-reversed");
    }

    /** It carries what it is there for. */
    @Test
    void oneThatIsTooSmallInSeriesIsToldAsThat() {
        Plan plan = Reviews.plan(
                "{'kind':'diode','id':'guard','ratingA':0.1},{'kind':'relay','id':'relay','coilResistanceOhm':85,"
                        + Reviews.ALWAYS + "}",
                "{'id':'W1','from':'battery.plus','to':'guard.anode','resistanceOhm':0.01},"
                        + "{'id':'W2','from':'guard.cathode','to':'relay.86','resistanceOhm':0.01},"
                        + "{'id':'W3','from':'relay.85','to':'body.31','resistanceOhm':0.01}");
        assertThat(codes(plan)).contains("diode-overloaded").doesNotContain("diode-reversed");
    }
}
