package loomwright.sizing;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.catchThrowableOfType;

import java.util.List;
import java.util.Objects;
import java.util.stream.Stream;
import loomwright.answer.Caution;
import loomwright.answer.Finding;
import loomwright.answer.InputError;
import loomwright.answer.RejectedInput;
import loomwright.answer.Severity;
import loomwright.conductor.ConductorSize;
import loomwright.conductor.FuseCurve;
import loomwright.conductor.ReferenceTable;
import loomwright.conductor.ReferenceTables;
import loomwright.conductor.SizeSystem;
import loomwright.judgement.DropRule;
import loomwright.judgement.Level;
import loomwright.message.Argument.Quantity;
import loomwright.message.Argument.Verbatim;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import net.jqwik.api.constraints.IntRange;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.CsvFileSource;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;
import org.junit.jupiter.params.provider.MethodSource;

/** Fuse choice: 1 the standards' limits and ratings, 2 load, wire and inrush, 3 fitted fuses and remedies, 4 faults, 5 monotone. */
class FuseChoiceTest {
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
        assertThat(FuseCurve.BLADE.shortestS(multiple)).isLessThanOrEqualTo(minS);
        if (maxS == null) {
            assertThat(table.getCell(row, "maxS")).isEmpty();
            assertThat(FuseCurve.BLADE.longestS(multiple)).isEmpty();
        } else {
            assertThat(table.getNumber(row, "maxS")).isEqualTo(maxS);
            assertThat(FuseCurve.BLADE.longestS(multiple).orElseThrow()).isGreaterThanOrEqualTo(maxS);
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
        assertThat(FuseCurve.BLADE.longestS(1.35)).as("ISO, the longer").contains(1800.0);
        assertThat(FuseCurve.BLADE.longestS(3.49)).contains(5.0);
        assertThat(FuseCurve.BLADE.longestS(12)).as("I2t of 6 times").contains(0.025);
        assertThat(FuseCurve.BLADE.longestS(1.34)).isEmpty();
        assertThat(FuseCurve.BLADE.multipleThatOpensWithin(5)).isEqualTo(2);
        assertThat(FuseCurve.BLADE.multipleThatOpensWithin(1800)).isEqualTo(1.35);
        assertThat(FuseCurve.BLADE.multipleThatOpensWithin(1799)).isEqualTo(1.6);
        assertThat(FuseCurve.BLADE.shortestS(1.05)).isEqualTo(360000);
        assertThat(FuseCurve.BLADE.shortestS(2.1)).isEqualTo(0.04);
        assertThat(FuseCurve.BLADE.shortestS(12)).as("I2t of 6 times").isEqualTo(0.005);
    }

    @ParameterizedTest(name = "{0} fuse at {1} x the rating: longest {2} s")
    @CsvSource({
        // UL 248-14, by a fuse maker's guide: 135 % within 1 h, 200 % within 2 min.
        "GLASS, 1.35, 3600",
        "GLASS, 2, 120",
        // IEC 60127-2, fast, by a maker's table.
        "GLASS, 2.75, 2",
        "GLASS, 4, 0.3",
        "GLASS, 10, 0.02",
        // ISO 8820-5, from memory.
        "BOLT_DOWN, 2, 15",
        "BOLT_DOWN, 5, 1"
    })
    void otherConstructionsHaveLimitsOfTheirOwn(FuseCurve curve, double multiple, double longestS) {
        assertThat(curve.longestS(multiple)).contains(longestS);
        assertThat(curve.shortestS(multiple)).isLessThan(longestS);
    }

    @ParameterizedTest
    @EnumSource(FuseCurve.class)
    void noFuseOpensLaterWithMoreCurrent(FuseCurve curve) {
        double before = Double.POSITIVE_INFINITY;
        for (double multiple = 1; multiple < 20; multiple += 0.05) {
            double longestS = curve.longestS(multiple).orElse(Double.POSITIVE_INFINITY);
            assertThat(longestS).isLessThanOrEqualTo(before);
            assertThat(curve.shortestS(multiple)).isLessThanOrEqualTo(longestS);
            before = longestS;
        }
    }

    @ParameterizedTest(name = "{0} A on {1}, insulation {2} C: {3} A fuse")
    @CsvSource({
        "8, 14 AWG, 105, 15",
        "7.5, 14 AWG, 105, 10",
        "18, 12 AWG, 105, 25",
        "3, 1 mm2, 105, 4",
        "10, SAE 12, 105, 15",
        "60, 16 mm2, 105, 80"
    })
    void theFuseCarriesTheLoadWithMarginAndProtectsTheWire(
            double currentA, String size, double insulationC, double ratingA) {
        var result = choose("currentA", currentA, "size", size, "insulationC", insulationC);
        assertThat(result.choice().ratingA()).isEqualTo(ratingA);
    }

    /** 1.5 mm2 carries 21.4 A at 80 C: an overload of 1.35 times 15 A warms it to 74 C, one of 1.35 times 20 A to more than 80 C. */
    @Test
    void theWorkingSaysWhichFuseLetsItsWireOverheat() {
        var lines = FuseChoice.choose(Inputs.fuse("currentA", 10.0, "size", "1.5 mm2")).working().stream()
                .filter(line -> line.code() == SizingText.RATING_JUDGED)
                .toList();
        assertThat(lines.get(0).arguments())
                .containsEntry("ratingA", new Quantity(15, "A"))
                .containsEntry("overheats", new Verbatim("no"));
        assertThat(lines.get(1).arguments())
                .containsEntry("ratingA", new Quantity(20, "A"))
                .containsEntry("overheats", new Verbatim("yes"));
    }

    @Test
    void withoutALoadTheLargestFuseOfTheWireIsGiven() {
        var result = choose("size", "14", "insulationC", 80.0);
        assertThat(result.choice().ratingA()).isEqualTo(25);
        assertThat(result.choice().largestA()).isEqualTo(25);
        assertThat(Objects.requireNonNull(result.fusibleLink()).size()).isEqualTo("18 AWG");
        assertThat(result.findings()).isEmpty();
    }

    @Test
    void aLoadAboveTheWireNamesTheWireThatCarriesIt() {
        var result = choose("currentA", 30.0, "size", "18 AWG");
        assertThat(result.choice().ratingA()).isNull();
        assertThat(result.wire().betterSize()).isEqualTo("12 AWG");
        assertThat(Objects.requireNonNull(result.findings().get(0).remedy()).arguments())
                .containsEntry("size", new Verbatim("12 AWG"))
                .containsEntry("ratingA", new Quantity(40, "A"));
        assertThat(result.findings()).extracting(Finding::code).containsExactly("no-such-fuse");
    }

    @Test
    void aShortCircuitThatIsWeakIsANote() {
        var result = choose("currentA", 8.0, "size", "14", "prospectiveA", 60.0);
        assertThat(result.findings()).extracting(Finding::code).containsExactly("fuse-slow-in-short");
        assertThat(choose("currentA", 8.0, "size", "14", "prospectiveA", 300.0).findings())
                .isEmpty();
    }

    @Test
    void theInrushDecidesBetweenHoldingAndBlowing() {
        var result = choose("currentA", 2.5, "inrushA", 34.3, "inrushS", 0.04, "size", "10 AWG");
        assertThat(rating(result, 4).inrush()).isEqualTo(FuseChoice.Inrush.MAY_BLOW);
        assertThat(rating(result, 30).inrush()).isEqualTo(FuseChoice.Inrush.HOLDS);
        assertThat(rating(choose("currentA", 2.5, "inrushA", 34.3, "inrushS", 0.2, "size", "10 AWG"), 4)
                        .inrush())
                .isEqualTo(FuseChoice.Inrush.BLOWS);
        assertThat(result.choice().ratingA())
                .as("the smallest that surely holds")
                .isEqualTo(20);
    }

    @Test
    void aShortLoadNeedsOnlyReachTheRating() {
        assertThat(choose("currentA", 18.0, "size", "10 AWG").choice().ratingA())
                .isEqualTo(25);
        assertThat(choose("currentA", 18.0, "size", "10 AWG", "continuous", false)
                        .choice()
                        .ratingA())
                .isEqualTo(20);
    }

    @Test
    void starterCablesAreRecognisedAsUsuallyUnfused() {
        var answer = FuseChoice.choose(Inputs.fuse("currentA", 150.0, "size", "1/0 AWG", "circuit", DropRule.STARTER));
        assertThat(answer.result().usuallyUnfused()).isTrue();
        assertThat(answer.result().choice().ratingA()).isNull();
        assertThat(answer.result().findings()).isEmpty();
        assertThat(answer.cautions()).contains(Caution.UNFUSED_SUPPLY, Caution.HIGH_CURRENT, Caution.LOCAL_CODES);
    }

    @Test
    void aFittedFuseFarAboveTheWireIsADangerAndTheRemedyNamesTheRating() {
        var result = choose("currentA", 8.0, "size", "1 mm2", "ratingA", 30.0, "insulationC", 80.0);
        assertThat(result.findings())
                .singleElement()
                .satisfies(f -> assertThat(f.code() + " " + f.severity()).isEqualTo("fuse-too-large DANGER"));
        var cured = choose(
                "currentA",
                8.0,
                "size",
                "1 mm2",
                "ratingA",
                Objects.requireNonNull(result.choice().ratingA()),
                "insulationC",
                80.0);
        assertThat(cured.findings()).isEmpty();
    }

    /** Applied and judged again: the rating chosen, or the wire and fuse named, leave no finding. */
    @Property(seed = "8830", tries = 300)
    void theRemedyLeavesNoFinding(
            @ForAll @DoubleRange(min = 0.5, max = 60) double currentA,
            @ForAll @DoubleRange(min = 1, max = 100) double fittedA,
            @ForAll @IntRange(min = 2, max = 12) int index) {
        String size = ConductorSize.list(SizeSystem.METRIC_ISO6722).get(index).name();
        var sick = choose("currentA", currentA, "size", size, "ratingA", fittedA);
        Double better = sick.choice().ratingA();
        String thicker = sick.wire().betterSize();
        if (better != null) {
            assertThat(choose("currentA", currentA, "size", size, "ratingA", better)
                            .findings())
                    .isEmpty();
        } else if (thicker != null) {
            var cured = choose("currentA", currentA, "size", thicker);
            assertThat(cured.choice().ratingA()).isNotNull();
            assertThat(cured.findings()).isEmpty();
        }
    }

    static Stream<Arguments> faults() {
        return Stream.of(
                Arguments.of("/currentA", InputError.Code.OUT_OF_RANGE, new Object[] {"currentA", 0.0, "size", "14"}),
                Arguments.of("/size", InputError.Code.MISSING, new Object[] {"currentA", 1.0}),
                Arguments.of("/inrushS", InputError.Code.MISSING, with("inrushA", 10.0)),
                Arguments.of("/inrushA", InputError.Code.MISSING, with("inrushS", 0.1)),
                Arguments.of("/inrushS", InputError.Code.OUT_OF_RANGE, with("inrushA", 10.0, "inrushS", -0.1)),
                Arguments.of("/ratingA", InputError.Code.OUT_OF_RANGE, with("ratingA", 0.0)),
                Arguments.of("/prospectiveA", InputError.Code.OUT_OF_RANGE, with("prospectiveA", -5.0)));
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
    @Property(seed = "8820", tries = 300)
    void moreLoadNeverTakesASmallerFuse(
            @ForAll @DoubleRange(min = 0.1, max = 30) double currentA,
            @ForAll @DoubleRange(min = 1, max = 2) double more,
            @ForAll @DoubleRange(min = 0, max = 80) double ambientC,
            @ForAll @DoubleRange(min = 1, max = 100) double inrushA) {
        double rating = ratingA(currentA, ambientC, inrushA);
        assertThat(ratingA(currentA * more, ambientC, inrushA)).isGreaterThanOrEqualTo(rating);
    }

    /** A hotter place only takes fuses away: what still suits there suited before. */
    @Property(seed = "8821", tries = 300)
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

    /** No rating between load / 0.75 and the ampacity is refused. */
    @Property(seed = "8822", tries = 300)
    void everyRatingBetweenLoadAndWireSuits(@ForAll @DoubleRange(min = 0.1, max = 40) double currentA) {
        var result = choose("currentA", currentA, "size", "4 mm2");
        for (FuseChoice.Rating rating : result.ratings()) {
            boolean between = currentA <= 0.75 * rating.ratingA()
                    && rating.ratingA() <= result.wire().allowedA();
            assertThat(rating.suits()).isEqualTo(between);
            assertThat(rating.wire() == Level.DANGER).isEqualTo(rating.ofAmpacity() > 1.5);
        }
        assertThat(result.findings()).extracting(Finding::severity).doesNotContain(Severity.DANGER);
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
                .choice()
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
