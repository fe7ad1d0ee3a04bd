package loomwright.operation;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import loomwright.circuit.Plan;
import loomwright.circuit.Plans;
import org.junit.jupiter.api.Test;

/** A wire is its length times the ohms per metre of its size at the temperature of its place, and its joints. */
class O03_WireTest {
    /** Copper 0.00393 per K (IEC 60028, from memory), against 20 C. */
    private static final double AT_30_C = 1.0393;

    @Test
    void theDropInAWireOfAStandardSize() {
        // IEC 60228 class 5, 2.5 mm2 plain: 7.98 ohm/km at 20 C, here at 30 C. 10 m carry 10 A from a current-taking
        // load.
        assertThat(drop("'size':'2.5 mm2','lengthM':10", "cabin")).isCloseTo(0.798 * AT_30_C, within(1e-6));
    }

    @Test
    void feetAreTurnedIntoMetres() {
        assertThat(drop("'size':'2.5 mm2','lengthFt':100", "cabin"))
                .isCloseTo(7.98e-3 * 30.48 * 10 * AT_30_C, within(1e-6));
    }

    @Test
    void aWireInTheEngineBayIsHotter() {
        // At 50 C, 1.1179 times the resistance at 20 C.
        assertThat(drop("'size':'2.5 mm2','lengthM':10", "engine-bay")).isCloseTo(0.798 * 1.1179, within(1e-6));
    }

    @Test
    void jointsAddTheirResistance() {
        assertThat(drop("'resistanceOhm':0.05,'fromJointResistanceOhm':0.01,'toJointResistanceOhm':0.02", "cabin"))
                .isCloseTo(0.8, within(1e-6));
    }

    private static double drop(String conductor, String place) {
        Plan plan = Plans.of(
                "{'kind':'battery','id':'B'},{'kind':'earth','id':'E'},"
                        + "{'kind':'load','id':'L','currentA':10,'meantLive':['run']}",
                "{'id':'W1','from':'B.plus','to':'L.a','place':'" + place + "'," + conductor + "},"
                        + "{'id':'W2','from':'L.b','to':'E.31','resistanceOhm':0.001},"
                        + "{'id':'W3','from':'B.minus','to':'E.31','resistanceOhm':0.001}");
        Solved solved = Solved.of(plan);
        return solved.voltageV(Step.RUN, "B.plus") - solved.voltageV(Step.RUN, "L.a");
    }
}
