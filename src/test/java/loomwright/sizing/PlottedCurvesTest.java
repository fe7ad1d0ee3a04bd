package loomwright.sizing;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.Objects;
import loomwright.conductor.SizeSystem;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import org.junit.jupiter.api.Test;

/** What is plotted is what is calculated: 1 drop over length, 2 fuse and wire over current. */
class PlottedCurvesTest {
    @Property(seed = "20260510", tries = 50)
    void theLineOfEachSizeIsItsDropAtEveryLength(@ForAll @DoubleRange(min = 0.5, max = 30) double lengthM) {
        DropOverLength drops = DropOverLength.of(Inputs.drop(
                "currentA", 5.0, "size", "14", "lengthM", 3.0, "temperatureC", 60.0, "jointsOutOhm", List.of(0.01)));
        assertThat(drops.lines())
                .extracting(DropOverLength.Line::size)
                .containsExactly("18 AWG", "16 AWG", "14 AWG", "12 AWG", "10 AWG");
        for (DropOverLength.Line line : drops.lines()) {
            VoltageDrop.Input asked = Inputs.drop(
                    "currentA",
                    5.0,
                    "size",
                    line.size(),
                    "lengthM",
                    lengthM,
                    "temperatureC",
                    60.0,
                    "jointsOutOhm",
                    List.of(0.01));
            assertThat(line.dropV(lengthM))
                    .isCloseTo(VoltageDrop.calculate(asked).result().total().totalV(), within(1e-12));
        }
    }

    @Property(seed = "20260511", tries = 50)
    void aReturnOfItsOwnLengthDoesNotGrowAlong(@ForAll @DoubleRange(min = 0.5, max = 30) double lengthM) {
        Object[] run = {
            "currentA",
            9.0,
            "size",
            "2.5 mm2",
            "returnSize",
            "4 mm2",
            "returnLengthM",
            2.0,
            "ambientC",
            40.0,
            "resistanceOhmPerKm20C",
            7.2,
            "lengthM",
            6.0
        };
        DropOverLength.Line line = DropOverLength.of(Inputs.drop(run)).lines().stream()
                .filter(DropOverLength.Line::asked)
                .findFirst()
                .orElseThrow();
        run[run.length - 1] = lengthM;
        assertThat(line.dropV(lengthM))
                .isCloseTo(
                        VoltageDrop.calculate(Inputs.drop(run)).result().total().totalV(), within(1e-12));
    }

    @Property(seed = "20260512", tries = 50)
    void theChosenSizeKeepsTheLimitAndTheNextThinnerDoesNot(@ForAll @DoubleRange(min = 1, max = 60) double currentA) {
        ConductorSizing.Input asked = Inputs.sizing("currentA", currentA, "lengthM", 8.0);
        DropOverLength drops = DropOverLength.of(asked);
        ConductorSizing.Result sizing = ConductorSizing.size(asked).result();
        DropOverLength.Line chosen = drops.lines().stream()
                .filter(DropOverLength.Line::asked)
                .findFirst()
                .orElseThrow();
        assertThat(chosen.size()).isEqualTo(sizing.sizes().size());
        assertThat(chosen.dropV(8))
                .isCloseTo(Objects.requireNonNull(sizing.sizes().smallest()).dropV(), within(1e-12));
        if (sizing.sizes().decider() == ConductorSizing.Decider.DROP) {
            DropOverLength.Line thinner = drops.lines().get(drops.lines().indexOf(chosen) - 1);
            assertThat(thinner.dropV(8)).isGreaterThan(drops.limit().newWireV());
        }
    }

    @Test
    void aThickerWireLosesLessEverywhere() {
        List<DropOverLength.Line> lines = DropOverLength.of(
                        Inputs.sizing("currentA", 8.0, "lengthM", 4.0, "system", SizeSystem.METRIC_ISO6722))
                .lines();
        for (int i = 1; i < lines.size(); i++) {
            assertThat(lines.get(i).dropV(4)).isLessThan(lines.get(i - 1).dropV(4));
        }
    }

    @Test
    void theFuseCurvesGoThroughTheFiguresOfTheAnswer() {
        FuseChoice.Input asked = Inputs.fuse("currentA", 8.0, "size", "14", "prospectiveA", 400.0);
        FuseCurves curves = FuseCurves.of(asked);
        FuseChoice.Result result = FuseChoice.choose(asked).result();
        assertThat(curves.ratingA())
                .isEqualTo(Objects.requireNonNull(result.choice().ratingA()));
        for (FuseChoice.Overload overload : result.overloads()) {
            if (overload.multiple() <= 6) {
                assertThat(curves.curves().longest())
                        .contains(new FuseCurves.Point(
                                overload.currentA(), Objects.requireNonNull(overload.fuseLongestS())));
            }
            assertThat(between(curves.curves().wireAdiabatic(), overload.currentA()))
                    .isCloseTo(Math.log(overload.wireAdiabaticS()), within(1e-9));
        }
    }

    @Test
    void everyCurveFallsAndTheEarliestOpeningLiesBelowTheLatest() {
        FuseCurves curves =
                FuseCurves.of(Inputs.fuse("currentA", 8.0, "size", "2.5 mm2", "inrushA", 40.0, "inrushS", 0.02));
        for (List<FuseCurves.Point> curve : List.of(
                curves.curves().longest(),
                curves.curves().shortest(),
                curves.curves().wireAdiabatic(),
                curves.curves().wireWithLoss())) {
            assertThat(curve).hasSizeGreaterThan(4);
            for (int i = 1; i < curve.size(); i++) {
                assertThat(curve.get(i).timeS())
                        .isLessThanOrEqualTo(curve.get(i - 1).timeS());
                assertThat(curve.get(i).currentA())
                        .isGreaterThanOrEqualTo(curve.get(i - 1).currentA());
            }
        }
        assertThat(curves.curves().shortest().get(0).timeS())
                .isLessThan(curves.curves().longest().get(0).timeS());
    }

    /** Above its limit from the start a wire has no time left: no point of a logarithmic axis. */
    @Test
    void aWireThatIsTooHotAlreadyHasNoCurve() {
        FuseCurves curves = FuseCurves.of(Inputs.fuse("currentA", 300.0, "size", "20 AWG"));
        assertThat(curves.curves().wireAdiabatic()).isEmpty();
        assertThat(curves.chosen()).isFalse();
    }

    /** On a straight line between the logarithms of two neighbouring points. */
    private static double between(List<FuseCurves.Point> curve, double currentA) {
        for (int i = 1; i < curve.size(); i++) {
            FuseCurves.Point a = curve.get(i - 1);
            FuseCurves.Point b = curve.get(i);
            if (currentA <= b.currentA() * (1 + 1e-12)) {
                double share = Math.log(currentA / a.currentA()) / Math.log(b.currentA() / a.currentA());
                return Math.log(a.timeS()) + share * Math.log(b.timeS() / a.timeS());
            }
        }
        throw new AssertionError(currentA + " A is beyond the curve");
    }
}
