package loomwright.workshop;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.Objects;
import java.util.Random;
import loomwright.answer.Finding;
import loomwright.answer.RejectedInput;
import loomwright.circuit.EarthPolarity;
import loomwright.ignition.primary.CoilPreset;
import loomwright.workshop.CoilChoice.SwitchedBy;
import loomwright.workshop.CoilPolarity.FedTerminal;
import loomwright.workshop.CrankingTest.Cause;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** 1 condenser, 2 dwell, 3 polarity, 4 coil, 5 cranking, 6 resistor, 7 resistance wire. */
class BenchTest {
    private static final Random RANDOM = new Random(19);

    private static double between(double low, double high) {
        return low + (high - low) * RANDOM.nextDouble();
    }

    private static List<WorkshopMessage> kinds(List<Finding> findings) {
        return findings.stream().map(f -> (WorkshopMessage) f.kind()).toList();
    }

    /** The energy of the coil is that of both capacitances (OpenStax University Physics vol. 2, 14.5). */
    @Test
    void theEnergyOfThePrimaryIsThatOfCondenserAndSecondary() {
        for (int i = 0; i < 200; i++) {
            double henry = between(0.001, 0.02);
            double amps = between(1, 8);
            double turns = between(60, 150);
            double secondaryPf = between(40, 120);
            double wantedV = between(100, 250);
            Condenser.Result it = Condenser.calculate(new Condenser.Input(
                            null, henry * 1e3, turns, secondaryPf, amps, wantedV, between(0.1, 0.4)))
                    .result();
            double secondaryF = turns * turns * secondaryPf * 1e-12;
            double storedJ = henry * amps * amps / 2;
            assertThat((it.condenserUf() * 1e-6 + secondaryF) * it.pointsV() * it.pointsV() / 2)
                    .isCloseTo(storedJ, within(1e-9 * storedJ));
            if (it.leastUf() > 0) {
                assertThat((it.leastUf() * 1e-6 + secondaryF) * wantedV * wantedV / 2)
                        .isCloseTo(storedJ, within(1e-9 * storedJ));
            }
        }
    }

    @ParameterizedTest
    @CsvSource({"0.1, CONDENSER_SMALL", "0.5, CONDENSER_LARGE"})
    void anUnusualCondenserIsToldAndTheUsualIsNot(double condenserUf, WorkshopMessage expected) {
        assertThat(kinds(condenser(condenserUf))).contains(expected);
        assertThat(condenser(0.22)).isEmpty();
    }

    private static List<Finding> condenser(double condenserUf) {
        return Condenser.calculate(new Condenser.Input(null, null, null, null, 4.0, null, condenserUf))
                .result()
                .findings();
    }

    private static PointsDwell.Result dwell(
            int cylinders, @Nullable Double degrees, @Nullable Double gap, double knownGap, double knownDwell) {
        return PointsDwell.calculate(new PointsDwell.Input(cylinders, degrees, null, gap, knownGap, knownDwell, 3000.0))
                .result();
    }

    /** 57 of 90 degrees are 63.3 per cent; at 3000 rpm the distributor turns 9 degrees a millisecond. */
    @Test
    void dwellInPerCentAndTime() {
        PointsDwell.Result it = dwell(4, 57.0, null, 0.4, 57);
        assertThat(it.dwellPercent()).isCloseTo(63.3, within(0.05));
        assertThat(Objects.requireNonNull(it.dwellMs())).isCloseTo(57.0 / 9, within(1e-9));
        assertThat(Objects.requireNonNull(it.gapMm())).isCloseTo(0.4, within(1e-12));
    }

    /** A workshop rule: a thousandth of an inch is about a degree. */
    @Test
    void aWiderGapShortensTheDwellAndTheWayBackIsTheSame() {
        assertThat(Objects.requireNonNull(dwell(4, null, 0.4, 0.4, 57).degreesLessPerTenth()) * 0.254)
                .isBetween(0.5, 1.5);
        for (int i = 0; i < 100; i++) {
            double gap = between(0.3, 0.5);
            double degrees = dwell(4, null, gap, 0.4, 57).dwellDegrees();
            assertThat(Objects.requireNonNull(dwell(4, degrees, null, 0.4, 57).gapMm()))
                    .isCloseTo(gap, within(1e-9));
            assertThat(dwell(4, null, gap + 0.01, 0.4, 57).dwellDegrees()).isLessThan(degrees);
        }
        assertThatThrownBy(() -> dwell(4, 91.0, null, 0.4, 57)).isInstanceOf(RejectedInput.class);
    }

    /** Whatever the marks and earths, swapping the leads turns the spark round; changing the earth of a marked coil too. */
    @Test
    void theRemedyOfAReversedSparkIsRight() {
        for (EarthPolarity earth : EarthPolarity.values()) {
            assertThat(polarity(FedTerminal.PLUS, earth, null)).isEqualTo(earth == EarthPolarity.NEGATIVE);
            assertThat(polarity(FedTerminal.MINUS, earth, null)).isEqualTo(earth == EarthPolarity.POSITIVE);
            for (EarthPolarity made : EarthPolarity.values()) {
                assertThat(polarity(FedTerminal.SW, earth, made)).isEqualTo(earth == made);
                assertThat(polarity(FedTerminal.CB, earth, made)).isNotEqualTo(polarity(FedTerminal.SW, earth, made));
            }
        }
    }

    private static boolean polarity(FedTerminal fed, EarthPolarity earth, @Nullable EarthPolarity made) {
        CoilPolarity.Result it =
                CoilPolarity.calculate(new CoilPolarity.Input(fed, earth, made)).result();
        assertThat(it.right()).isEqualTo(it.findings().isEmpty());
        return it.right();
    }

    /** Rule book of the trade: 1.5 ohm behind 1.5, 3.2 alone, 0.7 with a limiting module; the same at 6 V with half the ohms. */
    @ParameterizedTest
    @CsvSource({
        "12, 1.5, , 1.5, true",
        "12, 1.5, , 3.2, false",
        "12, , , 3.2, true",
        "12, , , 1.5, false",
        "12, , , 0.6, false",
        "12, , 7, 0.7, true",
        "12, 1.5, 7, 0.7, false",
        "6, , , 1.5, true",
        "24, , , 10, true"
    })
    void coilsOfTheTradeSuitAsTheyShould(
            int nominalV, @Nullable Double ballastOhm, @Nullable Double limitA, double coilOhm, boolean suits) {
        CoilChoice.Result it = CoilChoice.choose(new CoilChoice.Input(
                        nominalV, ballastOhm, limitA == null ? null : SwitchedBy.MODULE, limitA, null, null))
                .result();
        assertThat(it.suitable().stream().anyMatch(r -> r.fromOhm() <= coilOhm && coilOhm <= r.toOhm()))
                .as(it.suitable().toString())
                .isEqualTo(suits);
        assertThat(it.kinds()).extracting(CoilChoice.Kind::coilKind).containsExactly(CoilPreset.values());
    }

    private static CrankingTest.Result cranking(double postsV, @Nullable Double starterV, @Nullable Double currentA) {
        return CrankingTest.judge(
                        new CrankingTest.Input(postsV, starterV, null, null, null, currentA, null, null, null, null))
                .result();
    }

    /** Service manuals: 9.6 V at the posts at 20 C; tester's handbook: 0.8 V in the cables, 185 A for four cylinders. */
    @ParameterizedTest
    @CsvSource({
        "9.0, 8.6, , BATTERY",
        "10.4, 8.9, , CABLES",
        "10.4, 10.0, , STARTER_OR_ENGINE",
        "9.0, 8.7, 300, STARTER_OR_ENGINE",
        "10.4, 10.2, 150, STARTER_OR_ENGINE"
    })
    void theCauseIsNamed(double postsV, double starterV, @Nullable Double currentA, Cause expected) {
        assertThat(cranking(postsV, starterV, currentA).cause()).isEqualTo(expected);
    }

    /** With the bad cable put right what is left is told, and with a new starter nothing is. */
    @Test
    void whatIsPutRightIsNotToldAgain() {
        assertThat(kinds(cranking(10.4, 8.9, null).findings())).containsExactly(WorkshopMessage.STARTER_CABLES_LOSE);
        assertThat(kinds(cranking(10.4, 9.7, null).findings())).containsExactly(WorkshopMessage.STARTER_OR_ENGINE_SLOW);
        CrankingTest.Result quick = CrankingTest.judge(
                        new CrankingTest.Input(10.4, 9.7, null, null, 12.6, null, false, null, null, null))
                .result();
        assertThat(quick.cause()).isEqualTo(Cause.NONE_FOUND);
        assertThat(quick.findings()).isEmpty();
    }

    @Test
    void eachSideOfTheStarterHasItsOwnLimit() {
        CrankingTest.Result it = CrankingTest.judge(
                        new CrankingTest.Input(10.4, null, 0.2, 0.5, null, null, null, null, null, null))
                .result();
        assertThat(kinds(it.findings())).containsExactly(WorkshopMessage.STARTER_EARTH_LOSES);
        assertThat(Objects.requireNonNull(it.cablesV())).isCloseTo(0.7, within(1e-12));
    }

    /** Ohm's law closed again: with the resistor in front of it the load has its volts; with a standard one what is said. */
    @Test
    void theResistorGivesTheLoadItsVolts() {
        for (int i = 0; i < 200; i++) {
            double supplyV = between(10, 30);
            double loadV = between(1, 0.95 * supplyV);
            double currentA = between(0.01, 10);
            SeriesResistor.Result it = SeriesResistor.choose(
                            new SeriesResistor.Input(supplyV, loadV, null, loadV * currentA, null))
                    .result();
            double loadOhm = loadV / currentA;
            assertThat(supplyV * loadOhm / (loadOhm + it.resistorOhm())).isCloseTo(loadV, within(1e-9));
            assertThat(it.ratingW()).isGreaterThanOrEqualTo(Math.min(1000, 2 * it.heatW()));
            assertThat(it.standard().get(0).resistorOhm()).isLessThanOrEqualTo(it.resistorOhm() * (1 + 1e-9));
            SeriesResistor.Choice above = it.standard().get(it.standard().size() - 1);
            assertThat(above.resistorOhm()).isBetween(it.resistorOhm() * (1 - 1e-9), it.resistorOhm() * 1.16);
            assertThat(above.loadV()).isLessThanOrEqualTo(loadV * (1 + 1e-9));
        }
    }

    /** Constantan 0.49 ohm mm2/m (OpenStax College Physics, 20.3): 0.8 mm has 0.975 ohm a metre. */
    @Test
    void resistanceWireByLength() {
        ResistanceWire.Result it = ResistanceWire.cut(
                        new ResistanceWire.Input(1.5, null, ResistanceWire.Alloy.CONSTANTAN, 0.8, 4.0))
                .result();
        assertThat(it.lengthM()).isCloseTo(1.539, within(0.001));
        assertThat(Objects.requireNonNull(it.heatW())).isCloseTo(24, within(1e-9));
        assertThat(Objects.requireNonNull(it.surfaceWPerCm2())).isCloseTo(24 / (Math.PI * 0.08 * 153.9), within(0.001));
        assertThat(ResistanceWire.cut(new ResistanceWire.Input(3.0, 2.0, null, null, null))
                        .result()
                        .lengthM())
                .isEqualTo(1.5);
    }
}
