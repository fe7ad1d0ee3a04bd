package loomwright.drawing.diagram;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import java.util.StringJoiner;
import loomwright.circuit.Plan;
import loomwright.circuit.Plans;

/** A plan of 40 parts and 60 wires: feeds that branch out from the battery, and wires between any two terminals. */
final class RandomPlan {
    private static final int PARTS = 40;
    private static final int WIRES = 60;
    private static final String[] COLOURS = {"BK", "BN", "RD", "OGWH", "YE", "GNYE", "BURD", "VT", "GYBK", "WH", "PKBK"
    };
    private static final String[] SIZES = {"0.75 mm2", "1.5 mm2", "2.5 mm2", "14 AWG", "25 mm2"};

    private final Random random;
    private final StringJoiner parts = new StringJoiner(",");
    private final StringJoiner wires = new StringJoiner(",");
    private final List<String> live = new ArrayList<>();
    private final List<String> any = new ArrayList<>();
    private int partCount;
    private int wireCount;

    private RandomPlan(long seed) {
        random = new Random(seed);
    }

    static Plan of(long seed) {
        return new RandomPlan(seed).plan();
    }

    private Plan plan() {
        part("{'kind':'battery','id':'battery','label':'Battery under the seat'}");
        part("{'kind':'earth','id':'body','label':'Earth stud, left inner wing'}");
        part("{'kind':'earth','id':'engine'}");
        wire("battery.minus", "body.31");
        live.add("battery.plus");
        while (partCount < PARTS) {
            addPart("p" + partCount);
        }
        while (wireCount < WIRES) {
            String from = any(any);
            String to = any(any);
            if (!from.equals(to)) {
                wire(from, to);
            }
        }
        return Plans.of(parts.toString(), wires.toString());
    }

    private void addPart(String id) {
        switch (random.nextInt(8)) {
            case 0 -> {
                part("{'kind':'relay','id':'" + id + "','label':'Relay of circuit " + id
                        + "','coilResistanceOhm':85,'meantLive':[]}");
                wire(any(live), id + ".86");
                wire(id + ".85", earth());
                wire(any(live), id + ".30");
                live.add(id + ".87");
                any.add(id + ".87a");
            }
            case 1 -> {
                part("{'kind':'switch','id':'" + id + "','label':'Switch " + id + "','terminals':['30','a','b','c'],"
                        + "'positions':[{'name':'out','joins':[]},{'name':'in','joins':[['30','a','b','c']]}]}");
                wire(any(live), id + ".30");
                live.addAll(List.of(id + ".a", id + ".b", id + ".c"));
            }
            case 2 -> {
                part("{'kind':'joint','id':'" + id + "','terminals':['1','2','3','4']}");
                wire(any(live), id + ".1");
                live.addAll(List.of(id + ".2", id + ".3", id + ".4"));
            }
            case 3, 4 -> {
                part("{'kind':'fuse','id':'" + id + "','ratingA':15,'label':'Fuse with quite a long name'}");
                wire(any(live), id + ".a");
                live.add(id + ".b");
            }
            default -> {
                part("{'kind':'lamp','id':'" + id + "','ratedV':12,'ratedW':21,'meantLive':[]}");
                wire(any(live), id + ".a");
                wire(id + ".b", earth());
                any.add(id + ".a");
            }
        }
    }

    private String earth() {
        return random.nextInt(3) > 0 ? "body.31" : "engine.31";
    }

    private String any(List<String> terminals) {
        if (terminals == live || terminals.isEmpty()) {
            return live.get(random.nextInt(live.size()));
        }
        return random.nextBoolean() ? any(live) : terminals.get(random.nextInt(terminals.size()));
    }

    private void part(String json) {
        parts.add(json);
        partCount++;
    }

    private void wire(String from, String to) {
        wireCount++;
        wires.add("{'id':'W" + wireCount + "','from':'" + from + "','to':'" + to + "','size':'"
                + SIZES[random.nextInt(SIZES.length)] + "','lengthM':1.5,'colour':'"
                + COLOURS[random.nextInt(COLOURS.length)] + "','directed':" + random.nextBoolean() + "}");
    }
}
