package loomwright.comparison;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.tuple;

import loomwright.circuit.Plan;
import loomwright.circuit.Plans;
import loomwright.comparison.PlanComparison.CutLine;
import loomwright.comparison.PlanComparison.Leftover;
import loomwright.message.Argument;
import loomwright.operation.Step;
import org.junit.jupiter.api.Test;

/** What a part that was taken out leaves behind, and what the change takes. */
class C03_LeftBehindTest {
    private static final PlanComparison LAMP_OUT =
            ComparedPlans.of(ComparedPlans.BUILT, Plans.of(ComparedPlans.PARTS, ComparedPlans.WIRES));

    @Test
    void theFeedOfAPartTakenOutHangsLooseAndIsLive() {
        Leftover wire = ComparedPlans.left(LAMP_OUT, "W3");
        assertThat(wire.kind()).isEqualTo(Leftover.Kind.LOOSE_END);
        assertThat(wire.terminal()).isEqualTo("splice.1");
        assertThat(wire.liveIn()).containsExactly(Step.RUN, Step.CRANK, Step.RUNNING);
        assertThat(wire.highestV()).isBetween(14.0, 14.2);
    }

    @Test
    void theFuseBeforeItHasNothingBehindIt() {
        assertThat(ComparedPlans.left(LAMP_OUT, "F1").kind()).isEqualTo(Leftover.Kind.IDLE_PART);
        assertThat(ComparedPlans.left(LAMP_OUT, "W2").kind()).isEqualTo(Leftover.Kind.IDLE_WIRE);
    }

    @Test
    void whatOthersStillNeedIsNotLeftBehind() {
        assertThat(LAMP_OUT.looseEnds().newLooseEnds())
                .extracting(Leftover::id)
                .containsExactlyInAnyOrder("W3", "W2", "F1");
        assertThat(LAMP_OUT.looseEnds().resolvedLooseEnds()).isEmpty();
    }

    @Test
    void aRelayWithNothingAtItsContactsIsRedundantThoughItsCoilStillWorks() {
        String relay = ",{'kind':'relay','id':'K1','coilResistanceOhm':85,'meantLive':['run','crank','running']}";
        String coil = ",{'id':'K86','from':'key.15','to':'K1.86','size':'1 mm2','lengthM':1},"
                + "{'id':'K85','from':'K1.85','to':'body.31','size':'1 mm2','lengthM':1},"
                + "{'id':'K30','from':'battery.plus','to':'K1.30','size':'1 mm2','lengthM':1}";
        String load = ",{'id':'K87','from':'K1.87','to':'fog.a','size':'1 mm2','lengthM':1}";
        String fogEarth = ",{'id':'W5','from':'fog.b','to':'body.31','size':'1 mm2','lengthM':0.5}";
        PlanComparison comparison = ComparedPlans.of(
                Plans.of(ComparedPlans.PARTS + ComparedPlans.FOG + relay, ComparedPlans.WIRES + coil + load + fogEarth),
                Plans.of(ComparedPlans.PARTS + relay, ComparedPlans.WIRES + coil));
        assertThat(comparison.looseEnds().newLooseEnds())
                .extracting(Leftover::id)
                .containsExactlyInAnyOrder("K1", "K30");
        assertThat(ComparedPlans.left(comparison, "K1").message().arguments())
                .containsEntry("contacts", new Argument.Count(1));
        assertThat(ComparedPlans.left(comparison, "K30").liveIn()).hasSize(Step.values().length);
    }

    @Test
    void anEndAtAConnectorWayWithoutAWireOnTheOtherSideHangsLoose() {
        String halves = ",{'kind':'connector-half','id':'male','terminals':['1','2'],'form':'blade','widthMm':6.3,"
                + "'gender':'male'},{'kind':'connector-half','id':'female','terminals':['1','2'],'form':'blade',"
                + "'widthMm':6.3,'gender':'female'}";
        String feed = ",{'id':'C1W','from':'splice.2','to':'male.1','size':'1 mm2','lengthM':1}";
        String beyond = ",{'id':'C2W','from':'female.1','to':'fog.a','size':'1 mm2','lengthM':1},"
                + "{'id':'W5','from':'fog.b','to':'body.31','size':'1 mm2','lengthM':0.5}";
        PlanComparison comparison = ComparedPlans.of(
                connected(ComparedPlans.PARTS + ComparedPlans.FOG + halves, ComparedPlans.WIRES + feed + beyond),
                connected(ComparedPlans.PARTS + halves, ComparedPlans.WIRES + feed));
        assertThat(ComparedPlans.left(comparison, "C1W").terminal()).isEqualTo("male.1");
        assertThat(comparison.material().removedMaterial().terminals()).anySatisfy(t -> {
            assertThat(t.form()).isEqualTo("blade");
            assertThat(t.gender()).isEqualTo("female");
            assertThat(t.number()).isEqualTo(1);
        });
    }

    private static Plan connected(String parts, String wires) {
        return Plans.parse("{'schema':'loomwright/plan/1','name':'test','system':{'nominalVoltageV':12},'parts':["
                + parts + "],'wires':[" + wires + "],'connectors':[{'id':'C1','halves':['male','female']}]}");
    }

    @Test
    void theCutListAddsUpWireOfOneColourAndSize() {
        PlanComparison lampIn =
                ComparedPlans.of(Plans.of(ComparedPlans.PARTS, ComparedPlans.WIRES), ComparedPlans.BUILT);
        assertThat(lampIn.material().needed().wires())
                .extracting(CutLine::colour, CutLine::size, CutLine::pieces, CutLine::totalM)
                .containsExactlyInAnyOrder(tuple("GYOG", "1 mm2", 1, 1.0), tuple("BK", "1 mm2", 1, 0.5));
        assertThat(lampIn.material().needed().parts())
                .singleElement()
                .satisfies(p -> assertThat(p.part()).isEqualTo("fog"));
        assertThat(lampIn.material().removedMaterial().wires()).isEmpty();
        assertThat(lampIn.looseEnds().resolvedLooseEnds())
                .isEqualTo(LAMP_OUT.looseEnds().newLooseEnds());
    }
}
