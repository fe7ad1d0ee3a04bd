package loomwright.comparison;

import java.util.List;
import loomwright.answer.Progress;
import loomwright.backfeed.BackfeedLimits;
import loomwright.circuit.Plan;
import loomwright.circuit.Plans;
import loomwright.comparison.PlanComparison.ItemChange;
import loomwright.comparison.PlanComparison.Leftover;
import loomwright.network.NetworkLimits;

/** Comparisons for tests. One remedy is tried at most: tests of remedies are elsewhere. */
final class ComparedPlans {
    static final List<Plan> PLANS =
            Plans.exampleNames().stream().map(Plans::example).toList();

    /** A battery, and a key that feeds a lamp through a fuse and a splice, and another lamp directly. */
    static final String PARTS = "{'kind':'battery','id':'battery'},{'kind':'earth','id':'body'},"
            + "{'kind':'switch','id':'key','terminals':['30','15'],'positions':["
            + "{'name':'off','joins':[]},{'name':'on','joins':[['30','15']]}],'positionByCondition':"
            + "{'off':'off','accessory':'off','run':'on','crank':'on','running':'on'}},"
            + "{'kind':'lamp','id':'dash','ratedV':12,'ratedW':2,'meantLive':['run','crank','running']},"
            + "{'kind':'fuse','id':'F1','ratingA':10},{'kind':'joint','id':'splice','terminals':['1','2']}";

    static final String FOG =
            ",{'kind':'lamp','id':'fog','ratedV':12,'ratedW':21,'meantLive':['run','crank','running']}";
    static final String WIRES = "{'id':'W1','from':'battery.plus','to':'key.30','size':'2.5 mm2','lengthM':1},"
            + "{'id':'W2','from':'key.15','to':'F1.a','size':'1 mm2','lengthM':0.5,'colour':'BU'},"
            + "{'id':'W3','from':'F1.b','to':'splice.1','size':'1 mm2','lengthM':2,'colour':'GYOG'},"
            + "{'id':'W6','from':'battery.minus','to':'body.31','resistanceOhm':0.001},"
            + "{'id':'W7','from':'key.15','to':'dash.a','size':'0.75 mm2','lengthM':0.5,'colour':'GY'},"
            + "{'id':'W8','from':'dash.b','to':'body.31','size':'0.75 mm2','lengthM':0.3,'colour':'BK'}";
    static final String FOG_WIRES =
            ",{'id':'W4','from':'splice.2','to':'fog.a','size':'1 mm2','lengthM':1,'colour':'GYOG'},"
                    + "{'id':'W5','from':'fog.b','to':'body.31','size':'1 mm2','lengthM':0.5,'colour':'BK'}";
    static final Plan BUILT = Plans.of(PARTS + FOG, WIRES + FOG_WIRES);

    private ComparedPlans() {}

    static PlanComparison of(Plan before, Plan after) {
        return ComparisonAnswer.of(
                        ComparisonQuestion.of(before, after),
                        new BackfeedLimits(262_144, 64, 1, 1, 20_000),
                        NetworkLimits.defaults(),
                        Progress.UNWATCHED)
                .result();
    }

    static ItemChange change(PlanComparison comparison, String id) {
        return comparison.changes().stream()
                .filter(c -> id.equals(c.after()) || id.equals(c.before()))
                .findFirst()
                .orElseThrow();
    }

    static Leftover left(PlanComparison comparison, String id) {
        return comparison.looseEnds().newLooseEnds().stream()
                .filter(l -> l.id().equals(id))
                .findFirst()
                .orElseThrow();
    }
}
