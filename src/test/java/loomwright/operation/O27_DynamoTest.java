package loomwright.operation;

import static loomwright.operation.O04_RelayTest.wires;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import loomwright.circuit.ControlBox;
import loomwright.circuit.EarthPolarity;
import loomwright.circuit.Plans;
import loomwright.circuit.VehicleSystem;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * Feature 27: a dynamo with its control box. Figures of cut-outs and regulators: workshop manual of a 1950s machine with a 6 V two-brush
 * dynamo (closes 6.3 to 6.7 V, opens 4.8 to 5.3 V, 3 to 5 A reverse); owner's manual of a 1950s 12 V car (open circuit 15.8 to
 * 16.4 V at 20 C).
 */
class O27_DynamoTest {
    private static final String PARTS = "{'kind':'battery','id':'B'},{'kind':'earth','id':'M'},"
            + "{'kind':'switch','id':'key','terminals':['30','15'],'positions':[{'name':'off','joins':[]},"
            + "{'name':'on','joins':[['30','15']]}],"
            + "'positionByCondition':{'off':'off','accessory':'off','run':'on','crank':'on','running':'on'}},"
            + "{'kind':'ammeter','id':'meter'},";

    private static String[] wiring(boolean negative, String... more) {
        String live = negative ? "plus" : "minus";
        String earthed = negative ? "minus" : "plus";
        List<String> wires = new ArrayList<>(List.of(
                "B." + earthed + " M.31",
                "B." + live + " meter.a",
                "meter.b box.A",
                "meter.b key.30",
                "D.E M.31",
                "box.E M.31"));
        wires.addAll(List.of(more));
        return wires.toArray(String[]::new);
    }

    private static Solved car(double nominalV, boolean negative, String dynamo, String... more) {
        String parts = PARTS
                + "{'kind':'dynamo','id':'D'" + dynamo + "},{'kind':'control-box','id':'box'},"
                + "{'kind':'lamp','id':'lamp','ratedV':" + nominalV + ",'ratedW':4}";
        return Solved.of(Plans.of(nominalV, negative ? "negative" : "positive", parts, wires(wiring(negative, more))));
    }

    private static final String[] WHOLE = {"D.D box.D", "D.F box.F", "key.15 lamp.a", "lamp.b box.D"};

    /** At rest the armature is nearly a short: the lamp has all volts; once the cut-out has closed it has the drop across that. */
    @ParameterizedTest
    @CsvSource({"12,true", "12,false", "6,true", "6,false", "24,true"})
    void theLampAcrossTheCutOutIsLitUntilTheDynamoCharges(double nominalV, boolean negative) {
        Solved car = car(nominalV, negative, "", WHOLE);
        assertThat(Math.abs(car.acrossV(Step.RUN, "lamp"))).isGreaterThan(0.95 * nominalV);
        assertThat(Math.abs(car.acrossV(Step.RUNNING, "lamp"))).isLessThan(0.5);
        assertThat(car.state(Step.RUN, "box")).isEqualTo("open");
        assertThat(car.state(Step.RUNNING, "box")).isEqualTo("closed");
        assertThat(car.state(Step.RUNNING, "D")).isEqualTo("charging");
        assertThat(car.state(Step.RUNNING, "meter")).isEqualTo("charge");
        assertThat(car.state(Step.RUN, "meter")).isEqualTo("discharge");
        assertThat(car.state(Step.OFF, "box")).isEqualTo("open");
    }

    @ParameterizedTest
    @ValueSource(booleans = {true, false})
    void withItsFieldOffItDoesNotBuildUpAndTheLampStaysLit(boolean negative) {
        Solved car = car(12, negative, "", "D.D box.D", "key.15 lamp.a", "lamp.b box.D");
        assertThat(car.state(Step.RUNNING, "D")).isEqualTo("not-charging");
        assertThat(car.state(Step.RUNNING, "box")).isEqualTo("open");
        assertThat(Math.abs(car.acrossV(Step.RUNNING, "lamp"))).isGreaterThan(10);
    }

    /** Battery lead off: 15.8 to 16.4 V at 12 V; 7.6 to 8.0 V is printed for 6 V, half of the former is 7.9 to 8.2 V. */
    @ParameterizedTest
    @CsvSource({"12, 15.8, 16.4", "6, 7.6, 8.2"})
    void withTheBatteryOffACompensatedOneShowsItsOpenCircuitSetting(double nominalV, double leastV, double mostV) {
        String parts = "{'kind':'battery','id':'B'},{'kind':'earth','id':'M'},{'kind':'dynamo','id':'D'},"
                + "{'kind':'control-box','id':'box'}";
        Solved car = Solved.of(Plans.of(
                nominalV,
                "negative",
                parts,
                wires("B.minus M.31", "D.E M.31", "box.E M.31", "D.D box.D", "D.F box.F")));
        assertThat(car.voltageV(Step.RUNNING, "box.A")).isBetween(leastV, mostV);
    }

    /** Charging rule of a compensated regulator: 13.5 V at the rating. By hand: 22 A into 13.5 V / 22 A = 0.614 ohm. */
    @Test
    void atItsRatingACompensatedOneHasComeDownToThirteenAndAHalfVolts() {
        String parts = "{'kind':'battery','id':'B','emfV':0.1,'internalResistanceOhm':10},{'kind':'earth','id':'M'},"
                + "{'kind':'dynamo','id':'D'},{'kind':'load','id':'L','resistanceOhm':0.614}";
        Solved car = Solved.of(Plans.of(parts, wires("B.minus M.31", "D.E M.31", "D.D D.F", "D.D L.a", "L.b M.31")));
        assertThat(car.voltageV(Step.RUNNING, "D.D")).isCloseTo(13.5, within(0.1));
        assertThat(car.currentA(Step.RUNNING, "L")).isCloseTo(22, within(0.2));
    }

    /** The battery decides its volts: a constant current, whatever the battery has. */
    @ParameterizedTest
    @ValueSource(doubles = {6, 6.4, 7})
    void aThirdBrushGivesItsCurrentAtWhateverVoltsTheBatteryHas(double emfV) {
        String parts = "{'kind':'battery','id':'B','emfV':" + emfV + ",'internalResistanceOhm':0.02},"
                + "{'kind':'earth','id':'M'},{'kind':'dynamo','id':'D','regulation':'third-brush','limitA':10},"
                + "{'kind':'control-box','id':'box'},{'kind':'ammeter','id':'meter'}";
        Solved car = Solved.of(Plans.of(
                6,
                "positive",
                parts,
                wires("B.plus M.31", "D.E M.31", "box.E M.31", "D.D box.D", "box.A meter.b", "meter.a B.minus")));
        assertThat(car.state(Step.RUNNING, "box")).isEqualTo("closed");
        assertThat(Math.abs(car.currentA(Step.RUNNING, "meter.a", "meter.b"))).isBetween(9.5, 13.5);
    }

    /** Read: 3 to 5 A from the battery open it, and 4.8 to 5.3 V without a current at 6 V. */
    @ParameterizedTest
    @CsvSource({"6.3, 3, true", "6.3, 5, false", "5.3, 0, true", "4.8, 0, false"})
    void theCutOutOpensAtTheReverseCurrentOrVoltsOfTheManual(double coilV, double reverseA, boolean stays) {
        var box = (ControlBox) Plans.parse(
                        "{'schema':'loomwright/plan/1','name':'test','system':{'nominalVoltageV':6,'earthPolarity':'negative'},"
                                + "'parts':[{'kind':'control-box','id':'box'},{'kind':'battery','id':'B'}],'wires':[]}")
                .findPart("box")
                .orElseThrow();
        var system = new VehicleSystem(6.0, EarthPolarity.NEGATIVE, 20.0, 20.0);
        Threshold cutOut = Threshold.find(box, system).orElseThrow();
        double pull = cutOut.sense()
                .effectiveV(
                        (terminal, other) -> other.equals("E") ? coilV : -reverseA * box.contactResistanceOhm(), true);
        assertThat(cutOut.activeAt(pull, true)).isEqualTo(stays);
    }
}
