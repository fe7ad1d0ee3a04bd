package loomwright.operation;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Deque;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import loomwright.circuit.Alternator;
import loomwright.circuit.Ammeter;
import loomwright.circuit.Ballast;
import loomwright.circuit.Battery;
import loomwright.circuit.Capacitor;
import loomwright.circuit.Coil;
import loomwright.circuit.Connector;
import loomwright.circuit.ConnectorHalf;
import loomwright.circuit.ContactBreaker;
import loomwright.circuit.ControlBox;
import loomwright.circuit.Diode;
import loomwright.circuit.Dynamo;
import loomwright.circuit.EarthPoint;
import loomwright.circuit.EarthPolarity;
import loomwright.circuit.FilamentLamp;
import loomwright.circuit.FixedResistor;
import loomwright.circuit.Flasher;
import loomwright.circuit.Fuse;
import loomwright.circuit.FusibleLink;
import loomwright.circuit.IgnitionModule;
import loomwright.circuit.Joint;
import loomwright.circuit.LedLamp;
import loomwright.circuit.Load;
import loomwright.circuit.Motor;
import loomwright.circuit.Part;
import loomwright.circuit.Place;
import loomwright.circuit.Plan;
import loomwright.circuit.Relay;
import loomwright.circuit.ResolvedSupply;
import loomwright.circuit.Solenoid;
import loomwright.circuit.Stabiliser;
import loomwright.circuit.Switch;
import loomwright.circuit.VehicleSystem;
import loomwright.circuit.Wire;
import loomwright.conductor.ConductorSize;
import org.apache.commons.math3.linear.Array2DRowRealMatrix;
import org.apache.commons.math3.linear.ArrayRealVector;
import org.apache.commons.math3.linear.LUDecomposition;
import org.apache.commons.math3.linear.RealVector;
import org.jspecify.annotations.Nullable;

/**
 * A second way to the same figures, plain and slow: all node voltages and all branch currents as unknowns of one dense matrix
 * (commons-math3), states of diodes by trial, lamps and constant-power loads by repeated chords, relays by trial too. It
 * shares nothing with the solver but the plan, and is written from {@code docs/physics.md}.
 *
 * <p>Good for resistances within nine decades. What is tied to nothing but blocking diodes has no voltage here.
 */
public final class DenseOracle {
    /** Exciter current from which a machine generates, A (common practice, no source). */
    private static final double EXCITED_A = 0.1;
    /** What a load that is off lets through, as a share of what it would take at its least voltage. */
    private static final double IDLE_SHARE = 1e-6;

    private static final double STEEP_OHM = 0.01;
    private static final double MODULE_SLOPE_OHM = 0.01;
    private static final double LAMP_EXPONENT = 0.55;
    private static final String CHASSIS = "chassis";

    private final Plan plan;
    private final VehicleSystem system;
    private final double feedSign;
    private final Map<String, Integer> nodes = new LinkedHashMap<>();
    private final int count;

    public DenseOracle(Plan plan) {
        this.plan = plan;
        this.system = plan.system();
        this.feedSign = system.earthPolarity() == EarthPolarity.NEGATIVE ? 1 : -1;
        nodes.put(CHASSIS, 0);
        int next = 1;
        for (Part part : plan.parts()) {
            boolean onChassis = part instanceof EarthPoint earth && earth.resistanceOhm() == 0;
            boolean joined = part instanceof Joint joint && joint.resistanceOhm() == 0;
            int shared = onChassis ? 0 : joined ? next++ : -1;
            for (String terminal : part.terminals()) {
                nodes.put(part.id() + "." + terminal, shared >= 0 ? shared : next++);
            }
            if (part instanceof Joint && !joined) {
                nodes.put(part.id(), next++);
            }
        }
        count = next;
    }

    /** The law between two terminals. */
    private sealed interface Law {}

    private record Ohmic(double ohm) implements Law {}

    /** A source with one resistance while it gives and another while it takes. */
    private record Store(double emfV, double givingOhm, double takingOhm) implements Law {}

    /** Nothing up to a threshold, then a slope, up to a limit. */
    private record Valve(double thresholdV, double slopeOhm, double limitA) implements Law {}

    private record Filament(double ratedV, double ratedW, double coldFraction) implements Law {
        double conductanceS(double volts) {
            double v = Math.abs(volts) / ratedV;
            double hotS = ratedW / (ratedV * ratedV);
            double coldS = hotS / coldFraction;
            return v == 0 ? coldS : Math.min(coldS, hotS * Math.pow(v, LAMP_EXPONENT - 1));
        }
    }

    private record Power(double watts, double leastV) implements Law {
        double conductanceS(double volts) {
            double v = Math.max(Math.abs(volts), leastV);
            return watts / (v * v);
        }
    }

    private record Element(String owner, String from, String to, int a, int b, Law law) {}

    /** The figures of a step in a state. */
    public final class Figures {
        private final List<Element> elements;
        private final double[] volts;
        private final double[] amps;
        private final int[] island;

        private Figures(List<Element> elements, double[] volts, double[] amps, int[] island) {
            this.elements = elements;
            this.volts = volts;
            this.amps = amps;
            this.island = island;
        }

        /** Whether a terminal has a voltage to the chassis by the laws alone. */
        public boolean tied(String terminal) {
            return joined(terminal, CHASSIS);
        }

        /** Whether two terminals have a voltage against each other by the laws alone. */
        public boolean joined(String terminal, String other) {
            return island[node(terminal)] == island[node(other)];
        }

        public double voltageV(String terminal) {
            return volts[node(terminal)];
        }

        public double acrossV(Part part, String terminal, String other) {
            return voltageV(part.id() + "." + terminal) - voltageV(part.id() + "." + other);
        }

        /** Currents by owner and terminals, those of one owner between the same two added up. */
        public Map<String, Double> currentsA() {
            Map<String, Double> sum = new LinkedHashMap<>();
            for (int i = 0; i < elements.size(); i++) {
                Element e = elements.get(i);
                sum.merge(key(e.owner, e.from, e.to), sign(e.from, e.to) * amps[i], Double::sum);
            }
            return sum;
        }

        public double largestV() {
            return Arrays.stream(volts).map(Math::abs).max().orElse(0);
        }

        public double largestA() {
            return Arrays.stream(amps).map(Math::abs).max().orElse(0);
        }
    }

    /** How the branch between two terminals of an owner is called, whichever way it is drawn. */
    static String key(String owner, String from, String to) {
        return sign(from, to) > 0 ? owner + " " + from + ">" + to : owner + " " + to + ">" + from;
    }

    /** Whether {@link #key} keeps the direction. */
    static int sign(String from, String to) {
        return from.compareTo(to) <= 0 ? 1 : -1;
    }

    private int node(String terminal) {
        Integer node = nodes.get(terminal);
        if (node == null) {
            throw new IllegalArgumentException(terminal);
        }
        return node;
    }

    /** All figures of a step, with the parts that are active given. */
    public Figures solve(Step step, Set<String> active) {
        List<Element> elements = new ArrayList<>();
        addWiring(elements);
        for (Part part : plan.parts()) {
            addPart(elements, part, step, active.contains(part.id()));
        }
        return new Trial(elements).solve();
    }

    private void addWiring(List<Element> elements) {
        for (Wire wire : plan.wires()) {
            add(elements, wire.id(), wire.from().toString(), wire.to().toString(), new Ohmic(ohm(wire)));
        }
        for (Connector connector : plan.connectors()) {
            Part one = plan.findPart(connector.halves().get(0)).orElseThrow();
            Part other = plan.findPart(connector.halves().get(1)).orElseThrow();
            for (String way : one.terminals()) {
                if (other.terminals().contains(way)) {
                    add(
                            elements,
                            connector.id(),
                            one.id() + "." + way,
                            other.id() + "." + way,
                            new Ohmic(connector.contactResistanceOhm()));
                }
            }
        }
    }

    /** What the mean volts of a stabiliser drive through all that is no source, with the contacts of switches closed. */
    private double stabilisedA(Stabiliser stabiliser) {
        List<Element> elements = new ArrayList<>();
        addWiring(elements);
        for (Part part : plan.parts()) {
            if (part instanceof Switch chosen) {
                chosen.positions().forEach(position -> addContacts(elements, chosen, position.joins()));
            } else if (!(part instanceof Battery
                    || part instanceof Alternator
                    || part instanceof Dynamo
                    || part instanceof Stabiliser)) {
                addPart(elements, part, Step.RUN, false);
            }
        }
        double feedV = feedSign * orElse(stabiliser.outputV(), 10);
        String id = stabiliser.id();
        add(elements, id, id + ".E", id + ".I", new Store(feedV, 0.02, 0.02));
        return Math.abs(new Trial(elements).solve().currentsA().getOrDefault(key(id, id + ".E", id + ".I"), 0.0));
    }

    private double ohm(Wire wire) {
        Double given = wire.resistanceOhm();
        double jointsOhm = wire.fromJointResistanceOhm() + wire.toJointResistanceOhm();
        if (given != null) {
            return jointsOhm + given;
        }
        Double metres = wire.metres();
        String size = wire.size();
        if (metres == null || size == null) {
            throw new IllegalStateException(wire.id());
        }
        return jointsOhm + metres * ConductorSize.parse(size).wireOhmPerM(system.temperatureC(wire.place()));
    }

    private void add(List<Element> elements, String owner, String from, String to, Law law) {
        int a = node(from);
        int b = node(to);
        if (a != b) {
            elements.add(new Element(owner, from, to, a, b, law));
        }
    }

    private void addPart(List<Element> elements, Part part, Step step, boolean active) {
        String id = part.id() + ".";
        if (part instanceof Battery battery) {
            ResolvedSupply supply = battery.in(step.condition(), plan);
            add(
                    elements,
                    part.id(),
                    id + "minus",
                    id + "plus",
                    new Store(supply.emfV(), supply.internalResistanceOhm(), supply.chargeResistanceOhm()));
        } else if (part instanceof Alternator alternator) {
            addAlternator(elements, alternator, step.charging() && (alternator.selfExciting() || active));
        } else if (part instanceof Dynamo dynamo) {
            addDynamo(elements, dynamo, step.charging(), dynamo.selfExciting() || active);
        } else if (part instanceof ControlBox box) {
            add(elements, part.id(), id + "D", id + "E", new Ohmic(orElse(box.coilResistanceOhm(), 80)));
            add(elements, part.id(), id + "D", id + "F", new Ohmic(0.05));
            add(elements, part.id(), id + "A", id + "A1", new Ohmic(0.005));
            if (active) {
                add(elements, part.id(), id + "D", id + "A", new Ohmic(box.contactResistanceOhm()));
            }
        } else if (part instanceof Ammeter ammeter) {
            add(elements, part.id(), id + "a", id + "b", new Ohmic(ammeter.resistanceOhm()));
        } else if (part instanceof Stabiliser stabiliser) {
            add(elements, part.id(), id + "B", id + "E", new Ohmic(orElse(stabiliser.windingOhm(), 65)));
            boolean negative = feedSign > 0;
            double mostA = active ? 0.001 + 1.02 * stabilisedA(stabiliser) : Double.POSITIVE_INFINITY;
            add(
                    elements,
                    part.id(),
                    id + (negative ? "B" : "I"),
                    id + (negative ? "I" : "B"),
                    new Valve(0, 0.02, mostA));
            if (active) {
                Valve clamp = new Valve(orElse(stabiliser.outputV(), 10), 0.02, mostA);
                add(elements, part.id(), id + (negative ? "I" : "E"), id + (negative ? "E" : "I"), clamp);
            }
        } else if (part instanceof Flasher flasher) {
            addFlasher(elements, flasher, active);
        } else if (part instanceof LedLamp led) {
            double ratedV = led.ratedV(system);
            double leastV = led.minimumV(system);
            add(
                    elements,
                    part.id(),
                    id + led.plus(),
                    id + (led.plus().equals("a") ? "b" : "a"),
                    new Valve(
                            leastV,
                            (ratedV - leastV) / led.currentA(),
                            led.constantCurrent() ? led.currentA() : Double.POSITIVE_INFINITY));
        } else if (part instanceof Switch chosen) {
            addContacts(elements, chosen, chosen.in(step.condition()).joins());
        } else if (part instanceof Relay relay) {
            add(elements, part.id(), id + "86", id + "85", new Ohmic(relay.coilResistanceOhm()));
            add(elements, part.id(), id + "30", id + (active ? "87" : "87a"), new Ohmic(relay.contactResistanceOhm()));
        } else if (part instanceof Solenoid solenoid) {
            addSolenoid(elements, solenoid, active);
        } else if (part instanceof Motor motor) {
            add(elements, part.id(), id + "33", id + "32", new Ohmic(motorOhm(motor)));
        } else if (part instanceof Ballast ballast) {
            for (int i = 0; i < ballast.elementsOhm().size(); i++) {
                add(
                        elements,
                        part.id(),
                        id + ballast.terminals().get(i),
                        id + ballast.terminals().get(i + 1),
                        new Ohmic(ballast.elementsOhm().get(i)));
            }
        } else if (part instanceof FixedResistor resistor) {
            add(elements, part.id(), id + "a", id + "b", new Ohmic(resistor.resistanceOhm()));
        } else if (part instanceof Coil coil) {
            add(elements, part.id(), id + "15", id + "1", new Ohmic(coil.primaryResistanceOhm()));
        } else if (part instanceof ContactBreaker breaker) {
            if (step.engineTurning() || breaker.closedWhenStopped()) {
                add(elements, part.id(), id + "1", id + "31", new Ohmic(breaker.contactResistanceOhm()));
            }
        } else if (part instanceof IgnitionModule module) {
            addModule(elements, module, step, active);
        } else if (part instanceof FilamentLamp lamp) {
            add(
                    elements,
                    part.id(),
                    id + "a",
                    id + "b",
                    new Filament(lamp.ratedV(), lamp.ratedW(), lamp.coldFraction()));
        } else if (part instanceof Load load) {
            addLoad(elements, load, active);
        } else if (part instanceof Diode diode) {
            add(
                    elements,
                    part.id(),
                    id + "anode",
                    id + "cathode",
                    new Valve(diode.forwardV(), diode.slopeOhm(), Double.POSITIVE_INFINITY));
        } else if (part instanceof Fuse fuse) {
            add(elements, part.id(), id + "a", id + "b", new Ohmic(fuse.resistanceOhm()));
        } else if (part instanceof FusibleLink link) {
            double perM = ConductorSize.parse(link.size()).wireOhmPerM(system.temperatureC(Place.ENGINE_BAY));
            add(elements, part.id(), id + "a", id + "b", new Ohmic(link.lengthM() * perM));
        } else if (part instanceof Joint joint) {
            if (joint.resistanceOhm() > 0) {
                joint.terminals()
                        .forEach(t -> add(elements, part.id(), id + t, part.id(), new Ohmic(joint.resistanceOhm())));
            }
        } else if (part instanceof EarthPoint earth) {
            if (earth.resistanceOhm() > 0) {
                add(elements, part.id(), id + "31", CHASSIS, new Ohmic(earth.resistanceOhm()));
            }
        } else if (!(part instanceof Capacitor || part instanceof ConnectorHalf)) {
            throw new IllegalStateException("the oracle does not know what a " + part.getClass() + " is");
        }
    }

    private void addContacts(List<Element> elements, Switch part, List<List<String>> joins) {
        String id = part.id() + ".";
        for (List<String> group : joins) {
            for (String other : group.subList(1, group.size())) {
                add(elements, part.id(), id + group.get(0), id + other, new Ohmic(part.contactResistanceOhm()));
            }
        }
    }

    private void addAlternator(List<Element> elements, Alternator alternator, boolean generating) {
        String id = alternator.id() + ".";
        String earthed = id + (feedSign > 0 ? "B-" : "B+");
        add(elements, alternator.id(), id + "D+", earthed, new Ohmic(alternator.fieldResistanceOhm(system)));
        Double leakageA = alternator.leakageA();
        if (leakageA != null) {
            add(elements, alternator.id(), id + "B+", id + "B-", new Ohmic(system.nominalVoltageV() / leakageA));
        }
        if (generating) {
            double regulatedV = alternator.regulatedV(system);
            double sagOhm = alternator.sourceResistanceOhm();
            double share = switch (alternator.rectifier()) {
                case SOUND -> 1;
                case DIODE_OPEN -> 0.67;
                case DIODE_SHORTED -> 0.33;
            };
            add(
                    elements,
                    alternator.id(),
                    id + "B-",
                    id + "B+",
                    new Valve(-regulatedV, sagOhm, share * alternator.limitA()));
            if (!alternator.exciterDiodes()) {
                return;
            }
            Valve exciter = new Valve(-regulatedV, sagOhm, alternator.exciterLimitA());
            if (feedSign > 0) {
                add(elements, alternator.id(), id + "B-", id + "D+", exciter);
            } else {
                add(elements, alternator.id(), id + "D+", id + "B+", exciter);
            }
        }
    }

    /** Volts from E to D, which follow the earth of the vehicle; at rest the armature alone. */
    private void addDynamo(List<Element> elements, Dynamo dynamo, boolean turning, boolean builtUp) {
        String minus = dynamo.id() + (feedSign > 0 ? ".E" : ".D");
        String plus = dynamo.id() + (feedSign > 0 ? ".D" : ".E");
        double fieldOhm = orElse(dynamo.fieldResistanceOhm(), 6.15);
        add(elements, dynamo.id(), dynamo.id() + ".F", dynamo.id() + ".E", new Ohmic(fieldOhm));
        if (!turning) {
            add(elements, dynamo.id(), minus, plus, new Ohmic(dynamo.armatureResistanceOhm()));
        } else if (builtUp) {
            double setV = dynamo.regulatedV(system);
            double sagOhm = dynamo.sourceResistanceOhm(system);
            add(
                    elements,
                    dynamo.id(),
                    minus,
                    plus,
                    new Valve(-setV * (1 + sagOhm / fieldOhm), sagOhm, dynamo.limitA() + setV / fieldOhm));
        } else {
            add(
                    elements,
                    dynamo.id(),
                    minus,
                    plus,
                    new Store(orElse(null, 1), dynamo.armatureResistanceOhm(), dynamo.armatureResistanceOhm()));
        }
    }

    /** Its contact is closed in the instant that is solved; the tell-tale's with it if the lamps take enough, or it is electronic. */
    private void addFlasher(List<Element> elements, Flasher flasher, boolean works) {
        String id = flasher.id() + ".";
        if (flasher.isElectronic()) {
            add(elements, flasher.id(), id + "49", id + "31", new Ohmic(system.nominalVoltageV() / 0.01));
        }
        if (works || !flasher.isElectronic()) {
            add(elements, flasher.id(), id + "49", id + "49a", new Ohmic(flasherOhm(flasher)));
        }
        if (works) {
            add(elements, flasher.id(), id + "49", id + "C", new Ohmic(flasherOhm(flasher)));
        }
    }

    private static double motorOhm(Motor motor) {
        Double windingOhm = motor.windingOhm();
        return !motor.stalled() ? motor.resistanceOhm() : windingOhm == null ? motor.resistanceOhm() / 4 : windingOhm;
    }

    private double flasherOhm(Flasher flasher) {
        return flasher.isElectronic() ? 0.01 : orElse(null, 0.1);
    }

    private void addSolenoid(List<Element> elements, Solenoid solenoid, boolean in) {
        String id = solenoid.id() + ".";
        add(elements, solenoid.id(), id + "50", id + "31", new Ohmic(solenoid.holdInResistanceOhm()));
        Double pullInOhm = solenoid.pullInResistanceOhm();
        if (pullInOhm != null) {
            add(elements, solenoid.id(), id + "50", id + "45", new Ohmic(pullInOhm));
        }
        if (in) {
            add(elements, solenoid.id(), id + "30", id + "45", new Ohmic(solenoid.contactResistanceOhm()));
            add(elements, solenoid.id(), id + "30", id + "15a", new Ohmic(solenoid.contactResistanceOhm()));
        }
    }

    /** A module is made for the vehicle's earth: its switched side lets the feed's current through to 31. */
    private void addModule(List<Element> elements, IgnitionModule module, Step step, boolean works) {
        String id = module.id() + ".";
        add(elements, module.id(), id + "15", id + "31", new Ohmic(system.nominalVoltageV() / module.supplyA()));
        if (works && (step.engineTurning() || module.conductsWhenStopped())) {
            Double limitA = module.limitA();
            Valve valve = new Valve(
                    module.saturationV(), MODULE_SLOPE_OHM, limitA == null ? Double.POSITIVE_INFINITY : limitA);
            add(elements, module.id(), id + (feedSign > 0 ? "1" : "31"), id + (feedSign > 0 ? "31" : "1"), valve);
        }
    }

    private void addLoad(List<Element> elements, Load load, boolean on) {
        String a = load.id() + ".a";
        String b = load.id() + ".b";
        double leastV = load.minimumV(system);
        Double ohm = load.resistanceOhm();
        Double amps = load.currentA();
        Double watts = load.powerW();
        boolean works = on || !limited(load);
        if (ohm != null) {
            add(elements, load.id(), a, b, new Ohmic(works ? ohm : ohm / IDLE_SHARE));
        } else if (watts != null) {
            add(
                    elements,
                    load.id(),
                    a,
                    b,
                    works ? new Power(watts, leastV) : new Ohmic(leastV * leastV / watts / IDLE_SHARE));
        } else if (amps != null) {
            if (works) {
                if (!"b".equals(load.plus())) {
                    add(elements, load.id(), a, b, new Valve(leastV, STEEP_OHM, amps));
                }
                if (!"a".equals(load.plus())) {
                    add(elements, load.id(), b, a, new Valve(leastV, STEEP_OHM, amps));
                }
            }
            if (leastV > 0) {
                add(elements, load.id(), a, b, new Ohmic(leastV / amps / IDLE_SHARE));
            }
        }
    }

    /** Whether a load is off at some voltages by its limits. One of constant current grows out of nothing at its least. */
    private boolean limited(Load load) {
        return load.maximumV() != null || (load.currentA() == null && load.minimumV(system) > 0);
    }

    // What parts want.

    /** The parts that have states. */
    public List<Part> stateful() {
        return plan.parts().stream()
                .filter(p -> isSwitching(p)
                        || p instanceof IgnitionModule
                        || (p instanceof Alternator machine && !machine.selfExciting())
                        || (p instanceof Dynamo machine && !machine.selfExciting())
                        || p instanceof ControlBox
                        || p instanceof Stabiliser
                        || p instanceof Flasher
                        || (p instanceof Load load && limited(load)))
                .toList();
    }

    private static boolean isSwitching(Part part) {
        return part instanceof Relay || part instanceof Solenoid;
    }

    /** How far a part is from changing its state, as a share of its limit: positive if it is content. */
    public double contentment(Part part, Figures figures, boolean active) {
        if (part instanceof Relay relay) {
            return hysteresis(
                    Math.abs(figures.acrossV(relay, "86", "85")),
                    orElse(relay.pullInV(), 8),
                    orElse(relay.dropOutV(), 1.5),
                    active);
        } else if (part instanceof Solenoid solenoid) {
            return hysteresis(
                    pull(solenoid, figures, active),
                    orElse(solenoid.operateV(), 8),
                    orElse(solenoid.releaseV(), 3),
                    active);
        } else if (part instanceof IgnitionModule module) {
            double volts = Math.abs(figures.acrossV(module, "15", "31"));
            double leastV = module.minimumSupplyV(system);
            return hysteresis(volts, leastV, leastV, active);
        } else if (part instanceof Alternator alternator) {
            String earthed = feedSign > 0 ? "B-" : "B+";
            double fieldA =
                    Math.abs(figures.acrossV(alternator, "D+", earthed)) / alternator.fieldResistanceOhm(system);
            return hysteresis(fieldA, EXCITED_A, EXCITED_A, active);
        } else if (part instanceof Dynamo dynamo) {
            double builtUpV = orElse(null, 0.5);
            return hysteresis(Math.abs(figures.acrossV(dynamo, "F", "E")), builtUpV, builtUpV, active);
        } else if (part instanceof ControlBox box) {
            return hysteresis(
                    cutOutV(box, figures, active), orElse(box.cutInV(), 13), orElse(box.cutOutV(), 10.1), active);
        } else if (part instanceof Stabiliser stabiliser) {
            double outputV = orElse(stabiliser.outputV(), 10);
            return hysteresis(Math.abs(figures.acrossV(stabiliser, "B", "E")), outputV, outputV, active);
        } else if (part instanceof Flasher flasher && flasher.isElectronic()) {
            double leastV = orElse(null, 6);
            return hysteresis(Math.abs(figures.acrossV(flasher, "49", "31")), leastV, leastV, active);
        } else if (part instanceof Flasher flasher) {
            double leastA = 0.7 * orElse47(flasher) / system.nominalVoltageV();
            double lampsA = Math.abs(figures.acrossV(flasher, "49", "49a")) / flasherOhm(flasher);
            return hysteresis(lampsA, leastA, leastA, active);
        } else if (part instanceof Load load) {
            double volts = figures.acrossV(load, "a", "b");
            volts = load.plus() == null
                    ? Math.abs(volts)
                    : Math.max(0, load.plus().equals("a") ? volts : -volts);
            double leastV = load.currentA() == null ? load.minimumV(system) : 0;
            double above = leastV == 0 ? Double.POSITIVE_INFINITY : volts / leastV - 1;
            Double mostV = load.maximumV();
            double below = mostV == null ? Double.POSITIVE_INFINITY : 1 - volts / mostV;
            double within = Math.min(above, below);
            return active ? within : -within;
        }
        throw new IllegalArgumentException(part.id());
    }

    private static double orElse47(Flasher flasher) {
        Double watts = flasher.ratedW();
        return watts == null ? 47 : watts;
    }

    /** A shunt coil, and a series turn that a reverse current turns against it: what is left at 12.6 V. */
    private double cutOutV(ControlBox box, Figures figures, boolean closed) {
        double coilV = feedSign * figures.acrossV(box, "D", "E");
        double batteryA = closed ? feedSign * figures.acrossV(box, "D", "A") / box.contactResistanceOhm() : 0;
        double opensV = Math.min(orElse(box.cutOutV(), 10.1), orElse(box.cutInV(), 13));
        return coilV + batteryA * Math.max(0, orElse(null, 12.6) - opensV) / box.reverseCurrentA();
    }

    /** The terminals between which a part acts. */
    private List<String> sensed(Part part) {
        if (part instanceof Relay) {
            return List.of("86", "85");
        } else if (part instanceof Solenoid solenoid) {
            return solenoid.pullInResistanceOhm() == null ? List.of("50", "31") : List.of("50", "31", "45");
        } else if (part instanceof IgnitionModule) {
            return List.of("15", "31");
        } else if (part instanceof Dynamo) {
            return List.of("F", "E");
        } else if (part instanceof ControlBox) {
            return List.of("D", "E");
        } else if (part instanceof Stabiliser) {
            return List.of("B", "E");
        } else if (part instanceof Flasher flasher) {
            return List.of("49", flasher.isElectronic() ? "31" : "49a");
        } else if (part instanceof Alternator) {
            return List.of("D+", feedSign > 0 ? "B-" : "B+");
        }
        return List.of("a", "b");
    }

    private boolean senses(Part part, Figures figures) {
        List<String> terminals = sensed(part);
        return terminals.stream()
                .allMatch(t -> figures.joined(part.id() + "." + t, part.id() + "." + terminals.get(0)));
    }

    private double orElse(@Nullable Double own, double ofTwelve) {
        return own == null ? ofTwelve * system.nominalVoltageV() / 12 : own;
    }

    private static double hysteresis(double figure, double operates, double releases, boolean active) {
        return active ? figure / Math.min(releases, operates) - 1 : 1 - figure / operates;
    }

    /** Two windings of equal turns pull by the sum of their currents, told as the volts that would pull as hard. */
    private double pull(Solenoid solenoid, Figures figures, boolean in) {
        double holdA = figures.acrossV(solenoid, "50", "31") / solenoid.holdInResistanceOhm();
        Double pullInOhm = solenoid.pullInResistanceOhm();
        if (pullInOhm == null) {
            return Math.abs(holdA) * solenoid.holdInResistanceOhm();
        }
        double pullA = figures.acrossV(solenoid, "50", "45") / pullInOhm;
        double perVolt = 1 / solenoid.holdInResistanceOhm() + (in ? 0 : 1 / pullInOhm);
        return Math.abs(holdA + pullA) / perVolt;
    }

    /**
     * The states in which a step may come to rest.
     *
     * @param rests every one that is reached, whichever relay or solenoid is quicker
     * @param complete whether all ways were followed
     * @param raced whether relays or solenoids wanted to change together with each other or with what follows them
     * @param closest how close any part came to its limit, as a share of it: beside a millionth a verdict means little
     */
    public record Rests(Set<Set<String>> rests, boolean complete, boolean raced, double closest) {
        /** The only one. */
        public Set<String> only() {
            if (rests.size() != 1) {
                throw new AssertionError("not one state of rest: " + rests);
            }
            return rests.iterator().next();
        }
    }

    /** Follows every order in which relays and solenoids may change, with what follows them at once or later. */
    public Rests rests(Step step, Set<String> before, int mostStates) {
        Set<Set<String>> rests = new LinkedHashSet<>();
        Set<Set<String>> seen = new LinkedHashSet<>();
        Deque<Set<String>> open = new ArrayDeque<>();
        open.add(new TreeSet<>(before));
        boolean raced = false;
        double closest = Double.POSITIVE_INFINITY;
        while (!open.isEmpty() && seen.size() < mostStates) {
            Set<String> state = open.remove();
            if (!seen.add(state)) {
                continue;
            }
            Figures figures = solve(step, state);
            List<Part> restless = new ArrayList<>();
            for (Part part : stateful()) {
                if (!senses(part, figures)) {
                    closest = 0;
                }
                double content = contentment(part, figures, state.contains(part.id()));
                closest = Math.min(closest, Math.abs(content));
                if (content < 0) {
                    restless.add(part);
                }
            }
            if (restless.isEmpty()) {
                rests.add(state);
                continue;
            }
            List<Part> switching =
                    restless.stream().filter(DenseOracle::isSwitching).toList();
            raced |= !switching.isEmpty() && restless.size() > 1;
            open.add(changed(state, restless));
            if (!switching.isEmpty() && restless.size() > switching.size()) {
                open.add(changed(
                        state, restless.stream().filter(p -> !isSwitching(p)).toList()));
            }
            switching.forEach(part -> open.add(changed(state, List.of(part))));
        }
        return new Rests(rests, open.isEmpty(), raced, closest);
    }

    private static Set<String> changed(Set<String> state, List<Part> parts) {
        Set<String> next = new TreeSet<>(state);
        for (Part part : parts) {
            if (!next.remove(part.id())) {
                next.add(part.id());
            }
        }
        return next;
    }

    // The equations.

    private enum Mode {
        OFF,
        ON,
        LIMITED
    }

    /** One solution: chords of the nonlinear laws and states of the valves, tried until both hold. */
    private final class Trial {
        private static final int MOST_ROUNDS = 2000;
        private static final int ALL_AT_ONCE = 12;
        private static final int MOST_TANGENTS = 40;
        private static final double SETTLED = 1e-10;
        private static final double LITTLE_A = 1e-3;
        private static final double SMALL_V = 1e-9;
        private static final double SMALL_A = 1e-11;
        private static final double IN_EARNEST_A = 1e-9;
        private static final double ISLAND_OHM = 1e9;

        private final List<Element> elements;
        private final Mode[] modes;
        private final double[] chordS;
        private final double[] tangentS;
        private final double[] tangentA;
        private double[] x = new double[0];

        Trial(List<Element> elements) {
            this.elements = elements;
            this.modes = new Mode[elements.size()];
            this.chordS = new double[elements.size()];
            this.tangentS = new double[elements.size()];
            this.tangentA = new double[elements.size()];
            for (int i = 0; i < modes.length; i++) {
                Law law = elements.get(i).law();
                // A source starts as one that gives, a diode as one that blocks.
                modes[i] = law instanceof Store || (law instanceof Valve v && v.thresholdV() < 0) ? Mode.ON : Mode.OFF;
                if (law instanceof Filament lamp) {
                    setChord(i, lamp.conductanceS(lamp.ratedV()));
                } else if (law instanceof Power power) {
                    // From above: of two solutions that of the higher voltage is wanted.
                    setChord(i, IDLE_SHARE * power.conductanceS(0));
                }
            }
        }

        private void setChord(int i, double siemens) {
            chordS[i] = siemens;
            tangentS[i] = siemens;
            tangentA[i] = 0;
        }

        Figures solve() {
            double change = Double.POSITIVE_INFINITY;
            for (int round = 0; round < MOST_ROUNDS; round++) {
                settleValves();
                double before = change;
                change = 0;
                // At the bend where a lamp is cold tangents may go to and fro; chords do not.
                boolean near = before < 1e-3 && round < MOST_TANGENTS;
                for (int i = 0; i < elements.size(); i++) {
                    change = Math.max(change, relinearise(i, near));
                }
                if (change < SETTLED) {
                    settleValves();
                    return figures();
                }
            }
            throw new AssertionError("the oracle finds no solution");
        }

        /** Takes the law at the voltage found; returns by how much the current differs, as a share. */
        private double relinearise(int i, boolean near) {
            Element e = elements.get(i);
            double v = x[e.a] - x[e.b];
            double siemens;
            double slope;
            if (e.law instanceof Filament lamp) {
                siemens = lamp.conductanceS(v);
                boolean cold = siemens >= lamp.conductanceS(0);
                slope = cold ? siemens : LAMP_EXPONENT * siemens;
            } else if (e.law instanceof Power power) {
                siemens = power.conductanceS(v);
                slope = Math.abs(v) < power.leastV() ? siemens : -siemens;
            } else {
                return 0;
            }
            double scaleA = Math.max(Math.abs(siemens * v), LITTLE_A);
            double differs = Math.abs(siemens * v - x[count + i]) / scaleA;
            chordS[i] = siemens;
            tangentS[i] = near ? slope : siemens;
            tangentA[i] = (siemens - tangentS[i]) * v;
            return differs;
        }

        /** Tries states of the valves until none contradicts its own. */
        private void settleValves() {
            for (int round = 0; round < MOST_ROUNDS; round++) {
                x = solveLinear();
                boolean one = round > ALL_AT_ONCE;
                boolean changed = false;
                for (int i = 0; i < modes.length && !(one && changed); i++) {
                    Mode next = wanted(i);
                    changed |= next != modes[i];
                    modes[i] = next;
                }
                if (!changed) {
                    return;
                }
            }
            throw new AssertionError("the oracle finds no states of the diodes");
        }

        private Mode wanted(int i) {
            Law law = elements.get(i).law();
            if (law instanceof Store) {
                boolean giving = modes[i] == Mode.ON ? x[count + i] >= -SMALL_A : x[count + i] > SMALL_A;
                return giving ? Mode.ON : Mode.OFF;
            } else if (!(law instanceof Valve valve)) {
                return modes[i];
            } else {
                return wanted(i, valve);
            }
        }

        private Mode wanted(int i, Valve valve) {
            double v = x[elements.get(i).a] - x[elements.get(i).b];
            double a = x[count + i];
            double fullV = valve.thresholdV() + valve.slopeOhm() * valve.limitA();
            return switch (modes[i]) {
                case OFF -> v > valve.thresholdV() + SMALL_V ? Mode.ON : Mode.OFF;
                case ON -> a < -SMALL_A ? Mode.OFF : a > valve.limitA() + SMALL_A ? Mode.LIMITED : Mode.ON;
                case LIMITED -> v < fullV - SMALL_V ? Mode.ON : Mode.LIMITED;
            };
        }

        private double[] solveLinear() {
            int[] island = islands(false);
            int size = count + elements.size();
            Array2DRowRealMatrix matrix = new Array2DRowRealMatrix(size, size);
            double[] right = new double[size];
            matrix.setEntry(0, 0, 1);
            for (int n = 1; n < count; n++) {
                if (island[n] == n) {
                    matrix.addToEntry(n, n, 1 / ISLAND_OHM);
                }
            }
            for (int i = 0; i < elements.size(); i++) {
                Element e = elements.get(i);
                int row = count + i;
                if (e.a != 0) {
                    matrix.addToEntry(e.a, row, 1);
                }
                if (e.b != 0) {
                    matrix.addToEntry(e.b, row, -1);
                }
                double[] pqc = relation(i);
                // Of the size of the others, for the sake of the pivots.
                double scale = 1 / Math.max(Math.abs(pqc[0]), Math.abs(pqc[1]));
                matrix.addToEntry(row, e.a, scale * pqc[0]);
                matrix.addToEntry(row, e.b, -scale * pqc[0]);
                matrix.addToEntry(row, row, scale * pqc[1]);
                right[row] = scale * pqc[2];
            }
            var solver = new LUDecomposition(matrix, 1e-250).getSolver();
            RealVector b = new ArrayRealVector(right);
            RealVector found = solver.solve(b);
            // Once more for what the factors lost.
            return found.add(solver.solve(b.subtract(matrix.operate(found)))).toArray();
        }

        /** p v + q i = c. */
        private double[] relation(int i) {
            Law law = elements.get(i).law();
            if (law instanceof Ohmic ohmic) {
                return new double[] {1, -ohmic.ohm(), 0};
            } else if (law instanceof Store store) {
                double ohm = modes[i] == Mode.ON ? store.givingOhm() : store.takingOhm();
                return new double[] {1, -ohm, -store.emfV()};
            } else if (law instanceof Valve valve) {
                return switch (modes[i]) {
                    case OFF -> new double[] {0, 1, 0};
                    case ON -> new double[] {1, -valve.slopeOhm(), valve.thresholdV()};
                    case LIMITED -> new double[] {0, 1, valve.limitA()};
                };
            }
            return new double[] {tangentS[i], -1, -tangentA[i]};
        }

        /**
         * The first node of the island of each: what hangs together by anything but blocking or limiting valves.
         *
         * @param inEarnest whether a valve counts only if it carries something
         */
        private int[] islands(boolean inEarnest) {
            int[] first = new int[count];
            for (int n = 0; n < count; n++) {
                first[n] = n;
            }
            boolean changed = true;
            while (changed) {
                changed = false;
                for (int i = 0; i < elements.size(); i++) {
                    Element e = elements.get(i);
                    boolean joins = !(e.law instanceof Valve)
                            || (modes[i] == Mode.ON && (!inEarnest || Math.abs(x[count + i]) > IN_EARNEST_A));
                    if (joins && first[e.a] != first[e.b]) {
                        int least = Math.min(first[e.a], first[e.b]);
                        int most = Math.max(first[e.a], first[e.b]);
                        for (int n = 0; n < count; n++) {
                            first[n] = first[n] == most ? least : first[n];
                        }
                        changed = true;
                    }
                }
            }
            return first;
        }

        private Figures figures() {
            return new Figures(
                    elements,
                    Arrays.copyOf(x, count),
                    Arrays.copyOfRange(x, count, count + elements.size()),
                    islands(true));
        }
    }
}
