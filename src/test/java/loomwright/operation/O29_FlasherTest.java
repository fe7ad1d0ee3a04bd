package loomwright.operation;

import static loomwright.operation.O04_RelayTest.wires;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import loomwright.circuit.Plans;
import loomwright.judgement.FlasherRule.State;
import loomwright.operation.PlanReadings.FlashReading;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Feature 29: flasher units, by the lamps they have: a missing bulb, LED bulbs, a trailer. */
class O29_FlasherTest {
    private static final String SUPPLY =
            "{'kind':'earth','id':'M'},{'kind':'battery','id':'B','emfV':12.6,'internalResistanceOhm':0.01},";
    private static final String WATCHING = ",'construction':'electronic','ratedW':47";
    private static final String ELECTRONIC = ",'construction':'electronic'";

    /** Lamps of the given watts behind a flasher unit, with a tell-tale at C. */
    private static Solved car(String flasher, boolean negative, double... watts) {
        StringBuilder parts = new StringBuilder(SUPPLY + "{'kind':'flasher','id':'F'" + flasher + "},"
                + "{'kind':'lamp','id':'tell','ratedV':12,'ratedW':2}");
        List<String> ends = new ArrayList<>(List.of(
                negative ? "B.minus M.31" : "B.plus M.31",
                negative ? "B.plus F.49" : "B.minus F.49",
                "F.31 M.31",
                "F.C tell.a",
                "tell.b M.31"));
        for (int i = 0; i < watts.length; i++) {
            parts.append(",{'kind':'lamp','id':'L")
                    .append(i)
                    .append("','ratedV':12,'ratedW':")
                    .append(watts[i])
                    .append("}");
            ends.add("F.49a L" + i + ".a");
            ends.add("L" + i + ".b M.31");
        }
        return Solved.of(
                Plans.of(12, negative ? "negative" : "positive", parts.toString(), wires(ends.toArray(String[]::new))));
    }

    private static FlashReading flash(Solved car) {
        return car.read(Step.RUN).transients().flashes().get(0);
    }

    /** Supplier's list of flasher units: 2 lamps of 21 W and one of 5 W a side. */
    @ParameterizedTest
    @CsvSource({"true", "false"})
    void aThermalOneFlashesWithTheLampsItIsMadeFor(boolean negative) {
        Solved car = car("", negative, 21, 21, 5);
        FlashReading flash = flash(car);
        assertThat(flash.state()).isEqualTo(State.FLASHING);
        assertThat(car.state(Step.RUN, "F")).isEqualTo("flashing");
        // Swiss ordinance, article 79: 60 to 120 a minute.
        assertThat(flash.ratePerMinute()).isBetween(60.0, 120.0);
        // 47 W at 12 V are 3.92 A; common practice: 0.2 to 0.5 V are lost in it.
        assertThat(flash.loadA()).isCloseTo(3.92, within(0.15));
        assertThat(Math.abs(car.voltageV(Step.RUN, "F.49")) - Math.abs(car.voltageV(Step.RUN, "F.49a")))
                .isBetween(0.2, 0.5);
        assertThat(flash.meanA()).isCloseTo(flash.loadA() / 2, within(1e-9));
    }

    @Test
    void theOtherInstantIsSolvedWithItsContactOpen() {
        FlashReading flash = flash(car(",'onShare':0.4", true, 21, 21, 5));
        assertThat(flash.loads()).extracting("part").containsExactlyInAnyOrder("L0", "L1", "L2", "tell");
        assertThat(flash.loads()).allSatisfy(load -> {
            assertThat(load.offA()).isCloseTo(0, within(1e-9));
            assertThat(load.offV()).isCloseTo(0, within(1e-6));
            assertThat(load.onV()).isGreaterThan(11.5);
            assertThat(load.meanA()).isCloseTo(0.4 * load.onA(), within(1e-9));
        });
    }

    /** Interpretation letters quoting SAE J588: a failed lamp shows as steady on, steady off or a marked change of rate. */
    @Test
    void aMissingBulbStopsAThermalOneAndItsTellTaleStaysDark() {
        Solved car = car("", true, 21, 5);
        assertThat(flash(car).state()).isEqualTo(State.NOT_FLASHING);
        assertThat(flash(car).ratePerMinute()).isZero();
        assertThat(car.activity(Step.RUN, "tell")).isEqualTo(FeedStrength.DEAD);
        assertThat(car.activity(Step.RUN, "L0")).isEqualTo(FeedStrength.OPERATES);
    }

    /** Electronic units double the rate. */
    @Test
    void aMissingBulbDoublesTheRateOfAnElectronicOneThatWatchesThem() {
        FlashReading flash = flash(car(WATCHING, true, 21, 5));
        assertThat(flash.state()).isEqualTo(State.FAST);
        assertThat(flash.ratePerMinute()).isEqualTo(180);
    }

    @Test
    void ledBulbsNeedAFlasherUnitThatDoesNotMind() {
        assertThat(flash(car("", true, 2, 2)).state()).isEqualTo(State.NOT_FLASHING);
        assertThat(flash(car(WATCHING, true, 2, 2)).state()).isEqualTo(State.FAST);
        assertThat(flash(car(ELECTRONIC, true, 2, 2)).state()).isEqualTo(State.FLASHING);
    }

    /** Made for two lamps of 21 W and one of 5 W it has too much with a trailer's third; a heavy-duty one has not. */
    @ParameterizedTest
    @CsvSource({"47,OVERLOADED", "68,FLASHING"})
    void anAddedTrailerNeedsAHeavyDutyOne(double ratedW, State state) {
        assertThat(flash(car(",'ratedW':" + ratedW, true, 21, 21, 21, 5)).state())
                .isEqualTo(state);
    }

    @Test
    void anElectronicOneWithoutItsEarthDoesNothing() {
        Solved car = Solved.of(Plans.of(
                12,
                "negative",
                SUPPLY + "{'kind':'flasher','id':'F'" + ELECTRONIC
                        + "},{'kind':'lamp','id':'L','ratedV':12,'ratedW':21}",
                wires("B.minus M.31", "B.plus F.49", "F.49a L.a", "L.b M.31")));
        assertThat(car.state(Step.RUN, "F")).isEqualTo("off");
        assertThat(car.activity(Step.RUN, "L")).isEqualTo(FeedStrength.DEAD);
    }

    @ParameterizedTest
    @CsvSource({"open,DEAD,off", "closed,OPERATES,not-flashing"})
    void aStuckContact(String stuck, FeedStrength lamps, String state) {
        Solved car = car(",'stuck':'" + stuck + "'", true, 21, 21, 5);
        assertThat(car.activity(Step.RUN, "L0")).isEqualTo(lamps);
        assertThat(car.state(Step.RUN, "F")).isEqualTo(state);
    }

    /** The tell-tale of an electronic one follows the lamps; with the indicators off it is dark. */
    @ParameterizedTest
    @CsvSource({"true", "false"})
    void withoutLampsTheTellTaleOfAnElectronicOneIsDark(boolean negative) {
        Solved car = car(ELECTRONIC, negative);
        assertThat(car.state(Step.RUN, "F")).isEqualTo("standby");
        assertThat(car.activity(Step.RUN, "tell")).isEqualTo(FeedStrength.DEAD);
        assertThat(car(ELECTRONIC, negative, 2).activity(Step.RUN, "tell")).isEqualTo(FeedStrength.OPERATES);
    }

    @Test
    void withoutLampsItStandsBy() {
        assertThat(car("", true).state(Step.RUN, "F")).isEqualTo("standby");
        assertThat(car("", true).read(Step.RUN).transients().flashes()).isEmpty();
    }
}
