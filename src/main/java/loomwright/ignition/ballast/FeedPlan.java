package loomwright.ignition.ballast;

import java.util.ArrayList;
import java.util.List;
import loomwright.circuit.Ballast;
import loomwright.circuit.Battery;
import loomwright.circuit.Bounds;
import loomwright.circuit.Coil;
import loomwright.circuit.Condition;
import loomwright.circuit.Conditions;
import loomwright.circuit.ContactBreaker;
import loomwright.circuit.EarthPoint;
import loomwright.circuit.EarthPolarity;
import loomwright.circuit.IgnitionModule;
import loomwright.circuit.Part;
import loomwright.circuit.Plan;
import loomwright.circuit.Supply;
import loomwright.circuit.Switch;
import loomwright.circuit.TerminalRef;
import loomwright.circuit.VehicleSystem;
import loomwright.circuit.Wire;

/**
 * An ignition feed as a plan: battery, feed, ballast, coil, breaker or module, and the bypass behind a switch.
 *
 * <p>A wire of a plan has at least {@link Bounds#MIN_RESISTANCE_OHM}. What the wires and joints of the plan have in excess
 * of the resistance given is taken off the first of them, or off the contacts, so that each whole has the resistance
 * given. Where there is nothing to take it off, as in a bypass of no resistance, some 3e-6 ohm remain.
 */
final class FeedPlan {
    static final String BATTERY = "battery";
    static final String BALLAST = "ballast";
    static final String COIL = "coil";
    static final String BREAKER = "breaker";
    static final String MODULE = "module";
    static final String BYPASS_SWITCH = "bypass-switch";
    static final String FEED_WIRE = "feed";
    static final String BYPASS_WIRE = "bypass";
    static final String RETURN_WIRE = "return";
    private static final String EARTH = "earth";
    private static final double LEAST_OHM = Bounds.MIN_RESISTANCE_OHM;
    /** Wires of the way back beside the return itself: coil to breaker, earth to battery. */
    private static final int RETURN_LINKS = 2;

    /** Where the bypass stands. */
    enum Bypass {
        /** As in the vehicle: joined while cranking, open otherwise. */
        BY_CONDITION,
        OPEN,
        CLOSED
    }

    private final IgnitionFeed feed;

    private FeedPlan(IgnitionFeed feed) {
        this.feed = feed;
    }

    /**
     * The plan of a feed.
     *
     * @param contactsClosed false leaves out the wire from breaker or module to earth, so that nothing flows
     */
    static Plan of(IgnitionFeed feed, Bypass bypass, boolean contactsClosed) {
        FeedPlan plan = new FeedPlan(feed);
        return new Plan(
                Plan.SCHEMA,
                "Ignition feed",
                new VehicleSystem(
                        feed.nominalVoltageV(),
                        EarthPolarity.NEGATIVE,
                        feed.temperatures().ambientC(),
                        feed.temperatures().ambientC()),
                plan.conditions(),
                plan.parts(bypass),
                plan.wires(contactsClosed),
                List.of(),
                List.of());
    }

    /** The part that closes the primary. */
    static String switchId(IgnitionFeed feed) {
        return feed.closing().module() ? MODULE : BREAKER;
    }

    private Conditions conditions() {
        Supply rest = supply(Condition.RUN);
        return new Conditions(rest, rest, rest, supply(Condition.CRANK), supply(Condition.RUNNING));
    }

    private Supply supply(Condition condition) {
        return Supply.of(feed.supplies().in(condition), 0, 0);
    }

    private List<Part> parts(Bypass bypass) {
        List<Part> parts = new ArrayList<>();
        parts.add(Battery.usual(BATTERY));
        parts.add(new EarthPoint(EARTH, null, 0.0));
        if (ballasted()) {
            parts.add(new Ballast(BALLAST, null, feed.elementsOhm()));
        }
        List<Condition> fed = List.of(Condition.RUN, Condition.CRANK, Condition.RUNNING);
        parts.add(new Coil(COIL, null, feed.coilOhm(), null, null, null, null, null, fed, List.of()));
        IgnitionFeed.Closing closing = feed.closing();
        parts.add(
                closing.module()
                        ? new IgnitionModule(
                                MODULE, null, closing.dropV(), closing.limitA(), 0.1, closing.deadBelowV(), true)
                        : new ContactBreaker(
                                BREAKER,
                                null,
                                true,
                                Math.max(LEAST_OHM, closing.contactOhm() - excessReturnOhm()),
                                null));
        if (feed.ballast().bypassTap() != null) {
            parts.add(bypassSwitch(bypass));
        }
        return parts;
    }

    private boolean ballasted() {
        return !feed.ballast().elements20Ohm().isEmpty();
    }

    private static Switch bypassSwitch(Bypass bypass) {
        List<Switch.Position> positions = List.of(
                new Switch.Position("open", List.of()), new Switch.Position("closed", List.of(List.of("a", "b"))));
        boolean byCondition = bypass == Bypass.BY_CONDITION;
        return new Switch(
                BYPASS_SWITCH,
                null,
                List.of("a", "b"),
                positions,
                byCondition ? new Switch.PositionByCondition("open", "open", "open", "closed", "open") : null,
                byCondition ? null : bypass == Bypass.CLOSED ? "closed" : "open",
                LEAST_OHM,
                null,
                false,
                null);
    }

    /** What the least resistances of the way back come to beyond the return resistance given. */
    private double excessReturnOhm() {
        return Math.max(0, (RETURN_LINKS + 1) * LEAST_OHM - feed.leads().returnOhm());
    }

    private List<Wire> wires(boolean contactsClosed) {
        String closing = switchId(feed);
        List<Wire> wires = new ArrayList<>();
        double moduleOhm = feed.closing().module() ? excessReturnOhm() : 0;
        if (ballasted()) {
            wires.add(wire(FEED_WIRE, "battery.plus", "ballast.a", feed.leads().feedOhm() - LEAST_OHM - moduleOhm));
            wires.add(wire("coil-feed", "ballast.b", "coil.15", LEAST_OHM));
        } else {
            wires.add(wire(FEED_WIRE, "battery.plus", "coil.15", feed.leads().feedOhm() - moduleOhm));
        }
        wires.add(wire("coil-lead", "coil.1", closing + ".1", LEAST_OHM));
        if (contactsClosed) {
            wires.add(wire(
                    RETURN_WIRE, closing + ".31", "earth.31", feed.leads().returnOhm() - RETURN_LINKS * LEAST_OHM));
        }
        wires.add(wire("battery-earth", "earth.31", "battery.minus", LEAST_OHM));
        if (feed.closing().module()) {
            wires.add(wire("module-feed", "battery.plus", "module.15", LEAST_OHM));
        }
        if (feed.ballast().bypassTap() != null) {
            wires.add(wire("bypass-feed", "battery.plus", BYPASS_SWITCH + ".a", LEAST_OHM));
            wires.add(wire(
                    BYPASS_WIRE,
                    BYPASS_SWITCH + ".b",
                    "ballast." + tapTerminal(),
                    feed.leads().bypassOhm() - 2 * LEAST_OHM));
        }
        return wires;
    }

    /** The terminal that the bypass feeds. */
    private String tapTerminal() {
        Integer tap = feed.ballast().bypassTap();
        return tap == null || tap == feed.ballast().elements20Ohm().size() ? "b" : "tap" + tap;
    }

    private static Wire wire(String id, String from, String to, double ohm) {
        return Wire.ofResistance(id, TerminalRef.parse(from), TerminalRef.parse(to), Math.max(LEAST_OHM, ohm));
    }
}
