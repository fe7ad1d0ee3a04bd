package loomwright.readings;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import loomwright.answer.Caution;
import loomwright.answer.InputError;
import loomwright.answer.Progress;
import loomwright.answer.RejectedInput;
import loomwright.circuit.Condition;
import loomwright.circuit.Plan;
import loomwright.circuit.Plans;
import loomwright.network.NetworkLimits;
import loomwright.operation.Quantity;
import loomwright.readings.ReadingsQuestion.Tolerance;
import loomwright.readings.ReadingsSheet.Purpose;
import loomwright.readings.ReadingsSheet.Reading;
import org.junit.jupiter.api.Test;

/** What can be asked for: conditions, one circuit, tolerances, accuracy of the meter. */
class R03_OptionsTest {
    private static final Plan TOURER = Plans.example("sandpiper-as-built");

    @Test
    void onlyTheConditionsAskedFor() {
        ReadingsSheet sheet =
                Sheets.of(new ReadingsQuestion(TOURER, List.of(Condition.RUN), null, null, List.of(), 1.0));
        assertThat(sheet.readings())
                .filteredOn(r -> r.quantity() == Quantity.VOLTS)
                .isNotEmpty()
                .allMatch(r -> r.taken().condition() == Condition.RUN);
        assertThat(sheet.leftOut())
                .anyMatch(message -> message.code() == ReadingText.NOT_POWERED
                        && message.text().contains("Starter motor"));
    }

    @Test
    void onlyOneCircuit() {
        ReadingsSheet sheet = Sheets.of(new ReadingsQuestion(TOURER, List.of(), "head-left", null, List.of(), 1.0));
        assertThat(sheet.readings())
                .hasSizeLessThan(20)
                .allMatch(r -> r.circuit() == null || r.circuit().equals("head-left"));
        assertThat(sheet.readings())
                .filteredOn(r -> r.purpose() == Purpose.CONTINUITY)
                .extracting(r -> r.leads().red())
                .containsExactly("F1.a");
    }

    @Test
    void whoMeasuresWithTheEngineTurningIsWarnedOfMovingParts() {
        Plan lamp = Plans.of(
                "{'kind':'battery','id':'B'},{'kind':'earth','id':'E'},"
                        + "{'kind':'lamp','id':'L','ratedV':12,'ratedW':10,'meantLive':['run','running']}",
                "{'id':'W1','from':'B.plus','to':'L.a','resistanceOhm':0.1},"
                        + "{'id':'W2','from':'L.b','to':'E.31','resistanceOhm':0.1},"
                        + "{'id':'W3','from':'B.minus','to':'E.31','resistanceOhm':0.1}");
        assertThat(cautions(lamp, Condition.RUN)).doesNotContain(Caution.MOVING_PARTS);
        assertThat(cautions(lamp, Condition.RUNNING)).contains(Caution.MOVING_PARTS);
    }

    private static List<Caution> cautions(Plan plan, Condition condition) {
        return ReadingsAnswer.of(
                        new ReadingsQuestion(plan, List.of(condition), null, null, List.of(), 1.0),
                        NetworkLimits.defaults(),
                        Progress.UNWATCHED)
                .cautions();
    }

    @Test
    void withoutToleranceOnlyTheMeterIsLeft() {
        Plan exact = Plans.parse("{'schema':'loomwright/plan/1','name':'heater','system':{'nominalVoltageV':12},"
                + "'conditions':{'off':{'emfV':12,'internalResistanceOhm':0.1,'tolerancePercent':0}},"
                + "'parts':[{'kind':'battery','id':'B'},{'kind':'earth','id':'E'},"
                + "{'kind':'load','id':'H','resistanceOhm':2.3,'meantLive':['off']}],"
                + "'wires':[{'id':'W1','from':'B.plus','to':'H.a','resistanceOhm':0.3},"
                + "{'id':'W2','from':'H.b','to':'E.31','resistanceOhm':0.2},"
                + "{'id':'W3','from':'B.minus','to':'E.31','resistanceOhm':0.1}]}");
        ReadingsSheet sheet = Sheets.of(
                new ReadingsQuestion(exact, List.of(Condition.OFF), null, 0.0, List.of(new Tolerance("W1", 10)), 0.0));
        // 12 V over 0.1 + 0.3 + 2.3 + 0.2 + 0.1 = 3 ohm: 4 A; the battery's own resistance keeps its 20 per cent.
        Reading across = Sheets.one(sheet, Purpose.LOAD, "key off", "H.a", "H.b");
        assertThat(across.expected().nominal()).isCloseTo(9.2, within(1e-9));
        // W1 at 0.27 ohm, battery at 0.08: 12/2.95 x 2.3 = 9.356; two steps of 0.01 V, a twentieth of the width.
        assertThat(across.expected().highest()).isCloseTo(9.356 + 0.02, within(0.03));
        Reading ohms = Sheets.one(sheet, Purpose.OWN_RESISTANCE, "battery disconnected, key off", "H.a", "H.b");
        assertThat(ohms.expected().lowest()).isCloseTo(2.3 - 0.2, within(1e-9));
        assertThat(ohms.expected().highest()).isCloseTo(2.3 + 0.2, within(1e-9));
    }

    @Test
    void whatIsNotInThePlanIsRefused() {
        ReadingsQuestion question =
                new ReadingsQuestion(TOURER, List.of(), "points", null, List.of(new Tolerance("W99", 5)), 1.0);
        assertThatThrownBy(() -> Sheets.of(question))
                .isInstanceOfSatisfying(
                        RejectedInput.class,
                        e -> assertThat(e.faults())
                                .extracting(InputError::pointer)
                                .containsExactly("/load", "/tolerances/0"));
    }
}
