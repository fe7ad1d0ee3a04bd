package loomwright.review;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Map;
import java.util.stream.Collectors;
import loomwright.answer.Finding;
import loomwright.answer.Progress;
import loomwright.answer.Severity;
import loomwright.backfeed.BackfeedAnswer;
import loomwright.backfeed.BackfeedLimits;
import loomwright.backfeed.BackfeedOptions;
import loomwright.backfeed.BackfeedReport;
import loomwright.backfeed.BackfeedReport.UnintendedFeed;
import loomwright.circuit.ForEachExample;
import loomwright.circuit.Plan;
import loomwright.circuit.Plans;
import loomwright.circuit.WholeCar;
import loomwright.network.NetworkLimits;
import loomwright.review.context.FindingCode;
import org.junit.jupiter.api.Test;

/** A review and a search for backfeeds, asked of the same plan, say the same: which loads, how serious, how strong, what helps. */
class OneSearchTest {
    /** No clock that a slow machine reaches. */
    private static final BackfeedLimits FEW_REMEDIES = new BackfeedLimits(262_144, 64, 6, 4, 3_600_000);

    private static void sameIsSaid(Plan plan) {
        ReviewReport review = PlanReview.of(plan, FEW_REMEDIES, NetworkLimits.defaults(), Progress.UNWATCHED)
                .result();
        BackfeedReport backfeed = BackfeedAnswer.of(
                        plan, BackfeedOptions.USUAL, FEW_REMEDIES, NetworkLimits.defaults(), Progress.UNWATCHED)
                .result();
        assertThat(review.extent()).isEqualTo(backfeed.extent());
        Map<String, UnintendedFeed> fed =
                backfeed.unintendedFeeds().stream().collect(Collectors.toMap(UnintendedFeed::load, feed -> feed));
        Map<String, Finding> found = review.findings().stream()
                .filter(finding -> finding.code().equals(FindingCode.BACKFEED.code()))
                .collect(Collectors.toMap(finding -> finding.ids().get(0), finding -> finding));
        assertThat(fed.keySet()).containsAll(found.keySet());
        fed.forEach((load, feed) -> {
            Finding finding = found.get(load);
            if (finding == null) {
                assertThat(feed.severity()).as("what a review leaves out").isEqualTo(Severity.NOTE);
                return;
            }
            assertThat(finding.severity()).isEqualTo(feed.severity());
            assertThat(Reviews.figure(finding, "effectiveV"))
                    .isEqualTo(feed.main().level().effectiveV());
            assertThat(finding.remedy() == null).isEqualTo(feed.remedies().isEmpty());
        });
    }

    @ForEachExample
    void ofEveryExample(String name) {
        sameIsSaid(Plans.example(name));
    }

    @Test
    void ofAWholeCarWithRelaysThatStayIn() {
        sameIsSaid(WholeCar.small());
    }

    /** 2,048 combinations are searched; all figures are worked out of 64, and it says so. */
    @Test
    void aReviewOfManyCombinationsSaysOfHowManyItWorkedOutAllFigures() {
        BackfeedReport.Extent extent = PlanReview.of(
                        WholeCar.of(60, 10, 0),
                        new BackfeedLimits(262_144, 20, 6, 1, 3_600_000),
                        NetworkLimits.defaults(),
                        Progress.UNWATCHED)
                .result()
                .extent();
        assertThat(extent.combinations()).isEqualTo(2_048);
        assertThat(extent.combinationsSearched()).isEqualTo(2_048);
        assertThat(extent.combinationsSolved()).isEqualTo(20);
        assertThat(extent.heldSwitches()).isEmpty();
    }

    /** Each wire's greatest current is among the figures, in whichever combination it flows. */
    @Test
    void theCombinationsSolvedHoldTheGreatestCurrentOfEachWire() {
        Plan plan = WholeCar.of(48, 8, 1);
        ReviewReport few = PlanReview.of(
                        plan,
                        new BackfeedLimits(262_144, 30, 6, 1, 3_600_000),
                        NetworkLimits.defaults(),
                        Progress.UNWATCHED)
                .result();
        ReviewReport all = PlanReview.of(
                        plan,
                        new BackfeedLimits(262_144, 65_536, 6, 1, 3_600_000),
                        NetworkLimits.defaults(),
                        Progress.UNWATCHED)
                .result();
        assertThat(all.extent().combinationsSolved()).isEqualTo(512);
        assertThat(overloads(few)).isEqualTo(overloads(all));
    }

    private static Map<String, Severity> overloads(ReviewReport report) {
        return report.findings().stream()
                .filter(f -> f.code().startsWith("wire-") || f.code().startsWith("fuse-"))
                .collect(Collectors.toMap(f -> f.code() + f.ids(), Finding::severity, (a, b) -> a));
    }
}
