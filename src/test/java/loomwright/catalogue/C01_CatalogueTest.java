package loomwright.catalogue;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import loomwright.answer.Basis;
import loomwright.circuit.Alternator;
import loomwright.circuit.BatteryLaw;
import loomwright.circuit.ControlBox;
import loomwright.circuit.Dynamo;
import loomwright.circuit.Flasher;
import loomwright.circuit.Part;
import loomwright.circuit.Plan;
import loomwright.circuit.Plans;
import loomwright.circuit.RandomVehicle;
import loomwright.circuit.Stabiliser;
import loomwright.circuit.VehicleSystem;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** The catalogue speaks of the kinds, terminals and properties that the plan document has, and of no others. */
class C01_CatalogueTest {
    /** Kinds that a list knows and takes apart. */
    private static final Set<String> COMPOSITE = Set.of("fuse box", "diode pair", "twin lamp");

    @Test
    void everyKindOfPartIsInTheCatalogueAndNoOther() {
        assertThat(PartCatalogue.kinds())
                .extracting(PartKind::kind)
                .containsExactlyInAnyOrderElementsOf(PartShape.kinds());
    }

    @Test
    void everyTypeIsOfAKnownKind() {
        for (PartType type : PartCatalogue.types()) {
            assertThat(PartShape.kinds().contains(type.kind()) || COMPOSITE.contains(type.kind()))
                    .as(type.name())
                    .isTrue();
        }
    }

    @Test
    void everyTerminalOfTheCatalogueIsATerminalOfThatKind() {
        // Some parts have a terminal only with a property, as an alternator its sense terminal.
        Map<String, Set<String>> terminals = new HashMap<>();
        for (int seed = 1; seed <= 12; seed++) {
            RandomVehicle.of(seed, RandomVehicle.EVERY_KIND)
                    .parts()
                    .forEach(part -> terminals
                            .computeIfAbsent(part.kind(), kind -> new HashSet<>())
                            .addAll(part.terminals()));
        }
        terminals.forEach((kind, names) -> {
            for (TerminalMeaning terminal : PartCatalogue.terminals(kind)) {
                String name = terminal.terminal();
                if (name != null && !name.startsWith("tap")) {
                    assertThat(names).as(kind).contains(name);
                }
            }
        });
        assertThat(terminals.keySet())
                .contains("battery", "relay", "solenoid", "lamp", "motor", "fuse", "alternator", "coil");
    }

    @ParameterizedTest
    @ValueSource(
            strings = {"battery", "alternator", "relay", "solenoid", "motor", "coil", "module", "lamp", "fuse", "diode"
            })
    void everyTerminalOfAPartIsExplained(String kind) {
        Part part = RandomVehicle.of(1, RandomVehicle.EVERY_KIND).parts().stream()
                .filter(each -> each.kind().equals(kind))
                .findFirst()
                .orElseThrow();
        List<String> explained = new ArrayList<>();
        PartCatalogue.terminals(kind).forEach(terminal -> explained.add(String.valueOf(terminal.terminal())));
        assertThat(explained).containsAll(part.terminals());
    }

    @Test
    void terminal87OfARelayHasTwoMeanings() {
        TerminalMeaning mark = PartCatalogue.terminals("relay").stream()
                .filter(terminal -> terminal.words().contains("87"))
                .findFirst()
                .orElseThrow();
        assertThat(mark.terminal()).isNull();
        assertThat(mark.choices()).hasSize(2);
    }

    @ParameterizedTest
    @ValueSource(doubles = {6, 12, 24})
    void everyUsualValueIsOfAPropertyThatTheKindHas(double nominalV) {
        for (PartType type : PartCatalogue.types()) {
            if (!COMPOSITE.contains(type.kind())) {
                for (UsualValue value : PartCatalogue.usualValues(type.name(), nominalV)) {
                    assertThat(PartShape.properties(type.kind()))
                            .as(type.name())
                            .containsKey(value.property());
                    assertThat(value.basis().source()).isNotBlank();
                }
            }
        }
    }

    /**
     * Stop and tail lamp: UN Regulation 37, sheet P21/5W/1, rated watts. Fog lamp: list of categories of UN Regulation 37, H1
     * and H3. Fuel sender: workshop manuals of two cars, 90 ohm full. All seen in the opened source.
     */
    @ParameterizedTest
    @CsvSource({
        "stop-lamp, ratedW, 6, 21",
        "stop-lamp, ratedW, 12, 21",
        "stop-lamp, ratedW, 24, 21",
        "tail-lamp, ratedW, 12, 5",
        "fog-lamp, ratedW, 12, 55",
        "fog-lamp, ratedW, 24, 70",
        "fuel-sender, resistanceOhm, 12, 90",
        "flasher-unit, ratePerMinute, 12, 90"
    })
    void publishedValuesAreAsPrinted(String type, String property, double nominalV, double value) {
        UsualValue usual = PartCatalogue.usual(type, property, nominalV).orElseThrow();
        assertThat(usual.value()).isEqualTo(value);
        assertThat(usual.basis().status()).isEqualTo(Basis.Status.VERIFIED);
    }

    /**
     * Ranges seen in the opened sources: relay 76.5 to 93.5 ohm at 12 V and 229.5 to 280.5 at 24 V (data sheet of plug-in
     * relays); horn 4.5 to 5.5 A at 11.5 to 12.5 V (two workshop manuals); coil of a 6 V car 1.6 to 1.8 ohm (tip of an
     * owners' club); coil with ballast 1.3 to 1.5 ohm (manual of a generating set); glow plug 10 to 12 A (engineering
     * dictionary); wiper motor 5 A (maker). Dynamo 15.8 to 16.4 V open circuit at 20 C (owner's manual); cut-out 6.3 to 6.7, 4.8
     * to 5.3 V and 3 to 5 A at 6 V (workshop manual), 24 to 27 V at 24 V (US Army TM 5-3431-205-15); alternator 13.7 to 14.6 V at
     * 20 C (service specification), rotor 3 to 6 ohm (workshop manual).
     */
    @ParameterizedTest
    @CsvSource({
        "relay, coilResistanceOhm, 12, 76.5, 93.5",
        "relay, coilResistanceOhm, 24, 229.5, 280.5",
        "horn, resistanceOhm, 12, 2.09, 2.78",
        "coil, primaryResistanceOhm, 6, 1.6, 1.8",
        "coil-with-ballast, primaryResistanceOhm, 12, 1.3, 1.5",
        "glow-plug, resistanceOhm, 12, 1.0, 1.2",
        "wiper-motor, resistanceOhm, 12, 2.39, 2.41",
        "dynamo, regulatedV, 12, 15.8, 16.4",
        "control-box, cutInV, 6, 6.3, 6.7",
        "control-box, cutInV, 24, 24, 27",
        "control-box, cutOutV, 6, 4.8, 5.3",
        "control-box, reverseCurrentA, 6, 3, 5",
        "alternator, regulatedV, 12, 13.7, 14.6",
        "alternator, fieldResistanceOhm, 12, 3, 6"
    })
    void otherValuesLieInThePublishedRange(String type, String property, double nominalV, double least, double most) {
        assertThat(PartCatalogue.usual(type, property, nominalV).orElseThrow().value())
                .isBetween(least, most);
    }

    /** Ceramic fuses, breakers, horns, glow plugs, flat batteries and dynamos at other speeds have no published law: the catalogue says so, and of which types. */
    @Test
    void itSaysWhereNoLawIsKnown() {
        List<String> limited = PartCatalogue.types().stream()
                .map(PartType::name)
                .filter(type -> !PartCatalogue.limits(type).isEmpty())
                .toList();
        assertThat(limited)
                .containsExactlyInAnyOrder(
                        "dynamo", "battery", "ceramic-fuse", "breaker", "bolt-down-fuse", "horn", "glow-plug");
        assertThat(limited)
                .allSatisfy(type -> assertThat(PartCatalogue.limits(type))
                        .allSatisfy(limit -> assertThat(limit.source()).isNotBlank()));
    }

    /** What a part takes where the plan says nothing is what the catalogue says. */
    @ParameterizedTest
    @ValueSource(doubles = {6, 12, 24})
    void whatTheModelTakesIsWhatTheCatalogueSays(double nominalV) {
        Plan plan = Plans.of(
                nominalV,
                "negative",
                "{'kind':'dynamo','id':'dynamo'},{'kind':'control-box','id':'box'},{'kind':'alternator','id':'alternator'},"
                        + "{'kind':'stabiliser','id':'stabiliser'},{'kind':'flasher','id':'flasher'}",
                "");
        VehicleSystem system = plan.system();
        Dynamo dynamo = plan.listParts(Dynamo.class).get(0);
        ControlBox box = plan.listParts(ControlBox.class).get(0);
        Alternator alternator = plan.listParts(Alternator.class).get(0);
        Flasher flasher = plan.listParts(Flasher.class).get(0);
        Map<List<String>, Double> taken = new HashMap<>();
        taken.put(List.of("battery", "capacityAh"), BatteryLaw.USUAL_CAPACITY_AH);
        taken.put(List.of("dynamo", "regulatedV"), dynamo.regulatedV(system));
        taken.put(List.of("dynamo", "fieldResistanceOhm"), dynamo.fieldResistanceOhm(system));
        taken.put(List.of("dynamo", "armatureResistanceOhm"), dynamo.armatureResistanceOhm());
        taken.put(List.of("control-box", "cutInV"), box.cutInV(system));
        taken.put(List.of("control-box", "cutOutV"), box.cutOutV(system));
        taken.put(List.of("control-box", "reverseCurrentA"), box.reverseCurrentA());
        taken.put(List.of("control-box", "coilResistanceOhm"), box.coilResistanceOhm(system));
        taken.put(List.of("alternator", "regulatedV"), alternator.regulatedV(system));
        taken.put(List.of("alternator", "fieldResistanceOhm"), alternator.fieldResistanceOhm(system));
        taken.put(
                List.of("stabiliser", "outputV"),
                plan.listParts(Stabiliser.class).get(0).outputV(system));
        taken.put(List.of("flasher-unit", "ratedW"), Objects.requireNonNull(flasher.madeForW()));
        taken.put(List.of("flasher-unit", "ratePerMinute"), flasher.ratePerMinute());
        taken.forEach((name, value) -> assertThat(PartCatalogue.usual(name.get(0), name.get(1), nominalV)
                        .orElseThrow()
                        .value())
                .as("%s", name)
                .isCloseTo(value, within(1e-9)));
    }

    @Test
    void noWordsNameTwoTypes() {
        Set<String> seen = new HashSet<>();
        for (PartType type : PartCatalogue.types()) {
            for (String words : type.words()) {
                assertThat(seen.add(words)).as(words + " of " + type.name()).isTrue();
            }
        }
    }

    @Test
    void aThickerWireIsNeverGivenASmallerFuse() {
        double before = 0;
        for (double areaMm2 : new double[] {0.3, 0.5, 0.75, 1, 1.5, 2, 2.5, 4, 6, 10, 16, 25, 35, 50}) {
            double fuseA = PartCatalogue.usualFuseA(areaMm2);
            assertThat(fuseA).isGreaterThanOrEqualTo(before);
            before = fuseA;
        }
    }
}
