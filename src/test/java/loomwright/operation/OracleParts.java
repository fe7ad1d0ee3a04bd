package loomwright.operation;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Set;
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
import loomwright.operation.OracleElement.Filament;
import loomwright.operation.OracleElement.Law;
import loomwright.operation.OracleElement.Ohmic;
import loomwright.operation.OracleElement.Power;
import loomwright.operation.OracleElement.Store;
import loomwright.operation.OracleElement.Valve;
import org.jspecify.annotations.Nullable;

/** What each part, wire and connector is in the network of {@link DenseOracle}, kind by kind. */
final class OracleParts {
    private static final double STEEP_OHM = 0.01;
    private static final double MODULE_SLOPE_OHM = 0.01;

    private final Plan plan;
    private final VehicleSystem system;
    private final double feedSign;
    private final Map<String, Integer> nodes;
    private final int count;

    OracleParts(Plan plan, Map<String, Integer> nodes, int count) {
        this.plan = plan;
        this.system = plan.system();
        this.feedSign = system.earthPolarity() == EarthPolarity.NEGATIVE ? 1 : -1;
        this.nodes = nodes;
        this.count = count;
    }

    void addWiring(List<OracleElement> elements) {
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
        List<OracleElement> elements = new ArrayList<>();
        addWiring(elements);
        for (Part part : plan.parts()) {
            if (part instanceof Switch chosen) {
                chosen.positions().forEach(position -> addContacts(elements, chosen, position.joins()));
                addClosed(elements, chosen);
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
        return Math.abs(new OracleEquations(elements, nodes, count)
                .solve()
                .currentsA()
                .getOrDefault(OracleElement.key(id, id + ".E", id + ".I"), 0.0));
    }

    private double ohm(Wire wire) {
        Double given = wire.conductor().resistanceOhm();
        double jointsOhm =
                wire.joints().fromJointResistanceOhm() + wire.joints().toJointResistanceOhm();
        if (given != null) {
            return jointsOhm + given;
        }
        Double metres = wire.metres();
        String size = wire.conductor().size();
        if (metres == null || size == null) {
            throw new IllegalStateException(wire.id());
        }
        return jointsOhm
                + metres
                        * ConductorSize.parse(size)
                                .wireOhmPerM(system.temperatureC(wire.laid().place()));
    }

    private void add(List<OracleElement> elements, String owner, String from, String to, Law law) {
        int a = OracleElement.node(nodes, from);
        int b = OracleElement.node(nodes, to);
        if (a != b) {
            elements.add(new OracleElement(owner, from, to, a, b, law));
        }
    }

    void addPart(List<OracleElement> elements, Part part, Step step, boolean active) {
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
            addAlternator(
                    elements,
                    alternator,
                    step.charging() && speedShare(alternator) > 0 && (alternator.selfExciting() || active));
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
                            (ratedV - leastV) / led.curve().currentA(),
                            led.curve().constantCurrent() ? led.curve().currentA() : Double.POSITIVE_INFINITY));
        } else if (part instanceof Switch chosen) {
            addContacts(elements, chosen, chosen.in(step.condition()).joins());
            addClosed(elements, chosen);
        } else if (part instanceof Relay relay) {
            add(elements, part.id(), id + "86", id + "85", new Ohmic(relay.coilResistanceOhm()));
            add(elements, part.id(), id + "30", id + (active ? "87" : "87a"), new Ohmic(relay.contactResistanceOhm()));
        } else if (part instanceof Solenoid solenoid) {
            addSolenoid(elements, solenoid, active);
        } else if (part instanceof Motor motor) {
            addMotor(elements, motor, step == Step.OFF_ENGINE_TURNING && active);
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
                add(elements, part.id(), id + "31", OracleElement.CHASSIS, new Ohmic(earth.resistanceOhm()));
            }
        } else if (!(part instanceof Capacitor || part instanceof ConnectorHalf)) {
            throw new IllegalStateException("the oracle does not know what a " + part.getClass() + " is");
        }
    }

    /** Closed contacts, with what the plan says is wrong with them. */
    private void addContacts(List<OracleElement> elements, Switch part, List<List<String>> joins) {
        String id = part.id() + ".";
        for (List<String> group : joins) {
            for (String other : group.subList(1, group.size())) {
                double ohm = part.contactResistanceOhm();
                boolean closed = true;
                for (Switch.ContactFault fault : faults(part)) {
                    if (Set.copyOf(fault.between()).equals(Set.of(group.get(0), other))
                            && fault.state() != Switch.ContactState.BRIDGED) {
                        closed = fault.state() == Switch.ContactState.WORN;
                        ohm = closed ? stated(fault, part) : ohm;
                    }
                }
                if (closed) {
                    add(elements, part.id(), id + group.get(0), id + other, new Ohmic(ohm));
                }
            }
        }
    }

    /** What is joined in every position. */
    private void addClosed(List<OracleElement> elements, Switch part) {
        for (Switch.ContactFault fault : faults(part)) {
            if (fault.state() == Switch.ContactState.STUCK || fault.state() == Switch.ContactState.BRIDGED) {
                add(
                        elements,
                        part.id(),
                        part.id() + "." + fault.between().get(0),
                        part.id() + "." + fault.between().get(1),
                        new Ohmic(stated(fault, part)));
            }
        }
    }

    private static double stated(Switch.ContactFault fault, Switch part) {
        Double ohm = fault.resistanceOhm();
        return ohm == null ? part.contactResistanceOhm() : ohm;
    }

    private static List<Switch.ContactFault> faults(Switch part) {
        List<Switch.ContactFault> faults = part.contactFaults();
        return faults == null ? List.of() : faults;
    }

    private void addAlternator(List<OracleElement> elements, Alternator alternator, boolean generating) {
        String id = alternator.id() + ".";
        String earthed = id + (feedSign > 0 ? "B-" : "B+");
        add(elements, alternator.id(), id + "D+", earthed, new Ohmic(alternator.fieldResistanceOhm(system)));
        Double leakageA = alternator.leakageA();
        if (leakageA != null) {
            add(elements, alternator.id(), id + "B+", id + "B-", new Ohmic(system.nominalVoltageV() / leakageA));
        }
        boolean sensed = alternator.senseLost() != null;
        if (sensed) {
            add(elements, alternator.id(), id + "S", earthed, new Ohmic(10_000));
        }
        if (alternator.senseLost() == Alternator.SenseLost.FALLS_BACK) {
            add(elements, alternator.id(), id + (feedSign > 0 ? "B+" : "B-"), id + "S", new Ohmic(200));
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
                    held(
                            alternator,
                            new Valve(-regulatedV, sagOhm, share * alternator.limitA() * speedShare(alternator))));
            if (!alternator.exciter().exciterDiodes()) {
                return;
            }
            Law exciter = held(
                    alternator,
                    new Valve(-regulatedV, sagOhm, alternator.exciter().exciterLimitA()));
            if (feedSign > 0) {
                add(elements, alternator.id(), id + "B-", id + "D+", exciter);
            } else {
                add(elements, alternator.id(), id + "D+", id + "B+", exciter);
            }
        }
    }

    /** What has a sense terminal is raised by what is lost from its live pole to that, at most by 0.3 of what is set. */
    private Law held(Alternator alternator, Valve own) {
        if (alternator.senseLost() == null) {
            return own;
        }
        int sense = OracleElement.node(nodes, alternator.id() + ".S");
        int live = OracleElement.node(nodes, alternator.id() + (feedSign > 0 ? ".B+" : ".B-"));
        return new OracleElement.Sensed(
                own, feedSign > 0 ? live : sense, feedSign > 0 ? sense : live, -0.3 * own.thresholdV());
    }

    /** Volts from E to D, which follow the earth of the vehicle; at rest the armature alone. */
    private void addDynamo(List<OracleElement> elements, Dynamo dynamo, boolean turning, boolean builtUp) {
        String minus = dynamo.id() + (feedSign > 0 ? ".E" : ".D");
        String plus = dynamo.id() + (feedSign > 0 ? ".D" : ".E");
        double fieldOhm = orElse(dynamo.fieldResistanceOhm(), 6.15);
        add(elements, dynamo.id(), dynamo.id() + ".F", dynamo.id() + ".E", new Ohmic(fieldOhm));
        if (!turning) {
            add(elements, dynamo.id(), minus, plus, new Ohmic(dynamo.armatureResistanceOhm()));
        } else if (builtUp && speedShare(dynamo) == 0) {
            double armatureOhm = dynamo.armatureResistanceOhm();
            double slowV = orElse(null, 13) * speedRatio(dynamo) * (1 + armatureOhm / fieldOhm);
            add(elements, dynamo.id(), minus, plus, new Store(slowV, armatureOhm, armatureOhm));
        } else if (builtUp) {
            double openV = Math.min(dynamo.regulatedV(system), orElse(null, 13) * speedRatio(dynamo));
            double sagOhm = dynamo.sourceResistanceOhm(system);
            add(
                    elements,
                    dynamo.id(),
                    minus,
                    plus,
                    new Valve(
                            -openV * (1 + sagOhm / fieldOhm),
                            sagOhm,
                            dynamo.limitA() * speedShare(dynamo)
                                    + (plan.wiresAt(dynamo.terminal("F")) > 0 ? openV / fieldOhm : 0)));
        } else {
            add(
                    elements,
                    dynamo.id(),
                    minus,
                    plus,
                    new Store(orElse(null, 1), dynamo.armatureResistanceOhm(), dynamo.armatureResistanceOhm()));
        }
    }

    private static double speedRatio(Dynamo dynamo) {
        Double rpm = dynamo.speedRpm();
        return rpm == null ? Double.POSITIVE_INFINITY : rpm / dynamo.speed().cutInRpm();
    }

    /** What a dynamo gives of its rating: straight up from cut-in to full output; with a third brush a hump. */
    private static double speedShare(Dynamo dynamo) {
        Double rpm = dynamo.speedRpm();
        if (rpm == null) {
            return 1;
        }
        boolean thirdBrush = dynamo.regulation() == Dynamo.Regulation.THIRD_BRUSH;
        Double statedRpm = dynamo.speed().fullOutputRpm();
        double fullRpm =
                statedRpm == null ? (thirdBrush ? 3 : 1.6) * dynamo.speed().cutInRpm() : statedRpm;
        double u = (rpm - dynamo.speed().cutInRpm()) / (fullRpm - dynamo.speed().cutInRpm());
        if (u <= 0) {
            return 0;
        }
        return thirdBrush ? 4 * u / ((u + 1) * (u + 1)) : Math.min(1, u);
    }

    /** What an alternator gives of its rating at 1300, 2500 and 5000 rev/min. */
    private static double speedShare(Alternator alternator) {
        Double rpm = alternator.speedRpm();
        if (rpm == null || rpm >= 5000) {
            return 1;
        } else if (rpm <= 900) {
            return 0;
        } else if (rpm <= 1300) {
            return 0.33 * (rpm - 900) / 400;
        }
        return rpm <= 2500 ? 0.33 + 0.52 * (rpm - 1300) / 1200 : 0.85 + 0.15 * (rpm - 2500) / 2500;
    }

    /** Its contact is closed in the instant that is solved; the tell-tale's with it if the lamps take enough, or it is electronic. */
    private void addFlasher(List<OracleElement> elements, Flasher flasher, boolean works) {
        String id = flasher.id() + ".";
        if (flasher.electronic()) {
            add(elements, flasher.id(), id + "49", id + "31", new Ohmic(system.nominalVoltageV() / 0.01));
        }
        if (works || !flasher.electronic()) {
            add(elements, flasher.id(), id + "49", id + "49a", new Ohmic(flasherOhm(flasher)));
        } else {
            add(elements, flasher.id(), id + "49", id + "49a", new Ohmic(orElse(null, 1000)));
        }
        if (works) {
            add(elements, flasher.id(), id + "49", id + "C", new Ohmic(flasherOhm(flasher)));
        }
    }

    /** Held fast its winding; series-wound what its load asks for, less where the winding alone lets no more through; with magnets a source. */
    private void addMotor(List<OracleElement> elements, Motor motor, boolean runsDown) {
        String live = motor.id() + ".33";
        String back = motor.id() + ".32";
        double workingOhm = motor.resistanceOhm();
        double windingOhm = windingOhm(motor);
        if (motor.stalled()) {
            add(elements, motor.id(), live, back, new Ohmic(windingOhm));
        } else if (runsDown) {
            double generatedV = system.nominalVoltageV() * (workingOhm - windingOhm) / workingOhm;
            boolean negative = feedSign > 0;
            add(
                    elements,
                    motor.id(),
                    negative ? back : live,
                    negative ? live : back,
                    new Store(generatedV, windingOhm, windingOhm));
        } else if (motor.excitation() == Motor.Excitation.SERIES) {
            Valve either = new Valve(0, windingOhm, orElse(null, 10) / workingOhm);
            add(elements, motor.id(), live, back, either);
            add(elements, motor.id(), back, live, either);
        } else {
            add(elements, motor.id(), live, back, new Ohmic(workingOhm));
        }
    }

    /** Whether it is a source while it runs down, so that it matters whether it has turned. */
    static boolean generates(Part part) {
        return part instanceof Motor motor
                && motor.excitation() == Motor.Excitation.PERMANENT_MAGNET
                && !motor.stalled()
                && windingOhm(motor) < motor.resistanceOhm();
    }

    private static double windingOhm(Motor motor) {
        Double windingOhm = motor.windingOhm();
        return windingOhm == null ? motor.resistanceOhm() / 4 : windingOhm;
    }

    double flasherOhm(Flasher flasher) {
        return flasher.electronic() ? 0.01 : orElse(null, 0.1);
    }

    private void addSolenoid(List<OracleElement> elements, Solenoid solenoid, boolean in) {
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
    private void addModule(List<OracleElement> elements, IgnitionModule module, Step step, boolean works) {
        String id = module.id() + ".";
        add(elements, module.id(), id + "15", id + "31", new Ohmic(system.nominalVoltageV() / module.supplyA()));
        if (works && (step.engineTurning() || module.conductsWhenStopped())) {
            Double limitA = module.limitA();
            Valve valve = new Valve(
                    module.saturationV(), MODULE_SLOPE_OHM, limitA == null ? Double.POSITIVE_INFINITY : limitA);
            add(elements, module.id(), id + (feedSign > 0 ? "1" : "31"), id + (feedSign > 0 ? "31" : "1"), valve);
        }
    }

    private void addLoad(List<OracleElement> elements, Load load, boolean on) {
        String a = load.id() + ".a";
        String b = load.id() + ".b";
        double leastV = load.minimumV(system);
        Double ohm = load.draw().resistanceOhm();
        Double amps = load.draw().currentA();
        Double watts = load.draw().powerW();
        boolean works = on || !limited(load);
        if (ohm != null) {
            add(elements, load.id(), a, b, new Ohmic(works ? ohm : ohm / OracleElement.IDLE_SHARE));
        } else if (watts != null) {
            add(
                    elements,
                    load.id(),
                    a,
                    b,
                    works ? new Power(watts, leastV) : new Ohmic(leastV * leastV / watts / OracleElement.IDLE_SHARE));
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
                add(elements, load.id(), a, b, new Ohmic(leastV / amps / OracleElement.IDLE_SHARE));
            }
        }
    }

    /** Whether a load is off at some voltages by its limits. One of constant current grows out of nothing at its least. */
    boolean limited(Load load) {
        return load.draw().maximumV() != null || (load.draw().currentA() == null && load.minimumV(system) > 0);
    }

    double orElse(@Nullable Double own, double ofTwelve) {
        return own == null ? ofTwelve * system.nominalVoltageV() / 12 : own;
    }
}
