package loomwright.operation;

import static loomwright.operation.O04_RelayTest.wires;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import java.util.stream.Stream;
import loomwright.circuit.BatteryLaw;
import loomwright.circuit.Condition;
import loomwright.circuit.Plan;
import loomwright.circuit.Plans;
import loomwright.circuit.TerminalRef;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * Feature 18: a battery is a store of its own. It feeds a starter from its resting volts, is charged by an alternator while the
 * engine runs, and keeps what the plan states of it.
 */
class O18_BatteryStoreTest {
    private static final String ALTERNATOR = "{'kind':'alternator','id':'alt','sourceResistanceOhm':0.001},"
            + "{'kind':'lamp','id':'charge','ratedV':12,'ratedW':3,'meantLive':['run']},";
    private static final String[] CHARGING = {
        "alt.B- E.31", "alt.B+ B.plus", "B.minus E.31", "B.plus charge.a", "charge.b alt.D+"
    };

    private static Plan charging(String battery, String loads, String... more) {
        return Plans.of(
                "{'kind':'battery','id':'B'" + battery + "},{'kind':'earth','id':'E'}," + ALTERNATOR + loads,
                wires(Stream.concat(Arrays.stream(CHARGING), Arrays.stream(more))
                        .toArray(String[]::new)));
    }

    /** 14.2 V on 12.49 V behind 12 V per Ah: the charge of 60 Ah at 80 %, rule of {@link BatteryLaw}. */
    @Test
    void whileTheEngineRunsTheAlternatorFeedsTheCarAndChargesTheBattery() {
        Solved solved = Solved.of(charging(
                "", "{'kind':'load','id':'L','resistanceOhm':2,'meantLive':['running']}", "B.plus L.a", "L.b E.31"));
        double chargeA = -solved.currentA(Step.RUNNING, "B.minus", "B.plus");
        double postsV = solved.voltageV(Step.RUNNING, "B.plus") - solved.voltageV(Step.RUNNING, "B.minus");
        assertThat(chargeA).isCloseTo((postsV - BatteryLaw.emfV(0.8, 25, 12)) / (12.0 / 60), within(1e-9));
        assertThat(chargeA).isBetween(7.0, 8.6);
        // With the engine stopped it gives what the load takes.
        assertThat(solved.currentA(Step.RUN, "B.minus", "B.plus")).isGreaterThan(6);
    }

    /** Of several the supply of the system counts, of the only one what it states. */
    @Test
    void theSupplyOfAStepIsThatOfTheOnlyBattery() {
        Plan flat = charging(",'stateOfChargePercent':0", "{'kind':'resistor','id':'R','resistanceOhm':2}");
        Plan usual = charging("", "{'kind':'resistor','id':'R','resistanceOhm':2}");
        assertThat(flat.batterySupply(Condition.RUN).emfV())
                .isCloseTo(BatteryLaw.emfV(0, BatteryLaw.USUAL_C, 12), within(1e-9));
        assertThat(usual.batterySupply(Condition.RUN)).isEqualTo(usual.supply(Condition.RUN));
        Plan two = charging(",'stateOfChargePercent':0", "{'kind':'battery','id':'B2'}");
        assertThat(two.batterySupply(Condition.RUN)).isEqualTo(two.supply(Condition.RUN));
    }

    @Test
    void withoutCurrentInItsFieldTheAlternatorGivesNothing() {
        Plan lampOut = charging("", "{'kind':'resistor','id':'R','resistanceOhm':2}", "B.plus R.a", "R.b E.31");
        Plan cut = lampOut.with(
                lampOut.parts(),
                lampOut.wires().stream()
                        .filter(w -> !w.to().toString().equals("alt.D+"))
                        .toList());
        assertThat(-Solved.of(lampOut).currentA(Step.RUNNING, "B.minus", "B.plus"))
                .isPositive();
        assertThat(-Solved.of(cut).currentA(Step.RUNNING, "B.minus", "B.plus")).isNegative();
        assertThat(Solved.of(cut).read(Step.RUNNING).parts())
                .filteredOn(p -> p.part().equals("alt"))
                .extracting(PlanReadings.PartReading::state)
                .containsExactly("not-charging");
    }

    @Test
    void onceItGeneratesItExcitesItself() {
        Solved solved =
                Solved.of(charging("", "{'kind':'resistor','id':'R','resistanceOhm':2}", "B.plus R.a", "R.b E.31"));
        assertThat(solved.isActive(Step.OFF_ENGINE_TURNING, "alt")).isTrue();
    }

    @Test
    void whatABatteryStatesWinsOverTheUsual() {
        Plan plan = charging(
                ",'emfV':12.2,'internalResistanceOhm':0.02,'chargeResistanceOhm':0.5",
                "{'kind':'resistor','id':'R','resistanceOhm':4}",
                "B.plus R.a",
                "R.b E.31");
        Solved solved = Solved.of(plan);
        double runA = solved.currentA(Step.RUN, "B.minus", "B.plus");
        double runV = solved.voltageV(Step.RUN, "B.plus") - solved.voltageV(Step.RUN, "B.minus");
        assertThat(runV).isCloseTo(12.2 - 0.02 * runA, within(1e-9));
        double chargeA = -solved.currentA(Step.RUNNING, "B.minus", "B.plus");
        double runningV = solved.voltageV(Step.RUNNING, "B.plus") - solved.voltageV(Step.RUNNING, "B.minus");
        assertThat(runningV).isCloseTo(12.2 + 0.5 * chargeA, within(1e-9));
    }

    /** Open-circuit volts of a 12 V battery at 50 %: 12.24 V (rule of {@link BatteryLaw}, its source there). */
    @Test
    void aStateOfChargeGivesTheVoltsAtRest() {
        Plan plan = Plans.of("{'kind':'battery','id':'B','stateOfChargePercent':50}", "");
        assertThat(emfV(Solved.of(plan))).isCloseTo(12.24, within(1e-9));
    }

    private static double emfV(Solved solved) {
        SolvedStep off = solved.in(Step.OFF);
        return off.acrossV(TerminalRef.parse("B.plus"), TerminalRef.parse("B.minus"));
    }

    @Test
    void aStarterLoadsTheBatteryAndWithoutOneTheUsualCrankingVoltsStand() {
        Plan without = Plans.of(
                "{'kind':'battery','id':'B'},{'kind':'earth','id':'E'},{'kind':'resistor','id':'R','resistanceOhm':2}",
                wires("B.minus E.31", "B.plus R.a", "R.b E.31"));
        Plan with = Plans.of(
                "{'kind':'battery','id':'B'},{'kind':'earth','id':'E'},"
                        + "{'kind':'motor','id':'M','resistanceOhm':0.06,'meantLive':['crank']}",
                wires("B.minus E.31", "B.plus M.33", "M.32 E.31"));
        assertThat(Solved.of(without).voltageV(Step.CRANK, "B.plus")).isCloseTo(10, within(0.01));
        double crankA = Solved.of(with).currentA(Step.CRANK, "B.minus", "B.plus");
        double ohm = BatteryLaw.dischargeOhm(480, 27, 12);
        assertThat(crankA).isCloseTo(12.6 / (0.06 + 0.003 + ohm), within(1e-6));
    }

    /** Two batteries behind blocking diodes, one alternator: each takes a charge of its own. */
    @Test
    void twoBatteriesBehindBlockingDiodesAreBothCharged() {
        Plan plan = Plans.of(
                "{'kind':'battery','id':'B'},{'kind':'battery','id':'B2'},{'kind':'earth','id':'E'},"
                        + "{'kind':'diode','id':'D1'},{'kind':'diode','id':'D2'},"
                        + "{'kind':'alternator','id':'alt','regulatedV':14.9,'selfExciting':true}",
                wires(
                        "alt.B- E.31",
                        "alt.B+ D1.anode",
                        "alt.B+ D2.anode",
                        "D1.cathode B.plus",
                        "D2.cathode B2.plus",
                        "B.minus E.31",
                        "B2.minus E.31"));
        Solved solved = Solved.of(plan);
        assertThat(-solved.currentA(Step.RUNNING, "B.minus", "B.plus")).isBetween(5.0, 10.0);
        assertThat(-solved.currentA(Step.RUNNING, "B2.minus", "B2.plus")).isBetween(5.0, 10.0);
    }

    @ParameterizedTest
    @ValueSource(strings = {"negative", "positive"})
    void twoBatteriesSideBySideShareNoCurrentOfTheirOwn(String earth) {
        Plan plan = Plans.of(
                12,
                earth,
                "{'kind':'battery','id':'B'},{'kind':'battery','id':'B2'},{'kind':'earth','id':'E'}",
                wires("B.plus B2.plus", "B.minus B2.minus", "B.minus E.31"));
        Solved solved = Solved.of(plan);
        for (Step step : Step.values()) {
            assertThat(Math.abs(solved.currentA(step, "B.minus", "B.plus"))).isLessThan(1e-6);
            assertThat(StepFindings.of(solved.in(step))).isEmpty();
        }
    }
}
