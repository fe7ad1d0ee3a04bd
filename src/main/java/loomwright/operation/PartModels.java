package loomwright.operation;

import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import loomwright.circuit.Alternator;
import loomwright.circuit.Ammeter;
import loomwright.circuit.Ballast;
import loomwright.circuit.Battery;
import loomwright.circuit.Capacitor;
import loomwright.circuit.Coil;
import loomwright.circuit.ConnectorHalf;
import loomwright.circuit.ContactBreaker;
import loomwright.circuit.ControlBox;
import loomwright.circuit.Diode;
import loomwright.circuit.Dynamo;
import loomwright.circuit.EarthPoint;
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
import loomwright.circuit.Relay;
import loomwright.circuit.ResolvedSupply;
import loomwright.circuit.Solenoid;
import loomwright.circuit.Stabiliser;
import loomwright.circuit.Switch;
import loomwright.circuit.VehicleSystem;
import loomwright.network.Lamp;
import loomwright.network.PowerLoad;
import loomwright.network.SensedSource;
import loomwright.network.TwoSlopeSource;

/** What each kind of part is electrically. The one place to look when a kind is added. */
final class PartModels {
    /** A constant-current load goes from nothing to its limit within some tens of millivolts. */
    private static final double STEEP_OHM = 0.01;

    /** A part as elements of the network, in the state that the network was asked for. */
    @FunctionalInterface
    private interface Model<P extends Part> {
        void connect(P part, StepNetwork network);
    }

    private static final Map<Class<? extends Part>, Model<? extends Part>> MODELS = new HashMap<>();
    private static final Set<Class<? extends Part>> LASTING = new HashSet<>();

    static {
        byStep(Battery.class, PartModels::battery);
        byStep(Alternator.class, PartModels::alternator);
        byStep(Dynamo.class, PartModels::dynamo);
        byStep(ControlBox.class, PartModels::controlBox);
        byStep(Switch.class, PartModels::switchContacts);
        byStep(Relay.class, PartModels::relay);
        byStep(Solenoid.class, PartModels::solenoid);
        byStep(Motor.class, PartModels::motor);
        lasting(Ballast.class, PartModels::ballast);
        lasting(FixedResistor.class, (p, n) -> n.resistor(p, "a", "b", p.resistanceOhm()));
        lasting(Coil.class, (p, n) -> n.resistor(p, Coil.FEED, Coil.SWITCHED, p.primaryResistanceOhm()));
        byStep(ContactBreaker.class, PartModels::breaker);
        byStep(IgnitionModule.class, PartModels::module);
        lasting(Capacitor.class, (p, n) -> {});
        lasting(FilamentLamp.class, PartModels::lamp);
        lasting(LedLamp.class, PartModels::led);
        byStep(Load.class, PartModels::load);
        lasting(Ammeter.class, (p, n) -> n.resistor(p, "a", "b", p.resistanceOhm()));
        byStep(Stabiliser.class, PartModels::stabiliser);
        byStep(Flasher.class, PartModels::flasher);
        lasting(Diode.class, PartModels::diode);
        lasting(Fuse.class, (p, n) -> n.resistor(p, "a", "b", p.resistanceOhm()));
        lasting(FusibleLink.class, (p, n) -> n.resistor(p, "a", "b", n.wiring().resistanceOhm(p)));
        lasting(Joint.class, PartModels::joint);
        lasting(EarthPoint.class, PartModels::earth);
        lasting(ConnectorHalf.class, (p, n) -> {});
    }

    private PartModels() {}

    /** A kind that is something else from step to step, or once it is active. */
    private static <P extends Part> void byStep(Class<P> kind, Model<P> model) {
        MODELS.put(kind, model);
    }

    /** A kind that is always the same. */
    private static <P extends Part> void lasting(Class<P> kind, Model<P> model) {
        MODELS.put(kind, model);
        LASTING.add(kind);
    }

    /** Whether a part is the same in all steps and states. */
    static boolean isLasting(Part part) {
        return LASTING.contains(part.getClass()) || (part instanceof Motor motor && !motor.generatesRunningDown());
    }

    /** Adds the elements of {@code part} to {@code network}. */
    static void connect(Part part, StepNetwork network) {
        Model<? extends Part> model = MODELS.get(part.getClass());
        if (model == null) {
            throw new IllegalStateException("no electrical model for " + part.getClass());
        }
        connect(model, part, network);
    }

    @SuppressWarnings("unchecked") // byStep and lasting pair each class with a model of that class
    private static <P extends Part> void connect(Model<P> model, Part part, StepNetwork network) {
        model.connect((P) part, network);
    }

    static Set<Class<? extends Part>> kinds() {
        return MODELS.keySet();
    }

    private static void battery(Battery battery, StepNetwork network) {
        ResolvedSupply store =
                battery.in(network.step().condition(), network.wiring().plan());
        if (store.internalResistanceOhm() == 0) {
            network.source(battery, Battery.MINUS, Battery.PLUS, store.emfV(), 0);
        } else {
            network.add(
                    battery,
                    Battery.MINUS,
                    Battery.PLUS,
                    (a, b) -> new TwoSlopeSource(
                            battery.id(),
                            a,
                            b,
                            store.emfV(),
                            store.internalResistanceOhm(),
                            store.chargeResistanceOhm()));
        }
    }

    /**
     * The output and the exciter diodes are regulated sources that let no current back in; the field winding is fed by
     * D+ whether the machine turns or not, which is what lights the warning lamp. With the positive pole earthed it is the
     * same with the other sign: what D+ has against the chassis follows the live pole.
     */
    private static void alternator(Alternator alternator, StepNetwork network) {
        String earthed = alternator.earthedPole(network.system());
        boolean negative = earthed.equals(Alternator.RETURN);
        network.resistor(alternator, Alternator.WARNING_LAMP, earthed, alternator.fieldResistanceOhm(network.system()));
        Double leakageA = alternator.leakageA();
        if (leakageA != null) {
            network.resistor(
                    alternator,
                    Alternator.OUTPUT,
                    Alternator.RETURN,
                    network.system().nominalVoltageV() / leakageA);
        }
        sense(alternator, network);
        if (!network.step().charging()
                || !OutputOverSpeed.charges(alternator)
                || !(alternator.selfExciting() || network.isActive(alternator))) {
            return;
        }
        regulated(alternator, network, Alternator.RETURN, Alternator.OUTPUT, OutputOverSpeed.limitA(alternator));
        if (alternator.exciter().exciterDiodes()) {
            regulated(
                    alternator,
                    network,
                    negative ? Alternator.RETURN : Alternator.WARNING_LAMP,
                    negative ? Alternator.WARNING_LAMP : Alternator.OUTPUT,
                    alternator.exciter().exciterLimitA());
        }
    }

    /** What its regulator holds: the volts at its own end, or those at the sense terminal. */
    private static void regulated(
            Alternator alternator, StepNetwork network, String minus, String plus, double limitA) {
        VehicleSystem system = network.system();
        double regulatedV = alternator.regulatedV(system);
        double sourceOhm = alternator.sourceResistanceOhm();
        if (alternator.senseLost() == null) {
            network.oneWay(alternator, minus, plus, -regulatedV, sourceOhm, limitA);
            return;
        }
        int live = network.node(alternator, alternator.livePole(system));
        int sense = network.node(alternator, Alternator.SENSE);
        boolean negative = system.earthPolarity().feedSign() > 0;
        network.add(
                alternator,
                minus,
                plus,
                (a, b) -> new SensedSource(
                        alternator.id(),
                        a,
                        b,
                        regulatedV,
                        sourceOhm,
                        limitA,
                        negative ? live : sense,
                        negative ? sense : live,
                        alternator.highestRaiseV(system)));
    }

    /** The regulator at the sense terminal takes a little at all times. */
    private static void sense(Alternator alternator, StepNetwork network) {
        if (alternator.senseLost() != null) {
            VehicleSystem system = network.system();
            network.resistor(alternator, Alternator.SENSE, alternator.earthedPole(system), Alternator.SENSE_OHM);
            if (alternator.senseLost() == Alternator.SenseLost.FALLS_BACK) {
                network.resistor(alternator, alternator.livePole(system), Alternator.SENSE, Alternator.FALL_BACK_OHM);
            }
        }
    }

    /**
     * A regulated source that lets no current back in, as the cut-out sees to; below its cut-in speed a source behind its armature;
     * before it has built up, the little that its magnetism gives; at rest its armature. What it earths is E, whichever pole that is.
     */
    private static void dynamo(Dynamo dynamo, StepNetwork network) {
        boolean negative = network.system().earthPolarity().feedSign() > 0;
        String minus = negative ? Dynamo.EARTH : Dynamo.ARMATURE;
        String plus = negative ? Dynamo.ARMATURE : Dynamo.EARTH;
        network.resistor(dynamo, Dynamo.FIELD, Dynamo.EARTH, dynamo.fieldResistanceOhm(network.system()));
        if (!network.step().charging()) {
            network.resistor(dynamo, Dynamo.ARMATURE, Dynamo.EARTH, dynamo.armatureResistanceOhm());
        } else if (!dynamo.selfExciting() && !network.isActive(dynamo)) {
            network.source(dynamo, minus, plus, Dynamo.residualV(network.system()), dynamo.armatureResistanceOhm());
        } else if (OutputOverSpeed.charges(dynamo)) {
            boolean fieldWired = network.wiring().plan().wiresAt(dynamo.terminal(Dynamo.FIELD)) > 0;
            network.oneWay(
                    dynamo,
                    minus,
                    plus,
                    -dynamo.emfV(network.system()),
                    dynamo.sourceResistanceOhm(network.system()),
                    dynamo.armatureLimitA(network.system(), OutputOverSpeed.limitA(dynamo), fieldWired));
        } else {
            network.source(dynamo, minus, plus, dynamo.slowEmfV(network.system()), dynamo.armatureResistanceOhm());
        }
    }

    private static void controlBox(ControlBox box, StepNetwork network) {
        network.resistor(box, ControlBox.ARMATURE, ControlBox.EARTH, box.coilResistanceOhm(network.system()));
        network.resistor(box, ControlBox.ARMATURE, ControlBox.FIELD, ControlBox.REGULATOR_OHM);
        network.resistor(box, ControlBox.BATTERY, ControlBox.LOADS, ControlBox.TURNS_OHM);
        if (network.isActive(box)) {
            network.resistor(box, ControlBox.ARMATURE, ControlBox.BATTERY, box.contactResistanceOhm());
        }
    }

    /**
     * In series with its gauges: as much current as they take at its mean volts, see {@link StabilisedLoad}, and the little that is
     * left over to its earth at these volts. Without an earth it is a closed contact.
     */
    private static void stabiliser(Stabiliser stabiliser, StepNetwork network) {
        boolean negative = network.system().earthPolarity().feedSign() > 0;
        network.resistor(stabiliser, Stabiliser.FEED, Stabiliser.EARTH, stabiliser.windingOhm(network.system()));
        double mostA = Double.POSITIVE_INFINITY;
        if (network.isActive(stabiliser)) {
            mostA = Stabiliser.SPARE_A
                    + (1 + Stabiliser.SPARE_SHARE) * network.wiring().stabilisedA(stabiliser);
            network.oneWay(
                    stabiliser,
                    negative ? Stabiliser.OUTPUT : Stabiliser.EARTH,
                    negative ? Stabiliser.EARTH : Stabiliser.OUTPUT,
                    stabiliser.outputV(network.system()),
                    Stabiliser.CONTACT_OHM,
                    mostA);
        }
        network.oneWay(
                stabiliser,
                negative ? Stabiliser.FEED : Stabiliser.OUTPUT,
                negative ? Stabiliser.OUTPUT : Stabiliser.FEED,
                0,
                Stabiliser.CONTACT_OHM,
                mostA);
    }

    /**
     * The instant in which its contact is closed, unless that is stuck open. The contact of the tell-tale of a thermal one closes with
     * enough current; an electronic one without a supply, or without lamps, does nothing but look for them.
     */
    private static void flasher(Flasher flasher, StepNetwork network) {
        double contactOhm = flasher.contactOhm(network.system());
        boolean works = network.isActive(flasher);
        if (flasher.electronic()) {
            network.resistor(flasher, Flasher.FEED, Flasher.EARTH, flasher.supplyOhm(network.system()));
        }
        boolean closed =
                flasher.stuck() == null ? works || !flasher.electronic() : flasher.stuck() == Flasher.Stuck.CLOSED;
        if (closed) {
            network.resistor(flasher, Flasher.FEED, Flasher.OUTPUT, contactOhm);
        } else if (flasher.stuck() == null) {
            network.resistor(flasher, Flasher.FEED, Flasher.OUTPUT, flasher.sensingOhm(network.system()));
        }
        if (closed && works) {
            network.resistor(flasher, Flasher.FEED, Flasher.TELL_TALE, contactOhm);
        }
    }

    private static void led(LedLamp led, StepNetwork network) {
        network.oneWay(
                led,
                led.plus(),
                led.minus(),
                led.minimumV(network.system()),
                led.slopeOhm(network.system()),
                led.curve().constantCurrent() ? led.curve().currentA() : Double.POSITIVE_INFINITY);
    }

    private static void switchContacts(Switch part, StepNetwork network) {
        for (Switch.ClosedContact contact : part.closedIn(part.in(network.step().condition()))) {
            network.resistor(part, contact.from(), contact.to(), contact.ohm());
        }
    }

    private static void relay(Relay relay, StepNetwork network) {
        network.resistor(relay, Relay.COIL_FEED, Relay.COIL_RETURN, relay.coilResistanceOhm());
        String closed = network.isActive(relay) ? Relay.MAKE : Relay.BREAK;
        network.resistor(relay, Relay.COMMON, closed, relay.contactResistanceOhm());
    }

    private static void solenoid(Solenoid solenoid, StepNetwork network) {
        network.resistor(solenoid, Solenoid.CONTROL, Solenoid.RETURN, solenoid.holdInResistanceOhm());
        Double pullInOhm = solenoid.pullInResistanceOhm();
        if (pullInOhm != null) {
            network.resistor(solenoid, Solenoid.CONTROL, Solenoid.MOTOR, pullInOhm);
        }
        if (network.isActive(solenoid)) {
            network.resistor(solenoid, Solenoid.SUPPLY, Solenoid.MOTOR, solenoid.contactResistanceOhm());
            network.resistor(solenoid, Solenoid.SUPPLY, Solenoid.BYPASS, solenoid.contactResistanceOhm());
        }
    }

    /** One with magnets is a source behind its winding while it runs down after the key is turned off; its feed is taken to be at 33. */
    private static void motor(Motor motor, StepNetwork network) {
        if (motor.generatesRunningDown() && network.isActive(motor) && network.step() == Step.OFF_ENGINE_TURNING) {
            boolean negative = network.system().earthPolarity().feedSign() > 0;
            network.source(
                    motor,
                    negative ? Motor.RETURN : Motor.FEED,
                    negative ? Motor.FEED : Motor.RETURN,
                    motor.generatedV(network.system()),
                    motor.standingOhm());
        } else if (motor.seriesWound()) {
            double mostA = motor.seriesA(network.system());
            network.oneWay(motor, Motor.FEED, Motor.RETURN, 0, motor.standingOhm(), mostA);
            network.oneWay(motor, Motor.RETURN, Motor.FEED, 0, motor.standingOhm(), mostA);
        } else {
            network.resistor(motor, Motor.FEED, Motor.RETURN, motor.loadOhm());
        }
    }

    private static void ballast(Ballast ballast, StepNetwork network) {
        List<String> terminals = ballast.terminals();
        for (int i = 0; i < ballast.elementsOhm().size(); i++) {
            network.resistor(
                    ballast,
                    terminals.get(i),
                    terminals.get(i + 1),
                    ballast.elementsOhm().get(i));
        }
    }

    private static void breaker(ContactBreaker breaker, StepNetwork network) {
        if (network.step().engineTurning() || breaker.closedWhenStopped()) {
            network.resistor(breaker, ContactBreaker.SWITCHED, ContactBreaker.RETURN, breaker.contactResistanceOhm());
        }
    }

    private static void module(IgnitionModule module, StepNetwork network) {
        network.resistor(
                module,
                IgnitionModule.SUPPLY,
                IgnitionModule.RETURN,
                network.system().nominalVoltageV() / module.supplyA());
        boolean conducts = network.step().engineTurning() || module.conductsWhenStopped();
        if (conducts && network.isActive(module)) {
            Double limitA = module.limitA();
            // One for a vehicle of the other polarity is built the other way round.
            boolean forward = network.system().earthPolarity().feedSign() > 0;
            network.oneWay(
                    module,
                    forward ? IgnitionModule.SWITCHED : IgnitionModule.RETURN,
                    forward ? IgnitionModule.RETURN : IgnitionModule.SWITCHED,
                    module.saturationV(),
                    IgnitionModule.SLOPE_OHM,
                    limitA == null ? Double.POSITIVE_INFINITY : limitA);
        }
    }

    private static void lamp(FilamentLamp lamp, StepNetwork network) {
        network.add(
                lamp,
                lamp.feedTerminal(),
                lamp.returnTerminal(),
                (a, b) -> new Lamp(lamp.id(), a, b, lamp.ratedV(), lamp.ratedW(), lamp.coldFraction()));
    }

    /** Off, a load keeps an idle conductance, so that what stands in series with it has a voltage. */
    private static void load(Load load, StepNetwork network) {
        String from = load.feedTerminal();
        String to = load.returnTerminal();
        Double currentA = load.draw().currentA();
        Double resistanceOhm = load.draw().resistanceOhm();
        Double powerW = load.draw().powerW();
        double minimumV = load.minimumV(network.system());
        boolean off = load.switches(network.system()) && !network.isActive(load);
        double idleOhm = 1 / load.idleConductanceS(network.system());
        if (off) {
            network.resistor(load, from, to, idleOhm);
        } else if (currentA != null) {
            // Unless it is polarised, either way round: which end is fed depends on the earth polarity.
            if (!to.equals(load.plus())) {
                network.oneWay(load, from, to, minimumV, STEEP_OHM, currentA);
            }
            if (!from.equals(load.plus())) {
                network.oneWay(load, to, from, minimumV, STEEP_OHM, currentA);
            }
            if (minimumV > 0) {
                network.resistor(load, from, to, idleOhm);
            }
        } else if (resistanceOhm != null) {
            network.resistor(load, from, to, resistanceOhm);
        } else if (powerW != null) {
            network.add(load, from, to, (a, b) -> new PowerLoad(load.id(), a, b, powerW, minimumV));
        }
    }

    private static void diode(Diode diode, StepNetwork network) {
        network.oneWay(diode, Diode.ANODE, Diode.CATHODE, diode.forwardV(), diode.slopeOhm(), Double.POSITIVE_INFINITY);
    }

    private static void joint(Joint joint, StepNetwork network) {
        if (joint.resistanceOhm() > 0) {
            for (String terminal : joint.terminals()) {
                network.resistorToMiddle(joint, terminal, joint.resistanceOhm());
            }
        }
    }

    private static void earth(EarthPoint earth, StepNetwork network) {
        if (earth.resistanceOhm() > 0) {
            network.resistorToChassis(earth, EarthPoint.TERMINAL, earth.resistanceOhm());
        }
    }
}
