package loomwright.sizing;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.catchThrowableOfType;
import static org.assertj.core.api.Assertions.within;

import java.util.Objects;
import loomwright.answer.InputError;
import loomwright.answer.RejectedInput;
import loomwright.conductor.AmpacityTable;
import loomwright.conductor.ConductorSize;
import loomwright.conductor.SizeSystem;
import loomwright.judgement.DropRule;
import loomwright.judgement.Level;
import loomwright.sizing.ConductorSizing.Decider;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;

/** Sizing: 1 published examples, 2 what decides, 3 agreement with drop and fuse, 4 faults, 5 monotone in every input. */
class ConductorSizingTest {
    @ParameterizedTest(
            name = "boat supplier''s example, CM = 10.75 I L / E: 10 A, 21 ft, {0} % of 12 V: {1} CM, {2} AWG")
    @CsvSource({"10, 1881, 16", "3, 6271, 12"})
    void circularMilsByBoatPractice(double percent, double circularMils, String gauge) {
        assertThat(ConductorSizing.circularMils(10, 21, percent / 100 * 12)).isCloseTo(circularMils, within(0.5));
        var result = solve("currentA", 10.0, "lengthFt", 21.0, "returnPath", ReturnPath.NONE, "limitPercent", percent);
        assertThat(result.beside().get(0).value()).isCloseTo(circularMils, within(0.5));
        assertThat(result.beside().get(0).size()).isEqualTo(gauge + " AWG");
    }

    @Test
    void aLongRunIsDecidedByDropAShortOneByAmpacityASmallOneByStrength() {
        assertThat(solve("currentA", 5.0, "lengthM", 30.0).sizes().decider()).isEqualTo(Decider.DROP);
        assertThat(solve("currentA", 20.0, "lengthM", 0.3).sizes().decider()).isEqualTo(Decider.AMPACITY);
        assertThat(solve("currentA", 0.5, "lengthM", 0.3).sizes().decider()).isEqualTo(Decider.STRENGTH);
    }

    /** A maker of small diesels: 35 mm2 to 1.8 m total, 50 to 2.6 m, 70 to 3.7 m, 95 to 4.8 m. */
    @ParameterizedTest(name = "{1} m in all: {0} mm2")
    @CsvSource({"35, 1.8", "50, 2.6", "70, 3.7", "95, 4.8"})
    void cablesOfADieselStarter(double areaMm2, double totalM) {
        var result = solve(
                "currentA",
                400.0,
                "lengthM",
                totalM / 2,
                "system",
                SizeSystem.METRIC_ISO6722,
                "circuit",
                DropRule.STARTER,
                "limitV",
                2.0);
        assertThat(Objects.requireNonNull(result.sizes().smallest()).areaMm2()).isEqualTo(areaMm2);
    }

    /** What the chassis loses is no reason for copper: up to 60 A over 2 m nothing jumps, and there is always a usual choice. */
    @Test
    void theUsualChoiceWithAChassisReturnIsNoThickerThanWithAWire() {
        double before = 0;
        for (double currentA = 10; currentA <= 60; currentA++) {
            var chassis =
                    Objects.requireNonNull(solve("currentA", currentA, "lengthM", 2.0, "returnPath", ReturnPath.CHASSIS)
                            .sizes()
                            .usual());
            var wire = Objects.requireNonNull(solve("currentA", currentA, "lengthM", 2.0, "returnPath", ReturnPath.WIRE)
                    .sizes()
                    .usual());
            assertThat(chassis.areaMm2()).as("%s A", currentA).isLessThanOrEqualTo(wire.areaMm2());
            assertThat(chassis.areaMm2()).as("%s A", currentA).isGreaterThanOrEqualTo(before);
            before = chassis.areaMm2();
        }
    }

    @Test
    void theAircraftTableIsForAircraft() {
        var ground = solve("currentA", 9.0, "lengthM", 0.3);
        var aircraft = solve("currentA", 9.0, "lengthM", 0.3, "ampacityTable", AmpacityTable.AC43_13);
        assertThat(ground.sizes().size()).isEqualTo("18 AWG");
        assertThat(ConductorSize.parse(Objects.requireNonNull(aircraft.sizes().size()))
                        .areaMm2())
                .isGreaterThan(3);
    }

    @Test
    void noSuchSizeIsAResult() {
        assertThat(solve("currentA", 600.0, "lengthM", 0.1).sizes().decider()).isEqualTo(Decider.NO_SUCH_SIZE);
        var joints = solve("currentA", 10.0, "lengthM", 1.0, "jointsOhm", 1.0);
        assertThat(joints.sizes().decider()).isEqualTo(Decider.NO_SUCH_SIZE);
        assertThat(joints.findings()).extracting(f -> f.code()).containsExactly("no-such-size");
    }

    @ParameterizedTest
    @EnumSource(SizeSystem.class)
    void everySystemCanBeChosenFrom(SizeSystem system) {
        var result = solve("currentA", 10.0, "lengthM", 3.0, "system", system);
        assertThat(ConductorSize.parse(Objects.requireNonNull(result.sizes().size()))
                        .system())
                .isEqualTo(system);
    }

    @Test
    void allFaultsAreSaidAtOnce() {
        RejectedInput rejected = catchThrowableOfType(
                RejectedInput.class,
                () -> solve("currentA", 0.0, "lengthM", -1.0, "bundleCount", 0, "supplyV", 1000.0, "ambientC", 500.0));
        assertThat(rejected.faults())
                .extracting(InputError::pointer)
                .containsExactly("/supplyV", "/currentA", "/lengthM", "/ambientC", "/bundleCount");
    }

    @Property(seed = "7", tries = 300)
    void moreOfAnythingNeverNeedsAThinnerWire(
            @ForAll SizeSystem system,
            @ForAll @DoubleRange(min = 0.1, max = 120) double currentA,
            @ForAll @DoubleRange(min = 0.1, max = 12) double lengthM,
            @ForAll @DoubleRange(min = 0, max = 90) double ambientC,
            @ForAll @DoubleRange(min = 1, max = 3) double more) {
        double area = areaMm2(system, currentA, lengthM, ambientC);
        assertThat(areaMm2(system, currentA * more, lengthM, ambientC)).isGreaterThanOrEqualTo(area);
        assertThat(areaMm2(system, currentA, lengthM * more, ambientC)).isGreaterThanOrEqualTo(area);
        assertThat(areaMm2(system, currentA, lengthM, ambientC + more)).isGreaterThanOrEqualTo(area);
    }

    /** What is chosen has a fuse, and neither drop nor fuse finds anything in it. The usual choice is never thinner. */
    @Property(seed = "8", tries = 300)
    void dropAndFuseFindNothingInWhatWasChosen(
            @ForAll SizeSystem system,
            @ForAll @DoubleRange(min = 0.1, max = 90) double currentA,
            @ForAll @DoubleRange(min = 0.1, max = 8) double lengthM,
            @ForAll DropRule circuit) {
        var sized = solve("currentA", currentA, "lengthM", lengthM, "system", system, "circuit", circuit);
        var chosen = sized.sizes().smallest();
        if (chosen == null) {
            return;
        }
        var drop = VoltageDrop.calculate(Inputs.drop(Inputs.insulation105C(
                        "currentA", currentA, "lengthM", lengthM, "size", chosen.size(), "circuit", circuit)))
                .result();
        assertThat(drop.findings()).isEmpty();
        if (circuit != DropRule.STARTER) {
            double fuseA = Objects.requireNonNull(chosen.fuseA());
            var fuse = FuseChoice.choose(Inputs.fuse(Inputs.insulation105C(
                            "currentA", currentA, "size", chosen.size(), "circuit", circuit, "ratingA", fuseA)))
                    .result();
            assertThat(fuse.choice().ratingA()).isEqualTo(fuseA);
            assertThat(Objects.requireNonNull(fuse.fitted()).wire()).isEqualTo(Level.FITS);
            assertThat(fuse.findings()).isEmpty();
        }
        var usual = sized.sizes().usual();
        if (usual != null) {
            assertThat(usual.areaMm2()).isGreaterThanOrEqualTo(chosen.areaMm2());
        }
    }

    /** No such size counts as endless copper. */
    private static double areaMm2(SizeSystem system, double currentA, double lengthM, double ambientC) {
        String size = solve("currentA", currentA, "lengthM", lengthM, "ambientC", ambientC, "system", system)
                .sizes()
                .size();
        return size == null
                ? Double.POSITIVE_INFINITY
                : ConductorSize.parse(size).areaMm2();
    }

    private static ConductorSizing.Result solve(Object... namesAndValues) {
        return ConductorSizing.size(Inputs.sizing(Inputs.insulation105C(namesAndValues)))
                .result();
    }
}
