package loomwright.operation;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Set;
import loomwright.circuit.Plan;
import loomwright.circuit.Plans;
import org.junit.jupiter.api.Test;

/** Feature 17: the second way to the figures of a plan gives what a pencil gives. */
class O17_DenseOracleTest {
    private static final int MOST_STATES = 64;

    @Test
    void knowsOhmsLawAndHalfAnAmpere() {
        Plan plan = Plans.parse("{'schema':'loomwright/plan/1','name':'by hand','system':{'nominalVoltageV':12},"
                + "'conditions':{'off':{'emfV':12.5,'internalResistanceOhm':1}},'parts':[{'kind':'battery','id':'B'},"
                + "{'kind':'earth','id':'E'},{'kind':'resistor','id':'R','resistanceOhm':22}],'wires':["
                + "{'id':'W1','from':'B.plus','to':'R.a','resistanceOhm':1},"
                + "{'id':'W2','from':'R.b','to':'E.31','resistanceOhm':0.5},"
                + "{'id':'W3','from':'B.minus','to':'E.31','resistanceOhm':0.5}]}");
        OracleFigures figures = new DenseOracle(plan).solve(Step.OFF, Set.of());
        assertThat(figures.currentsA().get(DenseOracle.key("R", "R.a", "R.b"))).isCloseTo(0.5, within(1e-12));
        assertThat(figures.voltageV("R.a")).isCloseTo(11.25, within(1e-12));
        assertThat(figures.voltageV("B.minus")).isCloseTo(-0.25, within(1e-12));
    }

    /** 48 W behind 0.5 ohm at 14 V: V² - 14 V + 24 = 0, V = 12 (or 2, which is not the one wanted). */
    @Test
    void takesTheHigherVoltageOfAConstantPower() {
        Plan plan = Plans.parse("{'schema':'loomwright/plan/1','name':'by hand','system':{'nominalVoltageV':12},"
                + "'conditions':{'off':{'emfV':14,'internalResistanceOhm':0.3}},'parts':[{'kind':'battery','id':'B'},"
                + "{'kind':'earth','id':'E'},{'kind':'load','id':'L','powerW':48,'meantLive':[]}],'wires':["
                + "{'id':'W1','from':'B.plus','to':'L.a','resistanceOhm':0.1},"
                + "{'id':'W2','from':'L.b','to':'E.31','resistanceOhm':0.05},"
                + "{'id':'W3','from':'B.minus','to':'E.31','resistanceOhm':0.05}]}");
        DenseOracle oracle = new DenseOracle(plan);
        Set<String> on = oracle.rests(Step.OFF, Set.of(), MOST_STATES).only();
        assertThat(on).containsExactly("L");
        OracleFigures figures = oracle.solve(Step.OFF, on);
        assertThat(figures.voltageV("L.a") - figures.voltageV("L.b")).isCloseTo(12, within(1e-9));
    }

    /** Twice a diode of 0.7 V and 0.1 ohm and a lamp of 12 V 24 W at exactly 12 V: 2 A. */
    @Test
    void knowsDiodesAndLamps() {
        Plan plan = Plans.parse("{'schema':'loomwright/plan/1','name':'by hand','system':{'nominalVoltageV':12},"
                + "'conditions':{'off':{'emfV':14,'internalResistanceOhm':0.05}},'parts':["
                + "{'kind':'battery','id':'B'},{'kind':'earth','id':'E'},"
                + "{'kind':'diode','id':'D1','slopeOhm':0.1},{'kind':'diode','id':'D2','slopeOhm':0.1},"
                + "{'kind':'diode','id':'against','slopeOhm':0.1},"
                + "{'kind':'lamp','id':'L','ratedV':12,'ratedW':24,'meantLive':[]}],'wires':["
                + "{'id':'W1','from':'B.plus','to':'D1.anode','resistanceOhm':0.02},"
                + "{'id':'W2','from':'D1.cathode','to':'L.a','resistanceOhm':0.01},"
                + "{'id':'W3','from':'L.b','to':'D2.anode','resistanceOhm':0.01},"
                + "{'id':'W4','from':'D2.cathode','to':'E.31','resistanceOhm':0.005},"
                + "{'id':'W5','from':'against.cathode','to':'L.a','resistanceOhm':0.01},"
                + "{'id':'W6','from':'against.anode','to':'E.31','resistanceOhm':0.01},"
                + "{'id':'W7','from':'B.minus','to':'E.31','resistanceOhm':0.005}]}");
        OracleFigures figures = new DenseOracle(plan).solve(Step.OFF, Set.of());
        assertThat(figures.currentsA().get(DenseOracle.key("L", "L.a", "L.b"))).isCloseTo(2, within(1e-9));
        assertThat(figures.currentsA().get(DenseOracle.key("against", "against.anode", "against.cathode")))
                .isZero();
    }
}
