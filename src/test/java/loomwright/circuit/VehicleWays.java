package loomwright.circuit;

import static loomwright.circuit.VehicleDraft.f;
import static loomwright.circuit.VehicleFeed.ALWAYS;

import java.util.List;
import java.util.Map;

/** What lies in the feeds and returns of a vehicle made at random: switches, diodes, plugs, fuses, joints, earths. */
final class VehicleWays {
    private final VehicleDraft draft;

    VehicleWays(VehicleDraft draft) {
        this.draft = draft;
    }

    void protection(boolean link) {
        VehicleFeed from = draft.any(draft.feeds);
        String id = draft.id(link ? "link" : "fuse");
        if (link) {
            draft.part("fusible-link", id, ",'size':'1 mm2','lengthM':0.15");
        } else {
            draft.part("fuse", id, f(",'ratingA':%d", draft.any(List.of(8, 15, 35))));
        }
        draft.wire(from.terminal(), id + ".a", true);
        draft.feeds.add(from.at(id + ".b"));
    }

    void splice() {
        VehicleFeed from = draft.any(draft.feeds);
        String id = draft.id("joint");
        boolean poor = draft.random.nextInt(3) == 0;
        draft.part(
                "joint",
                id,
                ",'terminals':['1','2','3']" + (poor ? f(",'resistanceOhm':%.4f", draft.between(0.01, 1)) : ""));
        draft.wire(from.terminal(), id + ".1", true);
        draft.feeds.add(from.at(id + ".2"));
        draft.points.add(id + ".3");
    }

    /** A wire that ends in the open: live or dead, and a point that a wire may touch by mistake. */
    void looseLead() {
        String id = draft.id("end");
        draft.part("joint", id, ",'terminals':['1']");
        draft.wire(
                draft.random.nextBoolean() ? draft.any(draft.feeds).terminal() : draft.any(draft.points),
                id + ".1",
                false);
        draft.points.add(id + ".1");
    }

    VehicleFeed feed(int most) {
        VehicleFeed feed = draft.any(draft.feeds);
        for (int i = draft.random.nextInt(most + 1); i > 0 && draft.room() > 4; i--) {
            feed = inserted(feed);
        }
        return feed;
    }

    VehicleFeed inserted(VehicleFeed from) {
        switch (draft.random.nextInt(9)) {
            case 0, 1, 2 -> {
                return switched(from);
            }
            case 3 -> {
                return from.at(draft.diodeAfter(from.terminal()));
            }
            case 4 -> {
                return from.at(draft.connector(from.terminal()));
            }
            case 5 -> {
                String id = draft.id("resistor");
                draft.part("resistor", id, f(",'resistanceOhm':%.3f", draft.ohms(draft.between(0.2, 20))));
                draft.wire(from.terminal(), id + ".a", true);
                return from.at(id + ".b");
            }
            case 6 -> {
                String id = draft.id("fuse");
                draft.part("fuse", id, f(",'ratingA':%d", draft.any(List.of(8, 15, 35))));
                draft.wire(from.terminal(), id + ".a", true);
                return from.at(id + ".b");
            }
            case 7 -> {
                String id = draft.id("joint");
                draft.part("joint", id, ",'terminals':['1','2','3','4']");
                draft.wire(from.terminal(), id + ".1", true);
                draft.feeds.add(from.at(id + ".2"));
                draft.points.add(id + ".3");
                return from.at(id + ".4");
            }
            default -> {
                String id = draft.id("ballast");
                draft.part(
                        "ballast",
                        id,
                        f(",'elementsOhm':[%.2f,%.2f]", draft.ohms(0.5), draft.ohms(draft.between(0.3, 4))));
                draft.wire(from.terminal(), id + ".a", true);
                draft.points.add(id + ".tap1");
                return from.at(id + ".b");
            }
        }
    }

    VehicleFeed switched(VehicleFeed from) {
        if (draft.switches >= draft.shape.switches()) {
            return from;
        }
        draft.switches++;
        String id = draft.id("switch");
        if (draft.random.nextInt(4) == 0) {
            draft.part(
                    "switch",
                    id,
                    ",'terminals':['30','56','58'],'positions':[{'name':'off','joins':[]},"
                            + "{'name':'side','joins':[['30','58']]},{'name':'head','joins':[['30','56','58']]}]"
                            + (draft.random.nextInt(4) == 0 ? ",'position':'head'" : "")
                            + fault("30", "56"));
            draft.wire(from.terminal(), id + ".30", true);
            draft.feeds.add(from.through(id + ".56", id, "head"));
            draft.points.add(id + ".58");
            return from.through(id + ".56", id, "head");
        }
        draft.part(
                "switch",
                id,
                ",'terminals':['a','b'],'positions':[{'name':'off','joins':[]},{'name':'on','joins':[['a','b']]}]"
                        + (draft.random.nextInt(4) == 0 ? ",'position':'on'" : "")
                        + (draft.random.nextInt(5) == 0 ? ",'momentary':true" : "")
                        + fault("a", "b"));
        draft.wire(from.terminal(), id + ".a", true);
        draft.points.add(id + ".b");
        return from.through(id + ".b", id, "on");
    }

    /** One contact in eight or so is faulty. */
    private String fault(String from, String to) {
        String between = "'between':['" + from + "','" + to + "']";
        return switch (draft.random.nextInt(32)) {
            case 0 -> ",'contactFaults':[{'state':'stuck'," + between + "}]";
            case 1 -> ",'contactFaults':[{'state':'open'," + between + "}]";
            case 2 -> f(",'contactFaults':[{'state':'worn',%s,'resistanceOhm':%.3f}]", between, draft.between(0.05, 3));
            case 3 ->
                f(",'contactFaults':[{'state':'bridged',%s,'resistanceOhm':%.2f}]", between, draft.between(1, 90));
            default -> "";
        };
    }

    /** A place to which a return may go, with what must stand how for it to be one. */
    VehicleFeed back(int most) {
        VehicleFeed body = new VehicleFeed("body.31", ALWAYS, Map.of());
        if (most == 0 || draft.room() <= 4) {
            return body;
        }
        switch (draft.random.nextInt(12)) {
            case 0 -> {
                String id = draft.id("earth");
                draft.part("earth", id, f(",'resistanceOhm':%.4f", draft.between(0.002, 3)));
                draft.points.add(id + ".31");
                return body.at(id + ".31");
            }
            case 1, 2 -> {
                return body.at(draft.diode("body.31"));
            }
            case 3 -> {
                if (draft.switches >= draft.shape.switches()) {
                    return body;
                }
                draft.switches++;
                String id = draft.id("switch");
                draft.part(
                        "switch",
                        id,
                        ",'terminals':['a','b'],'positions':[{'name':'off','joins':[]},"
                                + "{'name':'on','joins':[['a','b']]}],'position':'on'");
                draft.wire(id + ".b", "body.31", false);
                draft.points.add(id + ".a");
                return body.through(id + ".a", id, "on");
            }
            case 4 -> {
                String id = draft.id("joint");
                draft.part(
                        "joint", id, f(",'terminals':['1','2','3'],'resistanceOhm':%.4f", draft.between(0.001, 0.2)));
                draft.wire(id + ".1", "body.31", false);
                draft.points.add(id + ".2");
                return body.at(id + ".3");
            }
            case 5 -> {
                return body.at(draft.connector("body.31"));
            }
            default -> {
                return body;
            }
        }
    }
}
