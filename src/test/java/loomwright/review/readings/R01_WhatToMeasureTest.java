package loomwright.review.readings;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import loomwright.circuit.Plans;
import loomwright.operation.Quantity;
import loomwright.review.readings.ReadingsSheet.Purpose;
import loomwright.review.readings.ReadingsSheet.Reading;
import loomwright.review.readings.ReadingsSheet.Shows;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** What is measured, with which figures, and in which order. */
class R01_WhatToMeasureTest {
    private static final String CLOSED = "key on, engine stopped; contacts closed";
    private final ReadingsSheet tourer = Sheets.of(Plans.example("sandpiper-as-built"));

    @ParameterizedTest
    @ValueSource(strings = {"sandpiper-as-built", "sandpiper-electronic-module", "otter-6v-positive-earth"})
    void safeReadingsComeFirstAndNothingTwice(String example) {
        ReadingsSheet sheet = Sheets.of(Plans.example(example));
        List<Integer> order = sheet.readings().stream()
                .map(r -> r.quantity() == Quantity.OHMS ? -1 : r.condition().ordinal())
                .toList();
        assertThat(order).isSorted();
        assertThat(sheet.readings().get(0).purpose()).isEqualTo(Purpose.SUPPLY_BRIDGED);
        assertThat(sheet.readings())
                .extracting(Reading::number)
                .isSorted()
                .doesNotHaveDuplicates()
                .first()
                .isEqualTo(1);
        assertThat(sheet.readings().stream().map(r -> List.of(r.situation(), r.red(), r.black(), r.quantity())))
                .doesNotHaveDuplicates();
        assertThat(sheet.readings()).hasSizeLessThan(80);
    }

    @Test
    void theCoilWithContactsClosedAndOpenAreTwoReadings() {
        // 12.6 V over 1.5 ohm ballast, 1.5 ohm coil, 0.03 ohm contacts and some 0.1 ohm of wires: about 6 V.
        Reading closed = Sheets.one(tourer, Purpose.LOAD, CLOSED, "coil.15", "coil.1");
        assertThat(closed.nominal()).isCloseTo(12.6 * 1.5 / 3.13, within(0.1));
        Reading open =
                Sheets.one(tourer, Purpose.LOAD, "key on, engine stopped; contacts open", "coil.1", "earth");
        assertThat(open.nominal()).isCloseTo(12.5, within(0.1));
        assertThat(closed.lowest()).isLessThan(closed.nominal());
        assertThat(closed.highest()).isGreaterThan(closed.nominal());
    }

    @Test
    void nobodyIsSentToTheSwitchedSideOfTheCoilWhileTheEngineTurns() {
        assertThat(tourer.readings())
                .filteredOn(r -> r.situation().startsWith("cranking")
                        || r.situation().startsWith("engine running"))
                .isNotEmpty()
                .noneMatch(r -> List.of("coil.1", "points.1").contains(r.red())
                        || List.of("coil.1", "points.1").contains(r.black()));
    }

    @Test
    void withTheKeyOffWhatMustBeDeadIs() {
        assertThat(tourer.readings())
                .filteredOn(r -> r.purpose() == Purpose.DEAD)
                .extracting(Reading::circuit)
                .containsExactly("coil", "solenoid", "starter", "blower");
        Reading bridged = tourer.readings().get(0);
        assertThat(bridged.shows()).isEqualTo(Shows.OPEN);
        assertThat(bridged.nominal()).isNull();
    }

    @Test
    void freeSwitchesAreSetSoThatTheLoadIsOn() {
        Reading lamp = Sheets.one(
                tourer, Purpose.LOAD, "key off; Lighting switch at head", "head-left.a", "head-left.b");
        assertThat(lamp.nominal()).isGreaterThan(11.5);
    }

    @Test
    void theMiddleOfTheWayComesBeforeItsQuarters() {
        List<String> points = tourer.readings().stream()
                .filter(r -> r.purpose() == Purpose.HALVING && "head-left".equals(r.circuit()))
                .map(Reading::red)
                .toList();
        // The way: link, fuse 1, lighting switch.
        assertThat(points).containsExactly("F1.b", "link.b", "lights.56");
    }

    @Test
    void withThePositivePoleEarthedTheLeadsAreTurnedSoThatSoundFiguresArePositive() {
        ReadingsSheet otter = Sheets.of(Plans.example("otter-6v-positive-earth"));
        Reading coil = Sheets.one(otter, Purpose.LOAD, CLOSED, "coil.1", "coil.15");
        assertThat(coil.nominal()).isGreaterThan(5);
        assertThat(otter.readings())
                .filteredOn(r -> r.purpose() == Purpose.HALVING)
                .isNotEmpty()
                .allMatch(r -> r.red().equals("earth") && r.nominal() != null && r.nominal() > 0);
    }
}
