package loomwright.service.plan;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Map;
import java.util.Objects;
import loomwright.answer.Progress;
import loomwright.backfeed.BackfeedLimits;
import loomwright.circuit.Condition;
import loomwright.circuit.Plan;
import loomwright.circuit.Plans;
import loomwright.comparison.ComparisonAnswer;
import loomwright.comparison.ComparisonQuestion;
import loomwright.diagnosis.DiagnosisAnswer;
import loomwright.diagnosis.DiagnosisLimits;
import loomwright.diagnosis.DiagnosisQuestion;
import loomwright.diagnosis.DiagnosisReport;
import loomwright.diagnosis.DiagnosisReport.Suspect;
import loomwright.diagnosis.MeterReading;
import loomwright.network.NetworkLimits;
import loomwright.operation.Contacts;
import loomwright.operation.PlanAnswer;
import loomwright.operation.PlanReadings;
import loomwright.operation.PlanReadings.BranchReading;
import loomwright.operation.PlanReadings.StepReadings;
import loomwright.service.form.CellNumbers;
import loomwright.service.form.Table;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;

/** The readings of a plan as one table: a row for each node, wire, part and contact, in each step. */
class PlanTablesTest {
    private static final Plan PLAN = Plans.example("sandpiper-bypass-relay");
    private static final PlanReadings READINGS =
            PlanAnswer.of(PLAN, NetworkLimits.defaults()).result();
    private static final List<List<@Nullable Object>> ROWS =
            PlanTables.readings(READINGS).rows();

    @Test
    void nothingIsLeftOut() {
        int expected = READINGS.steps().stream()
                .mapToInt(step -> step.nodes().size()
                        + step.wires().size()
                        + step.parts().size()
                        + step.connectors().stream()
                                .mapToInt(c -> c.contacts().size())
                                .sum())
                .sum();
        assertThat(ROWS).hasSize(expected);
    }

    @Test
    void aContactHasItsVoltsAmperesAndWatts() {
        for (StepReadings step : READINGS.steps()) {
            BranchReading contact = step.connectors().get(0).contacts().get(0);
            assertThat(ROWS)
                    .filteredOn(row -> step.step().equals(row.get(0)) && "C1: dash-half.1".equals(row.get(2)))
                    .singleElement()
                    .satisfies(row -> {
                        assertThat(row.subList(1, 2)).containsExactly("contact");
                        assertThat(row.subList(3, 5)).containsExactly(contact.voltageV(), contact.currentA());
                        assertThat(row.get(5)).isEqualTo(contact.voltageV() * contact.currentA());
                    });
        }
    }

    @Test
    void aDiagnosisHasTheVoltsOfAFlatBatteryInItsRow() {
        Plan plan = Plans.of(
                "{'kind':'battery','id':'battery'},{'kind':'earth','id':'body'},"
                        + "{'kind':'load','id':'radio','resistanceOhm':12,'meantLive':['run']}",
                "{'id':'W1','from':'battery.minus','to':'body.31','resistanceOhm':0.001},"
                        + "{'id':'W2','from':'battery.plus','to':'radio.a','resistanceOhm':0.01},"
                        + "{'id':'W3','from':'radio.b','to':'body.31','resistanceOhm':0.01}");
        MeterReading low = new MeterReading(
                "battery.plus",
                "battery.minus",
                null,
                Condition.OFF,
                Map.of(),
                Contacts.EITHER,
                false,
                11.0,
                null,
                null,
                null);
        DiagnosisReport report = DiagnosisAnswer.of(
                        DiagnosisQuestion.of(plan, List.of(low)),
                        DiagnosisLimits.defaults(),
                        NetworkLimits.defaults(),
                        Progress.UNWATCHED)
                .result();
        Table table = DiagnosisTables.table(report);
        assertThat(table.columns()).endsWith("description", "restV", "factor");
        Suspect flat = report.explanations().get(0).candidates().get(0);
        double restV = Objects.requireNonNull(flat.faults().get(0).restV());
        assertThat(table.rows().get(0)).contains(flat.description().text(), CellNumbers.text(restV));
        assertThat(table.rows()).allSatisfy(row -> assertThat(row).hasSameSizeAs(table.columns()));
    }

    @Test
    void aComparisonForAForumSaysHowGraveEachFindingIs() {
        Plan after = Plans.example("sandpiper-unguarded-bypass");
        String text = ComparisonTables.markdown(ComparisonAnswer.of(
                new ComparisonQuestion(PLAN, after, 0.1, 0.1),
                BackfeedLimits.defaults(),
                NetworkLimits.defaults(),
                Progress.UNWATCHED));
        assertThat(text).contains("- danger: The starter solenoid");
    }
}
