package loomwright.sizing;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.Objects;
import loomwright.circuit.Place;
import loomwright.conductor.ConductorSize;
import loomwright.judgement.Level;
import loomwright.sizing.CircuitSizing.Wire;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.DisplayName;
import org.junit.jupiter.api.Test;

/** A whole circuit from its load: what it names is what drop, size and fuse say when each is asked alone. */
class CircuitSizingTest {

    static CircuitSizing.Input input(
            CircuitLoad load,
            @Nullable Double currentA,
            @Nullable Double powerW,
            double lengthM,
            @Nullable Place place) {
        return new CircuitSizing.Input(
                load,
                new LoadRating(currentA, powerW),
                new RunLength(lengthM, null),
                null,
                null,
                null,
                null,
                null,
                new Laying(null, null, place, null, null));
    }

    static CircuitSizing.Result size(CircuitSizing.Input input) {
        return CircuitSizing.size(input).result();
    }

    static Wire smallest(CircuitSizing.Result result) {
        return Objects.requireNonNull(result.smallest());
    }

    /** Filament law, exponent 0.55 (handbook for electrical engineers); 15 A at 9 A is 0.6 of the fuse. */
    @Test
    @DisplayName("two lamps of 55 W at 12 V: 110 / 13.2 (12 / 13.2)^0.55 = 7.9 A, fuse 15 A")
    void drivingLamps() {
        CircuitSizing.Result result = size(input(CircuitLoad.HEADLAMPS, null, 110.0, 4, Place.ENGINE_BAY));
        assertThat(result.draws().currentA()).isCloseTo(110 / 13.2 * Math.pow(12 / 13.2, 0.55), within(1e-9));
        Wire wire = smallest(result);
        assertThat(wire.fuse().fuseA()).isEqualTo(15);
        assertThat(wire.dropV()).isLessThanOrEqualTo(0.5);
        assertThat(result.draws().surgeA()).isCloseTo(10 * result.draws().currentA(), within(1e-9));
        assertThat(result.switchA()).isEqualTo(20);
        assertThat(result.relayA()).isEqualTo(20);
    }

    @Property(seed = "1918", tries = 60)
    void nothingIsFoundInWhatItNames(
            @ForAll @DoubleRange(min = 0.2, max = 60) double currentA,
            @ForAll @DoubleRange(min = 0.3, max = 8) double lengthM,
            @ForAll CircuitLoad load,
            @ForAll Place place) {
        CircuitSizing.Input input = input(load, currentA, null, lengthM, place);
        CircuitSizing.Result result = size(input);
        for (Wire wire : new @Nullable Wire[] {result.smallest(), result.usual()}) {
            if (wire == null) {
                continue;
            }
            assertThat(wire.drop().level()).isEqualTo(Level.FITS);
            assertThat(wire.wire().level()).isEqualTo(Level.FITS);
            double fuseA = Objects.requireNonNull(wire.fuse().fuseA());
            assertThat(fuseA).isBetween(currentA, wire.allowedA());
            assertThat(Objects.requireNonNull(wire.fuse().largestFuseA())).isGreaterThanOrEqualTo(fuseA);
            assertThat(ConductorSize.parse(wire.size()).areaMm2()).isEqualTo(wire.areaMm2());
        }
        if (result.smallest() == null) {
            assertThat(result.findings()).isNotEmpty();
        }
    }

    /** Shares L sqrt(I): 2 x 4.47 = 8.94 and 3 x 3.16 = 9.49 (Lagrange); of 1.2 V for a general load 0.58 V. */
    @Test
    @DisplayName("20 A through 2 m of feed, then 10 A through 3 m of branch: the feed may lose 48.5 % of the budget")
    void aFeedWithTwoBranches() {
        FeedSizing.Branch branch =
                new FeedSizing.Branch("Fan", CircuitLoad.OTHER, LoadRating.ofA(10), new RunLength(3.0, null));
        FeedSizing.Result result = FeedSizing.size(new FeedSizing.Input(
                        List.of(branch, branch),
                        2.0,
                        null,
                        null,
                        null,
                        null,
                        null,
                        new Laying(null, null, null, null, null)))
                .result();
        assertThat(result.currentA()).isEqualTo(20);
        assertThat(result.budgetV()).isCloseTo(1.2 * 8.944 / (8.944 + 9.487), within(1e-3));
        assertThat(result.branches()).hasSize(2);
        for (FeedSizing.Sized sized : result.branches()) {
            assertThat(sized.label()).isEqualTo("Fan");
            assertThat(Objects.requireNonNull(sized.totalV())).isLessThanOrEqualTo(1.2);
            assertThat(Objects.requireNonNull(sized.drop()).level()).isEqualTo(Level.FITS);
        }
    }
}
