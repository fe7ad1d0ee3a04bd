package loomwright.message;

import static loomwright.message.Arg.arg;
import static loomwright.message.Arg.quantities;
import static loomwright.message.Arg.things;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.List;
import loomwright.message.Argument.Instant;
import loomwright.message.Argument.Quantity;
import loomwright.message.Argument.SwitchPosition;
import loomwright.message.Argument.Thing;
import org.junit.jupiter.api.Test;

/** Messages and their arguments. */
class MessageTest {
    private static final Thing HORN = Thing.part("horn", "Horn");
    private static final Thing LIGHTS = Thing.part("lights", "Light switch");

    @Test
    void theNameOfAQuantityEndsInItsUnit() {
        assertThat(arg("feedDropV", 0.46).value()).isEqualTo(new Quantity(0.46, "V"));
        assertThat(arg("resistanceOhmPerM", 0.01).value()).isEqualTo(new Quantity(0.01, "Ω per m"));
        assertThat(arg("speedRpm", 3000).value()).isEqualTo(new Quantity(3000, "rpm"));
        assertThat(arg("marginRatio", 1.5).value()).isEqualTo(new Quantity(1.5, ""));
        assertThat(arg("wires", 3).value()).isEqualTo(new Argument.Count(3));
        assertThatThrownBy(() -> arg("drop", 0.46)).hasMessageContaining("'drop'");
    }

    @Test
    void noQuantityIsInfiniteOrNotANumber() {
        assertThatThrownBy(() -> arg("dropV", Double.NaN)).isInstanceOf(IllegalArgumentException.class);
        assertThatThrownBy(() -> quantities("dropsV", List.of(1 / 0.0))).isInstanceOf(IllegalArgumentException.class);
    }

    @Test
    void aMessageNamesItsThingsOnceAndNotTheSwitchesOfAnInstant() {
        Instant when = new Instant(Thing.Kind.PART, List.of(new SwitchPosition(LIGHTS, "dip")));
        Message inner = PlainLine.LINE.with(arg("part", HORN), things("wires", List.of(Thing.wire("W1"))));
        Message message = PlainLine.OTHER.with(arg("part", HORN), arg("when", when), arg("why", inner));
        assertThat(message.ids()).containsExactly("horn", "W1");
    }

    @Test
    void aMessageWithoutAnArgumentThatItsTextNamesIsOurMistake() {
        assertThatThrownBy(() -> Thing.Kind.WIRE.with())
                .isInstanceOf(AssertionError.class)
                .hasMessageContaining("label");
    }
}
