package loomwright.drawing.diagram;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import loomwright.answer.Progress;
import loomwright.circuit.Plan;
import loomwright.circuit.Plans;
import loomwright.comparison.ComparisonQuestion;
import loomwright.network.NetworkLimits;
import org.junit.jupiter.api.Test;

/** Two plans side by side, with the same number at the same change. */
class D05_ComparisonTest {
    private static Drawing compared(Plan before, Plan after) {
        return Diagram.compare(
                ComparisonQuestion.of(before, after),
                DiagramOptions.USUAL,
                Drawn.LIMITS,
                NetworkLimits.defaults(),
                Progress.UNWATCHED);
    }

    @Test
    void everythingOfBothPlansIsThereWithRoomAroundIt() {
        Plan before = Plans.example("sandpiper-as-built");
        Plan after = Plans.example("sandpiper-electronic-module");
        Drawing drawing = compared(before, after);
        assertThat(Room.overlaps(drawing)).isEmpty();
        assertThat(drawing.wires().stream().filter(wire -> !wire.id().isEmpty()))
                .hasSize(before.wires().size() + after.wires().size());
        double middle = drawing.widthPx() / 2;
        List<Drawing.Symbol> coils = drawing.symbols().stream()
                .filter(symbol -> symbol.ids().contains("coil"))
                .toList();
        assertThat(coils).hasSize(2);
        assertThat(coils.get(0).box().right()).isLessThan(middle);
        assertThat(coils.get(1).box().x()).isGreaterThan(middle);
    }

    @Test
    void whatChangedStandsOutOnBothSidesAndHasOneLineInTheLegend() {
        Drawing drawing = compared(Plans.example("sandpiper-as-built"), Plans.example("sandpiper-electronic-module"));
        List<Badge> coil = drawing.badges().stream()
                .filter(badge -> badge.owner().equals("coil"))
                .toList();
        assertThat(coil).hasSize(2).allMatch(badge -> badge.kind() == Mark.Kind.CHANGED);
        assertThat(coil.get(0).number()).isEqualTo(coil.get(1).number());
        assertThat(drawing.badges().stream()
                        .filter(b ->
                                b.owner().isEmpty() && b.number() == coil.get(0).number()))
                .hasSize(1);
        assertThat(drawing.badges())
                .anyMatch(b -> b.owner().equals("module") && b.kind() == Mark.Kind.ONLY_HERE)
                .anyMatch(b -> b.owner().equals("ballast") && b.kind() == Mark.Kind.ONLY_HERE);
        assertThat(Drawn.symbol(drawing, "battery").emphasis()).isEqualTo(Emphasis.NONE);
        assertThat(Drawn.symbol(drawing, "ballast").emphasis()).isEqualTo(Emphasis.CHANGED);
    }

    @Test
    void aPlanBesideItselfHasNoMarks() {
        Plan plan = Plans.example("otter-6v-positive-earth");
        assertThat(compared(plan, plan).badges()).isEmpty();
    }
}
