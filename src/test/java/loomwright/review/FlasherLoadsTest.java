package loomwright.review;

import static loomwright.review.Reviews.figure;
import static loomwright.review.Reviews.find;
import static loomwright.review.Reviews.get;
import static loomwright.review.Reviews.plan;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Objects;
import loomwright.answer.Finding;
import loomwright.circuit.Plan;
import loomwright.review.context.FindingCode;
import loomwright.review.context.ReviewText;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Flasher units with lamps that they are not made for, in whichever position of the indicator switch. */
class FlasherLoadsTest {
    private static Plan indicators(String flasher, double leftW, double rightW) {
        String lamp = "{'kind':'lamp','id':'%s','ratedV':12,'ratedW':" + "%s,'meantLive':[]}";
        return plan(
                "{'kind':'flasher','id':'unit'" + flasher
                        + "},{'kind':'switch','id':'stalk','terminals':['49a','L','R'],"
                        + "'positions':[{'name':'off','joins':[]},{'name':'left','joins':[['49a','L']]},"
                        + "{'name':'right','joins':[['49a','R']]}]},"
                        + String.format(lamp, "left", leftW) + "," + String.format(lamp, "right", rightW),
                "{'id':'W1','from':'battery.plus','to':'unit.49','resistanceOhm':0.01},"
                        + "{'id':'W2','from':'unit.49a','to':'stalk.49a','resistanceOhm':0.01},"
                        + "{'id':'W3','from':'stalk.L','to':'left.a','resistanceOhm':0.01},"
                        + "{'id':'W4','from':'stalk.R','to':'right.a','resistanceOhm':0.01},"
                        + "{'id':'W5','from':'left.b','to':'body.31','resistanceOhm':0.01},"
                        + "{'id':'W6','from':'right.b','to':'body.31','resistanceOhm':0.01},"
                        + "{'id':'W7','from':'unit.31','to':'body.31','resistanceOhm':0.01}");
    }

    @Test
    void lampsThatSuitItAreNoFault() {
        Plan sound = indicators("", 47, 47);
        assertThat(find(sound, FindingCode.FLASHER_NOT_FLASHING)).isEmpty();
        assertThat(find(sound, FindingCode.FLASHER_OVERLOADED)).isEmpty();
        assertThat(find(sound, FindingCode.FLASHER_FAST)).isEmpty();
    }

    @Test
    void aLampMissingOnOneSideIsFoundWithTheSwitchOff() {
        Finding finding = get(indicators("", 47, 26), FindingCode.FLASHER_NOT_FLASHING);
        assertThat(finding.ids()).containsExactly("unit");
        // 0.7 of 47 W at 12 V.
        assertThat(figure(finding, "needsA")).isCloseTo(2.74, within(0.01));
        assertThat(figure(finding, "loadA")).isBetween(1.8, 2.5);
    }

    @ParameterizedTest
    @CsvSource({"'',FLASHER_NOT_FLASHING", "electronic,", "watching,FLASHER_FAST"})
    void lampsOfFourWattsInAll(String unit, FindingCode found) {
        String flasher =
                unit.isEmpty() ? "" : ",'construction':'electronic'" + (unit.equals("watching") ? ",'ratedW':47" : "");
        Plan plan = indicators(flasher, 4, 4);
        for (FindingCode code : new FindingCode[] {FindingCode.FLASHER_NOT_FLASHING, FindingCode.FLASHER_FAST}) {
            assertThat(find(plan, code).isPresent()).as(code.code()).isEqualTo(code == found);
        }
    }

    @Test
    void aTrailerOverloadsIt() {
        Finding finding = get(indicators("", 68, 47), FindingCode.FLASHER_OVERLOADED);
        assertThat(figure(finding, "limitA")).isCloseTo(1.25 * 47 / 12, within(1e-9));
    }

    @Test
    void oneThatIsStuckIsToBeReplaced() {
        Finding finding = get(indicators(",'stuck':'closed'", 47, 47), FindingCode.FLASHER_NOT_FLASHING);
        assertThat(finding.remedy()).isNotNull();
        assertThat(Objects.requireNonNull(finding.remedy()).code()).isEqualTo(ReviewText.REPLACE_FLASHER);
    }
}
