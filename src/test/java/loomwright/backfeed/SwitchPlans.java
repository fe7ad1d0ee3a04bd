package loomwright.backfeed;

import java.util.Locale;
import loomwright.circuit.Plan;
import loomwright.circuit.Plans;

/** Small plans with free switches, and the search as the tests call it. */
final class SwitchPlans {
    static final String ALWAYS =
            "'meantLive':['off','accessory','run','crank','running'],'meantLiveWhen':[{'switches':{'%s':['on']}}]";

    private SwitchPlans() {}

    static BackfeedReport search(Plan plan) {
        return Searched.of(plan).report();
    }

    static String contact(String id) {
        return "{'kind':'switch','id':'" + id
                + "','terminals':['a','b'],'positions':[{'name':'off','joins':[]},{'name':'on','joins':[['a','b']]}]}";
    }

    static String meant(String switchId) {
        return String.format(Locale.ROOT, ALWAYS, switchId);
    }

    static String wires(String... fromTo) {
        StringBuilder wires = new StringBuilder();
        for (int i = 0; i < fromTo.length; i++) {
            String[] ends = fromTo[i].split(" ", -1);
            wires.append(i == 0 ? "" : ",")
                    .append("{'id':'W")
                    .append(i + 1)
                    .append("','from':'")
                    .append(ends[0])
                    .append("','to':'")
                    .append(ends[1])
                    .append("','resistanceOhm':0.02}");
        }
        return wires.toString();
    }

    /** Two circuits, each with its switch, and a wire W8 from one load to the other. */
    static Plan crossTie() {
        return Plans.of(
                "{'kind':'battery','id':'battery'},{'kind':'earth','id':'body'}," + contact("left") + ","
                        + contact("right")
                        + ",{'kind':'lamp','id':'lamp','ratedV':12,'ratedW':21," + meant("left") + "}"
                        + ",{'kind':'load','id':'fan','resistanceOhm':6," + meant("right") + "}",
                wires(
                        "battery.plus left.a",
                        "battery.plus right.a",
                        "battery.minus body.31",
                        "left.b lamp.a",
                        "right.b fan.a",
                        "lamp.b body.31",
                        "fan.b body.31",
                        "lamp.a fan.a"));
    }

    /** A horn that is never meant to sound, with a contact in its feed and another in its return. */
    static Plan feedAndEarthSwitched() {
        return Plans.of(
                "{'kind':'battery','id':'battery'},{'kind':'earth','id':'body'}," + contact("feed") + ","
                        + contact("return") + ",{'kind':'load','id':'horn','resistanceOhm':3,'meantLive':[]}",
                wires(
                        "battery.plus feed.a",
                        "feed.b horn.a",
                        "horn.b return.a",
                        "return.b body.31",
                        "battery.minus body.31"));
    }
}
