package loomwright.review;

import static loomwright.review.Reviews.codes;
import static loomwright.review.Reviews.findings;
import static loomwright.review.Reviews.get;
import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.Collections;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Random;
import java.util.Set;
import loomwright.answer.Answer;
import loomwright.answer.Caution;
import loomwright.answer.Finding;
import loomwright.answer.Severity;
import loomwright.circuit.ForEachExample;
import loomwright.circuit.Part;
import loomwright.circuit.Plan;
import loomwright.circuit.Plans;
import loomwright.circuit.Wire;
import loomwright.review.context.FindingCode;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** The demo plans as an owner reads them, and what must hold of every review. */
class WholePlanTest {
    @Test
    void theTourerAsBuiltHasFewFindings() {
        assertThat(codes(Plans.example("sandpiper-as-built")))
                .containsExactlyInAnyOrder("unfused-circuit", "unfused-cable");
        assertThat(get(Plans.example("sandpiper-as-built"), FindingCode.UNFUSED_CIRCUIT)
                        .ids())
                .as("the bypass from the solenoid's contact")
                .containsExactly("W35");
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "sandpiper-as-built",
                "sandpiper-bypass-relay",
                "sandpiper-electronic-module",
                "otter-6v-positive-earth"
            })
    void aPlanThatIsShownAsSoundHasNoDanger(String name) {
        assertThat(findings(Plans.example(name))).noneMatch(f -> f.severity() == Severity.DANGER);
    }

    @Test
    void theUnguardedBypassIsADangerThatStartsTheEngine() {
        Plan plan = Plans.example("sandpiper-unguarded-bypass");
        List<Finding> findings = findings(plan);
        assertThat(findings)
                .filteredOn(f -> f.code().equals("backfeed") && f.severity() == Severity.DANGER)
                .extracting(f -> f.ids().get(0))
                .containsExactlyInAnyOrder("starter", "solenoid");
        assertThat(codes(plan)).contains("bypass-not-isolated");
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
                        + "'meantLiveWhen':[{'switches':{'spots':['lit']}}]}",
                "{'id':'W0','from':'battery." + earthed + "','to':'body.31','resistanceOhm':0.002},"
                        + "{'id':'W1','from':'battery." + live + "','to':'F1.a','size':'2.5 mm2','lengthM':2},"
                        + "{'id':'W2','from':'F1.b','to':'spots.a','size':'1 mm2','lengthM':1},"
                        + "{'id':'W3','from':'spots.b','to':'spot.a','size':'1 mm2','lengthM':3},"
                        + "{'id':'W4','from':'spot.b','to':'body.31','resistanceOhm':0.005}");
    }

    /** Of a load behind two sources, each of which gives more than it takes, two ways are as wide as the load. */
    private static final Plan TWO_SOURCES = Plans.parse("{'schema':'loomwright/plan/1','name':'two sources',"
            + "'system':{'nominalVoltageV':12},'conditions':{'running':{'emfV':13,'internalResistanceOhm':0.01}},'parts':["
            + "{'kind':'battery','id':'battery'},{'kind':'earth','id':'body'},"
            + "{'kind':'alternator','id':'alternator','regulatedV':14.2,'limitA':10},"
            + "{'kind':'joint','id':'stud','terminals':['1','2','3','4']},"
            + "{'kind':'motor','id':'fan','resistanceOhm':0.6," + Reviews.ALWAYS + "},"
            + "{'kind':'lamp','id':'lamp','ratedV':12,'ratedW':21,'meantLive':['running']}],'wires':["
            + "{'id':'W0','from':'battery.minus','to':'body.31','resistanceOhm':0.001},"
            + "{'id':'W1','from':'battery.plus','to':'stud.1','resistanceOhm':0.005},"
            + "{'id':'W2','from':'alternator.B+','to':'stud.2','resistanceOhm':0.05},"
            + "{'id':'W3','from':'alternator.B-','to':'body.31','resistanceOhm':0.001},"
            + "{'id':'W4','from':'stud.3','to':'fan.33','resistanceOhm':0.002},"
            + "{'id':'W5','from':'fan.32','to':'body.31','resistanceOhm':0.002},"
            + "{'id':'W6','from':'stud.4','to':'lamp.a','resistanceOhm':0.01},"
            + "{'id':'W7','from':'lamp.b','to':'body.31','resistanceOhm':0.01}]}");

    @ForEachExample
    void theOrderOfThePlanDoesNotMatter(String name) {
        assertSameInAnyOrder(Plans.example(name));
    }

    @Test
    void norDoesItWhereTwoSourcesFeedALoad() {
        assertSameInAnyOrder(TWO_SOURCES);
    }

    private static void assertSameInAnyOrder(Plan plan) {
        List<List<Object>> expected = figures(plan);
        for (int seed = 0; seed < 5; seed++) {
            List<Part> parts = new ArrayList<>(plan.parts());
            List<Wire> wires = new ArrayList<>(plan.wires());
            Collections.shuffle(parts, new Random(seed));
            Collections.shuffle(wires, new Random(seed));
            assertThat(figures(plan.with(parts, wires))).containsExactlyInAnyOrderElementsOf(expected);
        }
    }

    /** What is found and how bad it is, to four digits. */
    private static List<List<Object>> figures(Plan plan) {
        return findings(plan).stream()
                .map(f -> List.<Object>of(
                        f.severity(),
                        f.code(),
                        Set.copyOf(f.ids()),
                        f.figures().stream()
                                .map(g -> String.format(Locale.ROOT, "%s %.4g", g.name(), g.value()))
                                .toList()))
                .toList();
    }
}
