package loomwright.review;

import static loomwright.review.Reviews.figure;
import static loomwright.review.Reviews.find;
import static loomwright.review.Reviews.get;
import static org.assertj.core.api.Assertions.assertThat;

import loomwright.answer.Finding;
import loomwright.answer.Severity;
import loomwright.circuit.Plan;
import loomwright.circuit.Plans;
import loomwright.review.context.FindingCode;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** What works one way round only, after a change of earth. */
class ReversedPolarityTest {
    private static final String RADIO = "{'kind':'load','id':'part','currentA':3,'plus':'a','meantLive':['run']}";
    private static final String LED = "{'kind':'led','id':'part','currentA':0.2,'plus':'a','meantLive':['run']}";

    private static Plan car(boolean negative, String part) {
        String live = negative ? "plus" : "minus";
        String earthed = negative ? "minus" : "plus";
        return Plans.of(
                12,
                negative ? "negative" : "positive",
                "{'kind':'battery','id':'battery'},{'kind':'earth','id':'body'},{'kind':'fuse','id':'fuse','ratingA':10},"
                        + part,
                "{'id':'W1','from':'battery." + earthed
                        + "','to':'body.31','resistanceOhm':0.001},{'id':'W2','from':'battery."
                        + live + "','to':'fuse.a','resistanceOhm':0.01},"
                        + "{'id':'W3','from':'fuse.b','to':'part.a','resistanceOhm':0.01},"
                        + "{'id':'W4','from':'part.b','to':'body.31','resistanceOhm':0.01}");
    }

    @ParameterizedTest
    @CsvSource({"true,", "false,DANGER"})
    void aRadioAfterAChangeOfEarth(boolean negative, Severity severity) {
        judge(car(negative, RADIO), severity);
    }

    @ParameterizedTest
    @CsvSource({"true,", "false,WARNING"})
    void anLedLampAfterAChangeOfEarth(boolean negative, Severity severity) {
        judge(car(negative, LED), severity);
    }

    private static void judge(Plan plan, Severity severity) {
        if (severity == null) {
            assertThat(find(plan, FindingCode.POLARITY_REVERSED)).isEmpty();
            return;
        }
        Finding finding = get(plan, FindingCode.POLARITY_REVERSED);
        assertThat(finding.severity()).isEqualTo(severity);
        assertThat(finding.ids()).containsExactly("part");
        assertThat(figure(finding, "reversedV")).isBetween(11.5, 14.8);
        assertThat(find(plan, FindingCode.LOAD_NOT_POWERED)).isEmpty();
    }
}
