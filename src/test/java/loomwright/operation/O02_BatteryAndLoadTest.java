package loomwright.operation;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import loomwright.circuit.Plan;
import loomwright.circuit.Plans;
import org.junit.jupiter.api.Test;

/** One battery with internal resistance, one load: the loop of the textbooks. */
class O02_BatteryAndLoadTest {
    /** Smallest resistance a wire may have: three of them change the figures below by less than 1e-4. */
    private static final String WIRE = "'resistanceOhm':0.000001";

    @Test
    void aStarterMotorAtItsBattery() {
        // OpenStax University Physics vol. 2, 10.1, problem on a starter motor: 0.0500 ohm at 12.0 V with 0.0100 ohm
        // takes 200 A; 10.0 V and 2.00 kW are left.
        Solved solved = Solved.of(loop(
                "{'kind':'motor','id':'M','resistanceOhm':0.05,'meantLive':['crank']}", "M", "33", "32", 12, 0.01));
        assertThat(solved.currentA(Step.CRANK, "M")).isCloseTo(200, within(0.01));
        assertThat(solved.acrossV(Step.CRANK, "M")).isCloseTo(10.0, within(0.001));
        assertThat(solved.acrossV(Step.CRANK, "M") * solved.currentA(Step.CRANK, "M"))
                .isCloseTo(2000, within(0.3));
    }

    @Test
    void aHeadlampTakesItsRatedCurrentAtItsRatedVoltage() {
        // OpenStax College Physics 20.2 and 20.4: headlamp 12.0 V, 2.50 A, 30.0 W, hot 4.80 ohm.
        Solved solved = Solved.of(
                loop("{'kind':'lamp','id':'L','ratedV':12,'ratedW':30,'meantLive':['crank']}", "L", "a", "b", 12, 0));
        assertThat(solved.currentA(Step.CRANK, "L")).isCloseTo(2.5, within(1e-4));
    }

    @Test
    void theTerminalVoltageOfABatteryUnderLoad() {
        // OpenStax University Physics vol. 2, 10.1: EMF 12.00 V, 0.100 ohm, load 10.00 ohm: 1.188 A, 11.881 V.
        Solved solved = Solved.of(
                loop("{'kind':'load','id':'L','resistanceOhm':10,'meantLive':['crank']}", "L", "a", "b", 12, 0.1));
        assertThat(solved.currentA(Step.CRANK, "L")).isCloseTo(1.188, within(5e-4));
        assertThat(solved.acrossV(Step.CRANK, "L")).isCloseTo(11.881, within(5e-4));
    }

    @Test
    void twoBatteriesInSeriesShareTheSystemVoltage() {
        Plan plan = Plans.of(
                24,
                "negative",
                "{'kind':'battery','id':'B1','nominalVoltageV':12},{'kind':'battery','id':'B2','nominalVoltageV':12},"
                        + "{'kind':'earth','id':'E'}",
                "{'id':'W1','from':'B1.minus','to':'E.31'," + WIRE + "},{'id':'W2','from':'B1.plus','to':'B2.minus',"
                        + WIRE + "}");
        Solved solved = Solved.of(plan);
        assertThat(solved.voltageV(Step.RUN, "B1.plus")).isCloseTo(12.6, within(1e-9));
        assertThat(solved.voltageV(Step.RUN, "B2.plus")).isCloseTo(25.2, within(1e-9));
    }

    private static Plan loop(String part, String id, String feed, String back, double emfV, double internalOhm) {
        return Plans.parse("{'schema':'loomwright/plan/1','name':'loop','system':{'nominalVoltageV':12},"
                + "'conditions':{'crank':{'emfV':" + emfV + ",'internalResistanceOhm':" + internalOhm + "}},"
                + "'parts':[{'kind':'battery','id':'B'},{'kind':'earth','id':'E'}," + part + "],"
                + "'wires':[{'id':'W1','from':'B.plus','to':'" + id + "." + feed + "'," + WIRE + "},"
                + "{'id':'W2','from':'" + id + "." + back + "','to':'E.31'," + WIRE + "},"
                + "{'id':'W3','from':'B.minus','to':'E.31'," + WIRE + "}]}");
    }
}
