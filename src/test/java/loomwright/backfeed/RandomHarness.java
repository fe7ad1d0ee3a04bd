package loomwright.backfeed;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Random;
import loomwright.circuit.Plan;
import loomwright.circuit.Plans;

/** Plans made at random: a battery, a key, switches that each feed a load, relays, diodes, and wires where none should be. */
public final class RandomHarness {
    private static final String OPEN_OR_CLOSED =
            "'positions':[{'name':'off','joins':[]},{'name':'on','joins':[['a','b']]}]";

    private final Random random;
    private final List<String> parts = new ArrayList<>();
    private final List<String> wires = new ArrayList<>();
    private final List<String> points = new ArrayList<>(List.of("feeds.1", "lives.1"));

    private RandomHarness(long seed) {
        this.random = new Random(seed);
    }

    /**
     * A plan.
     *
     * @param switches how many free switches of two positions
     * @param crossTies how many wires between points chosen at random
     */
    public static Plan of(long seed, int switches, int crossTies) {
        RandomHarness harness = new RandomHarness(seed);
        harness.supply();
        for (int s = 0; s < switches; s++) {
            harness.branch(s);
        }
        for (int w = 0; w < crossTies; w++) {
            harness.wire(harness.point(), harness.point(), false);
        }
        return Plans.of(String.join(",", harness.parts), String.join(",", harness.wires));
    }

    private void supply() {
        parts.add("{'kind':'battery','id':'battery'}");
        parts.add("{'kind':'earth','id':'body'}");
        parts.add("{'kind':'joint','id':'feeds','terminals':['1','2']}");
        parts.add("{'kind':'joint','id':'lives','terminals':['1','2']}");
        parts.add("{'kind':'switch','id':'key','terminals':['30','15'],'positions':[{'name':'off','joins':[]},"
                + "{'name':'on','joins':[['30','15']]}],'positionByCondition':{'off':'off','accessory':'off',"
                + "'run':'on','crank':'on','running':'on'}}");
        wire("battery.minus", "body.31", false);
        wire("battery.plus", "lives.2", false);
        wire("lives.1", "key.30", false);
        wire("key.15", "feeds.2", true);
    }

    private void branch(int s) {
        String id = "S" + s;
        parts.add("{'kind':'switch','id':'" + id + "','terminals':['a','b']," + OPEN_OR_CLOSED
                + (random.nextInt(4) == 0 ? ",'position':'on'" : "") + "}");
        wire("feeds.1", id + ".a", true);
        String load = "L" + s;
        String meant = "'meantLive':['run','crank','running'],'meantLiveWhen':[{'switches':{'" + id + "':['on']}}]";
        switch (random.nextInt(6)) {
            case 0, 1 -> {
                parts.add("{'kind':'lamp','id':'" + load + "','ratedV':12,'ratedW':" + (2 + random.nextInt(40)) + ","
                        + meant + "}");
                between(id, load, "a", "b");
            }
            case 2 -> {
                parts.add("{'kind':'load','id':'" + load + "','resistanceOhm':" + (2 + random.nextInt(60)) + "," + meant
                        + "}");
                between(id, load, "a", "b");
            }
            case 3 -> {
                parts.add("{'kind':'relay','id':'" + load + "','coilResistanceOhm':" + (60 + random.nextInt(60)) + ","
                        + meant + "}");
                between(id, load, "86", "85");
                wire(random.nextBoolean() ? "lives.1" : "feeds.1", load + ".30", false);
                parts.add("{'kind':'lamp','id':'R" + s + "','ratedV':12,'ratedW':" + (2 + random.nextInt(20)) + ","
                        + meant + "}");
                wire(load + ".87", "R" + s + ".a", true);
                wire("R" + s + ".b", "body.31", false);
                points.add("R" + s + ".a");
            }
            case 4 -> {
                parts.add("{'kind':'diode','id':'D" + s + "','forwardV':0.7,'slopeOhm':0.02}");
                parts.add("{'kind':'load','id':'" + load + "','resistanceOhm':" + (2 + random.nextInt(60))
                        + ",'minimumV':5,'maximumV':18," + meant + "}");
                wire(id + ".b", "D" + s + ".anode", true);
                between("D" + s + ".cathode", load, "a", "b");
            }
            default -> {
                parts.add(
                        "{'kind':'load','id':'" + load + "','powerW':" + (5 + random.nextInt(40)) + "," + meant + "}");
                between(id, load, "a", "b");
            }
        }
    }

    private void between(String from, String load, String feed, String back) {
        wire(from.contains(".") ? from : from + ".b", load + "." + feed, true);
        points.add(load + "." + feed);
        if (random.nextInt(5) > 0) {
            wire(load + "." + back, "body.31", false);
        } else {
            // A poor return of its own.
            wires.add(wireOf(load + "." + back, "body.31", 3, false));
            points.add(load + "." + back);
        }
    }

    private String point() {
        return points.get(random.nextInt(points.size()));
    }

    private void wire(String from, String to, boolean directed) {
        if (!from.equals(to)) {
            wires.add(wireOf(from, to, 0.002 + 0.05 * random.nextDouble(), directed));
        }
    }

    private String wireOf(String from, String to, double ohm, boolean directed) {
        return String.format(
                Locale.ROOT,
                "{'id':'W%d','from':'%s','to':'%s','resistanceOhm':%.5f,'directed':%b}",
                wires.size(),
                from,
                to,
                ohm,
                directed);
    }
}
