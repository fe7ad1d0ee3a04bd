package loomwright.operation;

import static loomwright.operation.O04_RelayTest.wires;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.Objects;
import loomwright.circuit.Motor;
import loomwright.circuit.Plan;
import loomwright.circuit.Plans;
import loomwright.operation.PlanReadings.StepReadings;
import loomwright.operation.PlanReadings.SwitchOnReading;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Feature 33: series-wound motors, motors that generate while they run down, and the instant of switching on. */
class O33_MotorTest {
    private static Plan starter(double emfV, double insideOhm, String motor) {
        return Plans.of(
                12,
                "negative",
                "{'kind':'earth','id':'M'},{'kind':'battery','id':'B','emfV':" + emfV + ",'internalResistanceOhm':"
                        + insideOhm + "},{'kind':'motor','id':'motor','meantLive':['run']," + motor + "}",
                wires("B.minus M.31", "B.plus motor.33", "motor.32 M.31"));
    }

    private static StepReadings run(Plan plan) {
        return Solved.of(plan).read(Step.RUN);
    }

    private static double speedShare(Plan plan) {
        return Objects.requireNonNull(run(plan).parts().stream()
                .filter(part -> part.part().equals("motor"))
                .findFirst()
                .orElseThrow()
                .speedShare());
    }

    /** Torque of a series motor follows its current alone, so that an engine that resists as much takes as many amperes at any volts. */
    @ParameterizedTest
    @CsvSource({"13, 0.01", "12.6, 0.02", "10, 0.01", "8, 0.01"})
    void aSeriesWoundStarterTakesTheSameCurrentAtAnyVolts(double emfV, double insideOhm) {
        Solved solved = Solved.of(starter(emfV, insideOhm, "'resistanceOhm':0.08,'excitation':'series'"));
        // 125 A at 10 V; three leads of 0.001 ohm.
        assertThat(solved.currentA(Step.RUN, "motor")).isCloseTo(125, within(0.01));
        assertThat(solved.acrossV(Step.RUN, "motor")).isCloseTo(emfV - 125 * (insideOhm + 0.003), within(0.01));
    }

    /**
     * Service specification of a car of 2001, starter of 1.4 kW: 300 A at 7.7 V under load, 780 to 980 A at 4 V locked. V = k I n + I R:
     * with R from the locked test, at 5.8 V and the same load it turns at (5.8 - 1.32) over (7.7 - 1.32) of the speed.
     */
    @Test
    void itsSpeedFollowsTheVoltsLessTheDropInItsWinding() {
        Motor motor = new Motor(
                "motor", null, 10 / 300.0, Motor.Excitation.SERIES, 0.0044, false, null, null, List.of(), List.of());
        var system = Plans.of("{'kind':'battery','id':'B'}", "").system();
        double at77V = motor.speedShare(7.7, system);
        assertThat(motor.speedShare(5.8, system) / at77V).isCloseTo(4.48 / 6.38, within(1e-3));
        assertThat(motor.speedShare(10, system)).isCloseTo(1, within(1e-12));
        assertThat(motor.speedShare(1.3, system)).isZero();
    }

    /** Too few volts to turn: nothing but its winding, here 0.02 ohm behind 0.06, and three leads of 0.001. */
    @Test
    void withTooFewVoltsItStandsAndIsItsWinding() {
        Solved solved = Solved.of(starter(6, 0.06, "'resistanceOhm':0.08,'excitation':'series'"));
        assertThat(solved.currentA(Step.RUN, "motor")).isCloseTo(6 / 0.083, within(0.01));
        assertThat(solved.activity(Step.RUN, "motor")).isNotEqualTo(FeedStrength.OPERATES);
    }

    /** Workshop manuals, from memory: an inertia starter takes 330 to 450 A at 7.0 to 7.8 V as long as it stands. */
    @Test
    void inTheInstantItIsSwitchedOnAStarterStillStands() {
        StepReadings run = run(starter(12.6, 0.0118, "'resistanceOhm':0.08,'excitation':'series'"));
        assertThat(run.transients().switchOns()).hasSize(1);
        SwitchOnReading instant = run.transients().switchOns().get(0);
        assertThat(instant.part()).isEqualTo("motor");
        assertThat(instant.currentA()).isBetween(330.0, 450.0);
        assertThat(instant.acrossV()).isBetween(7.0, 7.8);
        assertThat(instant.batteryV()).isGreaterThan(instant.acrossV()).isLessThan(8.5);
        assertThat(speedShare(starter(12.6, 0.0118, "'resistanceOhm':0.08,'excitation':'series'")))
                .isBetween(1.0, 1.2);
    }

    /** A glow plug of a heater is 0.263 to 0.323 ohm (heater technical manual); cold, 12 V drive 37 to 46 A through it. */
    @Test
    void aGlowPlugTakesMoreWhileItIsCold() {
        StepReadings run = run(Plans.of(
                12,
                "negative",
                "{'kind':'earth','id':'M'},{'kind':'battery','id':'B','emfV':12,'internalResistanceOhm':0.0001},"
                        + "{'kind':'load','id':'plug','resistanceOhm':1.1,'switchOnOhm':0.29,'meantLive':['run']},"
                        + "{'kind':'load','id':'lamp','resistanceOhm':10,'meantLive':['run']}",
                wires("B.minus M.31", "B.plus plug.a", "plug.b M.31", "B.plus lamp.a", "lamp.b M.31")));
        assertThat(run.transients().switchOns()).hasSize(1);
        assertThat(run.transients().switchOns().get(0).currentA()).isBetween(37.0, 46.0);
    }

    private static Solved fanOnTheIgnition(String polarity, String excitation) {
        String positions = "[{'name':'off','joins':[]},{'name':'on','joins':[['in','out']]}]";
        String battery = polarity.equals("negative") ? "B.minus M.31|B.plus key.in" : "B.plus M.31|B.minus key.in";
        return Solved.of(Plans.of(
                12,
                polarity,
                "{'kind':'earth','id':'M'},{'kind':'battery','id':'B'},"
                        + "{'kind':'switch','id':'key','terminals':['in','out'],'positions':" + positions
                        + ",'positionByCondition':{'off':'off','accessory':'off','run':'on','crank':'on','running':'on'}},"
                        + "{'kind':'motor','id':'fan','resistanceOhm':1.2,'meantLive':['run','crank','running'],"
                        + "'excitation':'" + excitation + "'},"
                        + "{'kind':'coil','id':'coil','primaryResistanceOhm':3,'meantLive':['run','crank','running']},"
                        + "{'kind':'lamp','id':'lamp','ratedV':12,'ratedW':2.2,'meantLive':['run','crank','running']}",
                wires((battery + "|key.out fan.33|fan.32 M.31|key.out coil.15|coil.1 M.31|key.out lamp.a|lamp.b M.31")
                        .split("\\|"))));
    }

    /** 12 V less a quarter at the winding are 9 V behind 0.3 ohm: 8.1 V at a coil of 3 ohm. */
    @ParameterizedTest
    @CsvSource({"negative", "positive"})
    void aFanWithMagnetsFeedsWhatHangsOnItsFeedWhileItRunsDown(String polarity) {
        Solved solved = fanOnTheIgnition(polarity, "permanent-magnet");
        assertThat(Math.abs(solved.acrossV(Step.OFF_ENGINE_TURNING, "coil"))).isCloseTo(9 * 3 / 3.3, within(0.2));
        assertThat(solved.state(Step.OFF_ENGINE_TURNING, "fan")).isEqualTo("running-down");
        assertThat(solved.activity(Step.OFF_ENGINE_TURNING, "coil")).isEqualTo(FeedStrength.OPERATES);
        // It is a source, not a load that works though it should not.
        assertThat(solved.activity(Step.OFF_ENGINE_TURNING, "fan")).isEqualTo(FeedStrength.DEAD);
        assertThat(solved.acrossV(Step.OFF_AGAIN, "coil")).isZero();
        assertThat(solved.currentA(Step.RUNNING, "fan"))
                .isEqualTo(fanOnTheIgnition(polarity, "shunt").currentA(Step.RUNNING, "fan"));
    }

    @Test
    void aFanWithAFieldWindingGeneratesNothing() {
        assertThat(fanOnTheIgnition("negative", "shunt").acrossV(Step.OFF_ENGINE_TURNING, "coil"))
                .isZero();
    }
}
