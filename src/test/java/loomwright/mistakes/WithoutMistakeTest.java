package loomwright.mistakes;

import static org.assertj.core.api.Assertions.assertThat;

import loomwright.answer.Progress;
import loomwright.answer.Severity;
import loomwright.circuit.Plan;
import loomwright.circuit.Plans;
import loomwright.mistakes.MistakesReport.Effect;
import loomwright.mistakes.MistakesReport.Limit;
import loomwright.mistakes.MistakesReport.Notice;
import loomwright.mistakes.MistakesReport.Overload;
import loomwright.network.NetworkLimits;
import org.junit.jupiter.api.Test;

/** What a plan does wrong as it is, is told once; no mistake is blamed for it. */
class WithoutMistakeTest {
    private static final MistakesOptions ALL = new MistakesOptions(10_000, Severity.NOTE, true);

    private static final String ALWAYS = "'meantLive':['off','accessory','run','crank','running']";

    /** A heater of 1 ohm blows its fuse of 3 A by itself; a buzzer without a return never works; the lamp is sound. */
    private static final Plan FAULTY = Plans.of(
            "{'kind':'battery','id':'battery'},{'kind':'earth','id':'body'},"
                    + "{'kind':'fuse','id':'F1','ratingA':3},{'kind':'load','id':'heater','resistanceOhm':1," + ALWAYS
                    + "},{'kind':'load','id':'buzzer','resistanceOhm':100," + ALWAYS
                    + "},{'kind':'lamp','id':'lamp','ratedV':12,'ratedW':5,'meantLive':['run']}",
            wire("W1", "battery.minus", "body.31")
                    + wire("W2", "battery.plus", "F1.a")
                    + wire("W3", "F1.b", "heater.a")
                    + wire("W4", "heater.b", "body.31")
                    + wire("W5", "battery.plus", "buzzer.a")
                    + wire("W6", "battery.plus", "lamp.a")
                    + "{'id':'W7','from':'lamp.b','to':'body.31','resistanceOhm':0.01}");

    private static final MistakesReport REPORT = MistakesAnswer.of(
                    FAULTY, ALL, NetworkLimits.defaults(), Progress.UNWATCHED)
            .result();

    private static String wire(String id, String from, String to) {
        return "{'id':'" + id + "','from':'" + from + "','to':'" + to + "','resistanceOhm':0.01},";
    }

    @Test
    void aFuseThatBlowsByItselfIsToldOnce() {
        assertThat(REPORT.withoutMistake().fusesBlown()).containsExactly("F1");
        assertThat(REPORT.withoutMistake().overloads())
                .filteredOn(o -> o.kind() == Limit.FUSE_RATING)
                .extracting(Overload::id, Overload::endedByFuse)
                .containsExactly(org.assertj.core.groups.Tuple.tuple("F1", true));
        assertThat(REPORT.mistakes()).allSatisfy(m -> assertThat(m.fusesBlown()).doesNotContain("F1"));
    }

    @Test
    void whatNeverWorksAndWhatWorksUnaskedIsToldOnce() {
        assertThat(REPORT.withoutMistake().notices())
                .extracting(Notice::effect, Notice::id)
                .containsExactlyInAnyOrder(
                        org.assertj.core.groups.Tuple.tuple(Effect.STOPS, "heater"),
                        org.assertj.core.groups.Tuple.tuple(Effect.STOPS, "buzzer"),
                        org.assertj.core.groups.Tuple.tuple(Effect.UNINTENDED, "lamp"));
        assertThat(REPORT.mistakes())
                .flatExtracting(MistakesReport.Mistake::notices)
                .noneMatch(n -> n.effect() == Effect.STOPS && !n.id().equals("lamp"))
                .noneMatch(n -> n.effect() == Effect.UNINTENDED && n.id().equals("lamp"));
    }

    @Test
    void ofASoundPlanNothingIsTold() {
        MistakesReport sound = MistakesAnswer.of(
                        Plans.example("otter-6v-positive-earth"), ALL, NetworkLimits.defaults(), Progress.UNWATCHED)
                .result();
        assertThat(sound.withoutMistake().summary()).isEmpty();
        assertThat(sound.withoutMistake().notices()).isEmpty();
    }
}
