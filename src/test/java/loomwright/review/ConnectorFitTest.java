package loomwright.review;

import static loomwright.message.MessageFinder.words;
import static org.assertj.core.api.Assertions.assertThat;

import loomwright.answer.Finding;
import loomwright.answer.Severity;
import loomwright.circuit.Plan;
import loomwright.circuit.Plans;
import loomwright.review.context.FindingCode;
import org.junit.jupiter.api.Test;

/** Halves that a plan joins though they cannot be pushed together. */
class ConnectorFitTest {
    private static Plan joined(String one, String other) {
        return Plans.parse("{'schema':'loomwright/plan/1','name':'plug','system':{'nominalVoltageV':12},'parts':["
                + "{'kind':'connector-half','id':'loom','label':'Loom half','terminals':['1']," + one + "},"
                + "{'kind':'connector-half','id':'lamp-half','label':'Lamp half','terminals':['1']," + other
                + "},{'kind':'battery','id':'battery'},{'kind':'earth','id':'body'}],'wires':["
                + "{'id':'W0','from':'battery.minus','to':'body.31','resistanceOhm':0.001},{'id':'W1','from':'battery.plus','to':'loom.1','resistanceOhm':0.001}],"
                + "'connectors':[{'id':'C','halves':['loom','lamp-half']}]}");
    }

    private static Finding misfit(String one, String other) {
        return Reviews.get(joined(one, other), FindingCode.CONNECTOR_HALVES_DO_NOT_FIT);
    }

    @Test
    void aMaleAndAFemaleOfTheSameFormAndWidthFit() {
        assertThat(Reviews.codes(joined(
                        "'form':'bullet','widthMm':4,'gender':'male'",
                        "'form':'bullet','widthMm':4,'gender':'female'")))
                .doesNotContain("connector-halves-do-not-fit");
    }

    @Test
    void twoFemaleBulletsDoNot() {
        Finding finding = misfit(
                "'form':'bullet','widthMm':4,'gender':'female'", "'form':'bullet','widthMm':4,'gender':'female'");
        assertThat(finding.severity()).isEqualTo(Severity.WARNING);
        assertThat(finding.ids()).containsExactly("C", "loom", "lamp-half");
        assertThat(words(finding.message(), "obstacles")).containsExactly("same-gender");
    }

    /** They are not pushed into each other but bolted on one stud. */
    @Test
    void twoRingsOnOneStudFitWhateverTheirGender() {
        for (String gender : new String[] {"male", "female"}) {
            assertThat(Reviews.codes(joined(
                            "'form':'ring','widthMm':8,'gender':'female'",
                            "'form':'ring','widthMm':8,'gender':'" + gender + "'")))
                    .doesNotContain("connector-halves-do-not-fit");
        }
        assertThat(words(
                        misfit(
                                        "'form':'ring','widthMm':8,'gender':'female'",
                                        "'form':'ring','widthMm':6,'gender':'female'")
                                .message(),
                        "obstacles"))
                .contains("other-width");
    }

    @Test
    void norABladeAndARing() {
        assertThat(words(
                        misfit(
                                        "'form':'blade','widthMm':6.3,'gender':'male'",
                                        "'form':'ring','widthMm':8,'gender':'female'")
                                .message(),
                        "obstacles"))
                .contains("other-form");
    }

    @Test
    void norBladesOfDifferentWidth() {
        assertThat(words(
                        misfit(
                                        "'form':'blade','widthMm':6.3,'gender':'male'",
                                        "'form':'blade','widthMm':4.8,'gender':'female'")
                                .message(),
                        "obstacles"))
                .contains("other-width");
    }
}
