package loomwright.circuit;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Arrays;
import java.util.HashSet;
import java.util.Set;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** The vehicles that other tests are made with hold all that they are meant to try. */
class P07_RandomVehicleTest {
    private static final int PLANS = 60;

    @Test
    void aVehicleOfSomeSizeHasEveryKindOfPart() {
        Set<Class<?>> kinds = new HashSet<>();
        leaves(Part.class).forEach(kinds::add);
        for (int seed = 0; seed < PLANS; seed++) {
            assertThat(RandomVehicle.of(seed, RandomVehicle.EVERY_KIND).parts())
                    .as("seed %s", seed)
                    .extracting(p -> (Object) p.getClass())
                    .containsAll(kinds);
        }
    }

    private static Stream<Class<?>> leaves(Class<?> type) {
        return type.isSealed()
                ? Arrays.stream(type.getPermittedSubclasses()).flatMap(P07_RandomVehicleTest::leaves)
                : Stream.of(type);
    }

    @ParameterizedTest
    @ValueSource(ints = {5, 6, 9, 20, 60, 240})
    void aVehicleHasTheNumberOfPartsAskedFor(int parts) {
        for (int seed = 0; seed < PLANS; seed++) {
            Plan plan = RandomVehicle.of(seed, parts);
            assertThat(plan.parts()).as("seed %s", seed).hasSize(parts);
            assertThat(PlanCheck.check(plan)).as("seed %s", seed).isEmpty();
            assertThat(plan.listParts(Switch.class).stream()
                            .filter(Switch::free)
                            .count())
                    .isLessThanOrEqualTo(8);
        }
    }

    @Test
    void everyVoltagePolarityAndKindOfLoadIsTried() {
        Set<Object> seen = new HashSet<>();
        IntStream.range(0, PLANS).mapToObj(seed -> RandomVehicle.of(seed, 60)).forEach(plan -> {
            seen.add(plan.system().nominalVoltageV() + " " + plan.system().earthPolarity());
            for (Load load : plan.listParts(Load.class)) {
                String law = load.draw().resistanceOhm() != null
                        ? "ohms"
                        : load.draw().powerW() != null ? "watts" : "amps";
                seen.add(law
                        + (load.draw().minimumV() == null ? "" : " from")
                        + (load.draw().maximumV() == null ? "" : " to"));
            }
            plan.listParts(Switch.class).forEach(s -> seen.add(s.momentary() ? "momentary" : "stays"));
            plan.listParts(Solenoid.class).forEach(s -> seen.add(s.pullInResistanceOhm() == null ? "one" : "two"));
        });
        assertThat(seen)
                .contains("one", "two", "momentary", "stays")
                .contains("6.0 NEGATIVE", "12.0 NEGATIVE", "24.0 NEGATIVE")
                .contains("6.0 POSITIVE", "12.0 POSITIVE", "24.0 POSITIVE")
                .contains("ohms", "ohms from", "ohms to", "ohms from to")
                .contains("amps from", "amps from to")
                .contains("watts", "watts from", "watts to", "watts from to");
    }

    @Test
    void theSameSeedGivesTheSameVehicle() {
        assertThat(RandomVehicle.of(7, 80)).isEqualTo(RandomVehicle.of(7, 80));
        assertThat(RandomVehicle.of(7, 80)).isNotEqualTo(RandomVehicle.of(8, 80));
    }

    @Test
    void aLeadMayBeOff() {
        boolean off = IntStream.range(0, PLANS)
                .mapToObj(seed ->
                        RandomVehicle.of(seed, RandomVehicle.Shape.of(60).withLeadsOff()))
                .flatMap(plan -> plan.listParts(Consumer.class).stream()
                        .filter(c -> plan.wires().stream()
                                .noneMatch(w -> w.from().equals(c.terminal(c.returnTerminal()))
                                        || w.to().equals(c.terminal(c.returnTerminal())))))
                .findAny()
                .isPresent();
        assertThat(off).isTrue();
    }
}
