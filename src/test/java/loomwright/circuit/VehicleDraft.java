package loomwright.circuit;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Random;
import loomwright.circuit.RandomVehicle.Shape;

/** A vehicle made at random while it grows: its parts and wires so far, what gives current, and where odd wires may end. */
final class VehicleDraft {
    private static final String[] SIZES = {"0.5 mm2", "1.5 mm2", "2.5 mm2", "14 AWG", "SAE 10", "6 mm2"};

    final Random random;
    final Shape shape;
    final int nominalV;
    final boolean negative;
    final List<String> parts = new ArrayList<>();
    final List<String> wires = new ArrayList<>();
    final List<String> connectors = new ArrayList<>();
    final List<VehicleFeed> feeds = new ArrayList<>();
    /** Where a wire that should not be there may end. */
    final List<String> points = new ArrayList<>();

    int switches;
    private int named;

    VehicleDraft(long seed, Shape shape) {
        this.random = new Random(seed * 0x9E3779B97F4A7C15L + shape.parts());
        this.shape = shape;
        this.nominalV = List.of(6, 12, 12, 12, 24).get(random.nextInt(5));
        this.negative = random.nextInt(3) > 0;
    }

    int room() {
        return shape.parts() - parts.size();
    }

    String id(String stem) {
        return stem + named++;
    }

    void part(String kind, String id, String figures) {
        parts.add("{'kind':'" + kind + "','id':'" + id + "'" + figures + "}");
    }

    void wire(String from, String to, boolean directed) {
        if (from.equals(to)) {
            return;
        }
        String conductor = random.nextInt(3) == 0
                ? f("'size':'%s','lengthM':%.2f", SIZES[random.nextInt(SIZES.length)], between(0.1, 4))
                : f("'resistanceOhm':%.5f", between(0.001, 0.05));
        String corroded = random.nextInt(30) == 0 ? f(",'toJointResistanceOhm':%.3f", between(0.1, 20)) : "";
        wires.add(wire(from, to, conductor + corroded, directed));
    }

    String wire(String from, String to, String figures, boolean directed) {
        return f("{'id':'W%d','from':'%s','to':'%s',%s,'directed':%b}", wires.size() + 1, from, to, figures, directed);
    }

    double between(double least, double most) {
        return least + (most - least) * random.nextDouble();
    }

    double volts(double ofTwelve) {
        return ofTwelve * nominalV / 12;
    }

    double ohms(double ofTwelve) {
        return ofTwelve * nominalV / 12;
    }

    <T> T any(List<T> list) {
        return list.get(random.nextInt(list.size()));
    }

    static String f(String format, Object... figures) {
        return String.format(Locale.ROOT, format, figures);
    }

    /** A diode that lets a feed's current on, and blocks it backwards: its far end. */
    String diodeAfter(String feed) {
        String id = id("diode");
        part("diode", id, f(",'forwardV':%.2f,'slopeOhm':%.3f", between(0.3, 0.9), between(0.005, 0.05)));
        wire(feed, id + (negative ? ".anode" : ".cathode"), true);
        return id + (negative ? ".cathode" : ".anode");
    }

    /** A diode that lets what comes to it on to a place: its near end. */
    String diode(String to) {
        String id = id("diode");
        part("diode", id, "");
        wire(id + (negative ? ".cathode" : ".anode"), to, true);
        return id + (negative ? ".anode" : ".cathode");
    }

    /** A plug and socket of two ways after a terminal: the far side of the way that is joined to it. */
    String connector(String from) {
        String plug = id("plug");
        String socket = id("socket");
        String form = ",'terminals':['1','2'],'form':'blade','widthMm':6.3";
        part("connector-half", plug, form + ",'gender':'male'");
        part("connector-half", socket, form + ",'gender':'female'");
        connectors.add(f("{'id':'%s-%s','halves':['%s','%s']}", plug, socket, plug, socket));
        wire(from, plug + ".1", false);
        points.add(plug + ".2");
        points.add(socket + ".2");
        return socket + ".1";
    }
}
