package loomwright.operation;

import static loomwright.operation.O04_RelayTest.wires;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import loomwright.circuit.Plan;
import loomwright.circuit.Plans;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Feature 19: a battery is a store with volts and ohms of its own, a machine charges it when its field is fed. */
class O19_SupplyTest {
    private static final String KEY =
            "{'kind':'switch','id':'key','terminals':['30','15','50'],'positions':[{'name':'off','joins':[]},"
                    + "{'name':'on','joins':[['30','15']]},{'name':'start','joins':[['30','15','50']]}],"
                    + "'positionByCondition':{'off':'off','accessory':'off','run':'on','crank':'start','running':'on'}}";
    private static final String BATTERY_AND_EARTH = "{'kind':'battery','id':'B'},{'kind':'earth','id':'E'}," + KEY;
    private static final List<String> SUPPLY = List.of("B.minus E.31", "B.plus key.30");

    // Charging.

    @Test
    void theMachineCarriesTheLoadsAndTheirCurrentLiesInTheChargeWire() {
        Solved solved = charging("{'kind':'alternator','id':'A'}", 0.5);
        double loadA = solved.currentA(Step.RUNNING, "L");
        assertThat(loadA).isGreaterThan(25);
        assertThat(solved.currentA(Step.RUNNING, "A.B+", "B.plus")).isGreaterThan(loadA);
        assertThat(solved.currentA(Step.RUNNING, "B.minus", "B.plus")).isNegative();
    }

    @Test
    void beyondItsLimitTheBatteryGivesTheRest() {
        Solved solved = charging("{'kind':'alternator','id':'A','limitA':20}", 0.5);
        assertThat(solved.currentA(Step.RUNNING, "A.B-", "A.B+")).isCloseTo(20, within(1e-6));
        assertThat(solved.currentA(Step.RUNNING, "B.minus", "B.plus")).isPositive();
        assertThat(solved.voltageV(Step.RUNNING, "B.plus")).isLessThan(12.7);
    }

    @Test
    void withoutCurrentInItsFieldTheMachineGivesNothing() {
        Solved solved = machine(List.of("A.B- E.31", "A.B+ B.plus", "key.15 L.a", "L.b E.31"));
        assertThat(generatedA(solved)).isZero();
        assertThat(solved.voltageV(Step.RUNNING, "B.plus")).isLessThan(12.7);
    }

    @Test
    void onceItsLampHasFedTheFieldItFeedsItItself() {
        Solved solved =
                machine(List.of("A.B- E.31", "A.B+ B.plus", "key.15 L.a", "L.b E.31", "key.15 lamp.a", "lamp.b A.D+"));
        assertThat(generatedA(solved)).isPositive();
        assertThat(solved.voltageV(Step.RUNNING, "B.plus")).isGreaterThan(13);
    }

    /** 2000 ohm in place of the lamp: 6 mA. */
    @Test
    void aTrickleInTheFieldIsNotEnough() {
        Solved solved = machine(
                List.of("A.B- E.31", "A.B+ B.plus", "key.15 L.a", "L.b E.31", "key.15 trickle.a", "trickle.b A.D+"));
        assertThat(generatedA(solved)).isZero();
    }

    @ParameterizedTest
    @CsvSource({"plus, minus", "minus, plus"})
    void twoBatteriesBehindBlockingDiodesAreBothCharged(String live, String earthed) {
        boolean negative = live.equals("plus");
        String toBattery = negative ? "anode" : "cathode";
        String fromMachine = negative ? "cathode" : "anode";
        Plan plan = Plans.of(
                12,
                negative ? "negative" : "positive",
                BATTERY_AND_EARTH + ",{'kind':'battery','id':'B2'},{'kind':'alternator','id':'A'},"
                        + "{'kind':'diode','id':'D1'},{'kind':'diode','id':'D2'},"
                        + "{'kind':'lamp','id':'lamp','ratedV':12,'ratedW':3,'meantLive':['run']}",
                wires(
                        "B." + earthed + " E.31",
                        "B2." + earthed + " E.31",
                        "B." + live + " key.30",
                        "A." + (negative ? "B-" : "B+") + " E.31",
                        "A." + (negative ? "B+" : "B-") + " D1." + toBattery,
                        "A." + (negative ? "B+" : "B-") + " D2." + toBattery,
                        "D1." + fromMachine + " B." + live,
                        "D2." + fromMachine + " B2." + live,
                        "key.15 lamp.a",
                        "lamp.b A.D+"));
        Solved solved = Solved.of(plan);
        assertThat(solved.currentA(Step.RUNNING, "B.minus", "B.plus")).isLessThan(-0.5);
        assertThat(solved.currentA(Step.RUNNING, "B2.minus", "B2.plus")).isLessThan(-0.5);
    }

    // Cranking.

    @Test
    void aBatteryThatDoesNotTurnTheStarterKeepsItsVolts() {
        Plan plan = Plans.of(
                BATTERY_AND_EARTH + ",{'kind':'battery','id':'B2'},{'kind':'resistor','id':'R','resistanceOhm':10},"
                        + "{'kind':'solenoid','id':'S','holdInResistanceOhm':3,'meantLive':['crank']},"
                        + "{'kind':'motor','id':'M','resistanceOhm':0.06,'meantLive':['crank']}",
                wires(
                        "B.minus E.31",
                        "B.plus key.30",
                        "key.50 S.50",
                        "S.31 E.31",
                        "B.plus S.30",
                        "S.45 M.33",
                        "M.32 E.31",
                        "B2.minus E.31",
                        "B2.plus R.a",
                        "R.b E.31"));
        Solved solved = Solved.of(plan);
        assertThat(solved.voltageV(Step.CRANK, "B.plus")).isLessThan(11.9);
        assertThat(solved.voltageV(Step.CRANK, "B2.plus")).isGreaterThan(12);
    }

    @Test
    void theVoltsThatAreLeftWhileCrankingGoByWhatTheStarterTakes() {
        double light = cranking("'resistanceOhm':0.15");
        double heavy = cranking("'resistanceOhm':0.04");
        assertThat(light).isBetween(heavy + 0.5, 12.6);
        assertThat(heavy).isGreaterThan(5);
    }

    @Test
    void withoutAStarterInThePlanTheUsualTenVoltsStand() {
        Solved solved = Solved.of(Plans.of(
                BATTERY_AND_EARTH + ",{'kind':'resistor','id':'R','resistanceOhm':1}",
                wires("B.minus E.31", "B.plus key.30", "key.15 R.a", "R.b E.31")));
        assertThat(solved.voltageV(Step.CRANK, "B.plus") - solved.voltageV(Step.CRANK, "B.minus"))
                .isCloseTo(10, within(0.005));
    }

    @Test
    void figuresThatThePlanStatesStand() {
        Plan plan = Plans.parse("{'schema':'loomwright/plan/1','name':'t','system':{'nominalVoltageV':12},"
                + "'conditions':{'crank':{'emfV':11.2,'internalResistanceOhm':0.02}},'parts':[" + BATTERY_AND_EARTH
                + ",{'kind':'motor','id':'M','resistanceOhm':0.1,'meantLive':['crank']}],'wires':["
                + wires("B.minus E.31", "B.plus key.30", "key.50 M.33", "M.32 E.31") + "]}");
        Solved solved = Solved.of(plan);
        double motorA = solved.currentA(Step.CRANK, "M");
        assertThat(solved.voltageV(Step.CRANK, "B.plus") - solved.voltageV(Step.CRANK, "B.minus"))
                .isCloseTo(11.2 - 0.02 * motorA, within(1e-9));
    }

    /** Half of a 12 V battery beside a whole one: a fault, with hundreds of amperes, not millions. */
    @ParameterizedTest
    @ValueSource(strings = {"OFF", "RUN", "RUNNING"})
    void unlikeBatteriesSideBySideAreHeldByTheirOwnResistance(Step step) {
        Plan plan = Plans.of(
                BATTERY_AND_EARTH + ",{'kind':'battery','id':'B2','nominalVoltageV':6}",
                "{'id':'W1','from':'B.minus','to':'E.31','resistanceOhm':0.000001},"
                        + "{'id':'W2','from':'B.minus','to':'B2.minus','resistanceOhm':0.000001},"
                        + "{'id':'W3','from':'B.plus','to':'B2.plus','resistanceOhm':0.000001}");
        assertThat(Solved.of(plan).currentA(step, "B.minus", "B.plus")).isBetween(10.0, 5000.0);
    }

    private static double cranking(String motor) {
        Solved solved = Solved.of(Plans.of(
                BATTERY_AND_EARTH + ",{'kind':'solenoid','id':'S','holdInResistanceOhm':3,'meantLive':['crank']},"
                        + "{'kind':'motor','id':'M'," + motor + ",'meantLive':['crank']}",
                wires(
                        "B.minus E.31",
                        "B.plus key.30",
                        "key.50 S.50",
                        "S.31 E.31",
                        "B.plus S.30",
                        "S.45 M.33",
                        "M.32 E.31")));
        return solved.voltageV(Step.CRANK, "B.plus") - solved.voltageV(Step.CRANK, "B.minus");
    }

    private static Solved charging(String alternator, double loadOhm) {
        return Solved.of(Plans.of(
                BATTERY_AND_EARTH + "," + alternator
                        + ",{'kind':'lamp','id':'lamp','ratedV':12,'ratedW':3,'meantLive':['run']}"
                        + ",{'kind':'load','id':'L','resistanceOhm':" + loadOhm + ",'meantLive':['running']}",
                wires(
                        SUPPLY.get(0),
                        SUPPLY.get(1),
                        "A.B- E.31",
                        "A.B+ B.plus",
                        "key.15 lamp.a",
                        "lamp.b A.D+",
                        "B.plus L.a",
                        "L.b E.31")));
    }

    private static Solved machine(List<String> joined) {
        List<String> all = new java.util.ArrayList<>(SUPPLY);
        all.addAll(joined);
        return Solved.of(Plans.of(
                BATTERY_AND_EARTH + ",{'kind':'alternator','id':'A'}"
                        + ",{'kind':'lamp','id':'lamp','ratedV':12,'ratedW':3,'meantLive':['run']}"
                        + ",{'kind':'resistor','id':'trickle','resistanceOhm':2000}"
                        + ",{'kind':'load','id':'L','resistanceOhm':2,'meantLive':['run','running']}",
                wires(all.toArray(String[]::new))));
    }

    private static double generatedA(Solved solved) {
        return solved.in(Step.RUNNING).branches().stream()
                .filter(b -> b.from().equals("A.B-") && b.to().equals("A.B+"))
                .mapToDouble(b -> solved.currentA(Step.RUNNING, b.from(), b.to()))
                .sum();
    }
}
