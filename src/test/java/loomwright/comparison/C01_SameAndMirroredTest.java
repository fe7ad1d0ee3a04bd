package loomwright.comparison;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.EnumSet;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import loomwright.circuit.Plan;
import loomwright.circuit.Plans;
import loomwright.comparison.PlanComparison.Change;
import loomwright.comparison.PlanComparison.ItemChange;
import loomwright.comparison.PlanComparison.Kept;
import loomwright.comparison.PlanComparison.PropertyChange;
import loomwright.comparison.PlanComparison.ReadingChange;
import loomwright.comparison.PlanComparison.StateChange;
import loomwright.comparison.PlanComparison.StepChange;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;

/** A plan compared with itself gives nothing; two plans swapped give the mirror image. */
@SuppressWarnings("ArgumentSelectionDefectChecker") // swapping before and after is what the mirror does
class C01_SameAndMirroredTest {

    static List<Plan> plans() {
        return ComparedPlans.PLANS;
    }

    static Stream<Arguments> pairs() {
        List<Arguments> pairs = new ArrayList<>();
        for (int i = 0; i < ComparedPlans.PLANS.size(); i++) {
            for (int j = i + 1; j < ComparedPlans.PLANS.size(); j++) {
                pairs.add(Arguments.of(ComparedPlans.PLANS.get(i), ComparedPlans.PLANS.get(j)));
            }
        }
        pairs.add(Arguments.of(ComparedPlans.BUILT, Plans.of(ComparedPlans.PARTS, ComparedPlans.WIRES)));
        return pairs.stream();
    }

    @ParameterizedTest
    @MethodSource("plans")
    void aPlanComparedWithItselfGivesNothing(Plan plan) {
        PlanComparison comparison = ComparedPlans.of(plan, plan);
        assertThat(comparison.same()).isTrue();
        assertThat(comparison.settings()).isEmpty();
        assertThat(comparison.changes()).isEmpty();
        assertThat(comparison.steps()).isEmpty();
        assertThat(comparison.findings().appear()).isEmpty();
        assertThat(comparison.findings().disappear()).isEmpty();
        assertThat(comparison.looseEnds().newLooseEnds()).isEmpty();
        assertThat(comparison.looseEnds().resolvedLooseEnds()).isEmpty();
        assertThat(comparison.material().needed())
                .isEqualTo(comparison.material().removedMaterial());
        assertThat(comparison.material().needed().parts()).isEmpty();
        assertThat(comparison.material().needed().wires()).isEmpty();
        assertThat(comparison.material().needed().terminals()).isEmpty();
    }

    @ParameterizedTest
    @MethodSource("pairs")
    void plansSwappedGiveTheMirrorImage(Plan one, Plan other) {
        PlanComparison there = ComparedPlans.of(one, other);
        PlanComparison back = ComparedPlans.of(other, one);
        assertThat(there.same()).isFalse();
        assertThat(mirrored(there.settings())).isEqualTo(new HashSet<>(back.settings()));
        assertThat(there.changes().stream().map(C01_SameAndMirroredTest::mirrored))
                .containsExactlyInAnyOrderElementsOf(back.changes());
        assertThat(there.steps().stream().map(C01_SameAndMirroredTest::mirrored))
                .containsExactlyElementsOf(back.steps().stream().map(Steps::of).toList());
        assertThat(there.findings().appear())
                .containsExactlyInAnyOrderElementsOf(back.findings().disappear());
        assertThat(there.findings().disappear())
                .containsExactlyInAnyOrderElementsOf(back.findings().appear());
        assertThat(there.findings().stay().stream().map(k -> new Kept(k.after(), k.before())))
                .containsExactlyInAnyOrderElementsOf(back.findings().stay());
        assertThat(there.looseEnds().newLooseEnds()).isEqualTo(back.looseEnds().resolvedLooseEnds());
        assertThat(there.looseEnds().resolvedLooseEnds())
                .isEqualTo(back.looseEnds().newLooseEnds());
        assertThat(there.material().needed()).isEqualTo(back.material().removedMaterial());
        assertThat(there.material().removedMaterial()).isEqualTo(back.material().needed());
    }

    private static Set<PropertyChange> mirrored(List<PropertyChange> changes) {
        return changes.stream()
                .map(c -> new PropertyChange(c.property(), c.after(), c.before()))
                .collect(Collectors.toSet());
    }

    private static ItemChange mirrored(ItemChange change) {
        Set<Change> kinds = EnumSet.noneOf(Change.class);
        for (Change kind : change.changes()) {
            kinds.add(kind == Change.ADDED ? Change.REMOVED : kind == Change.REMOVED ? Change.ADDED : kind);
        }
        return new ItemChange(
                change.item(),
                change.after(),
                change.before(),
                change.isText(),
                change.wasText(),
                List.copyOf(kinds),
                change.properties().stream()
                        .map(c -> new PropertyChange(c.property(), c.after(), c.before()))
                        .toList());
    }

    /** A step without an order of its readings. */
    private record Steps(
            Object step, boolean before, boolean after, Set<ReadingChange> readings, Set<StateChange> states) {
        static Steps of(StepChange change) {
            return new Steps(
                    change.step(),
                    change.settledBefore(),
                    change.settledAfter(),
                    new HashSet<>(change.readings()),
                    new HashSet<>(change.states()));
        }
    }

    private static Steps mirrored(StepChange change) {
        Set<ReadingChange> readings = new HashSet<>();
        for (ReadingChange r : change.readings()) {
            Double difference = r.change();
            readings.add(new ReadingChange(
                    r.quantity(),
                    r.atBefore() == null ? r.at() : r.atBefore(),
                    r.atBefore() == null ? null : r.at(),
                    r.unit(),
                    r.after(),
                    r.before(),
                    difference == null ? null : (Double) (0 - difference)));
        }
        Set<StateChange> states = new HashSet<>();
        for (StateChange s : change.states()) {
            states.add(new StateChange(
                    s.partBefore() == null ? s.part() : s.partBefore(),
                    s.partBefore() == null ? null : s.part(),
                    s.after(),
                    s.before()));
        }
        return new Steps(change.step(), change.settledAfter(), change.settledBefore(), readings, states);
    }
}
