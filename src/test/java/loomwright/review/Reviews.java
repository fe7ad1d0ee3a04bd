package loomwright.review;

import java.util.List;
import java.util.Optional;
import loomwright.answer.Answer;
import loomwright.answer.Finding;
import loomwright.answer.Progress;
import loomwright.backfeed.BackfeedLimits;
import loomwright.circuit.Plan;
import loomwright.circuit.Plans;
import loomwright.message.MessageCode;
import loomwright.network.NetworkLimits;

/** Small plans and what their review finds. */
final class Reviews {
    /** As usual, but for a clock that a slow machine might reach. */
    private static final BackfeedLimits LIMITS = new BackfeedLimits(262_144, 64, 6, 40, 3_600_000);

    private static final String SOURCE = "{'kind':'battery','id':'battery'},{'kind':'earth','id':'body'},";
    private static final String EARTHED = "{'id':'W0','from':'battery.minus','to':'body.31','resistanceOhm':0.001},";
    /** Live whenever there is a battery. */
    static final String ALWAYS = "'meantLive':['off','accessory','run','crank','running']";

    private Reviews() {}

    /** A plan with a battery earthed at the body, at 20 C everywhere in the cabin. */
    static Plan plan(String parts, String wires) {
        return Plans.of(SOURCE + parts, EARTHED + wires);
    }

    /** Battery, lead, fuse, feed wire and a load of so many ohms, back through an earth of 0.001 ohm. */
    static Plan fused(double fuseA, String size, double lengthM, double loadOhm) {
        return plan(
                "{'kind':'fuse','id':'F1','ratingA':" + fuseA + "},{'kind':'load','id':'lamp','resistanceOhm':"
                        + loadOhm + "," + ALWAYS + "}",
                "{'id':'W1','from':'battery.plus','to':'F1.a','size':'25 mm2','lengthM':0.1},"
                        + "{'id':'W2','from':'F1.b','to':'lamp.a','size':'" + size + "','lengthM':" + lengthM + "},"
                        + "{'id':'W3','from':'lamp.b','to':'body.31','resistanceOhm':0.001}");
    }

    static Answer<ReviewReport> answer(Plan plan) {
        return PlanReview.of(plan, LIMITS, NetworkLimits.defaults(), Progress.UNWATCHED);
    }

    static List<Finding> findings(Plan plan) {
        return answer(plan).result().findings();
    }

    static List<String> codes(Plan plan) {
        return findings(plan).stream().map(Finding::code).toList();
    }

    static Optional<Finding> find(Plan plan, MessageCode code) {
        return findings(plan).stream().filter(f -> f.code().equals(code.code())).findFirst();
    }

    static Finding get(Plan plan, MessageCode code) {
        return find(plan, code).orElseThrow(() -> new AssertionError(code + " is not among " + codes(plan)));
    }

    static double figure(Finding finding, String name) {
        return finding.figures().stream()
                .filter(f -> f.name().equals(name))
                .mapToDouble(Finding.Figure::value)
                .findFirst()
                .orElseThrow(() -> new AssertionError(name + " is not among " + finding.figures()));
    }
}
