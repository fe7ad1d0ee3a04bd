package loomwright.drawing.diagram;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Optional;
import loomwright.answer.Progress;
import loomwright.circuit.Plan;
import loomwright.circuit.Plans;
import loomwright.circuit.TerminalRef;
import loomwright.circuit.Wire;
import loomwright.comparison.ComparisonQuestion;
import loomwright.network.NetworkLimits;
import loomwright.operation.Step;
import org.junit.jupiter.api.Test;

/** Two plans laid on each other: each thing once, and what changes marked. */
class D05_ComparisonTest {
    private static StepDrawings drawn(Plan before, Plan after, DiagramOptions options) {
        return Diagram.compare(
                ComparisonQuestion.of(before, after),
                options,
                Drawn.LIMITS,
                NetworkLimits.defaults(),
                Progress.UNWATCHED);
    }

    private static Drawing compared(Plan before, Plan after) {
        return drawn(before, after, DiagramOptions.USUAL).drawing();
    }

    private static Plan moved(Plan plan, String wire, String to) {
        return plan.with(
                plan.parts(),
                plan.wires().stream()
                        .map(one -> one.id().equals(wire) ? one.withEnds(one.from(), TerminalRef.parse(to)) : one)
                        .toList());
    }

    @Test
    void everythingOfEitherPlanStandsOnceWithRoomAroundIt() {
        Plan before = Plans.example("sandpiper-as-built");
        Plan after = Plans.example("sandpiper-electronic-module");
        Drawing drawing = compared(before, after);
        assertThat(Room.overlaps(drawing)).isEmpty();
        for (Plan plan : List.of(before, after)) {
            for (Wire wire : plan.wires()) {
                assertThat(drawing.wires()).anyMatch(line -> line.said().words().contains(wire.id()));
            }
        }
        assertThat(drawing.symbols().stream().filter(symbol -> symbol.ids().contains("coil")))
                .hasSize(1);
    }

    @Test
    void whatChangesStandsOutByItsFormAndHasOneLineInTheLegend() {
        Drawing drawing = compared(Plans.example("sandpiper-as-built"), Plans.example("sandpiper-electronic-module"));
        Badge coil = drawing.badges().stream()
                .filter(badge -> badge.owner().equals("coil"))
                .findFirst()
                .orElseThrow();
        assertThat(coil.kind()).isEqualTo(Mark.Kind.CHANGED);
        assertThat(drawing.badges().stream().filter(b -> b.owner().isEmpty() && b.number() == coil.number()))
                .hasSize(1);
        assertThat(drawing.badges())
                .anyMatch(b -> b.owner().equals("module") && b.kind() == Mark.Kind.ADDED)
                .anyMatch(b -> b.owner().equals("ballast") && b.kind() == Mark.Kind.REMOVED);
        assertThat(Drawn.symbol(drawing, "battery").emphasis()).isEqualTo(Emphasis.NONE);
        assertThat(Drawn.symbol(drawing, "ballast").emphasis()).isEqualTo(Emphasis.REMOVED);
        assertThat(Drawn.symbol(drawing, "module").emphasis()).isEqualTo(Emphasis.ADDED);
    }

    @Test
    void aMovedWireIsThereTwiceAndEverythingElseOnce() {
        Plan before = Plans.example("sandpiper-as-built");
        Wire any = before.findWire("W6").orElseThrow();
        String target = before.wires().stream()
                .filter(wire -> !wire.to().part().equals(any.to().part())
                        && !wire.to().part().equals(any.from().part()))
                .map(wire -> wire.to().toString())
                .findFirst()
                .orElseThrow();
        Drawing drawing = compared(before, moved(before, "W6", target));
        assertThat(drawing.wires().stream().filter(line -> line.said().words().contains("W6,")))
                .extracting(Drawing.Line::emphasis)
                .containsExactlyInAnyOrder(Emphasis.CHANGED, Emphasis.REMOVED);
        assertThat(drawing.wires().stream().filter(line -> !line.said().id().isEmpty()))
                .hasSize(before.wires().size() + 1);
        assertThat(Drawn.wire(drawing, "W6").said().to()).isEqualTo(target);
    }

    @Test
    void theStepIsThatOfTheWorstFindingUnlessSaid() {
        Plan before = Plans.example("sandpiper-unguarded-bypass");
        Plan after = Plans.example("sandpiper-bypass-relay");
        assertThat(drawn(
                                before,
                                after,
                                new DiagramOptions(Step.CRANK, null, null, null, null, null, null, null, null, null))
                        .shown())
                .isEqualTo(Step.CRANK);
        assertThat(Optional.of(drawn(before, after, DiagramOptions.USUAL).shown()))
                .isNotEqualTo(Optional.of(Step.OFF_AGAIN));
    }

    @Test
    void aPlanOnItselfHasNoMarks() {
        Plan plan = Plans.example("otter-6v-positive-earth");
        assertThat(compared(plan, plan).badges()).isEmpty();
    }
}
