package loomwright.review;

import static loomwright.message.MessageFinder.instant;
import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Random;
import java.util.stream.Collectors;
import loomwright.circuit.Part;
import loomwright.circuit.Plan;
import loomwright.circuit.Wire;
import loomwright.review.context.FindingCode;
import org.junit.jupiter.api.Test;

/** Of several moments that are alike a finding tells of the same one, however the plan is listed. */
class WorstCaseOrderTest {
    /**
     * Two switches of a staircase, at either of which the light is turned on: with the left one or the right one turned
     * the same flows, with both nothing.
     */
    private static Plan staircase(String parts, String wires) {
        return Reviews.plan(
                "{'kind':'fuse','id':'F1','ratingA':25}," + turned("left") + "," + turned("right") + parts,
                wire("W1", "battery.plus", "F1.a") + "," + wire("W2", "F1.b", "left.1") + ","
                        + wire("W3", "left.2", "right.2") + "," + wire("W4", "left.3", "right.3") + "," + wires);
    }

    private static String turned(String id) {
        String other = id.equals("left") ? "3" : "2";
        String own = id.equals("left") ? "2" : "3";
        return "{'kind':'switch','id':'" + id
                + "','terminals':['1','2','3'],'positions':[{'name':'down','joins':[['1','" + own
                + "']]},{'name':'up','joins':[['1','" + other + "']]}]}";
    }

    private static String wire(String id, String from, String to) {
        return "{'id':'" + id + "','from':'" + from + "','to':'" + to + "','resistanceOhm':0.01}";
    }

    private static final Plan LAMPS = staircase(
            ",{'kind':'joint','id':'light','terminals':['1','2','3','4','5']},"
                    + "{'kind':'lamp','id':'lamp','ratedV':6,'ratedW':60," + Reviews.ALWAYS + "},"
                    + "{'kind':'relay','id':'relay','coilResistanceOhm':22,'pullInV':4," + Reviews.ALWAYS + "},"
                    + "{'kind':'load','id':'ballast','resistanceOhm':2," + Reviews.ALWAYS + "},"
                    + "{'kind':'relay','id':'horn','coilResistanceOhm':85," + Reviews.ALWAYS + "},"
                    + "{'kind':'diode','id':'spike'}",
            wire("W5", "right.1", "light.1") + "," + wire("W6", "light.2", "lamp.a") + ","
                    + wire("W7", "lamp.b", "body.31") + "," + wire("W8", "light.3", "relay.86") + ","
                    + wire("W9", "relay.85", "body.31") + "," + wire("W10", "light.4", "ballast.a") + ","
                    + wire("W11", "ballast.b", "horn.86") + "," + wire("W12", "horn.85", "body.31") + ","
                    + wire("W13", "horn.86", "spike.anode") + "," + wire("W14", "spike.cathode", "body.31"));

    private static final Plan SHORT = staircase("", wire("W5", "right.1", "body.31"));

    private static List<String> told(Plan plan) {
        return Reviews.findings(plan).stream()
                .map(f -> f.code() + " " + f.text())
                .sorted()
                .toList();
    }

    private static Plan shuffled(Plan plan, Random random) {
        List<Part> parts = new ArrayList<>(plan.parts());
        List<Wire> wires = new ArrayList<>(plan.wires());
        Collections.shuffle(parts, random);
        Collections.shuffle(wires, random);
        return plan.with(parts, wires);
    }

    @Test
    void theOrderOfThePlanDecidesNothing() {
        Random random = new Random(6);
        for (Plan plan : List.of(LAMPS, SHORT)) {
            List<String> told = told(plan);
            for (int i = 0; i < 10; i++) {
                assertThat(told(shuffled(plan, random))).isEqualTo(told);
            }
        }
    }

    @Test
    void thePlainestIsTold() {
        assertThat(Reviews.findings(LAMPS).stream()
                        .filter(f -> f.message().arguments().containsKey("when")
                                && instant(f.message()).contains("left up"))
                        .map(f -> f.code())
                        .collect(Collectors.toSet()))
                .contains(
                        FindingCode.LAMP_OVERVOLTAGE.code(),
                        FindingCode.WINDING_OVERVOLTAGE.code(),
                        FindingCode.DIODE_REVERSED.code(),
                        FindingCode.FUSE_NEAR_LIMIT.code());
        assertThat(instant(Reviews.get(SHORT, FindingCode.FUSE_BLOWS_AT_ONCE).message()))
                .contains("left up");
        for (Plan plan : List.of(LAMPS, SHORT)) {
            assertThat(Reviews.findings(plan).stream()
                            .filter(f -> f.message().arguments().containsKey("when"))
                            .map(f -> instant(f.message())))
                    .noneMatch(when -> when.contains("right up"));
        }
    }
}
