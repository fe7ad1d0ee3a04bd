package loomwright.conductor;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.catchThrowableOfType;

import java.util.List;
import java.util.Objects;
import java.util.stream.Stream;
import loomwright.answer.Basis;
import loomwright.answer.Caution;
import loomwright.answer.InputError;
import loomwright.answer.RejectedInput;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.CsvFileSource;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;

/** Fuse choice: 1 the standards' limits and ratings, 2 load, wire and inrush, 3 cables without a fuse, 4 faults, 5 monotone. */
class FuseChoiceTest {
    /** How much more one that is fitted may carry is told where a plan is reviewed. */
    @Test
    void aChosenFuseCarriesThreeQuartersOfItsRatingAtTheMostAndSaysSo() {
        assertThat(choose("currentA", 7.5, "size", "2.5 mm2").ratingA()).isEqualTo(10);
        assertThat(choose("currentA", 7.51, "size", "2.5 mm2").ratingA()).isEqualTo(15);
        assertThat(choose("currentA", 60.0, "size", "25 mm2").reason()).contains("at 75 % of its rating");
        assertThat(FuseChoice.choose(Inputs.fuse("currentA", 7.5, "size", "2.5 mm2"))
                        .basis())
                .extracting(Basis::rule)
                .contains("continuous load at most 75 to 80 % of the rating; 75 % for a fuse to be chosen");
    }

    @ParameterizedTest(name = "{0}: at {1} x the rating {2} to {3} s")
    @CsvFileSource(resources = "/conductor/blade-limits.csv", numLinesToSkip = 1)
    void openingTimes(String standard, double multiple, double minS, @Nullable Double maxS, String status) {
        ReferenceTable table = ReferenceTables.get("blade-fuse-limits");
        List<String> row = table.rows().stream()
                .filter(r -> r.get(0).equals(standard) && table.getNumber(r, "multiple") == multiple)
                .findFirst()
                .orElseThrow();
        assertThat(table.getNumber(row, "minS")).isEqualTo(minS);
        assertThat(table.getCell(row, "status")).isEqualTo(status);
        assertThat(FuseCurve.shortestS(multiple)).isLessThanOrEqualTo(minS);
        if (maxS == null) {
            assertThat(table.getCell(row, "maxS")).isEmpty();
            assertThat(FuseCurve.longestS(multiple)).isEmpty();
        } else {
            assertThat(table.getNumber(row, "maxS")).isEqualTo(maxS);
            assertThat(FuseCurve.longestS(multiple).orElseThrow()).isGreaterThanOrEqualTo(maxS);
        }
    }

    @ParameterizedTest(name = "blade fuse colours, from memory: {0} A {1}")
    @CsvFileSource(resources = "/conductor/blade-ratings.csv", numLinesToSkip = 1)
    void ratingsAndColours(double ratingA, String colour) {
        assertThat(choose("currentA", 1.0, "size", "14").ratings())
                .filteredOn(r -> r.ratingA() == ratingA)
                .extracting(FuseChoice.Rating::colour)
                .containsExactly(colour);
    }

    @Test
    void betweenTheMultiplesOfTheStandardNothingIsInterpolated() {
        assertThat(FuseCurve.longestS(1.35)).as("ISO, the longer").contains(1800.0);
        assertThat(FuseCurve.longestS(3.49)).contains(5.0);
        assertThat(FuseCurve.longestS(50)).contains(0.1);
        assertThat(FuseCurve.longestS(1.34)).isEmpty();
        assertThat(FuseCurve.multipleThatOpensWithin(5)).isEqualTo(2);
        assertThat(FuseCurve.multipleThatOpensWithin(1800)).isEqualTo(1.35);
        assertThat(FuseCurve.multipleThatOpensWithin(1799)).isEqualTo(1.6);
        assertThat(FuseCurve.shortestS(1.05)).isEqualTo(360000);
        assertThat(FuseCurve.shortestS(2.1)).isEqualTo(0.04);
        assertThat(FuseCurve.shortestS(12)).as("I2t of 6 times").isEqualTo(0.005);
    }

    @ParameterizedTest(name = "{0} A on {1}, insulation {2} C: {3} A fuse")
    @CsvSource({
        "8, 14 AWG, 105, 15",
        "7.5, 14 AWG, 105, 10",
        "18, 12 AWG, 105, 25",
        "3, 1 mm2, 105, 4",
        "10, SAE 12, 105, 15"
    })
    void theFuseCarriesTheLoadWithMarginAndProtectsTheWire(
            double currentA, String size, double insulationC, double ratingA) {
        var result = choose("currentA", currentA, "size", size, "insulationC", insulationC);
        assertThat(result.ratingA()).isEqualTo(ratingA);
    }

    @Test
    void aFuseAboveTheWireIsNotChosen() {
        var result = choose("currentA", 12.0, "size", "14", "insulationC", 60.0);
        assertThat(result.ratingA()).isNull();
        assertThat(result.reason()).contains("thicker wire");
        assertThat(rating(result, 20).overloads())
                .filteredOn(o -> o.multiple() == 1.35)
                .extracting(FuseChoice.Overload::protection)
                .as("27 A for up to 1800 s on a wire for 20 A")
                .containsExactly(FuseChoice.Protection.NOT_PROTECTED);
        assertThat(rating(result, 25).withinAmpacity()).isFalse();
    }

    @Test
    void theProspectiveCurrentIsJudgedLast() {
        var result = choose("currentA", 8.0, "size", "14", "prospectiveA", 300.0);
        var overloads = rating(result, 15).overloads();
        assertThat(overloads.get(overloads.size() - 1).currentA()).isEqualTo(300);
        assertThat(overloads.get(overloads.size() - 1).protection())
                .isEqualTo(FuseChoice.Protection.BY_ADIABATIC_LIMIT);
        assertThat(choose("currentA", 8.0, "size", "14", "prospectiveA", 1500.0).notes())
                .anyMatch(note -> note.contains("1000 A"));
    }

    @Test
    void anEnormousShortCircuitBeatsTheFuse() {
        var result = choose("currentA", 3.0, "size", "18 AWG", "prospectiveA", 900.0);
        assertThat(result.ratingA()).isNull();
        assertThat(result.reason()).contains("900 A");
    }

    @Test
    void theInrushDecidesBetweenHoldingAndBlowing() {
        var result = choose("currentA", 2.5, "inrushA", 34.3, "inrushS", 0.05, "size", "10 AWG");
        assertThat(rating(result, 4).inrush()).isEqualTo(FuseChoice.Inrush.MAY_BLOW);
        assertThat(rating(result, 30).inrush()).isEqualTo(FuseChoice.Inrush.HOLDS);
        assertThat(rating(choose("currentA", 2.5, "inrushA", 34.3, "inrushS", 0.2, "size", "10 AWG"), 4)
                        .inrush())
                .isEqualTo(FuseChoice.Inrush.BLOWS);
        assertThat(result.ratingA()).as("the smallest that surely holds").isEqualTo(20);
        assertThat(result.reason()).contains("4 A would suit but for the switch-on");
    }

    @Test
    void aLoadAboveTheWireIsSaidFirst() {
        var result = choose("currentA", 30.0, "size", "18 AWG");
        assertThat(result.ratingA()).isNull();
        assertThat(result.reason()).contains("the load itself is above the ampacity");
    }

    @Test
    void aWireInNoTableIsJudgedWithoutHeatLoss() {
        var result = choose("currentA", 0.3, "size", "ISO 0.13 mm2", "insulationC", 90.0);
        assertThat(result.ampacity()).isNull();
        assertThat(result.timeConstantS()).isNull();
        assertThat(result.startC()).isEqualTo(30);
        assertThat(result.notes()).anyMatch(note -> note.contains("without heat loss"));
    }

    @Test
    void anInsulationNobodyNamedIsTakenAsCommonPvcAndSaidSo() {
        var result =
                FuseChoice.choose(Inputs.fuse("currentA", 8.0, "size", "14")).result();
        assertThat(result.limitC()).isEqualTo(80);
        assertThat(result.notes()).anyMatch(note -> note.contains("PVC"));
    }

    @Test
    void starterCablesAreRecognisedAsUsuallyUnfused() {
        var answer =
                FuseChoice.choose(Inputs.fuse("currentA", 150.0, "size", "1/0 AWG", "circuit", CircuitKind.STARTER));
        assertThat(answer.result().usuallyUnfused()).isTrue();
        assertThat(answer.result().ratingA()).isNull();
        assertThat(answer.cautions()).contains(Caution.UNFUSED_SUPPLY, Caution.HIGH_CURRENT, Caution.LOCAL_CODES);
        assertThat(choose("currentA", 150.0, "size", "1/0 AWG").notes())
                .anyMatch(note -> note.contains("usually unfused"));
    }

    static Stream<Arguments> faults() {
        return Stream.of(
                Arguments.of("/currentA", InputError.Code.OUT_OF_RANGE, new Object[] {"currentA", 0.0, "size", "14"}),
                Arguments.of("/currentA", InputError.Code.MISSING, new Object[] {"size", "14"}),
                Arguments.of("/size", InputError.Code.MISSING, new Object[] {"currentA", 1.0}),
                Arguments.of("/inrushS", InputError.Code.MISSING, with("inrushA", 10.0)),
                Arguments.of("/inrushA", InputError.Code.MISSING, with("inrushS", 0.1)),
                Arguments.of("/inrushS", InputError.Code.OUT_OF_RANGE, with("inrushA", 10.0, "inrushS", -0.1)),
                Arguments.of("/limitC", InputError.Code.OUT_OF_RANGE, with("limitC", 60.0)),
                Arguments.of("/prospectiveA", InputError.Code.OUT_OF_RANGE, with("prospectiveA", -5.0)),
                Arguments.of("/timeConstantS", InputError.Code.OUT_OF_RANGE, with("timeConstantS", 0.0)),
                Arguments.of("/ampacityTable", InputError.Code.OUT_OF_RANGE, new Object[] {
                    "currentA", 1.0, "size", "20 AWG", "ampacityTable", AmpacityTable.US_33CFR183
                }));
    }

    @ParameterizedTest(name = "{0} {1}")
    @MethodSource("faults")
    void faultsNameTheirPlace(String pointer, InputError.Code code, Object[] values) {
        RejectedInput rejected = catchThrowableOfType(RejectedInput.class, () -> choose(values));
        assertThat(rejected.faults())
                .extracting(f -> f.pointer() + " " + f.code())
                .containsExactly(pointer + " " + code);
    }

    /** No fuse counts as an endless one. */
    @Property(seed = "8820")
    void moreLoadNeverTakesASmallerFuse(
            @ForAll @DoubleRange(min = 0.1, max = 30) double currentA,
            @ForAll @DoubleRange(min = 1, max = 2) double more,
            @ForAll @DoubleRange(min = 0, max = 80) double ambientC,
            @ForAll @DoubleRange(min = 1, max = 100) double inrushA) {
        double rating = ratingA(currentA, ambientC, inrushA);
        assertThat(ratingA(currentA * more, ambientC, inrushA)).isGreaterThanOrEqualTo(rating);
    }

    /** A hotter place only takes fuses away: what still suits there suited before. */
    @Property(seed = "8821")
    void aHotterPlaceNeverMakesAFuseSuit(
            @ForAll @DoubleRange(min = 0.1, max = 30) double currentA,
            @ForAll @DoubleRange(min = 0, max = 80) double ambientC,
            @ForAll @DoubleRange(min = 0.1, max = 20) double hotter) {
        var cool = choose("currentA", currentA, "size", "2.5 mm2", "ambientC", ambientC);
        var hot = choose("currentA", currentA, "size", "2.5 mm2", "ambientC", ambientC + hotter);
        for (int i = 0; i < hot.ratings().size(); i++) {
            if (hot.ratings().get(i).suits()) {
                assertThat(cool.ratings().get(i).suits()).isTrue();
            }
        }
    }

    /** Whatever is chosen carries the load, stays within the wire, and is faster than the wire everywhere. */
    @Property(seed = "8822")
    void theChosenFuseKeepsAllItsPromises(
            @ForAll @DoubleRange(min = 0.1, max = 40) double currentA,
            @ForAll @DoubleRange(min = 10, max = 900) double prospectiveA) {
        var result = choose("currentA", currentA, "size", "4 mm2", "prospectiveA", prospectiveA);
        Double ratingA = result.ratingA();
        if (ratingA != null) {
            assertThat(currentA).isLessThanOrEqualTo(0.75 * ratingA);
            assertThat(ratingA)
                    .isLessThanOrEqualTo(
                            Objects.requireNonNull(result.ampacity()).allowedA());
            for (FuseChoice.Overload o : rating(result, ratingA).overloads()) {
                Double fuse = o.fuseLongestS();
                Double wire = o.wireTimeS();
                assertThat(wire == null || wire >= o.wireAdiabaticS()).isTrue();
                boolean faster = fuse != null && wire != null && fuse <= Math.max(o.wireAdiabaticS(), wire);
                assertThat(wire == null || faster).isTrue();
            }
        }
    }

    private static double ratingA(double currentA, double ambientC, double inrushA) {
        Double rating = choose(
                        "currentA",
                        currentA,
                        "size",
                        "4 mm2",
                        "ambientC",
                        ambientC,
                        "inrushA",
                        inrushA,
                        "inrushS",
                        0.05)
                .ratingA();
        return rating == null ? Double.POSITIVE_INFINITY : rating;
    }

    private static FuseChoice.Rating rating(FuseChoice.Result result, double ratingA) {
        return result.ratings().stream()
                .filter(r -> r.ratingA() == ratingA)
                .findFirst()
                .orElseThrow();
    }

    private static FuseChoice.Result choose(Object... namesAndValues) {
        return FuseChoice.choose(Inputs.fuse(Inputs.insulation105C(namesAndValues)))
                .result();
    }

    private static Object[] with(Object... namesAndValues) {
        return Stream.concat(Stream.of("currentA", 1.0, "size", "14"), Stream.of(namesAndValues))
                .toArray();
    }
}
