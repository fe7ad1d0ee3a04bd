package loomwright.circuit;

import static loomwright.circuit.VehicleDraft.f;

/** Ignitions of a vehicle made at random: contact points behind a ballast, and a module. */
final class VehicleIgnition {
    private final VehicleDraft draft;
    private final VehicleWays ways;

    VehicleIgnition(VehicleDraft draft, VehicleWays ways) {
        this.draft = draft;
        this.ways = ways;
    }

    void pointsIgnition() {
        String ballast = draft.id("ballast");
        String coil = draft.id("coil");
        String breaker = draft.id("breaker");
        String condenser = draft.id("capacitor");
        VehicleFeed feed = ways.feed(2);
        boolean tapped = draft.random.nextBoolean();
        draft.part(
                "ballast",
                ballast,
                tapped
                        ? f(",'elementsOhm':[%.2f,%.2f]", draft.ohms(0.6), draft.ohms(0.9))
                        : f(",'elementsOhm':[%.2f]", draft.ohms(1.5)));
        draft.part(
                "coil", coil, f(",'primaryResistanceOhm':%.2f,", draft.ohms(draft.between(1.3, 3))) + feed.meantLive());
        draft.part("contact-breaker", breaker, draft.random.nextBoolean() ? ",'closedWhenStopped':false" : "");
        draft.part("capacitor", condenser, ",'capacitanceUf':0.2");
        draft.wire(feed.terminal(), ballast + ".a", true);
        draft.wire(ballast + ".b", coil + ".15", true);
        draft.wire(coil + ".1", breaker + ".1", false);
        draft.wire(breaker + ".31", "body.31", false);
        draft.wire(breaker + ".1", condenser + ".a", false);
        draft.wire(condenser + ".b", "body.31", false);
        draft.points.add(coil + ".15");
        if (tapped) {
            draft.points.add(ballast + ".tap1");
        }
    }

    void moduleIgnition() {
        String coil = draft.id("coil");
        String module = draft.id("module");
        VehicleFeed feed = ways.feed(2);
        String limit = draft.random.nextBoolean() ? f(",'limitA':%.1f", draft.between(3, 7)) : "";
        draft.part(
                "coil", coil, f(",'primaryResistanceOhm':%.2f,", draft.ohms(draft.between(0.8, 3))) + feed.meantLive());
        draft.part("module", module, limit + (draft.random.nextInt(3) == 0 ? ",'conductsWhenStopped':true" : ""));
        draft.wire(feed.terminal(), coil + ".15", true);
        draft.wire(feed.terminal(), module + ".15", true);
        draft.wire(coil + ".1", module + ".1", false);
        draft.wire(module + ".31", "body.31", false);
        draft.points.add(coil + ".15");
    }
}
