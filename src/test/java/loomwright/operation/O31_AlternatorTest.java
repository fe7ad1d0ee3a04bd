package loomwright.operation;

import static loomwright.operation.O04_RelayTest.wires;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import loomwright.circuit.Plans;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Feature 31: what excites an alternator, and one with faulty diodes. */
class O31_AlternatorTest {
    private static Solved car(String alternator, String exciters, String... ends) {
        List<String> all = new ArrayList<>(List.of("B.minus M.31", "A.B- M.31", "A.B+ B.plus", "B.plus K.30"));
        all.addAll(List.of(ends));
        return Solved.of(Plans.of(
                12,
                "negative",
                "{'kind':'earth','id':'M'},{'kind':'battery','id':'B','emfV':12.6,'internalResistanceOhm':0.01},"
                        + "{'kind':'alternator','id':'A'" + alternator
                        + "},{'kind':'load','id':'L','resistanceOhm':0.2},"
                        + "{'kind':'switch','id':'K','terminals':['30','15'],'positions':[{'name':'off','joins':[]},"
                        + "{'name':'on','joins':[['30','15']]}],'positionByCondition':{'off':'off','accessory':'off',"
                        + "'run':'on','crank':'on','running':'on'}}" + exciters,
                wires(all.toArray(String[]::new))));
    }

    private static Solved excitedBy(String exciters, String... ends) {
        return car("", exciters, ends);
    }

    private static final String LED = ",{'kind':'led','id':'led','currentA':0.02}";
    private static final String LAMP = ",{'kind':'lamp','id':'lamp','ratedV':12,'ratedW':2}";

    /**
     * Workshop manual: a charge lamp of 2 W, which must not be changed. Common practice: 0.1 to 0.25 A excite, an LED alone does
     * not; a resistor of 47 to 180 ohm beside it does (from memory).
     */
    @Test
    void aLampOfTwoWattsExcitesItAndAnLedAloneDoesNot() {
        assertThat(excitedBy(LAMP, "K.15 lamp.a", "lamp.b A.D+").state(Step.RUNNING, "A"))
                .isEqualTo("charging");
        assertThat(excitedBy(LED, "K.15 led.a", "led.b A.D+").state(Step.RUNNING, "A"))
                .isEqualTo("not-charging");
    }

    @ParameterizedTest
    @CsvSource({"47, charging", "470, not-charging"})
    void aResistorBesideTheLedExcitesItIfItIsSmallEnough(double ohm, String state) {
        assertThat(excitedBy(
                                LED + ",{'kind':'resistor','id':'R','resistanceOhm':" + ohm + "}",
                                "K.15 led.a",
                                "led.b A.D+",
                                "K.15 R.a",
                                "R.b A.D+")
                        .state(Step.RUNNING, "A"))
                .isEqualTo(state);
    }

    /** Workshop article: the accepted resistor of 470 ohm keeps excitation alive beside a bulb, not in its place. */
    @Test
    void withALampThatFailsTheResistorKeepsItExcited() {
        String resistor = ",{'kind':'resistor','id':'R','resistanceOhm':68}";
        assertThat(excitedBy(resistor, "K.15 R.a", "R.b A.D+").state(Step.RUNNING, "A"))
                .isEqualTo("charging");
    }

    /** A field fed from the ignition stops with it; exciter diodes keep the field up and feed the ignition backwards. */
    @ParameterizedTest
    @CsvSource({"'',charging", "',\"exciterDiodes\":false',not-charging"})
    void theMomentAfterTheKeyIsTurnedOff(String alternator, String state) {
        Solved car = car(alternator.replace('"', '\''), LAMP, "K.15 lamp.a", "lamp.b A.D+");
        assertThat(car.state(Step.RUNNING, "A")).isEqualTo("charging");
        assertThat(car.state(Step.OFF_ENGINE_TURNING, "A")).isEqualTo(state);
    }

    /** Workshop manual of 1989: 3 to 6 ohm between slip rings; 4 ohm at 12.6 V are 3.15 A, from the ignition. */
    @Test
    void anIgnitionFedFieldTakesItsCurrentFromTheIgnition() {
        Solved car = car(",'exciterDiodes':false", ",{'kind':'fuse','id':'F','ratingA':10}", "K.15 F.a", "F.b A.D+");
        assertThat(car.currentA(Step.RUN, "F.a", "F.b")).isCloseTo(3.15, within(0.1));
        assertThat(car.state(Step.RUNNING, "A")).isEqualTo("charging");
    }

    @ParameterizedTest
    @CsvSource({"sound, 35", "diode-open, 23.45", "diode-shorted, 11.55"})
    void faultyDiodesLeaveItAShareOfItsRating(String rectifier, double mostA) {
        Solved car =
                car(",'rectifier':'" + rectifier + "'", LAMP, "K.15 lamp.a", "lamp.b A.D+", "B.plus L.a", "L.b M.31");
        assertThat(car.currentA(Step.RUNNING, "A.B-", "A.B+")).isCloseTo(mostA, within(1e-6));
    }

    @Test
    void leakingDiodesDischargeTheBatteryWithTheKeyOff() {
        Solved car = car(",'leakageA':0.5", LAMP, "K.15 lamp.a", "lamp.b A.D+");
        assertThat(car.currentA(Step.OFF, "A.B+", "A.B-")).isCloseTo(0.5 * 12.6 / 12, within(0.01));
    }
}
