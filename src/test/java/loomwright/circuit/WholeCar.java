package loomwright.circuit;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

/**
 * A whole car of a size of one's own, wired as cars are: battery, link, key, charging, starting and ignition; then circuits
 * from two fuse boxes, one live at all times and one with the key on, each with its fuse and one or more loads, some with a
 * switch, some behind a relay, some of these with a winding that the relay's own contact feeds, so that it stays in. Every load
 * has its return, and every third a second one. Nothing in it is made at random.
 */
public final class WholeCar {
    private static final String KEY_ON = "'meantLive':['run','crank','running']";

    private final List<String> parts = new ArrayList<>();
    private final List<String> wires = new ArrayList<>();

    private WholeCar() {}

    /** 51 parts, of which 8 free switches and 3 relays that keep themselves in. */
    public static Plan small() {
        return of(51, 8, 3);
    }

    /** 240 parts, of which 10 free switches. */
    public static Plan large() {
        return of(240, 10, 3);
    }

    /**
     * Makes a car.
     *
     * @param size parts, 40 or more
     * @param switches free switches
     * @param latches relays that keep themselves in, each with one of the switches
     */
    public static Plan of(int size, int switches, int latches) {
        return Plans.parse(new WholeCar().document(size, switches, latches));
    }

    private String document(int size, int switches, int latches) {
        supply();
        int circuit = 0;
        while (parts.size() < size) {
            int room = size - parts.size();
            if (circuit < latches) {
                latch(circuit);
            } else if (circuit < switches && circuit % 2 == 1 && room >= 4) {
                relayed(circuit);
            } else if (circuit < switches && room >= 3) {
                switched(circuit);
            } else {
                unswitched(circuit, Math.max(0, Math.min(5, room - 1)));
            }
            circuit++;
        }
        return "{'schema':'loomwright/plan/1','name':'Whole car','system':{'nominalVoltageV':12,"
                + "'earthPolarity':'negative'},'parts':[" + String.join(",", parts) + "],'wires':["
                + String.join(",", wires) + "]}";
    }

    private void supply() {
        part("battery", "battery", "");
        part("earth", "body", "");
        part("earth", "engine", ",'resistanceOhm':0.001");
        part("fusible-link", "link", ",'size':'4 mm2','lengthM':0.15");
        part("joint", "always", ",'terminals':['1','2','3','4','5','6']");
        part("joint", "ignition", ",'terminals':['1','2','3','4']");
        part(
                "switch",
                "key",
                ",'terminals':['30','15','50'],'positions':[{'name':'off','joins':[]},{'name':'run','joins':[['30','15']]},"
                        + "{'name':'crank','joins':[['30','15','50']]}],'positionByCondition':{'off':'off',"
                        + "'accessory':'off','run':'run','crank':'crank','running':'run'}");
        part("alternator", "alternator", ",'regulatedV':14.2,'limitA':45");
        part("lamp", "charge-lamp", ",'ratedV':12,'ratedW':2.2,'meantLive':['run','crank']");
        part("solenoid", "solenoid", ",'holdInResistanceOhm':3,'meantLive':['crank']");
        part("motor", "starter", ",'resistanceOhm':0.06,'meantLive':['crank']");
        part("coil", "coil", ",'primaryResistanceOhm':1.5," + KEY_ON);
        part("ballast", "ballast", ",'elementsOhm':[1.5]");
        part("contact-breaker", "points", "");
        part("capacitor", "condenser", ",'capacitanceUf':0.22");
        wire("battery.minus", "body.31", 0.001, true);
        wire("engine.31", "body.31", 0.002, false);
        wire("battery.plus", "solenoid.30", 0.001, true);
        wire("solenoid.30", "link.a", 0.001, true);
        wire("link.b", "always.1", 0.003, true);
        wire("always.2", "key.30", 0.01, true);
        wire("key.15", "ignition.1", 0.01, true);
        wire("key.50", "solenoid.50", 0.03, true);
        wire("solenoid.31", "engine.31", 0.002, false);
        wire("solenoid.45", "starter.33", 0.001, true);
        wire("starter.32", "engine.31", 0.001, false);
        wire("solenoid.30", "alternator.B+", 0.005, false);
        wire("alternator.B-", "engine.31", 0.001, false);
        wire("ignition.2", "charge-lamp.a", 0.03, true);
        wire("charge-lamp.b", "alternator.D+", 0.03, true);
        wire("ignition.3", "ballast.a", 0.02, true);
        wire("ballast.b", "coil.15", 0.02, true);
        wire("coil.1", "points.1", 0.01, false);
        wire("points.31", "engine.31", 0.002, false);
        wire("points.1", "condenser.a", 0.005, false);
        wire("condenser.b", "engine.31", 0.005, false);
    }

    /** Fused from the box that is live with the key on, every third from the one that is live at all times. */
    private String fuse(int circuit, int ratingA) {
        String id = "fuse-" + circuit;
        part("fuse", id, ",'ratingA':" + ratingA);
        wire(isAlways(circuit) ? "always.3" : "ignition.4", id + ".a", 0.01, true);
        return id + ".b";
    }

    private static boolean isAlways(int circuit) {
        return circuit % 3 == 2;
    }

    private static String meant(int circuit, String switchId) {
        String live = isAlways(circuit) ? "'meantLive':['off','accessory','run','crank','running']" : KEY_ON;
        return "," + live + (switchId.isEmpty() ? "" : ",'meantLiveWhen':[{'switches':{'" + switchId + "':['on']}}]");
    }

    private String switchPart(int circuit) {
        String id = "switch-" + circuit;
        part(
                "switch",
                id,
                ",'terminals':['a','b'],'positions':[{'name':'off','joins':[]},{'name':'on','joins':[['a','b']]}]");
        return id;
    }

    private void latch(int circuit) {
        String id = "latch-" + circuit;
        String feed = fuse(circuit, 15);
        String push = switchPart(circuit);
        part("relay", id, ",'coilResistanceOhm':85" + meant(circuit, push));
        part("load", "latched-" + circuit, ",'resistanceOhm':" + (3 + circuit) + meant(circuit, push));
        wire(feed, push + ".a", 0.02, true);
        wire(feed, id + ".30", 0.02, true);
        wire(push + ".b", id + ".86", 0.02, true);
        wire(id + ".85", "body.31", 0.02, false);
        wire(id + ".87", "latched-" + circuit + ".a", 0.02, true);
        wire(id + ".87", id + ".86", 0.02, false);
        earth("latched-" + circuit, "b", circuit);
    }

    private void relayed(int circuit) {
        String id = "relay-" + circuit;
        String feed = fuse(circuit, 20);
        String on = switchPart(circuit);
        part("relay", id, ",'coilResistanceOhm':85" + meant(circuit, on));
        lamp("lamp-" + circuit, 55, meant(circuit, on));
        wire(feed, on + ".a", 0.02, true);
        wire(on + ".b", id + ".86", 0.02, true);
        wire(id + ".85", "body.31", 0.02, false);
        wire("always.4", id + ".30", 0.01, true);
        wire(id + ".87", "lamp-" + circuit + ".a", 0.02, true);
        earth("lamp-" + circuit, "b", circuit);
    }

    private void switched(int circuit) {
        String feed = fuse(circuit, 10);
        String on = switchPart(circuit);
        lamp("lamp-" + circuit, 21, meant(circuit, on));
        wire(feed, on + ".a", 0.02, true);
        wire(on + ".b", "lamp-" + circuit + ".a", 0.02, true);
        earth("lamp-" + circuit, "b", circuit);
    }

    /** A fuse with some loads behind a splice. */
    private void unswitched(int circuit, int loads) {
        String feed = fuse(circuit, 15);
        if (loads > 2) {
            part("joint", "splice-" + circuit, ",'terminals':['1','2','3','4'],'resistanceOhm':0.003");
            wire(feed, "splice-" + circuit + ".1", 0.02, true);
        }
        for (int k = 0; k < (loads > 2 ? loads - 1 : loads); k++) {
            String id = "load-" + circuit + "-" + k;
            if (k % 2 == 0) {
                lamp(id, 5, meant(circuit, ""));
            } else {
                part("load", id, ",'resistanceOhm':" + (12 + k) + meant(circuit, ""));
            }
            wire(loads > 2 ? "splice-" + circuit + "." + (2 + k % 3) : feed, id + ".a", 0.03, true);
            earth(id, "b", circuit + k);
        }
    }

    private void lamp(String id, int watts, String meant) {
        part("lamp", id, ",'ratedV':12,'ratedW':" + watts + meant);
    }

    private void earth(String id, String terminal, int circuit) {
        wire(id + "." + terminal, "body.31", 0.01, false);
        if (circuit % 3 == 0) {
            wire(id + "." + terminal, "engine.31", 0.03, false);
        }
    }

    private void part(String kind, String id, String figures) {
        parts.add("{'kind':'" + kind + "','id':'" + id + "'" + figures + "}");
    }

    /** A wire as long as gives its resistance at 2.5 mm². */
    private void wire(String from, String to, double ohm, boolean directed) {
        double areaMm2 = ohm < 0.006 ? 16 : ohm < 0.015 ? 4 : 1.5;
        wires.add(String.format(
                Locale.ROOT,
                "{'id':'W%d','from':'%s','to':'%s','size':'%s mm2','lengthM':%.3f,'directed':%b}",
                wires.size() + 1,
                from,
                to,
                areaMm2 == Math.rint(areaMm2) ? String.valueOf((int) areaMm2) : String.valueOf(areaMm2),
                Math.max(0.1, ohm * areaMm2 / 0.0185),
                directed));
    }
}
