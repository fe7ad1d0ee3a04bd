package loomwright.operation;

import static loomwright.operation.O04_RelayTest.wires;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import loomwright.circuit.Plans;
import org.junit.jupiter.api.Test;

/** Feature 32: motors that are held fast. */
class O32_StalledMotorTest {
    private static Solved motor(double nominalV, double emfV, double insideOhm, String motor) {
        return Solved.of(Plans.of(
                nominalV,
                "negative",
                "{'kind':'earth','id':'M'},{'kind':'battery','id':'B','emfV':" + emfV + ",'internalResistanceOhm':"
                        + insideOhm + "},{'kind':'motor','id':'motor','meantLive':['run']," + motor + "}",
                wires("B.minus M.31", "B.plus motor.33", "motor.32 M.31")));
    }

    /** Its current at some volts across it: held fast it is a resistance. */
    private static double atVolts(Solved locked, double acrossV) {
        return locked.currentA(Step.RUN, "motor") * acrossV / locked.acrossV(Step.RUN, "motor");
    }

    /** Workshop manuals, from memory: an inertia starter takes 330 to 450 A locked, at 7.0 to 7.8 V. */
    @Test
    void aLockedStarterTakesThreeTimesWhatItTakesTurning() {
        Solved locked = motor(12, 12.6, 0.0118, "'resistanceOhm':0.08,'stalled':true");
        double currentA = locked.currentA(Step.RUN, "motor");
        assertThat(currentA).isBetween(330.0, 450.0);
        assertThat(locked.acrossV(Step.RUN, "motor")).isBetween(7.0, 7.8);
        assertThat(motor(12, 12.6, 0.0118, "'resistanceOhm':0.08").currentA(Step.RUN, "motor"))
                .isBetween(100.0, 150.0);
    }

    /** Service specification of a car of 2001, starter of 1.4 kW: 780 to 980 A locked at 4 V. */
    @Test
    void aStarterWithItsWindingStated() {
        Solved locked = motor(12, 4, 1e-6, "'resistanceOhm':0.05,'windingOhm':0.0044,'stalled':true");
        assertThat(atVolts(locked, 4)).isBetween(780.0, 980.0);
    }

    /** US Army TM 5-3431-205-15: 265 A locked at 19.1 V. */
    @Test
    void aStarterOfTwentyFourVolts() {
        Solved locked = motor(24, 19.1, 1e-6, "'resistanceOhm':0.3,'windingOhm':0.072,'stalled':true");
        assertThat(atVolts(locked, 19.1)).isCloseTo(265, within(3.0));
    }

    @Test
    void oneThatIsHeldFastDoesNotWork() {
        Solved locked = motor(12, 12.6, 0.01, "'resistanceOhm':2.4,'stalled':true");
        assertThat(locked.activity(Step.RUN, "motor")).isEqualTo(FeedStrength.LEAKS);
        assertThat(locked.state(Step.RUN, "motor")).isEqualTo("stalled");
        assertThat(motor(12, 12.6, 0.01, "'resistanceOhm':2.4").activity(Step.RUN, "motor"))
                .isEqualTo(FeedStrength.OPERATES);
    }
}
