package loomwright.operation;

import static org.assertj.core.api.Assertions.assertThat;

import loomwright.circuit.Plan;
import loomwright.circuit.Plans;
import org.junit.jupiter.api.Test;

/**
 * A relay pulls in from one voltage and lets go below a lower one, so what it does depends on what it did.
 *
 * <p>Figures of a plug-in relay of 85 ohm: operates at 8 V or less, releases at 1.5 V or more (makers' data, pin layout of
 * ISO 7588).
 */
class O04_RelayTest {
    /*
     * battery --- key --+-- relay 86/85 --- earth        battery -- R (keeps the coil at some volts) -- relay 86
     */
    @Test
    void aTrickleThatCouldNotPullItInHoldsItOnceItIsIn() {
        Solved solved = Solved.of(trickled(170)); // 12.6 V x 85/255 = 4.2 V
        assertThat(solved.isActive(Step.OFF, "R")).isFalse();
        assertThat(solved.activity(Step.OFF, "R")).isEqualTo(FeedStrength.HOLDS);
        assertThat(solved.isActive(Step.RUN, "R")).isTrue();
        assertThat(solved.isActive(Step.OFF_AGAIN, "R")).isTrue();
    }

    @Test
    void aTrickleBelowItsReleaseVoltageDoesNot() {
        Solved solved = Solved.of(trickled(850)); // 12.6 V x 85/935 = 1.15 V
        assertThat(solved.isActive(Step.RUN, "R")).isTrue();
        assertThat(solved.isActive(Step.OFF_AGAIN, "R")).isFalse();
        assertThat(solved.activity(Step.OFF, "R")).isEqualTo(FeedStrength.LEAKS);
    }

    @Test
    void enoughOfATricklePullsItInAtOnce() {
        assertThat(Solved.of(trickled(40)).isActive(Step.OFF, "R")).isTrue(); // 12.6 V x 85/125 = 8.57 V
    }

    @Test
    void theChangeOverContactMovesFrom87aTo87() {
        Solved solved = Solved.of(trickled(850));
        assertThat(solved.activity(Step.OFF, "rest")).isEqualTo(FeedStrength.OPERATES);
        assertThat(solved.activity(Step.OFF, "work")).isEqualTo(FeedStrength.DEAD);
        assertThat(solved.activity(Step.RUN, "rest")).isEqualTo(FeedStrength.DEAD);
        assertThat(solved.activity(Step.RUN, "work")).isEqualTo(FeedStrength.OPERATES);
    }

    private static Plan trickled(double ohm) {
        return Plans.of(
                "{'kind':'battery','id':'B'},{'kind':'earth','id':'E'},{'kind':'resistor','id':'T','resistanceOhm':"
                        + ohm
                        + "},{'kind':'switch','id':'key','terminals':['30','15'],'positions':[{'name':'off','joins':[]},"
                        + "{'name':'on','joins':[['30','15']]}],'positionByCondition':{'off':'off','accessory':'off',"
                        + "'run':'on','crank':'on','running':'on'}},"
                        + "{'kind':'relay','id':'R','coilResistanceOhm':85,'pullInV':8,'dropOutV':1.5,'meantLive':[]},"
                        + "{'kind':'load','id':'rest','resistanceOhm':100,'meantLive':[]},"
                        + "{'kind':'load','id':'work','resistanceOhm':100,'meantLive':[]}",
                wires(
                        "B.plus key.30",
                        "key.15 R.86",
                        "B.plus T.a",
                        "T.b R.86",
                        "R.85 E.31",
                        "B.minus E.31",
                        "B.plus R.30",
                        "R.87 work.a",
                        "R.87a rest.a",
                        "work.b E.31",
                        "rest.b E.31"));
    }

    /** Wires of 1 milliohm between the terminals named in pairs. */
    static String wires(String... ends) {
        StringBuilder wires = new StringBuilder();
        for (int i = 0; i < ends.length; i++) {
            String[] pair = ends[i].split(" ", -1);
            wires.append(i == 0 ? "" : ",")
                    .append("{'id':'W")
                    .append(i + 1)
                    .append("','from':'")
                    .append(pair[0])
                    .append("','to':'")
                    .append(pair[1])
                    .append("','resistanceOhm':0.001}");
        }
        return wires.toString();
    }
}
