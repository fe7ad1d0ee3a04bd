package loomwright.drawing.diagram;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.List;
import loomwright.answer.Progress;
import loomwright.answer.RejectedInput;
import loomwright.circuit.Plan;
import loomwright.circuit.Plans;
import loomwright.circuit.Switch;
import loomwright.drawing.diagram.DiagramOptions.Marks;
import loomwright.network.NetworkLimits;
import loomwright.operation.Step;
import org.junit.jupiter.api.Test;

/** A plan drawn after moves: what they leave pulled in is drawn pulled in. */
class D08_MovesTest {
    private static final Plan PLAN = Plans.example("sandpiper-unguarded-bypass");

    private static StepDrawings drawn(Plan plan) {
        return after(plan);
    }

    private static StepDrawings after(String... moves) {
        return after(PLAN, moves);
    }

    private static StepDrawings after(Plan plan, String... moves) {
        return Diagram.of(
                plan,
                new DiagramOptions(null, List.of(Marks.NONE), null, null, true, null, null, List.of(moves), null, null),
                Drawn.LIMITS,
                NetworkLimits.defaults(),
                Progress.UNWATCHED);
    }

    /** The bypass wire holds the solenoid in once it was in; see B04_HeldRelayTest for the reckoning. */
    @Test
    void aSolenoidThatIsHeldAfterCrankingIsDrawnPulledIn() {
        StepDrawings held = after("key:crank", "key:run");

        assertThat(held.shown()).isEqualTo(Step.RUN);
        assertThat(held.held()).containsExactly("solenoid");
        assertThat(Drawn.texts(held.drawing(), "solenoid")).anyMatch(text -> text.endsWith("V pulled in"));
        assertThat(Drawn.texts(Drawn.of(PLAN, Step.RUN, Marks.NONE), "solenoid"))
                .allMatch(text -> !text.endsWith("pulled in") || text.endsWith("not pulled in"));
    }

    /** A car that nothing in holds: after any moves it stands as key and switches alone have it. */
    @Test
    void withoutMemoryAllStepsAreThoseOfTheSwitchesAlone() {
        Plan plan = Plans.example("sandpiper-as-built");
        Plan lit = plan.withPart(((Switch) plan.findPart("lights").orElseThrow()).withPosition("head"));
        StepDrawings moved = after(plan, "key:crank", "key:run", "lights:head");

        assertThat(moved.held()).isEmpty();
        assertThat(moved.drawings()).containsOnlyKeys(Step.values());
        assertThat(moved.readings()).isEqualTo(drawn(lit).readings());
        assertThat(moved.readings()).isNotEqualTo(drawn(plan).readings());
    }

    @Test
    void everythingStandsWhereItStands() {
        Drawing drawn = Drawn.of(PLAN, Step.RUN, Marks.NONE);
        Drawing moved = after("key:run").drawing();

        assertThat(moved.symbols().stream().map(Drawing.Symbol::box).toList())
                .isEqualTo(drawn.symbols().stream().map(Drawing.Symbol::box).toList());
    }

    @Test
    void aMoveOfNothingIsRefusedWithItsPlace() {
        assertThatThrownBy(() -> after("key:run", "nothing:on"))
                .isInstanceOfSatisfying(
                        RejectedInput.class,
                        rejected ->
                                assertThat(rejected.faults().get(0).pointer()).isEqualTo("/after/1"));
    }
}
