package loomwright.readings;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import loomwright.circuit.Condition;
import loomwright.circuit.Plans;
import loomwright.operation.Quantity;
import loomwright.readings.ReadingsSheet.Purpose;
import loomwright.readings.ReadingsSheet.Reading;
import loomwright.readings.ReadingsSheet.Shows;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** What is measured, with which figures, and in which order. */
class R01_WhatToMeasureTest {
    private static final String CLOSED = "key on with the engine stopped; contact points closed";
    private static final List<Condition> CONDITIONS = List.of(Condition.values());
    private final ReadingsSheet tourer = Sheets.of(Plans.example("sandpiper-as-built"));

    @ParameterizedTest
    @ValueSource(strings = {"sandpiper-as-built", "sandpiper-electronic-module", "otter-6v-positive-earth"})
    void safeReadingsComeFirstAndNothingTwice(String example) {
        ReadingsSheet sheet = Sheets.of(Plans.example(example));
        List<Integer> order = sheet.readings().stream()
                .map(r -> r.quantity() == Quantity.OHMS
                        ? -1
                        : CONDITIONS.indexOf(r.taken().condition()))
                .toList();
        assertThat(order).isSorted();
        assertThat(sheet.readings().get(0).purpose()).isEqualTo(Purpose.SUPPLY_BRIDGED);
        assertThat(sheet.readings())
                .extracting(Reading::number)
                .isSorted()
                .doesNotHaveDuplicates()
                .first()
                .isEqualTo(1);
        assertThat(sheet.readings().stream()
                        .map(r -> List.of(
                                r.taken().situation(),
                                r.leads().red(),
                                r.leads().black(),
                                r.quantity())))
                .doesNotHaveDuplicates();
        assertThat(sheet.readings()).hasSizeLessThan(80);
    }

    @Test
    void theCoilWithContactsClosedAndOpenAreTwoReadings() {
        // 12.6 V over 1.5 ohm ballast, 1.5 ohm coil, 0.03 ohm contacts and some 0.1 ohm of wires: about 6 V.
        Reading closed = Sheets.one(tourer, Purpose.LOAD, CLOSED, "coil.15", "coil.1");
        assertThat(closed.expected().nominal()).isCloseTo(12.6 * 1.5 / 3.13, within(0.1));
        Reading open = Sheets.one(
                tourer, Purpose.LOAD, "key on with the engine stopped; contact points open", "coil.1", "earth");
        assertThat(open.expected().nominal()).isCloseTo(12.5, within(0.1));
        assertThat(closed.expected().lowest()).isLessThan(closed.expected().nominal());
        assertThat(closed.expected().highest()).isGreaterThan(closed.expected().nominal());
    }

    @Test
    void nobodyIsSentToTheSwitchedSideOfTheCoilWhileTheEngineTurns() {
        assertThat(tourer.readings())
                .filteredOn(r -> r.taken().situation().startsWith("cranking")
                        || r.taken().situation().startsWith("engine running"))
                .isNotEmpty()
                .noneMatch(r -> List.of("coil.1", "points.1").contains(r.leads().red())
                        || List.of("coil.1", "points.1").contains(r.leads().black()));
    }

    @Test
    void withTheKeyOffWhatMustBeDeadIs() {
        assertThat(tourer.readings())
                .filteredOn(r -> r.purpose() == Purpose.DEAD)
                .extracting(Reading::circuit)
                .containsExactly("coil", "solenoid", "starter", "blower");
        Reading bridged = tourer.readings().get(0);
        assertThat(bridged.expected().shows()).isEqualTo(Shows.OPEN);
        assertThat(bridged.expected().nominal()).isNull();
    }

    @Test
    void freeSwitchesAreSetSoThatTheLoadIsOn() {
        Reading lamp = Sheets.one(
                tourer, Purpose.LOAD, "key off, the lighting switch at “head”", "head-left.a", "head-left.b");
        assertThat(lamp.expected().nominal()).isGreaterThan(11.5);
    }

    @Test
    void theMiddleOfTheWayComesBeforeItsQuarters() {
        List<String> points = tourer.readings().stream()
                .filter(r -> r.purpose() == Purpose.HALF_SPLIT && "head-left".equals(r.circuit()))
                .map(r -> r.leads().red())
                .toList();
        // The way: link, fuse 1, lighting switch.
        assertThat(points).containsExactly("F1.b", "link.b", "lights.56");
    }

    @Test
    void withThePositivePoleEarthedTheLeadsAreTurnedSoThatSoundFiguresArePositive() {
        ReadingsSheet otter = Sheets.of(Plans.example("otter-6v-positive-earth"));
        Reading coil = Sheets.one(otter, Purpose.LOAD, CLOSED, "coil.1", "coil.15");
        assertThat(coil.expected().nominal()).isGreaterThan(5);
        assertThat(otter.readings())
                .filteredOn(r -> r.purpose() == Purpose.HALF_SPLIT)
                .isNotEmpty()
                .allMatch(r -> r.leads().red().equals("earth")
                        && r.expected().nominal() != null
                        && r.expected().nominal() > 0);
    }

    @Test
    void aRelayThatMayStandEitherWayIsSaidSo() {
        // 11.2 V less or more 10 per cent, pull-in at 10.9 V, and nothing has pulled it in before.
        ReadingsSheet sheet =
                Sheets.of(Plans.parse("{'schema':'loomwright/plan/1','name':'relay','system':{'nominalVoltageV':12},"
                        + "'conditions':{'run':{'emfV':11.2,'tolerancePercent':10}},"
                        + "'parts':[{'kind':'battery','id':'B'},{'kind':'earth','id':'E'},"
                        + "{'kind':'switch','id':'key','terminals':['30','15'],'positions':[{'name':'off','joins':[]},"
                        + "{'name':'on','joins':[['30','15']]}],'positionByCondition':{'off':'off','accessory':'off',"
                        + "'run':'on','crank':'on','running':'on'}},"
                        + "{'kind':'relay','id':'R','coilResistanceOhm':85,'pullInV':10.9,'meantLive':['run']},"
                        + "{'kind':'load','id':'pump','resistanceOhm':4,'meantLive':['run']}],"
                        + "'wires':[{'id':'W1','from':'B.plus','to':'key.30','resistanceOhm':0.01},"
                        + "{'id':'W2','from':'key.15','to':'R.86','resistanceOhm':0.01},"
                        + "{'id':'W3','from':'R.85','to':'E.31','resistanceOhm':0.01},"
                        + "{'id':'W4','from':'B.plus','to':'R.30','resistanceOhm':0.01},"
                        + "{'id':'W5','from':'R.87','to':'pump.a','resistanceOhm':0.01},"
                        + "{'id':'W6','from':'pump.b','to':'E.31','resistanceOhm':0.01},"
                        + "{'id':'W7','from':'B.minus','to':'E.31','resistanceOhm':0.01}]}"));
        Reading pump = Sheets.one(sheet, Purpose.LOAD, "key on with the engine stopped", "pump.a", "pump.b");
        assertThat(pump.tells()).contains(ReadingText.RELAY_MAY_BE_EITHER.with());
        assertThat(pump.expected().lowest()).isLessThan(0.1);
        assertThat(pump.expected().highest()).isGreaterThan(11.5);
    }

    @Test
    void noOhmsAreAskedOfWhatHasNone() {
        assertThat(tourer.readings())
                .filteredOn(r -> r.purpose() == Purpose.OWN_RESISTANCE)
                .extracting(r -> r.leads().red())
                .contains("ballast.a", "coil.15", "solenoid.50")
                .doesNotContain("starter.33", "blower.33");
    }
}
