package loomwright.operation;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import loomwright.circuit.ForEachExample;
import loomwright.circuit.Plan;
import loomwright.circuit.Plans;
import loomwright.operation.PlanReadings.BranchReading;
import loomwright.operation.PlanReadings.ConnectorReading;
import loomwright.operation.PlanReadings.PartReading;
import loomwright.operation.PlanReadings.StepReadings;
import loomwright.operation.PlanReadings.WireReading;
import org.junit.jupiter.api.Test;

/** A connector joins the ways of the same name of its two halves, each by the resistance of a contact. */
class O16_ConnectorTest {
    /** 10 A go through way 1; way 2 of the one half has nothing opposite. */
    private static final Plan PLUGGED = Plans.parse("{'schema':'loomwright/plan/1','name':'plugged',"
            + "'system':{'nominalVoltageV':12},'parts':["
            + "{'kind':'battery','id':'B'},{'kind':'earth','id':'E'},"
            + "{'kind':'load','id':'L','currentA':10,'meantLive':['run']},"
            + "{'kind':'connector-half','id':'one','terminals':['1','2'],'form':'blade','widthMm':6.3,'gender':'male'},"
            + "{'kind':'connector-half','id':'other','terminals':['1'],'form':'blade','widthMm':6.3,'gender':'female'}],"
            + "'wires':[{'id':'W1','from':'B.plus','to':'one.1','resistanceOhm':0.001},"
            + "{'id':'W2','from':'other.1','to':'L.a','resistanceOhm':0.001},"
            + "{'id':'W3','from':'L.b','to':'E.31','resistanceOhm':0.001},"
            + "{'id':'W4','from':'B.minus','to':'E.31','resistanceOhm':0.001}],"
            + "'connectors':[{'id':'C','halves':['one','other'],'contactResistanceOhm':0.01}]}");

    @Test
    void eachContactTellsItsCurrentItsVoltsAndTheHeat() {
        ConnectorReading connector =
                Solved.of(PLUGGED).read(Step.RUN).connectors().get(0);
        assertThat(connector.connector()).isEqualTo("C");
        assertThat(connector.contacts()).hasSize(1);
        BranchReading contact = connector.contacts().get(0);
        assertThat(contact.from()).isEqualTo("one.1");
        assertThat(contact.to()).isEqualTo("other.1");
        assertThat(contact.currentA()).isCloseTo(10, within(1e-9));
        assertThat(contact.voltageV()).isCloseTo(0.1, within(1e-9));
        assertThat(connector.powerW()).isCloseTo(1, within(1e-9));
    }

    @Test
    void aConnectorThatCarriesNothingIsToldToo() {
        Plan plan = Plans.example("sandpiper-as-built");
        assertThat(Solved.of(plan).read(Step.OFF).connectors())
                .hasSameSizeAs(plan.connectors())
                .allSatisfy(c -> {
                    assertThat(c.powerW()).isZero();
                    assertThat(c.contacts())
                            .isNotEmpty()
                            .allSatisfy(b -> assertThat(b.currentA()).isZero());
                });
    }

    /** Nothing of the power is missing from the tables. */
    @ForEachExample
    void whatWiresPartsAndConnectorsTakeAddsUpToNothing(String name) {
        Solved solved = Solved.of(Plans.example(name));
        for (Step step : Step.values()) {
            StepReadings readings = solved.read(step);
            double inWiresW =
                    readings.wires().stream().mapToDouble(WireReading::powerW).sum();
            double inPartsW =
                    readings.parts().stream().mapToDouble(PartReading::powerW).sum();
            double inConnectorsW = readings.connectors().stream()
                    .mapToDouble(ConnectorReading::powerW)
                    .sum();
            double amountW = readings.parts().stream()
                    .mapToDouble(p -> Math.abs(p.powerW()))
                    .sum();
            assertThat(inWiresW + inPartsW + inConnectorsW).isCloseTo(0, within(1e-9 * (1 + amountW)));
        }
    }
}
