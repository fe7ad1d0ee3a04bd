package loomwright.drawing.sheet;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.stream.Collectors;
import loomwright.answer.Progress;
import loomwright.answer.Severity;
import loomwright.backfeed.BackfeedLimits;
import loomwright.backfeed.BackfeedReport;
import loomwright.backfeed.BackfeedReport.UnintendedFeed;
import loomwright.backfeed.BackfeedSearch;
import loomwright.backfeed.EverySetting;
import loomwright.circuit.FilamentLamp;
import loomwright.circuit.Plan;
import loomwright.circuit.RandomVehicle;
import loomwright.drawing.diagram.Diagram;
import loomwright.drawing.diagram.DiagramOptions;
import loomwright.drawing.diagram.Mark;
import loomwright.drawing.diagram.StepDrawings;
import loomwright.network.NetworkLimits;
import loomwright.operation.FeedStrength;
import loomwright.operation.Step;
import loomwright.review.PlanReview;
import loomwright.review.ReviewReport;
import loomwright.review.context.FindingCode;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.ShrinkingMode;
import net.jqwik.api.constraints.IntRange;

/** What a search finds is what review, sheet and picture say, and what solving every setting one by one finds. */
class SameFeedsOnPaperTest {
    private static final BackfeedLimits LIMITS = new BackfeedLimits(262_144, 64, 6, 4, 600_000);

    @Property(seed = "20261130", tries = 12, shrinking = ShrinkingMode.OFF)
    void reviewSheetAndPictureNameTheLoadsOfTheSearch(
            @ForAll @IntRange(max = 1_000_000) int seed, @ForAll @IntRange(min = 8, max = 24) int parts) {
        Plan plan = RandomVehicle.of(
                seed, RandomVehicle.Shape.of(parts).withSwitches(2).withCrossTies(3));
        BackfeedReport found = new BackfeedSearch(LIMITS, NetworkLimits.defaults()).find(plan, Progress.UNWATCHED);
        Map<String, Severity> faulty = new TreeMap<>();
        found.unintendedFeeds().stream()
                .filter(feed -> feed.severity() != Severity.NOTE)
                .forEach(feed -> faulty.put(feed.load(), feed.severity()));

        assertThat(faulty(PlanReview.of(plan, LIMITS, NetworkLimits.defaults(), Progress.UNWATCHED)
                        .result()))
                .as("review of seed %d", seed)
                .isEqualTo(faulty);
        JobSheet sheet = JobSheet.of(
                        new SheetQuestion(null, plan, null, Step.RUN, SheetQuestion.Document.BENCH),
                        LIMITS,
                        NetworkLimits.defaults(),
                        Progress.UNWATCHED)
                .result();
        assertThat(faulty(sheet.review())).as("sheet of seed %d", seed).isEqualTo(faulty);
        assertThat(marked(plan, Step.RUN)).as("picture of seed %d", seed).containsAll(faulty.keySet());
        assertThat(faulty.keySet()).as("every setting of seed %d", seed).containsAll(atWork(plan, found));
    }

    private static Map<String, Severity> faulty(ReviewReport review) {
        Map<String, Severity> faulty = new TreeMap<>();
        review.findings().stream()
                .filter(finding -> finding.code().equals(FindingCode.BACKFEED.code()))
                .filter(finding -> finding.severity() != Severity.NOTE)
                .forEach(finding -> faulty.put(finding.ids().get(0), finding.severity()));
        return faulty;
    }

    private static Set<String> marked(Plan plan, Step step) {
        StepDrawings drawn =
                Diagram.of(plan, DiagramOptions.USUAL.at(step), LIMITS, NetworkLimits.defaults(), Progress.UNWATCHED);
        Set<String> marked = new HashSet<>();
        drawn.marks().stream()
                .filter(mark -> mark.kind() == Mark.Kind.BACKFEED)
                .forEach(mark -> marked.addAll(mark.ids()));
        return marked;
    }

    /** Loads that work in some setting though they should not, but for those whose feed is a question. */
    private static Set<String> atWork(Plan plan, BackfeedReport found) {
        Set<String> asked = found.unintendedFeeds().stream()
                .filter(feed -> feed.severity() == Severity.NOTE)
                .map(UnintendedFeed::load)
                .collect(Collectors.toSet());
        // The lamp that glows while the engine runs down is normal, see B17.
        List<String> normal = plan.listParts(FilamentLamp.class).stream()
                .map(lamp -> EverySetting.key(lamp.id(), Step.OFF_ENGINE_TURNING))
                .toList();
        Set<String> atWork = new TreeSet<>();
        EverySetting.fedUnasked(plan).forEach((key, fed) -> {
            String load = key.substring(0, key.indexOf(' '));
            if (fed.strength() == FeedStrength.OPERATES && !asked.contains(load) && !normal.contains(key)) {
                atWork.add(load);
            }
        });
        return atWork;
    }
}
