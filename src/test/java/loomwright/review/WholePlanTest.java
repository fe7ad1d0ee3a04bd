package loomwright.review;

import static loomwright.review.Reviews.codes;
import static loomwright.review.Reviews.findings;
import static loomwright.review.Reviews.get;
import static org.assertj.core.api.Assertions.assertThat;

import java.util.Comparator;
import java.util.List;
import loomwright.answer.Answer;
import loomwright.answer.Caution;
import loomwright.answer.Finding;
import loomwright.answer.Severity;
import loomwright.circuit.Plan;
import loomwright.circuit.Plans;
import org.junit.jupiter.api.Test;

/** The demo plans as an owner reads them, and what must hold of every review. */
class WholePlanTest {
    @Test
    void theTourerAsBuiltHasFewFindings() {
        assertThat(codes(Plans.example("sandpiper-as-built")))
                .containsExactlyInAnyOrder(
                        "link-too-large", "voltage-drop", "unfused-circuit", "fuse-too-large", "unfused-cable");
        assertThat(get(Plans.example("sandpiper-as-built"), FindingCode.UNFUSED_CIRCUIT)
                        .ids())
                .as("the bypass from the solenoid's contact")
                .containsExactly("W35");
    }

    @Test
    void theUnguardedBypassIsADangerThatStartsTheEngine() {
        Plan plan = Plans.example("sandpiper-unguarded-bypass");
        List<Finding> findings = findings(plan);
        assertThat(findings)
                .filteredOn(f -> f.code().equals("backfeed") && f.severity() == Severity.DANGER)
                .extracting(f -> f.ids().get(0))
                .containsExactlyInAnyOrder("starter", "solenoid");
        assertThat(codes(plan)).contains("bypass-joins-feeds");
    }

    @Test
    void theMostSeriousComesFirstAndIsCounted() {
        Answer<ReviewReport> answer = Reviews.answer(Plans.example("sandpiper-bypass-relay"));
        List<Finding> findings = answer.result().findings();
        assertThat(findings).isSortedAccordingTo(Comparator.comparing(Finding::severity));
        ReviewReport.Counts counts = answer.result().counts();
        assertThat(counts.danger() + counts.warning() + counts.note()).isEqualTo(findings.size());
        assertThat(answer.cautions()).contains(Caution.HOT_BALLAST).doesNotContain(Caution.LIVE_WHEN_OFF);
        assertThat(findings).allSatisfy(f -> assertThat(answer.basis()).contains(f.basis()));
    }

    @Test
    void eachFindingComesOnce() {
        for (String name : List.of("sandpiper-as-built", "sandpiper-electronic-module", "otter-6v-positive-earth")) {
            assertThat(findings(Plans.example(name)).stream()
                            .map(f -> f.code() + f.ids())
                            .toList())
                    .doesNotHaveDuplicates();
        }
    }

    /** Positive earth: battery turned, the same chassis. The current runs the other way, what it does stays the same. */
    @Test
    void thePolarityOfTheEarthChangesNoFinding() {
        assertThat(told(polar("negative", "plus", "minus")))
                .isNotEmpty()
                .isEqualTo(told(polar("positive", "minus", "plus")));
    }

    private static List<String> told(Plan plan) {
        return findings(plan).stream().map(f -> f.code() + f.ids() + f.text()).toList();
    }

    private static Plan polar(String earth, String live, String earthed) {
        return Plans.of(
                12,
                earth,
                "{'kind':'battery','id':'battery'},{'kind':'earth','id':'body'},{'kind':'fuse','id':'F1','ratingA':30},"
                        + "{'kind':'switch','id':'spots','terminals':['a','b'],'positions':[{'name':'out','joins':[]},"
                        + "{'name':'lit','joins':[['a','b']]}],'ratingA':10},"
                        + "{'kind':'lamp','id':'spot','ratedV':12,'ratedW':150,'meantLive':['run','running'],"
                        + "'meantLiveWhen':{'spots':['lit']}}",
                "{'id':'W0','from':'battery." + earthed + "','to':'body.31','resistanceOhm':0.002},"
                        + "{'id':'W1','from':'battery." + live + "','to':'F1.a','size':'2.5 mm2','lengthM':2},"
                        + "{'id':'W2','from':'F1.b','to':'spots.a','size':'1 mm2','lengthM':1},"
                        + "{'id':'W3','from':'spots.b','to':'spot.a','size':'1 mm2','lengthM':3},"
                        + "{'id':'W4','from':'spot.b','to':'body.31','resistanceOhm':0.005}");
    }
}
