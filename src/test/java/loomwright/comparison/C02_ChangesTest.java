package loomwright.comparison;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Objects;
import loomwright.circuit.Plan;
import loomwright.circuit.Plans;
import loomwright.comparison.PlanComparison.Change;
import loomwright.comparison.PlanComparison.PropertyChange;
import loomwright.comparison.PlanComparison.Quantity;
import loomwright.operation.Step;
import org.junit.jupiter.api.Test;

/** What was added, removed, renamed, moved, resized or changed, and what readings follow. */
class C02_ChangesTest {
    private static final String WIRES = ComparedPlans.WIRES + ComparedPlans.FOG_WIRES;
    private static final String PARTS = ComparedPlans.PARTS + ComparedPlans.FOG;

    private static PlanComparison after(String parts, String wires) {
        return ComparedPlans.of(ComparedPlans.BUILT, Plans.of(parts, wires));
    }

    @Test
    void aWireAtAnotherTerminalIsMoved() {
        PlanComparison comparison = after(PARTS, WIRES.replace("'key.15','to':'dash.a'", "'key.30','to':'dash.a'"));
        assertThat(ComparedPlans.change(comparison, "W7").changes()).containsExactly(Change.MOVED);
        assertThat(ComparedPlans.change(comparison, "W7").properties())
                .extracting(C02_ChangesTest::text)
                .containsExactly("from key.15 key.30");
    }

    @Test
    void aWireOfAnotherSizeIsResized() {
        PlanComparison comparison = after(PARTS, WIRES.replace("'1 mm2','lengthM':2,", "'1.5 mm2','lengthM':2,"));
        assertThat(comparison.changes()).hasSize(1);
        assertThat(ComparedPlans.change(comparison, "W3").changes()).containsExactly(Change.RESIZED);
    }

    @Test
    void aWireUnderAnotherIdBetweenTheSameEndsIsTheSameWire() {
        PlanComparison comparison = after(PARTS, WIRES.replace("'W3'", "'feed'"));
        assertThat(comparison.changes()).hasSize(1);
        assertThat(ComparedPlans.change(comparison, "feed").before()).isEqualTo("W3");
        assertThat(ComparedPlans.change(comparison, "feed").changes()).containsExactly(Change.RENAMED);
        assertThat(comparison.steps()).isEmpty();
    }

    @Test
    void aPartUnderAnotherIdAtTheSameTerminalsIsTheSamePart() {
        PlanComparison comparison =
                after(PARTS.replace("'fog','ratedV'", "'mist','ratedV'"), WIRES.replace("fog.", "mist."));
        assertThat(comparison.changes()).hasSize(1);
        assertThat(ComparedPlans.change(comparison, "mist").changes()).containsExactly(Change.RENAMED);
    }

    @Test
    void twoThatCouldBeMeantAreTakenAsRemovedAndAdded() {
        String twice = ",{'kind':'lamp','id':'left','ratedV':12,'ratedW':21,'meantLive':[]},"
                + "{'kind':'lamp','id':'right','ratedV':12,'ratedW':21,'meantLive':[]}";
        String wires = ",{'id':'A1','from':'splice.2','to':'left.a','size':'1 mm2','lengthM':1},"
                + "{'id':'A2','from':'left.b','to':'body.31','size':'1 mm2','lengthM':1},"
                + "{'id':'A3','from':'splice.2','to':'right.a','size':'1 mm2','lengthM':1},"
                + "{'id':'A4','from':'right.b','to':'body.31','size':'1 mm2','lengthM':1}";
        PlanComparison comparison = after(ComparedPlans.PARTS + twice, ComparedPlans.WIRES + wires);
        assertThat(ComparedPlans.change(comparison, "fog").changes()).containsExactly(Change.REMOVED);
        assertThat(ComparedPlans.change(comparison, "left").changes()).containsExactly(Change.ADDED);
        assertThat(ComparedPlans.change(comparison, "right").changes()).containsExactly(Change.ADDED);
    }

    @Test
    void leadsOfAPartSwappedMoveTheWiresAndThePart() {
        PlanComparison comparison = after(
                PARTS, WIRES.replace("fog.a", "fog.x").replace("fog.b", "fog.a").replace("fog.x", "fog.b"));
        assertThat(ComparedPlans.change(comparison, "W4").changes()).containsExactly(Change.MOVED);
        assertThat(ComparedPlans.change(comparison, "W5").changes()).containsExactly(Change.MOVED);
        assertThat(ComparedPlans.change(comparison, "fog").changes()).containsExactly(Change.MOVED);
        assertThat(ComparedPlans.change(comparison, "W4").description()).isEqualTo("moved");
        assertThat(ComparedPlans.change(comparison, "fog").description()).isEqualTo("wired to other places");
    }

    @Test
    void aPartOfWhichOneWireMovedIsNotMoved() {
        PlanComparison comparison = after(PARTS, WIRES.replace("'key.15','to':'dash.a'", "'key.30','to':'dash.a'"));
        assertThat(comparison.changes()).hasSize(1);
    }

    @Test
    void anotherRatingIsAChangeOfAProperty() {
        PlanComparison comparison = after(PARTS.replace("'ratingA':10", "'ratingA':15"), WIRES);
        assertThat(ComparedPlans.change(comparison, "F1").properties())
                .extracting(C02_ChangesTest::text)
                .containsExactly("ratingA 10 15");
        assertThat(comparison.material().needed().parts())
                .singleElement()
                .satisfies(p -> assertThat(p.part()).isEqualTo("F1"));
    }

    @Test
    void whatAWireIsLongerTheLampLosesByOhmsLaw() {
        // battery - key - F1 - W3 of 2 m, then of 40 m - fog lamp: by Ohm's law its drop follows current and length.
        Plan after = Plans.of(PARTS, WIRES.replace("'lengthM':2,", "'lengthM':40,"));
        PlanComparison comparison = ComparedPlans.of(ComparedPlans.BUILT, after);
        var run = comparison.steps().stream()
                .filter(s -> s.step() == Step.RUN)
                .findFirst()
                .orElseThrow();
        var lamp = run.readings().stream()
                .filter(r -> r.quantity() == Quantity.ACROSS && r.at().equals("fog"))
                .findFirst()
                .orElseThrow();
        // The lamp takes 21 W / 12 V at 12 V, and its current goes with the voltage to the power 0.55. 38 m more at
        // 17.24 ohm mm2/km (copper, cold; the wire is at 30 C and stranded): the rest of the loop is small against it.
        double currentA = 21 / 12.0 * Math.pow(Objects.requireNonNull(lamp.after()) / 12, 0.55);
        double moreV = 38 * 0.01724 * currentA;
        double lostV = -Objects.requireNonNull(lamp.change());
        assertThat(lostV).isBetween(0.8 * moreV, 1.2 * moreV);
        assertThat(comparison.steps()).noneMatch(s -> s.step() == Step.OFF);
    }

    @Test
    void aSupplyThatDiffersIsASetting() {
        Plan with = Plans.parse("{'schema':'loomwright/plan/1','name':'test','system':{'nominalVoltageV':12},"
                + "'conditions':{'crank':{'emfV':9}},'parts':[" + PARTS + "],'wires':[" + WIRES + "]}");
        assertThat(ComparedPlans.of(ComparedPlans.BUILT, with).settings())
                .extracting(C02_ChangesTest::text)
                .contains("conditions.crank.emfV 10 9");
    }

    private static String text(PropertyChange change) {
        return change.property() + " " + change.before() + " " + change.after();
    }
}
