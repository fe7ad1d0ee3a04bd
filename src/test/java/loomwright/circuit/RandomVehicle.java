package loomwright.circuit;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Random;
import java.util.TreeMap;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/**
 * Vehicles made at random of every kind of part: a battery, a key, and circuits dealt from a shuffled pack, so that a plan of
 * {@link #EVERY_KIND} parts or more holds every kind. Either pole is earthed, the system has 6, 12 or 24 V. Most circuits are
 * sound and say truly when they are meant to be live; wires between points chosen at random make the sneak paths.
 */
public final class RandomVehicle {
    /** From this size on a vehicle has every kind of part. */
    public static final int EVERY_KIND = 140;

    private static final List<String> ALWAYS = List.of("off", "accessory", "run", "crank", "running");
    private static final List<String> KEY_ON = List.of("run", "crank", "running");
    private static final String[] SIZES = {"0.5 mm2", "1.5 mm2", "2.5 mm2", "14 AWG", "SAE 10", "6 mm2"};

    private final Random random;
    private final Shape shape;
    private final int nominalV;
    private final boolean negative;
    private final List<String> parts = new ArrayList<>();
    private final List<String> wires = new ArrayList<>();
    private final List<String> connectors = new ArrayList<>();
    private final List<Feed> feeds = new ArrayList<>();
    /** Where a wire that should not be there may end. */
    private final List<String> points = new ArrayList<>();

    private int switches;
    private int named;

    /**
     * How large a vehicle is, and how odd.
     *
     * @param parts how many, 5 or more
     * @param switches the most free switches
     * @param crossTies wires between points chosen at random
     * @param leadsOff whether a consumer in ten lacks its return
     * @param supplyStated whether every condition states its supply; otherwise it is left to the usual figures
     */
    public record Shape(int parts, int switches, int crossTies, boolean leadsOff, boolean supplyStated) {
        public Shape {
            if (parts < 5) {
                throw new IllegalArgumentException("at least 5 parts: " + parts);
            }
        }

        /** A sound vehicle of some parts, with the switches and odd wires that go with its size. */
        public static Shape of(int parts) {
            return new Shape(parts, Math.min(8, parts / 6), parts / 12, false, true);
        }

        public Shape withSwitches(int most) {
            return new Shape(parts, most, crossTies, leadsOff, supplyStated);
        }

        public Shape withCrossTies(int ties) {
            return new Shape(parts, switches, ties, leadsOff, supplyStated);
        }

        public Shape withLeadsOff() {
            return new Shape(parts, switches, crossTies, true, supplyStated);
        }

        public Shape withUsualSupply() {
            return new Shape(parts, switches, crossTies, leadsOff, false);
        }
    }

    /** A terminal that gives current, in which conditions, and where which switches must stand for it. */
    private record Feed(String terminal, List<String> meant, Map<String, String> when) {
        Feed at(String other) {
            return new Feed(other, meant, when);
        }

        Feed through(String other, String switchId, String position) {
            Map<String, String> more = new TreeMap<>(when);
            more.put(switchId, position);
            return new Feed(other, meant, more);
        }

        /** What is live where both are. */
        Feed and(Feed other, String terminalOfBoth) {
            Map<String, String> both = new TreeMap<>(when);
            both.putAll(other.when);
            return new Feed(
                    terminalOfBoth, meant.stream().filter(other.meant::contains).toList(), both);
        }

        String meantLive() {
            String list = meant.stream().map(c -> "'" + c + "'").collect(Collectors.joining(","));
            String positions = when.entrySet().stream()
                    .map(e -> "'" + e.getKey() + "':['" + e.getValue() + "']")
                    .collect(Collectors.joining(","));
            return "'meantLive':[" + list + "]"
                    + (positions.isEmpty() ? "" : ",'meantLiveWhen':[{'switches':{" + positions + "}}]");
        }
    }

    /** One circuit of the pack. */
    private record Circuit(int mostParts, Runnable add) {}

    private RandomVehicle(long seed, Shape shape) {
        this.random = new Random(seed * 0x9E3779B97F4A7C15L + shape.parts());
        this.shape = shape;
        this.nominalV = List.of(6, 12, 12, 12, 24).get(random.nextInt(5));
        this.negative = random.nextInt(3) > 0;
    }

    /** A sound vehicle of a number of parts. */
    public static Plan of(long seed, int parts) {
        return of(seed, Shape.of(parts));
    }

    public static Plan of(long seed, Shape shape) {
        return new RandomVehicle(seed, shape).plan();
    }

    /** The same vehicle without its ignition modules. */
    public static Plan withoutModules(Plan plan) {
        return plan.with(
                plan.parts().stream()
                        .filter(p -> !(p instanceof IgnitionModule))
                        .toList(),
                plan.wires().stream()
                        .filter(w -> Stream.of(w.from(), w.to())
                                .noneMatch(t -> plan.findPart(t.part()).orElseThrow() instanceof IgnitionModule))
                        .toList());
    }

    private Plan plan() {
        supply();
        List<Circuit> pack = List.of();
        int next = 0;
        while (parts.size() < shape.parts()) {
            if (next == pack.size()) {
                pack = shuffledPack();
                next = 0;
            }
            Circuit circuit = pack.get(next++);
            if (circuit.mostParts() <= room()) {
                circuit.add().run();
            } else if (room() < 9) {
                lamp();
            }
        }
        for (int w = 0; w < shape.crossTies(); w++) {
            wire(any(points), any(points), false);
        }
        return Plans.parse("{'schema':'loomwright/plan/1','name':'made at random','system':{'nominalVoltageV':"
                + nominalV
                + ",'earthPolarity':'" + (negative ? "negative" : "positive") + "'}"
                + (shape.supplyStated() ? "," + conditions() : "")
                + ",'parts':[" + String.join(",", parts) + "],'wires':[" + String.join(",", wires) + "],'connectors':["
                + String.join(",", connectors) + "]}");
    }

    private String conditions() {
        double restV = volts(between(12.2, 12.8));
        double insideOhm = between(0.005, 0.03);
        String atRest = stated(restV, insideOhm);
        return "'conditions':{'off':" + atRest + ",'accessory':" + atRest + ",'run':" + atRest + ",'crank':"
                + stated(volts(between(10, 12.4)), insideOhm) + ",'running':"
                + stated(volts(between(12.3, 12.7)), between(0.02, 0.2)) + "}";
    }

    private static String stated(double emfV, double ohm) {
        return f("{'emfV':%.4f,'internalResistanceOhm':%.5f}", emfV, ohm);
    }

    private void supply() {
        String live = negative ? "plus" : "minus";
        String earthed = negative ? "minus" : "plus";
        part("earth", "body", "");
        if (nominalV == 12 && shape.parts() > 20 && random.nextInt(3) == 0) {
            part("battery", "rear", ",'nominalVoltageV':6");
            part("battery", "front", ",'nominalVoltageV':6");
            wire("rear." + earthed, "body.31", false);
            wire("rear." + live, "front." + earthed, false);
            wire("front." + live, "key.30", false);
            feeds.add(new Feed("front." + live, ALWAYS, Map.of()));
        } else {
            part("battery", "battery", ownFigures());
            wire("battery." + earthed, "body.31", false);
            wire("battery." + live, "key.30", false);
            feeds.add(new Feed("battery." + live, ALWAYS, Map.of()));
        }
        part(
                "switch",
                "key",
                ",'terminals':['30','15','15a','50'],'positions':[{'name':'off','joins':[]},"
                        + "{'name':'accessory','joins':[['30','15a']]},{'name':'run','joins':[['30','15','15a']]},"
                        + "{'name':'crank','joins':[['30','15','50']]}],'positionByCondition':{'off':'off',"
                        + "'accessory':'accessory','run':'run','crank':'crank','running':'run'}");
        feeds.add(new Feed("key.15", KEY_ON, Map.of()));
        feeds.add(new Feed("key.15", KEY_ON, Map.of()));
        feeds.add(new Feed("key.15a", List.of("accessory", "run", "running"), Map.of()));
        points.add("key.15");
    }

    /** What a battery states of itself, which is often nothing. */
    private String ownFigures() {
        return switch (random.nextInt(5)) {
            case 0 -> f(",'stateOfChargePercent':%d,'capacityAh':%d", 20 + random.nextInt(81), 30 + random.nextInt(60));
            case 1 ->
                f(
                        ",'emfV':%.4f,'internalResistanceOhm':%.5f,'chargeResistanceOhm':%.4f",
                        volts(between(11.9, 12.9)), between(0.004, 0.02), between(0.02, 0.3));
            default -> "";
        };
    }

    private List<Circuit> shuffledPack() {
        List<Circuit> pack = new ArrayList<>(List.of(
                new Circuit(6, this::lamp),
                new Circuit(6, this::lamp),
                new Circuit(6, this::ohmLoad),
                new Circuit(6, this::ohmLoad),
                new Circuit(6, this::ampLoad),
                new Circuit(6, this::wattLoad),
                new Circuit(6, this::motor),
                new Circuit(6, this::resistor),
                new Circuit(10, this::pointsIgnition),
                new Circuit(9, this::moduleIgnition),
                new Circuit(12, this::relay),
                new Circuit(12, this::relay),
                new Circuit(3, () -> starter(false)),
                new Circuit(3, () -> starter(true)),
                new Circuit(8, this::alternator),
                new Circuit(8, this::dynamo),
                new Circuit(6, this::ledLamp),
                new Circuit(8, this::gauges),
                new Circuit(8, this::flasher),
                new Circuit(1, () -> protection(false)),
                new Circuit(1, () -> protection(true)),
                new Circuit(3, this::splice),
                new Circuit(2, this::looseLead),
                new Circuit(4, this::secondBattery)));
        Collections.shuffle(pack, random);
        return pack;
    }

    private int room() {
        return shape.parts() - parts.size();
    }

    // Consumers, each with what lies in its feed and its return.

    private void lamp() {
        String id = id("lamp");
        double watts = any(List.of(2.0, 5.0, 21.0, 55.0));
        double ratedV = random.nextInt(4) == 0 ? volts(13.5) : nominalV;
        consumer("lamp", id, "a", "b", f(",'ratedV':%.3f,'ratedW':%.1f", ratedV, watts));
    }

    private void motor() {
        consumer(
                "motor",
                id("motor"),
                "33",
                "32",
                f(",'resistanceOhm':%.3f", ohms(between(0.8, 8)))
                        + any(List.of("", "", "", "", "", ",'stalled':true", ",'stalled':true,'windingOhm':0.5")));
    }

    private void resistor() {
        String id = id("resistor");
        Feed feed = feed(2);
        part("resistor", id, f(",'resistanceOhm':%.3f", ohms(between(3, 200))));
        wire(feed.terminal(), id + ".a", true);
        wire(id + ".b", back(2).terminal(), false);
        points.add(id + ".a");
    }

    private void ohmLoad() {
        consumer("load", id("load"), "a", "b", f(",'resistanceOhm':%.3f", ohms(between(1.5, 60))) + limits(false));
    }

    private void ampLoad() {
        consumer("load", id("load"), "a", "b", f(",'currentA':%.3f", between(0.1, 6)) + limits(true));
    }

    private void wattLoad() {
        consumer("load", id("load"), "a", "b", f(",'powerW':%.2f", between(3, 60)) + limits(false));
    }

    /** A least and a greatest voltage, of which the greatest is sometimes less than there is. */
    private String limits(boolean always) {
        int which = random.nextInt(4);
        String least = f(",'minimumV':%.3f", volts(between(4, 9)));
        String most = f(",'maximumV':%.3f", volts(between(11, 18)));
        return polarity()
                + switch (which) {
                    case 0 -> least;
                    case 1 -> least + most;
                    case 2 -> always ? least : most;
                    default -> always ? least + most : "";
                };
    }

    /** Of one in four which terminal must be positive, mostly the right one. */
    private String polarity() {
        if (random.nextInt(4) > 0) {
            return "";
        }
        return negative == random.nextInt(5) > 0 ? ",'plus':'a'" : ",'plus':'b'";
    }

    private void consumer(String kind, String id, String in, String out, String figures) {
        Feed feed = feed(2);
        boolean off = shape.leadsOff() && random.nextInt(10) == 0;
        Feed meant = feed;
        if (!off) {
            Feed back = back(2);
            meant = feed.and(new Feed(back.terminal(), ALWAYS, back.when()), feed.terminal());
            wire(id + "." + out, back.terminal(), false);
            points.add(id + "." + out);
        }
        part(kind, id, figures + "," + meant.meantLive());
        wire(feed.terminal(), id + "." + in, true);
        points.add(id + "." + in);
        if (random.nextInt(8) == 0 && room() > 0) {
            String suppressor = id("capacitor");
            part("capacitor", suppressor, ",'capacitanceUf':2.2");
            wire(id + "." + in, suppressor + ".a", false);
            wire(suppressor + ".b", "body.31", false);
        }
    }

    private void relay() {
        String id = id("relay");
        Feed coil = feed(2);
        Feed common = feed(1);
        Feed back = back(1);
        part(
                "relay",
                id,
                f(",'coilResistanceOhm':%.1f,", ohms(between(60, 120)))
                        + coil.and(new Feed(back.terminal(), ALWAYS, back.when()), id)
                                .meantLive());
        wire(coil.terminal(), id + ".86", true);
        wire(id + ".85", back.terminal(), false);
        wire(common.terminal(), id + ".30", true);
        points.add(id + ".86");
        points.add(id + ".85");
        points.add(id + ".87");
        if (random.nextInt(5) == 0) {
            // It holds itself once it is in.
            wire(id + ".87", id + ".86", false);
        }
        feeds.add(coil.and(new Feed(back.terminal(), ALWAYS, back.when()), id).and(common, id + ".87"));
        if (random.nextInt(3) == 0) {
            feeds.add(new Feed(id + ".87a", List.of(), Map.of()));
        }
        if (room() > 0) {
            String lamp = id("lamp");
            Feed made = feeds.get(feeds.size() - 1);
            part("lamp", lamp, f(",'ratedV':%d,'ratedW':%d,", nominalV, 2 + random.nextInt(40)) + made.meantLive());
            wire(made.terminal(), lamp + ".a", true);
            wire(lamp + ".b", "body.31", false);
            points.add(lamp + ".a");
        }
    }

    private void pointsIgnition() {
        String ballast = id("ballast");
        String coil = id("coil");
        String breaker = id("breaker");
        String condenser = id("capacitor");
        Feed feed = feed(2);
        boolean tapped = random.nextBoolean();
        part(
                "ballast",
                ballast,
                tapped ? f(",'elementsOhm':[%.2f,%.2f]", ohms(0.6), ohms(0.9)) : f(",'elementsOhm':[%.2f]", ohms(1.5)));
        part("coil", coil, f(",'primaryResistanceOhm':%.2f,", ohms(between(1.3, 3))) + feed.meantLive());
        part("contact-breaker", breaker, random.nextBoolean() ? ",'closedWhenStopped':false" : "");
        part("capacitor", condenser, ",'capacitanceUf':0.2");
        wire(feed.terminal(), ballast + ".a", true);
        wire(ballast + ".b", coil + ".15", true);
        wire(coil + ".1", breaker + ".1", false);
        wire(breaker + ".31", "body.31", false);
        wire(breaker + ".1", condenser + ".a", false);
        wire(condenser + ".b", "body.31", false);
        points.add(coil + ".15");
        if (tapped) {
            points.add(ballast + ".tap1");
        }
    }

    private void moduleIgnition() {
        String coil = id("coil");
        String module = id("module");
        Feed feed = feed(2);
        String limit = random.nextBoolean() ? f(",'limitA':%.1f", between(3, 7)) : "";
        part("coil", coil, f(",'primaryResistanceOhm':%.2f,", ohms(between(0.8, 3))) + feed.meantLive());
        part("module", module, limit + (random.nextInt(3) == 0 ? ",'conductsWhenStopped':true" : ""));
        wire(feed.terminal(), coil + ".15", true);
        wire(feed.terminal(), module + ".15", true);
        wire(coil + ".1", module + ".1", false);
        wire(module + ".31", "body.31", false);
        points.add(coil + ".15");
    }

    private void starter(boolean twoWindings) {
        String id = id("solenoid");
        String motor = id("motor");
        Feed live = feeds.get(0);
        String windings = twoWindings
                ? f(",'holdInResistanceOhm':%.3f,'pullInResistanceOhm':%.3f", ohms(between(0.8, 1.5)), ohms(0.4))
                : f(",'holdInResistanceOhm':%.3f", ohms(between(2, 5)));
        part("solenoid", id, windings + ",'meantLive':['crank']");
        part("motor", motor, f(",'resistanceOhm':%.4f,'meantLive':['crank']", ohms(between(0.05, 0.3))));
        wire("key.50", id + ".50", true);
        wire(id + ".31", "body.31", false);
        wires.add(wire(live.terminal(), id + ".30", "'resistanceOhm':0.002", true));
        wires.add(wire(id + ".45", motor + ".33", "'resistanceOhm':0.001", true));
        wires.add(wire(motor + ".32", "body.31", "'resistanceOhm':0.001", false));
        points.add(id + ".50");
        if (random.nextBoolean()) {
            feeds.add(new Feed(id + ".15a", List.of("crank"), Map.of()));
            points.add(id + ".15a");
        }
    }

    private void alternator() {
        String id = id("alternator");
        String lamp = id("lamp");
        part(
                "alternator",
                id,
                f(",'regulatedV':%.3f,'limitA':%.1f", volts(between(13.8, 14.6)), between(8, 45))
                        + (random.nextInt(5) == 0 ? ",'selfExciting':true" : "")
                        + any(List.of("", "", "", ",'rectifier':'diode-open'", ",'rectifier':'diode-shorted'"))
                        + any(List.of("", "", ",'exciterDiodes':false"))
                        + any(List.of("", "", f(",'leakageA':%.3f", between(0.01, 0.5)))));
        wire(id + (negative ? ".B-" : ".B+"), "body.31", false);
        wire(feeds.get(0).terminal(), id + (negative ? ".B+" : ".B-"), false);
        Feed feed = new Feed("key.15", List.of("run", "crank"), Map.of());
        part("lamp", lamp, f(",'ratedV':%d,'ratedW':%.1f,", nominalV, between(2, 4)) + feed.meantLive());
        wire(feed.terminal(), lamp + ".a", true);
        if (random.nextInt(3) == 0 && room() > 0) {
            wire(lamp + ".b", diode(id + ".D+"), true);
        } else {
            wire(lamp + ".b", id + ".D+", true);
        }
        if (random.nextInt(3) == 0) {
            feeds.add(new Feed(id + ".D+", List.of("running"), Map.of()));
        }
        points.add(id + ".D+");
    }

    /** A dynamo with its control box, an ammeter before the battery, and the lamp across the cut-out. */
    private void dynamo() {
        String id = id("dynamo");
        String box = id("box");
        String lamp = id("lamp");
        String meter = id("meter");
        String regulation = any(List.of("compensated", "voltage", "third-brush"));
        part("dynamo", id, f(",'limitA':%.1f,'regulation':'%s'", between(8, 30), regulation));
        part("control-box", box, f(",'cutInV':%.2f", volts(between(12.7, 13.3))));
        part("ammeter", meter, "");
        wire(id + ".E", "body.31", false);
        wire(box + ".E", "body.31", false);
        wire(id + ".D", box + ".D", false);
        if (random.nextInt(4) > 0) {
            wire(id + ".F", box + ".F", false);
        }
        wire(box + ".A", meter + ".b", false);
        wire(meter + ".a", feeds.get(0).terminal(), false);
        Feed feed = new Feed("key.15", List.of("run", "crank"), Map.of());
        part("lamp", lamp, f(",'ratedV':%d,'ratedW':%.1f,", nominalV, between(2, 4)) + feed.meantLive());
        wire(feed.terminal(), lamp + ".a", true);
        wire(lamp + ".b", box + ".D", true);
        feeds.add(new Feed(box + ".A1", ALWAYS, Map.of()));
        points.add(box + ".D");
        points.add(id + ".F");
    }

    private void ledLamp() {
        String figures = f(
                ",'currentA':%.3f%s%s",
                between(0.03, 0.5),
                random.nextBoolean() ? ",'constantCurrent':true" : "",
                negative == random.nextInt(6) > 0 ? "" : ",'plus':'b'");
        consumer("led", id("led"), "a", "b", figures);
    }

    /** Gauges behind a stabiliser, now and then without its earth. */
    private void gauges() {
        String id = id("stabiliser");
        String gauge = id("gauge");
        String sender = id("sender");
        Feed feed = new Feed("key.15", KEY_ON, Map.of());
        part("stabiliser", id, "");
        wire(feed.terminal(), id + ".B", true);
        if (random.nextInt(4) > 0) {
            wire(id + ".E", "body.31", false);
        }
        part("load", gauge, f(",'resistanceOhm':%.1f,", ohms(between(50, 90))) + feed.meantLive());
        part("resistor", sender, f(",'resistanceOhm':%.1f", between(20, 250)));
        wire(id + ".I", gauge + ".a", true);
        wire(gauge + ".b", sender + ".a", false);
        wire(sender + ".b", "body.31", false);
        points.add(id + ".I");
    }

    /** Two lamps, or one, behind a flasher unit and a switch, with a tell-tale. */
    private void flasher() {
        String id = id("flasher");
        boolean electronic = random.nextBoolean();
        Feed feed = new Feed("key.15", KEY_ON, Map.of());
        part("flasher", id, electronic ? ",'construction':'electronic'" : f(",'ratedW':%d", 40 + random.nextInt(10)));
        wire(feed.terminal(), id + ".49", true);
        if (electronic && random.nextInt(5) > 0) {
            wire(id + ".31", "body.31", false);
        }
        Feed side = switched(feed.at(id + ".49a"));
        for (int i = random.nextInt(2); i < 2; i++) {
            String lamp = id("lamp");
            part("lamp", lamp, f(",'ratedV':%d,'ratedW':21,", nominalV) + side.meantLive());
            wire(side.terminal(), lamp + ".a", true);
            wire(lamp + ".b", "body.31", false);
        }
        String tellTale = id("lamp");
        part("lamp", tellTale, f(",'ratedV':%d,'ratedW':2,'meantLive':[]", nominalV));
        wire(id + ".C", tellTale + ".a", true);
        wire(tellTale + ".b", "body.31", false);
        points.add(id + ".49a");
    }

    private void secondBattery() {
        if (parts.stream().anyMatch(p -> p.contains("'id':'second'"))) {
            lamp();
            return;
        }
        part("battery", "second", ownFigures());
        String from = diodeAfter(feeds.get(0).terminal());
        wire(from, "second." + (negative ? "plus" : "minus"), true);
        wire("second." + (negative ? "minus" : "plus"), "body.31", false);
        feeds.add(new Feed("second." + (negative ? "plus" : "minus"), ALWAYS, Map.of()));
    }

    private void protection(boolean link) {
        Feed from = any(feeds);
        String id = id(link ? "link" : "fuse");
        if (link) {
            part("fusible-link", id, ",'size':'1 mm2','lengthM':0.15");
        } else {
            part("fuse", id, f(",'ratingA':%d", any(List.of(8, 15, 35))));
        }
        wire(from.terminal(), id + ".a", true);
        feeds.add(from.at(id + ".b"));
    }

    private void splice() {
        Feed from = any(feeds);
        String id = id("joint");
        boolean poor = random.nextInt(3) == 0;
        part("joint", id, ",'terminals':['1','2','3']" + (poor ? f(",'resistanceOhm':%.4f", between(0.01, 1)) : ""));
        wire(from.terminal(), id + ".1", true);
        feeds.add(from.at(id + ".2"));
        points.add(id + ".3");
    }

    /** A wire that ends in the open: live or dead, and a point that a wire may touch by mistake. */
    private void looseLead() {
        String id = id("end");
        part("joint", id, ",'terminals':['1']");
        wire(random.nextBoolean() ? any(feeds).terminal() : any(points), id + ".1", false);
        points.add(id + ".1");
    }

    // What lies in a feed or a return.

    private Feed feed(int most) {
        Feed feed = any(feeds);
        for (int i = random.nextInt(most + 1); i > 0 && room() > 4; i--) {
            feed = inserted(feed);
        }
        return feed;
    }

    private Feed inserted(Feed from) {
        switch (random.nextInt(9)) {
            case 0, 1, 2 -> {
                return switched(from);
            }
            case 3 -> {
                return from.at(diodeAfter(from.terminal()));
            }
            case 4 -> {
                return from.at(connector(from.terminal()));
            }
            case 5 -> {
                String id = id("resistor");
                part("resistor", id, f(",'resistanceOhm':%.3f", ohms(between(0.2, 20))));
                wire(from.terminal(), id + ".a", true);
                return from.at(id + ".b");
            }
            case 6 -> {
                String id = id("fuse");
                part("fuse", id, f(",'ratingA':%d", any(List.of(8, 15, 35))));
                wire(from.terminal(), id + ".a", true);
                return from.at(id + ".b");
            }
            case 7 -> {
                String id = id("joint");
                part("joint", id, ",'terminals':['1','2','3','4']");
                wire(from.terminal(), id + ".1", true);
                feeds.add(from.at(id + ".2"));
                points.add(id + ".3");
                return from.at(id + ".4");
            }
            default -> {
                String id = id("ballast");
                part("ballast", id, f(",'elementsOhm':[%.2f,%.2f]", ohms(0.5), ohms(between(0.3, 4))));
                wire(from.terminal(), id + ".a", true);
                points.add(id + ".tap1");
                return from.at(id + ".b");
            }
        }
    }

    private Feed switched(Feed from) {
        if (switches >= shape.switches()) {
            return from;
        }
        switches++;
        String id = id("switch");
        if (random.nextInt(4) == 0) {
            part(
                    "switch",
                    id,
                    ",'terminals':['30','56','58'],'positions':[{'name':'off','joins':[]},"
                            + "{'name':'side','joins':[['30','58']]},{'name':'head','joins':[['30','56','58']]}]"
                            + (random.nextInt(4) == 0 ? ",'position':'head'" : ""));
            wire(from.terminal(), id + ".30", true);
            feeds.add(from.through(id + ".56", id, "head"));
            points.add(id + ".58");
            return from.through(id + ".56", id, "head");
        }
        part(
                "switch",
                id,
                ",'terminals':['a','b'],'positions':[{'name':'off','joins':[]},{'name':'on','joins':[['a','b']]}]"
                        + (random.nextInt(4) == 0 ? ",'position':'on'" : "")
                        + (random.nextInt(5) == 0 ? ",'momentary':true" : ""));
        wire(from.terminal(), id + ".a", true);
        points.add(id + ".b");
        return from.through(id + ".b", id, "on");
    }

    /** A place to which a return may go, with what must stand how for it to be one. */
    private Feed back(int most) {
        Feed body = new Feed("body.31", ALWAYS, Map.of());
        if (most == 0 || room() <= 4) {
            return body;
        }
        switch (random.nextInt(12)) {
            case 0 -> {
                String id = id("earth");
                part("earth", id, f(",'resistanceOhm':%.4f", between(0.002, 3)));
                points.add(id + ".31");
                return body.at(id + ".31");
            }
            case 1, 2 -> {
                return body.at(diode("body.31"));
            }
            case 3 -> {
                if (switches >= shape.switches()) {
                    return body;
                }
                switches++;
                String id = id("switch");
                part(
                        "switch",
                        id,
                        ",'terminals':['a','b'],'positions':[{'name':'off','joins':[]},"
                                + "{'name':'on','joins':[['a','b']]}],'position':'on'");
                wire(id + ".b", "body.31", false);
                points.add(id + ".a");
                return body.through(id + ".a", id, "on");
            }
            case 4 -> {
                String id = id("joint");
                part("joint", id, f(",'terminals':['1','2','3'],'resistanceOhm':%.4f", between(0.001, 0.2)));
                wire(id + ".1", "body.31", false);
                points.add(id + ".2");
                return body.at(id + ".3");
            }
            case 5 -> {
                return body.at(connector("body.31"));
            }
            default -> {
                return body;
            }
        }
    }

    /** A diode that lets a feed's current on, and blocks it backwards: its far end. */
    private String diodeAfter(String feed) {
        String id = id("diode");
        part("diode", id, f(",'forwardV':%.2f,'slopeOhm':%.3f", between(0.3, 0.9), between(0.005, 0.05)));
        wire(feed, id + (negative ? ".anode" : ".cathode"), true);
        return id + (negative ? ".cathode" : ".anode");
    }

    /** A diode that lets what comes to it on to a place: its near end. */
    private String diode(String to) {
        String id = id("diode");
        part("diode", id, "");
        wire(id + (negative ? ".cathode" : ".anode"), to, true);
        return id + (negative ? ".anode" : ".cathode");
    }

    /** A plug and socket of two ways after a terminal: the far side of the way that is joined to it. */
    private String connector(String from) {
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

    // The document.

    private String id(String stem) {
        return stem + named++;
    }

    private void part(String kind, String id, String figures) {
        parts.add("{'kind':'" + kind + "','id':'" + id + "'" + figures + "}");
    }

    private void wire(String from, String to, boolean directed) {
        if (from.equals(to)) {
            return;
        }
        String conductor = random.nextInt(3) == 0
                ? f("'size':'%s','lengthM':%.2f", SIZES[random.nextInt(SIZES.length)], between(0.1, 4))
                : f("'resistanceOhm':%.5f", between(0.001, 0.05));
        String corroded = random.nextInt(30) == 0 ? f(",'toJointResistanceOhm':%.3f", between(0.1, 20)) : "";
        wires.add(wire(from, to, conductor + corroded, directed));
    }

    private String wire(String from, String to, String figures, boolean directed) {
        return f("{'id':'W%d','from':'%s','to':'%s',%s,'directed':%b}", wires.size() + 1, from, to, figures, directed);
    }

    private double between(double least, double most) {
        return least + (most - least) * random.nextDouble();
    }

    private double volts(double ofTwelve) {
        return ofTwelve * nominalV / 12;
    }

    private double ohms(double ofTwelve) {
        return ofTwelve * nominalV / 12;
    }

    private <T> T any(List<T> list) {
        return list.get(random.nextInt(list.size()));
    }

    private static String f(String format, Object... figures) {
        return String.format(Locale.ROOT, format, figures);
    }
}
