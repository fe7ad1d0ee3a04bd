package loomwright.review;

import static loomwright.review.Reviews.figure;
import static loomwright.review.Reviews.find;
import static loomwright.review.Reviews.get;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import loomwright.answer.Finding;
import loomwright.answer.Progress;
import loomwright.answer.Severity;
import loomwright.circuit.Plan;
import loomwright.circuit.Plans;
import loomwright.circuit.TerminalRef;
import loomwright.circuit.fault.SingleFault;
import loomwright.mistakes.MistakesAnswer;
import loomwright.mistakes.MistakesOptions;
import loomwright.mistakes.MistakesReport;
import loomwright.network.NetworkLimits;
import loomwright.operation.Solved;
import loomwright.operation.SolvedStep;
import loomwright.operation.Step;
import loomwright.review.context.FindingCode;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** A regulator that measures at its sense terminal, and what is said when nothing reaches that. */
class SenseTerminalTest {
    private static final String SENSE =
            ",{'id':'sense','from':'alternator.S','to':'battery.%s','size':'1 mm2','lengthM':3}";

    /** A machine of 14 V behind a charging wire of 0.05 ohm, a battery of 12.5 V and 0.2 ohm; the same in positive earth. */
    private static Plan car(String polarity, String senseLost, String more) {
        boolean negative = polarity.equals("negative");
        String live = negative ? "plus" : "minus";
        String earthed = negative ? "minus" : "plus";
        return Plans.of(
                12,
                polarity,
                "{'kind':'battery','id':'battery','emfV':12.5,'internalResistanceOhm':0.01,'chargeResistanceOhm':0.2},"
                        + "{'kind':'alternator','id':'alternator','regulatedV':14,'sourceResistanceOhm':0.02,'limitA':60,"
                        + "'selfExciting':true" + senseLost + "},{'kind':'earth','id':'body'},"
                        + "{'kind':'lamp','id':'lamp','ratedV':12,'ratedW':55,'meantLive':['run','running']}",
                "{'id':'W1','from':'battery." + earthed + "','to':'body.31','resistanceOhm':0.000001},"
                        + "{'id':'W2','from':'alternator." + (negative ? "B-" : "B+")
                        + "','to':'body.31','resistanceOhm':0.000001},"
                        + "{'id':'W3','from':'alternator." + (negative ? "B+" : "B-") + "','to':'battery." + live
                        + "','resistanceOhm':0.05},"
                        + "{'id':'W4','from':'battery." + live + "','to':'lamp.a','resistanceOhm':0.01},"
                        + "{'id':'W5','from':'lamp.b','to':'body.31','resistanceOhm':0.01}" + more.formatted(live));
    }

    private static double batteryV(Plan plan) {
        SolvedStep running = Solved.of(plan).in(Step.RUNNING);
        return Math.abs(running.acrossV(TerminalRef.parse("battery.plus"), TerminalRef.parse("battery.minus")));
    }

    /** By hand, with the lamp at 5 A: 14 V less 0.02 ohm of some 12 A at the battery; without it less 0.07 ohm of them. */
    @ParameterizedTest
    @CsvSource({"negative", "positive"})
    void theVoltsAreHeldWhereTheSenseWireEnds(String polarity) {
        assertThat(batteryV(car(polarity, ",'senseLost':'full-output'", SENSE))).isCloseTo(13.77, within(0.05));
        assertThat(batteryV(car(polarity, ",'senseLost':'falls-back'", SENSE))).isCloseTo(13.77, within(0.05));
        assertThat(batteryV(car(polarity, "", ""))).isCloseTo(13.35, within(0.1));
        assertThat(find(car(polarity, ",'senseLost':'full-output'", SENSE), FindingCode.SENSE_LOST))
                .isEmpty();
    }

    @ParameterizedTest
    @CsvSource({"negative", "positive"})
    void aRegulatorThatMeasuresNothingGivesAllItCan(String polarity) {
        Finding finding = get(car(polarity, ",'senseLost':'full-output'", ""), FindingCode.SENSE_LOST);
        assertThat(finding.severity()).isEqualTo(Severity.DANGER);
        assertThat(finding.ids()).containsExactly("alternator");
        assertThat(figure(finding, "outputV")).isGreaterThan(17);
        assertThat(figure(finding, "senseV")).isCloseTo(0, within(1e-6));
        assertThat(find(car(polarity, ",'senseLost':'full-output'", ""), FindingCode.LAMP_OVERVOLTAGE))
                .isPresent();
    }

    /** Service manual of a 1998 car: slightly more than it is set to, still controlled. */
    @ParameterizedTest
    @CsvSource({"negative", "positive"})
    void oneThatFallsBackIsANoteAndSlightlyHigherAtItsOutput(String polarity) {
        Finding finding = get(car(polarity, ",'senseLost':'falls-back'", ""), FindingCode.SENSE_LOST);
        assertThat(finding.severity()).isEqualTo(Severity.NOTE);
        assertThat(figure(finding, "outputV")).isBetween(14.0, 14.3);
    }

    @ParameterizedTest
    @CsvSource({"full-output, true", "falls-back, false"})
    void aSenseWireThatComesOffIsAsBadAsTheReviewSays(String senseLost, boolean overcharged) {
        Plan plan = car("negative", ",'senseLost':'" + senseLost + "'", SENSE);
        MistakesReport.Mistake off = MistakesAnswer.of(
                        plan,
                        new MistakesOptions(10_000, Severity.NOTE, true),
                        NetworkLimits.defaults(),
                        Progress.UNWATCHED)
                .result()
                .mistakes()
                .stream()
                .filter(mistake -> mistake.kind() == SingleFault.Kind.WIRE_OFF
                        && mistake.ids().contains("sense"))
                .findFirst()
                .orElseThrow();
        assertThat(off.notes().stream().anyMatch(note -> note.code().code().equals("overcharged")))
                .isEqualTo(overcharged);
        assertThat(off.severity() == Severity.DANGER).isEqualTo(overcharged);
    }
}
