package loomwright.ignition.ballast;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.catchThrowableOfType;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.Objects;
import loomwright.answer.InputError;
import loomwright.answer.RejectedInput;
import loomwright.ignition.ballast.ChoiceResult.Series;
import loomwright.ignition.ballast.ChoiceResult.Standard;
import loomwright.ignition.ballast.ChoiceResult.Tap;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.DisplayName;
import org.junit.jupiter.api.Test;

/** The questions backwards: 1 forward and back, 2 what can be had, 3 the tap, 4 what cannot be. */
class BallastChoiceTest {
    private static final BallastInput FEED = Feeds.with(List.of(1.0), 1, 1.5, null, 0.05, 0);

    private static ChoiceResult choice(
            @Nullable Double volts, @Nullable Double amperes, @Nullable Double watts, @Nullable Double cranking) {
        return BallastChoice.calculate(new ChoiceInput(FEED, volts, amperes, watts, null, cranking))
                .result();
    }

    // 1 forward and back

    @Property(seed = "20261125", tries = 40)
    void whatABallastGivesLeadsBackToIt(@ForAll @DoubleRange(min = 0.01, max = 20) double ohm) {
        FeedState forward = BallastFeed.calculate(Feeds.with(List.of(ohm), null, 1.5, null, 0.05, 0))
                .result()
                .conditions()
                .get(0)
                .withoutBypass();
        assertThat(choice(forward.electric().coilV(), null, null, null).ballastOhm())
                .isCloseTo(ohm, within(1e-9));
        assertThat(choice(null, forward.electric().currentA(), null, null).ballastOhm())
                .isCloseTo(ohm, within(1e-9));
        assertThat(choice(null, null, forward.heat().coilHeatW(), null).ballastOhm())
                .isCloseTo(ohm, within(1e-9));
    }

    @Test
    @DisplayName("7 V at 1.5 ohm from 12.6 V by hand: 12.6 x 1.5 / 7 - 0.05 - 1.5 - 0.03 = 1.12 ohm")
    void sevenVoltsByHand() {
        ChoiceResult result = choice(7.0, null, null, null);
        assertThat(result.ballastOhm()).isCloseTo(1.12, within(1e-9));
        assertThat(Objects.requireNonNull(result.exact()).keyOn().coilV()).isCloseTo(7, within(1e-9));
    }

    // 2 what can be had

    @Test
    @DisplayName("E24 of IEC 60063 (from memory): within one in the second digit of 10^(n/24); E12 is every other one")
    void preferredNumbersFollowTheirRule() {
        assertThat(PreferredNumbers.E24).hasSize(24).isSorted();
        for (int n = 0; n < 24; n++) {
            assertThat((double) PreferredNumbers.E24.get(n)).isCloseTo(10 * Math.pow(10, n / 24.0), within(1.5));
        }
        assertThat(PreferredNumbers.E12).containsExactly(10, 12, 15, 18, 22, 27, 33, 39, 47, 56, 68, 82);
    }

    @Test
    void theNearestOfEachSeriesComesWithWhatItGives() {
        List<Standard> nearest = choice(7.0, null, null, null).nearest();
        assertThat(nearest.get(0).series()).isEqualTo(Series.E12);
        assertThat(nearest.get(0).gives().ballastOhm()).isCloseTo(1.2, within(1e-12));
        assertThat(nearest.get(1).series()).isEqualTo(Series.E24);
        assertThat(nearest.get(1).gives().ballastOhm()).isCloseTo(1.1, within(1e-12));
        assertThat(nearest.get(1).gives().keyOn().coilV()).isCloseTo(12.6 * 1.5 / 2.68, within(1e-9));
        assertThat(nearest.subList(2, nearest.size()))
                .allMatch(one -> one.series() == Series.COMMON)
                .first()
                .matches(one -> one.gives().ballastOhm() == 1.2);
    }

    @Property(seed = "20261125", tries = 60)
    void noValueOfTheSeriesIsNearer(@ForAll @DoubleRange(min = 0.01, max = 99) double ohm) {
        double nearest = PreferredNumbers.nearest(PreferredNumbers.E24, ohm);
        for (int decade = -3; decade <= 2; decade++) {
            for (int number : PreferredNumbers.E24) {
                double other = number * Math.pow(10, decade - 1);
                assertThat(Math.abs(Math.log(nearest / ohm)))
                        .isLessThanOrEqualTo(Math.abs(Math.log(other / ohm)) + 1e-12);
            }
        }
    }

    // 3 the tap

    @Test
    void theTapGivesTheWantedVoltageWhileCranking() {
        ChoiceResult result = choice(7.0, null, null, 6.5);
        Tap tap = Objects.requireNonNull(result.tap());
        assertThat(tap.reached()).isTrue();
        assertThat(tap.beforeTapOhm() + tap.afterTapOhm())
                .isCloseTo(Objects.requireNonNull(result.ballastOhm()), within(1e-9));
        FeedState forward = Objects.requireNonNull(
                BallastFeed.calculate(Feeds.with(List.of(tap.beforeTapOhm(), tap.afterTapOhm()), 1, 1.5, null, 0.05, 0))
                        .result()
                        .conditions()
                        .get(1)
                        .withBypass());
        assertThat(forward.electric().coilV()).isCloseTo(6.5, within(1e-9));
    }

    @Test
    void aTapThatCannotGiveItSaysWhatTheNearestGives() {
        Tap tap = Objects.requireNonNull(choice(7.0, null, null, 12.0).tap());
        assertThat(tap.reached()).isFalse();
        assertThat(tap.crankingCoilV()).isLessThan(10);
    }

    // 4 what cannot be

    @Test
    void moreThanTheSupplyGivesIsSaidNotThrown() {
        ChoiceResult result = choice(13.0, null, null, null);
        assertThat(result.ballastOhm()).isNull();
        assertThat(result.conclusion().code()).isEqualTo(BallastText.BALLAST_NOT_REACHED);
    }

    @Test
    void exactlyOneWishIsWanted() {
        RejectedInput none = catchThrowableOfType(RejectedInput.class, () -> choice(null, null, null, null));
        RejectedInput two = catchThrowableOfType(RejectedInput.class, () -> choice(7.0, 4.0, null, null));
        assertThat(none.faults()).extracting(InputError::code).containsExactly(InputError.Code.MISSING);
        assertThat(two.faults()).extracting(InputError::code).containsExactly(InputError.Code.CONTRADICTION);
    }
}
