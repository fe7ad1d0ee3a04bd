package loomwright.circuit;

import static loomwright.circuit.VehicleDraft.f;
import static loomwright.circuit.VehicleFeed.ALWAYS;
import static loomwright.circuit.VehicleFeed.KEY_ON;

import java.util.List;
import java.util.Map;

/** Circuits of a vehicle made at random: loads of every kind, each with what lies in its feed and its return. */
final class VehicleLoads {
    private final VehicleDraft draft;
    private final VehicleWays ways;

    VehicleLoads(VehicleDraft draft, VehicleWays ways) {
        this.draft = draft;
        this.ways = ways;
    }

    void lamp() {
        String id = draft.id("lamp");
        double watts = draft.any(List.of(2.0, 5.0, 21.0, 55.0));
        double ratedV = draft.random.nextInt(4) == 0 ? draft.volts(13.5) : draft.nominalV;
        consumer("lamp", id, "a", "b", f(",'ratedV':%.3f,'ratedW':%.1f", ratedV, watts));
    }

    void motor() {
        consumer(
                "motor",
                draft.id("motor"),
                "33",
                "32",
                f(",'resistanceOhm':%.3f", draft.ohms(draft.between(0.8, 8)))
                        + draft.any(List.of(
                                "",
                                "",
                                "",
                                ",'excitation':'series'",
                                ",'excitation':'permanent-magnet'",
                                ",'stalled':true",
                                ",'stalled':true,'windingOhm':0.5")));
    }

    void resistor() {
        String id = draft.id("resistor");
        VehicleFeed feed = ways.feed(2);
        draft.part("resistor", id, f(",'resistanceOhm':%.3f", draft.ohms(draft.between(3, 200))));
        draft.wire(feed.terminal(), id + ".a", true);
        draft.wire(id + ".b", ways.back(2).terminal(), false);
        draft.points.add(id + ".a");
    }

    void ohmLoad() {
        consumer(
                "load",
                draft.id("load"),
                "a",
                "b",
                f(",'resistanceOhm':%.3f", draft.ohms(draft.between(1.5, 60))) + limits(false));
    }

    void ampLoad() {
        consumer("load", draft.id("load"), "a", "b", f(",'currentA':%.3f", draft.between(0.1, 6)) + limits(true));
    }

    void wattLoad() {
        consumer("load", draft.id("load"), "a", "b", f(",'powerW':%.2f", draft.between(3, 60)) + limits(false));
    }

    void ledLamp() {
        String figures = f(
                ",'currentA':%.3f%s%s",
                draft.between(0.03, 0.5),
                draft.random.nextBoolean() ? ",'constantCurrent':true" : "",
                draft.negative == draft.random.nextInt(6) > 0 ? "" : ",'plus':'b'");
        consumer("led", draft.id("led"), "a", "b", figures);
    }

    void relay() {
        String id = draft.id("relay");
        VehicleFeed coil = ways.feed(2);
        VehicleFeed common = ways.feed(1);
        VehicleFeed back = ways.back(1);
        draft.part(
                "relay",
                id,
                f(",'coilResistanceOhm':%.1f,", draft.ohms(draft.between(60, 120)))
                        + coil.and(new VehicleFeed(back.terminal(), ALWAYS, back.when()), id)
                                .meantLive());
        draft.wire(coil.terminal(), id + ".86", true);
        draft.wire(id + ".85", back.terminal(), false);
        draft.wire(common.terminal(), id + ".30", true);
        draft.points.add(id + ".86");
        draft.points.add(id + ".85");
        draft.points.add(id + ".87");
        if (draft.random.nextInt(5) == 0) {
            // It holds itself once it is in.
            draft.wire(id + ".87", id + ".86", false);
        }
        draft.feeds.add(coil.and(new VehicleFeed(back.terminal(), ALWAYS, back.when()), id)
                .and(common, id + ".87"));
        if (draft.random.nextInt(3) == 0) {
            draft.feeds.add(new VehicleFeed(id + ".87a", List.of(), Map.of()));
        }
        if (draft.room() > 0) {
            String lamp = draft.id("lamp");
            VehicleFeed made = draft.feeds.get(draft.feeds.size() - 1);
            draft.part(
                    "lamp",
                    lamp,
                    f(",'ratedV':%d,'ratedW':%d,", draft.nominalV, 2 + draft.random.nextInt(40)) + made.meantLive());
            draft.wire(made.terminal(), lamp + ".a", true);
            draft.wire(lamp + ".b", "body.31", false);
            draft.points.add(lamp + ".a");
        }
    }

    /** Gauges behind a stabiliser, now and then without its earth. */
    void gauges() {
        String id = draft.id("stabiliser");
        String gauge = draft.id("gauge");
        String sender = draft.id("sender");
        VehicleFeed feed = new VehicleFeed("key.15", KEY_ON, Map.of());
        draft.part("stabiliser", id, "");
        draft.wire(feed.terminal(), id + ".B", true);
        if (draft.random.nextInt(4) > 0) {
            draft.wire(id + ".E", "body.31", false);
        }
        draft.part("load", gauge, f(",'resistanceOhm':%.1f,", draft.ohms(draft.between(50, 90))) + feed.meantLive());
        draft.part("resistor", sender, f(",'resistanceOhm':%.1f", draft.between(20, 250)));
        draft.wire(id + ".I", gauge + ".a", true);
        draft.wire(gauge + ".b", sender + ".a", false);
        draft.wire(sender + ".b", "body.31", false);
        draft.points.add(id + ".I");
    }

    /** Two lamps, or one, behind a flasher unit and a switch, with a tell-tale. */
    void flasher() {
        String id = draft.id("flasher");
        boolean electronic = draft.random.nextBoolean();
        VehicleFeed feed = new VehicleFeed("key.15", KEY_ON, Map.of());
        draft.part(
                "flasher",
                id,
                electronic ? ",'construction':'electronic'" : f(",'ratedW':%d", 40 + draft.random.nextInt(10)));
        draft.wire(feed.terminal(), id + ".49", true);
        if (electronic && draft.random.nextInt(5) > 0) {
            draft.wire(id + ".31", "body.31", false);
        }
        VehicleFeed side = ways.switched(feed.at(id + ".49a"));
        for (int i = draft.random.nextInt(2); i < 2; i++) {
            String lamp = draft.id("lamp");
            draft.part("lamp", lamp, f(",'ratedV':%d,'ratedW':21,", draft.nominalV) + side.meantLive());
            draft.wire(side.terminal(), lamp + ".a", true);
            draft.wire(lamp + ".b", "body.31", false);
        }
        String tellTale = draft.id("lamp");
        draft.part("lamp", tellTale, f(",'ratedV':%d,'ratedW':2,'meantLive':[]", draft.nominalV));
        draft.wire(id + ".C", tellTale + ".a", true);
        draft.wire(tellTale + ".b", "body.31", false);
        draft.points.add(id + ".49a");
    }

    void consumer(String kind, String id, String in, String out, String figures) {
        VehicleFeed feed = ways.feed(2);
        boolean off = draft.shape.leadsOff() && draft.random.nextInt(10) == 0;
        VehicleFeed meant = feed;
        if (!off) {
            VehicleFeed back = ways.back(2);
            meant = feed.and(new VehicleFeed(back.terminal(), ALWAYS, back.when()), feed.terminal());
            draft.wire(id + "." + out, back.terminal(), false);
            draft.points.add(id + "." + out);
        }
        draft.part(kind, id, figures + "," + meant.meantLive());
        draft.wire(feed.terminal(), id + "." + in, true);
        draft.points.add(id + "." + in);
        if (draft.random.nextInt(8) == 0 && draft.room() > 0) {
            String suppressor = draft.id("capacitor");
            draft.part("capacitor", suppressor, ",'capacitanceUf':2.2");
            draft.wire(id + "." + in, suppressor + ".a", false);
            draft.wire(suppressor + ".b", "body.31", false);
        }
    }

    /** A least and a greatest voltage, of which the greatest is sometimes less than there is. */
    String limits(boolean always) {
        int which = draft.random.nextInt(4);
        String least = f(",'minimumV':%.3f", draft.volts(draft.between(4, 9)));
        String most = f(",'maximumV':%.3f", draft.volts(draft.between(11, 18)));
        return polarity()
                + switch (which) {
                    case 0 -> least;
                    case 1 -> least + most;
                    case 2 -> always ? least : most;
                    default -> always ? least + most : "";
                };
    }

    /** Of one in four which terminal must be positive, mostly the right one. */
    String polarity() {
        if (draft.random.nextInt(4) > 0) {
            return "";
        }
        return draft.negative == draft.random.nextInt(5) > 0 ? ",'plus':'a'" : ",'plus':'b'";
    }
}
