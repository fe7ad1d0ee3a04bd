package loomwright.drawing.sheet;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import loomwright.answer.Progress;
import loomwright.backfeed.BackfeedLimits;
import loomwright.circuit.Plan;
import loomwright.circuit.Plans;
import loomwright.comparison.ComparisonAnswer;
import loomwright.comparison.ComparisonQuestion;
import loomwright.comparison.PlanComparison.Item;
import loomwright.comparison.PlanComparison.ItemChange;
import loomwright.message.MessageCode;
import loomwright.network.NetworkLimits;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Work in a safe order: the battery off first and on last, out before in, the live end last. */
class WorkListTest {
    private static final String PARTS = "{'kind':'battery','id':'B'},{'kind':'earth','id':'E'},"
            + "{'kind':'fuse','id':'F','ratingA':10},{'kind':'lamp','id':'L','ratedV':12,'ratedW':21,'meantLive':['run']}";
    private static final String EARTHS =
            "{'id':'W1','from':'B.minus','to':'E.31','size':'16 mm2','lengthM':1},{'id':'W2','from':'L.b','to':'E.31','size':'1 mm2','lengthM':1}";
    private static final String FEED =
            ",{'id':'W3','from':'B.plus','to':'F.a','size':'2.5 mm2','lengthM':1,'colour':'RD'}";
    private static final String LAMP = ",{'id':'W4','from':'F.b','to':'L.a','size':'1 mm2','lengthM':1,'colour':'WH'}";

    private static List<WorkStep> steps(Plan before, Plan after) {
        return WorkList.of(
                ComparisonAnswer.of(
                                ComparisonQuestion.of(before, after),
                                BackfeedLimits.defaults(),
                                NetworkLimits.defaults(),
                                Progress.UNWATCHED)
                        .result(),
                before,
                after);
    }

    private static List<MessageCode> codes(List<WorkStep> steps) {
        return steps.stream().map(step -> step.message().code()).toList();
    }

    @Test
    void wiresAreRunFromTheLoadTowardsTheBattery() {
        Plan bare = Plans.of(PARTS, EARTHS);
        List<WorkStep> steps = steps(bare, Plans.of(PARTS, EARTHS + FEED + LAMP));

        assertThat(codes(steps).subList(0, 3))
                .containsExactly(WorkText.DISCONNECT_BATTERY, WorkText.RUN_WIRE, WorkText.RUN_WIRE);
        assertThat(steps.stream()
                        .map(WorkStep::change)
                        .filter(change -> change != null)
                        .map(ItemChange::after))
                .containsExactly("W4", "W3");
    }

    @Test
    void whatComesOutComesOutFirst() {
        List<WorkStep> steps = steps(
                Plans.of(PARTS, EARTHS + FEED + LAMP),
                Plans.of(
                        PARTS + ",{'kind':'load','id':'H','resistanceOhm':3,'meantLive':['run']}",
                        EARTHS + FEED
                                + ",{'id':'W9','from':'F.b','to':'H.a','size':'1 mm2','lengthM':1},{'id':'W8','from':'H.b','to':'E.31','size':'1 mm2','lengthM':1}"));

        assertThat(codes(steps))
                .containsSubsequence(
                        WorkText.DISCONNECT_BATTERY,
                        WorkText.TAKE_OUT_WIRE,
                        WorkText.FIT_PART,
                        WorkText.RUN_WIRE,
                        WorkText.RUN_WIRE,
                        WorkText.LOOSE_END,
                        WorkText.MEASURE_OHMS,
                        WorkText.RECONNECT_BATTERY,
                        WorkText.MEASURE_VOLTS);
    }

    @Test
    void ofAMovedWireOneEndStays() {
        Plan before = Plans.of(PARTS, EARTHS + FEED + LAMP);
        Plan after = Plans.of(PARTS, EARTHS + FEED + LAMP.replace("F.b", "F.a"));
        WorkStep moved = steps(before, after).get(1);

        assertThat(moved.message().code()).isEqualTo(WorkText.MOVE_WIRE_END);
        assertThat(moved.message().ids()).containsExactly("W4", "F", "L");
    }

    @Test
    void samePlansAreNoWork() {
        Plan plan = Plans.of(PARTS, EARTHS + FEED + LAMP);
        assertThat(codes(steps(plan, plan))).containsExactly(WorkText.NOTHING_TO_DO);
    }

    /** Each wire that changes is dealt with once, and the numbers count up. */
    @ParameterizedTest
    @CsvSource({
        "sandpiper-as-built,sandpiper-electronic-module",
        "sandpiper-electronic-module,sandpiper-as-built",
        "sandpiper-unguarded-bypass,sandpiper-bypass-relay"
    })
    void everyChangedWireIsInTheWorkOnce(String before, String after) {
        Plan one = Plans.example(before);
        Plan other = Plans.example(after);
        List<WorkStep> steps = steps(one, other);
        List<ItemChange> wires = ComparisonAnswer.of(
                        ComparisonQuestion.of(one, other),
                        BackfeedLimits.defaults(),
                        NetworkLimits.defaults(),
                        Progress.UNWATCHED)
                .result()
                .changes()
                .stream()
                .filter(change -> change.item() == Item.WIRE)
                .toList();

        assertThat(steps.stream().map(WorkStep::change).filter(wires::contains))
                .containsExactlyInAnyOrderElementsOf(wires);
        for (int i = 0; i < steps.size(); i++) {
            assertThat(steps.get(i).number()).isEqualTo(i + 1);
        }
    }
}
