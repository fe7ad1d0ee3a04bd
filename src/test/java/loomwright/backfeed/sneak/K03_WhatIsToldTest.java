package loomwright.backfeed.sneak;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Map;
import loomwright.answer.Severity;
import loomwright.backfeed.BackfeedReport.PathStep;
import loomwright.backfeed.sneak.SneakReport.Sneak;
import loomwright.backfeed.sneak.SneakReport.SneakOccurrence;
import loomwright.circuit.Condition;
import loomwright.circuit.Plan;
import loomwright.circuit.Plans;
import loomwright.circuit.ResolvedSupply;
import loomwright.circuit.Switch;
import loomwright.operation.Step;
import org.junit.jupiter.api.Test;

/** What the search tells of a load: the smallest combination, the path, how strongly, in how many combinations. */
class K03_WhatIsToldTest {
    private static Sneak sneak(SneakReport report, String load) {
        return report.sneaks().stream()
                .filter(s -> s.load().equals(load))
                .findFirst()
                .orElseThrow(() -> new AssertionError(load + " is not fed unasked"));
    }

    @Test
    void aLoadFedAcrossATieIsToldOnceWithTheOneSwitchThatDoesIt() {
        SneakReport report = SneakPlans.search(SneakPlans.crossTie());
        assertThat(report.combinations()).isEqualTo(4);
        assertThat(report.complete()).isTrue();
        assertThat(report.sneaks()).extracting(Sneak::load).containsExactly("fan", "lamp");
        Sneak fan = sneak(report, "fan");
        assertThat(fan.severity()).isEqualTo(Severity.DANGER);
        assertThat(fan.combinations()).isEqualTo(1);
        assertThat(fan.occurrences())
                .hasSize(Step.values().length)
                .allSatisfy(o -> assertThat(o.changes()).isEqualTo(Map.of("left", "on")));
    }

    @Test
    void thePathGoesFromTheSourceThroughTheTieAndBack() {
        assertThat(sneak(SneakPlans.search(SneakPlans.crossTie()), "fan").path().steps())
                .extracting(PathStep::id)
                .containsExactly("battery", "W1", "left", "W4", "W8", "fan", "W7", "W3");
    }

    @Test
    void theFiguresAreThoseOfOhmsLaw() {
        Plan plan = SneakPlans.feedAndEarthSwitched();
        ResolvedSupply supply = plan.supply(Condition.OFF);
        // The battery, the horn, five wires and two contacts, all in series.
        double currentA = supply.emfV() / (supply.internalResistanceOhm() + 3 + 5 * 0.02 + 2 * Switch.CONTACT_OHM);
        SneakOccurrence off =
                sneak(SneakPlans.search(plan), "horn").occurrences().get(0);
        assertThat(off.step()).isEqualTo(Step.OFF);
        assertThat(off.currentA()).isCloseTo(currentA, within(1e-9));
        assertThat(off.effectiveV()).isCloseTo(3 * currentA, within(1e-9));
    }

    @Test
    void twoContactsThatMustBothCloseAreToldTogether() {
        SneakReport report = SneakPlans.search(SneakPlans.feedAndEarthSwitched());
        assertThat(report.sneaks()).hasSize(1);
        assertThat(report.sneaks().get(0).combinations()).isEqualTo(1);
        assertThat(report.sneaks().get(0).occurrences().get(0).changes())
                .isEqualTo(Map.of("feed", "on", "return", "on"));
    }

    @Test
    void aSoundPlanHasNone() {
        assertThat(SneakPlans.search(Plans.example("otter-6v-positive-earth")).sneaks())
                .isEmpty();
    }

    @Test
    void theStarterThatABypassHoldsInIsFoundInTheDemoPlan() {
        Sneak solenoid = sneak(SneakPlans.search(Plans.example("sandpiper-unguarded-bypass")), "solenoid");
        assertThat(solenoid.severity()).isEqualTo(Severity.DANGER);
        assertThat(solenoid.occurrences().get(0).step()).isEqualTo(Step.RUNNING);
        assertThat(solenoid.occurrences().get(0).operated()).isTrue();
        assertThat(solenoid.occurrences().get(0).changes()).isEmpty();
    }
}
