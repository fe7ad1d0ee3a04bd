package loomwright.review;

import static loomwright.review.Reviews.codes;
import static loomwright.review.Reviews.figure;
import static loomwright.review.Reviews.get;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.Objects;
import loomwright.answer.Finding;
import loomwright.answer.Severity;
import loomwright.circuit.Plan;
import loomwright.circuit.Plans;
import loomwright.circuit.TerminalRef;
import loomwright.circuit.Wire;
import loomwright.message.MessageFinder;
import loomwright.operation.Mirror;
import loomwright.review.context.FindingCode;
import loomwright.review.context.ReviewText;
import org.junit.jupiter.api.Test;

/** A module works from 8 V and not below 6 V at 12 V (ISO 16750-2, from memory): behind a ballast it has fewer. */
class ModuleSupplyTest {
    private final Plan behind = Plans.named("module-behind-ballast");

    private static Plan ahead(Plan plan) {
        TerminalRef supply = TerminalRef.parse("module.15");
        List<Wire> wires = plan.wires().stream()
                .map(wire -> wire.to().equals(supply) ? wire.withEnds(TerminalRef.parse("ballast.a"), supply) : wire)
                .toList();
        return plan.with(plan.parts(), wires);
    }

    @Test
    void aModuleBehindABallastIsFedAheadOfIt() {
        for (Plan plan : List.of(behind, Mirror.of(behind))) {
            Finding low = get(plan, FindingCode.MODULE_SUPPLY_LOW);
            assertThat(low.severity()).isEqualTo(Severity.WARNING);
            assertThat(figure(low, "supplyV")).isLessThan(6);
            assertThat(figure(low, "sureV")).isCloseTo(8, within(1e-9));
            assertThat(Objects.requireNonNull(low.remedy()).code()).isEqualTo(ReviewText.FEED_MODULE_AHEAD);
        }
    }

    /** What the remedy promises is what the plan with its lead moved shows. */
    @Test
    void withItsLeadMovedItHasTheVoltsThatTheRemedySays() {
        double promisedV = MessageFinder.quantity(
                Objects.requireNonNull(
                        get(behind, FindingCode.MODULE_SUPPLY_LOW).remedy()),
                "supplyV");
        assertThat(promisedV).isGreaterThan(8);
        assertThat(codes(ahead(behind))).doesNotContain("module-supply-low", "oscillating");
    }

    /** On, it pulls its own volts down; off, it has them back. One fault is told once. */
    @Test
    void thatItGoesOnAndOffAndTheCoilIsDeadIsNotToldAsWell() {
        assertThat(codes(behind)).doesNotContain("oscillating", "load-not-powered");
    }

    @Test
    void withoutABallastTheLeadsAreLookedAt() {
        Plan weak = ahead(behind);
        Plan poor = weak.with(
                weak.parts(),
                weak.wires().stream()
                        .map(wire -> wire.to().equals(TerminalRef.parse("module.15")) ? wire.withJoints(60, 0) : wire)
                        .toList());
        assertThat(Objects.requireNonNull(
                                get(poor, FindingCode.MODULE_SUPPLY_LOW).remedy())
                        .code())
                .isEqualTo(ReviewText.RAISE_MODULE_SUPPLY);
    }
}
