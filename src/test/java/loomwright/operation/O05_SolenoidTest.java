package loomwright.operation;

import static loomwright.operation.O04_RelayTest.wires;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import loomwright.circuit.Plan;
import loomwright.circuit.Plans;
import org.junit.jupiter.api.Test;

/** A starter solenoid with one or two windings. */
class O05_SolenoidTest {
    /** TM 5-2420-230-24-2: at 10 V 69 A with both windings, 13 A with the hold-in winding alone. */
    private static final String TWO_WINDINGS = "'holdInResistanceOhm':0.7692,'pullInResistanceOhm':0.1786";

    @Test
    void atTenVoltsBothWindingsTakeTheirPublishedCurrentUntilItIsIn() {
        // Kept from closing by a threshold of 12 V; the motor is a dead weight to earth.
        Solved solved = Solved.of(starter(TWO_WINDINGS + ",'operateV':12", 10, 0.0001));
        assertThat(solved.isActive(Step.CRANK, "S")).isFalse();
        double bothOhm = solved.acrossV(Step.CRANK, "S") / solved.currentA(Step.CRANK, "key.30", "key.50");
        assertThat(10 / bothOhm).isCloseTo(69, within(1.0));
    }

    @Test
    void atTenVoltsTheHoldInWindingTakesItsPublishedCurrentOnceItIsIn() {
        // The contact puts supply on both ends of the pull-in winding; the motor runs light.
        Solved solved = Solved.of(starter(TWO_WINDINGS + ",'operateV':2,'releaseV':1", 10, 1));
        assertThat(solved.isActive(Step.CRANK, "S")).isTrue();
        double holdInOhm = solved.acrossV(Step.CRANK, "S") / solved.currentA(Step.CRANK, "key.30", "key.50");
        assertThat(10 / holdInOhm).isCloseTo(13, within(0.3));
    }

    @Test
    void withTheMotorsWireOffItDoesNotPullIn() {
        // The pull-in winding has no way back.
        assertThat(Solved.of(starter(TWO_WINDINGS, 10, 1e6)).isActive(Step.CRANK, "S"))
                .isFalse();
    }

    @Test
    void itPullsInWithTheKeyAtStartAndFeedsTheMotor() {
        Solved solved = Solved.of(starter(TWO_WINDINGS, 12.6, 0.06));
        assertThat(solved.isActive(Step.RUN, "S")).isFalse();
        assertThat(solved.isActive(Step.CRANK, "S")).isTrue();
        assertThat(solved.activity(Step.CRANK, "M")).isEqualTo(FeedStrength.OPERATES);
    }

    @Test
    void itFallsOutThoughItsContactFeedsBothWindingsInSeries() {
        // With 50 open the contact drives one current through pull-in and hold-in winding: their pulls cancel.
        Solved solved = Solved.of(starter(TWO_WINDINGS, 12.6, 0.06));
        assertThat(solved.isActive(Step.RUNNING, "S")).isFalse();
        assertThat(solved.activity(Step.RUNNING, "M")).isEqualTo(FeedStrength.DEAD);
    }

    @Test
    void oneWindingActsOnTheVoltageAcrossIt() {
        Solved solved = Solved.of(starter("'holdInResistanceOhm':3.4", 12.6, 0.06));
        assertThat(solved.in(Step.CRANK).effectiveV((loomwright.circuit.Consumer)
                        solved.plan().findPart("S").orElseThrow()))
                .isEqualTo(solved.acrossV(Step.CRANK, "S"));
    }

    private static Plan starter(String windings, double emfV, double motorOhm) {
        return Plans.parse("{'schema':'loomwright/plan/1','name':'starter','system':{'nominalVoltageV':12},"
                + "'conditions':{'crank':{'emfV':" + emfV + ",'internalResistanceOhm':0}},'parts':["
                + "{'kind':'battery','id':'B'},{'kind':'earth','id':'E'},"
                + "{'kind':'switch','id':'key','terminals':['30','50'],'positions':[{'name':'off','joins':[]},"
                + "{'name':'start','joins':[['30','50']]}],'positionByCondition':{'off':'off','accessory':'off',"
                + "'run':'off','crank':'start','running':'off'}},"
                + "{'kind':'solenoid','id':'S'," + windings + ",'meantLive':['crank']},"
                + "{'kind':'motor','id':'M','resistanceOhm':" + motorOhm + ",'meantLive':['crank']}],'wires':["
                + wires(
                        "B.plus key.30",
                        "key.50 S.50",
                        "S.31 E.31",
                        "B.plus S.30",
                        "S.45 M.33",
                        "M.32 E.31",
                        "B.minus E.31")
                + "]}");
    }
}
