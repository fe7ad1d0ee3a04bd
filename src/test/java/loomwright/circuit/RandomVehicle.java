package loomwright.circuit;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.stream.Stream;

/**
 * Vehicles made at random of every kind of part: a battery, a key, and circuits dealt from a shuffled pack, so that a plan of
 * {@link #EVERY_KIND} parts or more holds every kind. Either pole is earthed, the system has 6, 12 or 24 V. Most circuits are
 * sound and say truly when they are meant to be live; wires between points chosen at random make the sneak paths.
 */
public final class RandomVehicle {
    /** From this size on a vehicle has every kind of part. */
    public static final int EVERY_KIND = 140;

    private final Shape shape;
    private final VehicleDraft draft;
    private final VehicleWays ways;
    private final VehicleLoads loads;
    private final VehicleIgnition ignition;
    private final VehicleSupply supply;

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

    /** One circuit of the pack. */
    private record Circuit(int mostParts, Runnable add) {}

    private RandomVehicle(long seed, Shape shape) {
        this.shape = shape;
        this.draft = new VehicleDraft(seed, shape);
        this.ways = new VehicleWays(draft);
        this.loads = new VehicleLoads(draft, ways);
        this.ignition = new VehicleIgnition(draft, ways);
        this.supply = new VehicleSupply(draft);
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
        supply.supply();
        List<Circuit> pack = List.of();
        int next = 0;
        while (draft.parts.size() < shape.parts()) {
            if (next == pack.size()) {
                pack = shuffledPack();
                next = 0;
            }
            Circuit circuit = pack.get(next++);
            if (circuit.mostParts() <= draft.room()) {
                circuit.add().run();
            } else if (draft.room() < 9) {
                loads.lamp();
            }
        }
        for (int w = 0; w < shape.crossTies(); w++) {
            draft.wire(draft.any(draft.points), draft.any(draft.points), false);
        }
        return Plans.parse("{'schema':'loomwright/plan/1','name':'made at random','system':{'nominalVoltageV':"
                + draft.nominalV
                + ",'earthPolarity':'" + (draft.negative ? "negative" : "positive") + "'}"
                + (shape.supplyStated() ? "," + supply.conditions() : "")
                + ",'parts':[" + String.join(",", draft.parts) + "],'wires':[" + String.join(",", draft.wires)
                + "],'connectors':["
                + String.join(",", draft.connectors) + "]}");
    }

    private List<Circuit> shuffledPack() {
        List<Circuit> pack = new ArrayList<>(List.of(
                new Circuit(6, loads::lamp),
                new Circuit(6, loads::lamp),
                new Circuit(6, loads::ohmLoad),
                new Circuit(6, loads::ohmLoad),
                new Circuit(6, loads::ampLoad),
                new Circuit(6, loads::wattLoad),
                new Circuit(6, loads::motor),
                new Circuit(6, loads::resistor),
                new Circuit(10, ignition::pointsIgnition),
                new Circuit(9, ignition::moduleIgnition),
                new Circuit(12, loads::relay),
                new Circuit(12, loads::relay),
                new Circuit(3, () -> supply.starter(false)),
                new Circuit(3, () -> supply.starter(true)),
                new Circuit(8, supply::alternator),
                new Circuit(8, supply::dynamo),
                new Circuit(6, loads::ledLamp),
                new Circuit(8, loads::gauges),
                new Circuit(8, loads::flasher),
                new Circuit(1, () -> ways.protection(false)),
                new Circuit(1, () -> ways.protection(true)),
                new Circuit(3, ways::splice),
                new Circuit(2, ways::looseLead),
                new Circuit(4, this::secondBattery)));
        Collections.shuffle(pack, draft.random);
        return pack;
    }

    /** There is one at most. */
    private void secondBattery() {
        if (draft.parts.stream().anyMatch(part -> part.contains("'id':'second'"))) {
            loads.lamp();
        } else {
            supply.secondBattery();
        }
    }
}
