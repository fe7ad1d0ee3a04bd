package loomwright.drawing.sheet;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.Map;
import loomwright.comparison.PlanComparison.CutLine;
import loomwright.comparison.PlanComparison.Material;
import loomwright.comparison.PlanComparison.PartLine;
import loomwright.comparison.PlanComparison.TerminalLine;
import loomwright.comparison.PropertyValue;
import loomwright.message.Argument.Count;
import loomwright.message.Argument.Quantity;
import loomwright.message.Message;
import org.junit.jupiter.api.Test;

/** What to buy: alike parts together, wire longer than its run and by the half metre. */
class ShoppingTest {
    @Test
    void wireIsLongerThanItsRunByTheSlackOfEachEnd() {
        // 0.3 m and 1.0 m of run, 0.1 m more at each of four ends, make 1.7 m; sold are 2 m.
        Message wire = Shopping.list(new Material(
                        List.of(),
                        List.of(new CutLine("RD", "2.5 mm2", 2, List.of(1.0, 0.3), 1.3, List.of("W1", "W2"))),
                        List.of()))
                .get(0);

        assertThat(wire.code()).isEqualTo(WorkText.WIRE_TO_BUY);
        assertThat(wire.arguments()).containsEntry("lengthM", new Quantity(2, "m"));
    }

    @Test
    void wholeHalfMetresAreNotRoundedUp() {
        assertThat(Shopping.boughtM(List.of(0.5, 0.5, 0.5))).isCloseTo(1.5, within(1e-9));
        assertThat(Shopping.boughtM(List.of(1.51))).isCloseTo(2.0, within(1e-9));
    }

    @Test
    void alikePartsAreOneLineAndTheBodyIsNotBought() {
        List<Message> lines = Shopping.list(new Material(
                List.of(
                        new PartLine("R1", "relay", "Left relay", Map.of("ratingA", new PropertyValue(30.0))),
                        new PartLine("R2", "relay", "Right relay", Map.of("ratingA", new PropertyValue(30.0))),
                        new PartLine("F1", "fuse", "Fuse 1", Map.of("ratingA", new PropertyValue(10.0))),
                        new PartLine("E", "earth", "Body", Map.of())),
                List.of(),
                List.of()));

        assertThat(lines).extracting(Message::code).containsExactly(WorkText.PARTS_TO_BUY, WorkText.PARTS_TO_BUY);
        assertThat(lines.get(0).arguments()).containsEntry("count", new Count(2));
    }

    @Test
    void terminalsOfNoStatedFormAreCountedByTheWireTheyAreFor() {
        List<Message> lines = Shopping.list(new Material(
                List.of(),
                List.of(),
                List.of(
                        new TerminalLine(null, null, null, "relay", "1.5 mm2", 2),
                        new TerminalLine(null, null, null, "fuse", "1.5 mm2", 1),
                        new TerminalLine("blade", 6.3, "male", "connector-half", "1.5 mm2", 1))));

        assertThat(lines)
                .extracting(Message::code)
                .containsExactly(WorkText.FORMED_TERMINALS_TO_BUY, WorkText.TERMINALS_TO_BUY);
        assertThat(lines.get(1).arguments()).containsEntry("count", new Count(3));
    }
}
