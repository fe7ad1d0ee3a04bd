package loomwright.operation;

import static loomwright.operation.O04_RelayTest.wires;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import loomwright.circuit.Plans;
import org.assertj.core.data.Offset;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Feature 35: what dynamos and alternators give at a stated speed. */
class O35_OutputOverSpeedTest {
    private static Solved car(double nominalV, boolean negative, String battery, String dynamo) {
        String live = negative ? "plus" : "minus";
        String earthed = negative ? "minus" : "plus";
        String parts = "{'kind':'battery','id':'B'" + battery + "},{'kind':'earth','id':'M'},"
                + "{'kind':'dynamo','id':'D'" + dynamo + "},{'kind':'control-box','id':'box'},"
                + "{'kind':'switch','id':'key','terminals':['30','15'],'positions':[{'name':'off','joins':[]},"
                + "{'name':'on','joins':[['30','15']]}],"
                + "'positionByCondition':{'off':'off','accessory':'off','run':'on','crank':'on','running':'on'}},"
                + "{'kind':'lamp','id':'lamp','ratedV':" + nominalV + ",'ratedW':2.2}";
        List<String> ends = new ArrayList<>(List.of(
                "B." + earthed + " M.31",
                "B." + live + " box.A",
                "B." + live + " key.30",
                "key.15 lamp.a",
                "lamp.b box.D",
                "D.D box.D",
                "D.E M.31",
                "box.E M.31"));
        if (!dynamo.contains("third-brush")) {
            ends.add("D.F box.F");
        }
        return Solved.of(
                Plans.of(nominalV, negative ? "negative" : "positive", parts, wires(ends.toArray(String[]::new))));
    }

    private static double outputA(Solved car) {
        return "closed".equals(car.state(Step.RUNNING, "box"))
                ? Math.abs(car.currentA(Step.RUNNING, "box.D", "box.A"))
                : 0;
    }

    /**
     * Auto electrician's handbook of 1922, entry of a 12 V machine: it starts to charge at 1100 rev/min and gives 10 A at 1700; between
     * them 2.5, 5.0 and 7.0 A at 1200, 1400 and 1500 rev/min, with 12.7, 13.2 and 13.7 V. The handbook's machine is held by a
     * reversed series field; a straight line through its ends is within 1 A.
     */
    @ParameterizedTest
    @CsvSource({"1200, 2.5", "1400, 5.0", "1500, 7.0", "1700, 10.0"})
    void itsCurrentRisesWithTheSpeedAsInTheTableOf1922(double speedRpm, double publishedA) {
        Solved car = car(
                12,
                true,
                ",'emfV':12.4,'chargeResistanceOhm':0.05,'internalResistanceOhm':0.01",
                ",'limitA':10,'cutInRpm':1100,'fullOutputRpm':1700,'speedRpm':" + speedRpm);
        assertThat(outputA(car)).isCloseTo(publishedA, within(1.0));
    }

    /** It lights its lamp and charges nothing below its cut-in speed; its volts there are in proportion to the speed. */
    @ParameterizedTest
    @CsvSource({"6,true", "6,false", "12,true", "12,false", "24,true"})
    void belowItsCutInSpeedTheCutOutStaysOpenAndTheLampIsLit(double nominalV, boolean negative) {
        Solved slow = car(nominalV, negative, "", ",'speedRpm':600,'cutInRpm':1200");
        assertThat(slow.state(Step.RUNNING, "box")).isEqualTo("open");
        assertThat(slow.state(Step.RUNNING, "D")).isEqualTo("not-charging");
        double atD = Math.abs(slow.voltageV(Step.RUNNING, "D.D"));
        assertThat(atD).isBetween(0.49 * 13 * nominalV / 12, 0.5 * 13 * nominalV / 12 + 0.1 * nominalV / 12);
        assertThat(Math.abs(slow.acrossV(Step.RUNNING, "lamp"))).isGreaterThan(0.4 * nominalV);

        Solved fast = car(nominalV, negative, "", ",'speedRpm':1700,'cutInRpm':1200");
        assertThat(fast.state(Step.RUNNING, "box")).isEqualTo("closed");
        assertThat(fast.state(Step.RUNNING, "D")).isEqualTo("charging");
        assertThat(Math.abs(fast.acrossV(Step.RUNNING, "lamp"))).isLessThan(0.5);
    }

    /** From its full output on the speed makes no difference: the regulator holds it, as it does one whose speed is not stated. */
    @ParameterizedTest
    @ValueSource(strings = {"compensated", "voltage"})
    void aboveItsFullOutputTheRegulatorHoldsIt(String regulation) {
        String kind = ",'regulation':'" + regulation + "'";
        double unstatedA = outputA(car(12, true, "", kind));
        assertThat(outputA(car(12, true, "", kind + ",'speedRpm':1921"))).isCloseTo(unstatedA, within(1e-6));
        assertThat(outputA(car(12, true, "", kind + ",'speedRpm':6000"))).isCloseTo(unstatedA, within(1e-6));
    }

    /**
     * Service bulletin on a low-speed third-brush machine: it begins at 7.5 mph, gives about 14 A at 15 mph and most, 16 (hot) to 18 A (cold), at
     * about 22 mph. Any speeds of one gear are in proportion.
     */
    @Test
    void aThirdBrushRisesAsInTheServiceBulletin() {
        String machine = ",'regulation':'third-brush','limitA':17,'cutInRpm':750,'fullOutputRpm':2200,'speedRpm':";
        String flat = ",'emfV':6,'internalResistanceOhm':0.02,'chargeResistanceOhm':0.02";
        assertThat(outputA(car(6, true, flat, machine + 1500))).isCloseTo(14, within(2.0));
        assertThat(outputA(car(6, true, flat, machine + 2200))).isCloseTo(17, within(0.5));
        assertThat(car(6, true, flat, machine + 700).state(Step.RUNNING, "box")).isEqualTo("open");
    }

    /** Technical manual of the US Army on vehicle electrics: at high speed about half of its most. Here at seven times the cut-in speed. */
    @Test
    void aThirdBrushFallsToAboutHalfAtHighSpeed() {
        String machine = ",'regulation':'third-brush','limitA':10,'cutInRpm':750,'fullOutputRpm':1500,'speedRpm':";
        String flat = ",'emfV':6,'internalResistanceOhm':0.02,'chargeResistanceOhm':0.02";
        assertThat(outputA(car(6, true, flat, machine + 5100))).isCloseTo(5, within(0.5));
    }

    /** Manual of an engine with a 50 A alternator, hot, 13.5 V: 16, 41 and 48 A at 1300, 2500 and 5000 rev/min. */
    @ParameterizedTest
    @CsvSource({"1300, 16", "2500, 41", "5000, 48"})
    void anAlternatorGivesWhatItsManualSays(double speedRpm, double publishedA) {
        String parts = "{'kind':'earth','id':'M'},{'kind':'battery','id':'B','emfV':12,'internalResistanceOhm':0.01,"
                + "'chargeResistanceOhm':1},{'kind':'load','id':'L','resistanceOhm':0.15},"
                + "{'kind':'alternator','id':'A','limitA':48,'selfExciting':true,'speedRpm':" + speedRpm + "}";
        Solved car =
                Solved.of(Plans.of(parts, wires("B.minus M.31", "A.B- M.31", "A.B+ B.plus", "B.plus L.a", "L.b M.31")));
        assertThat(Math.abs(car.currentA(Step.RUNNING, "A.B-", "A.B+"))).isCloseTo(publishedA, Offset.offset(0.5));
    }

    @Test
    void anAlternatorThatHardlyTurnsGivesNothing() {
        String parts =
                "{'kind':'earth','id':'M'},{'kind':'battery','id':'B'},{'kind':'load','id':'L','resistanceOhm':2},"
                        + "{'kind':'alternator','id':'A','selfExciting':true,'speedRpm':800}";
        Solved car =
                Solved.of(Plans.of(parts, wires("B.minus M.31", "A.B- M.31", "A.B+ B.plus", "B.plus L.a", "L.b M.31")));
        assertThat(car.state(Step.RUNNING, "A")).isEqualTo("not-charging");
        assertThat(car.voltageV(Step.RUNNING, "B.plus")).isLessThan(12.8);
    }

    /** A regulated machine that turns faster never gives less, nor fewer volts at D. */
    @ParameterizedTest
    @ValueSource(longs = {1, 2, 3, 4, 5, 6})
    void fasterIsNeverLess(long seed) {
        Random random = new Random(seed);
        double nominalV = new double[] {6, 12, 24}[random.nextInt(3)];
        boolean negative = random.nextBoolean();
        int cutInRpm = 700 + random.nextInt(900);
        String machine = ",'limitA':" + (5 + random.nextInt(30)) + ",'cutInRpm':" + cutInRpm + ",'fullOutputRpm':"
                + (cutInRpm + 200 + random.nextInt(1500)) + ",'regulation':'"
                + (random.nextBoolean() ? "compensated" : "voltage") + "','speedRpm':";
        double beforeA = -1e-6;
        double beforeV = 0;
        for (int rpm = 200; rpm <= 4200; rpm += 250) {
            Solved car = car(nominalV, negative, "", machine + rpm);
            double outputA = outputA(car);
            double atD = Math.abs(car.voltageV(Step.RUNNING, "D.D"));
            assertThat(outputA).as("amps at %d rev/min", rpm).isGreaterThanOrEqualTo(beforeA - 1e-6);
            // The volts fall a little where the cut-out closes on a battery that has fewer.
            assertThat(atD)
                    .as("volts at %d rev/min", rpm)
                    .isGreaterThanOrEqualTo(Math.min(beforeV, 0.97 * nominalV) - 1e-6);
            beforeA = outputA;
            beforeV = atD;
        }
        assertThat(beforeA).isGreaterThan(1);
    }
}
