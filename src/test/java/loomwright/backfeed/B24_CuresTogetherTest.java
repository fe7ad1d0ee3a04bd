package loomwright.backfeed;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Objects;
import loomwright.answer.Progress;
import loomwright.answer.Severity;
import loomwright.backfeed.BackfeedReport.Cure;
import loomwright.backfeed.BackfeedReport.UnintendedFeed;
import loomwright.circuit.Plan;
import loomwright.circuit.WholeCar;
import loomwright.network.NetworkLimits;
import org.junit.jupiter.api.Test;

/** Several faults are cured by several changes, told as one. */
class B24_CuresTogetherTest {
    private static final BackfeedLimits LIMITS = new BackfeedLimits(4_096, 32, 6, 40, 3_600_000);
    private static final BackfeedOptions CURE = new BackfeedOptions(false, false, true, false, 50, Severity.NOTE);

    private static BackfeedReport report(Plan plan, BackfeedOptions options) {
        return BackfeedAnswer.of(plan, options, LIMITS, NetworkLimits.defaults(), Progress.UNWATCHED)
                .result();
    }

    private static List<String> fed(BackfeedReport report) {
        return report.unintendedFeeds().stream()
                .filter(feed -> feed.severity() != Severity.NOTE)
                .map(UnintendedFeed::load)
                .toList();
    }

    /** Two relays that keep themselves in take a change each; each change cures the relay and its load. */
    @Test
    void twoRelaysThatKeepThemselvesInTakeTwoChanges() {
        Plan plan = WholeCar.of(33, 2, 2);
        BackfeedReport report = report(plan, CURE);
        assertThat(fed(report)).contains("latch-0", "latched-0", "latch-1", "latched-1");
        Cure cure = Objects.requireNonNull(report.cure());
        assertThat(cure.cures()).contains("latch-0", "latched-0", "latch-1", "latched-1");
        assertThat(cure.changes()).hasSizeBetween(2, 5);
        assertThat(fed(report)).containsAll(cure.cures()).containsAll(cure.remaining());
        BackfeedReport after = report(PlanPatch.apply(plan, cure.patch()), BackfeedOptions.USUAL);
        assertThat(fed(after)).containsExactlyInAnyOrderElementsOf(cure.remaining());
    }

    /** A remedy alone may lean on a feed that another cure takes away. */
    @Test
    void everyRemedyHoldsBesideWhatCuresTheOtherLoads() {
        Plan plan = WholeCar.of(33, 2, 2);
        CombinedCure cure = CombinedCure.of(
                        plan, report(plan, BackfeedOptions.USUAL), changed -> report(changed, BackfeedOptions.USUAL))
                .orElseThrow();
        BackfeedReport report = report(plan, CURE);
        assertThat(report.unintendedFeeds())
                .filteredOn(feed -> feed.severity() != Severity.NOTE)
                .isNotEmpty()
                .allSatisfy(feed -> assertThat(feed.remedies()).isNotEmpty().allSatisfy(remedy -> {
                    Plan others = cure.withoutCureOf(feed.load());
                    assertThat(fed(report(others, BackfeedOptions.USUAL))).contains(feed.load());
                    Plan both =
                            PlanPatch.applyBeside(plan, others, remedy.patch()).orElseThrow();
                    assertThat(fed(report(both, BackfeedOptions.USUAL))).doesNotContain(feed.load());
                }));
    }

    @Test
    void twoChangesOfTheSameWireAreNotMadeTogether() {
        Plan plan = WholeCar.of(33, 2, 2);
        Plan without =
                plan.with(plan.parts(), plan.wires().subList(1, plan.wires().size()));
        List<BackfeedReport.PatchOperation> patch = PlanPatch.between(plan, without);
        assertThat(PlanPatch.applyBeside(plan, plan, patch)).contains(without);
        assertThat(PlanPatch.applyBeside(plan, without, patch)).isEmpty();
    }

    @Test
    void whoDoesNotAskForACureGetsNone() {
        assertThat(report(WholeCar.of(33, 2, 2), BackfeedOptions.USUAL).cure()).isNull();
    }
}
