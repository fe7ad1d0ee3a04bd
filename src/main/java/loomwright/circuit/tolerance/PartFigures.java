package loomwright.circuit.tolerance;

import static loomwright.circuit.tolerance.Spreads.ohm;
import static loomwright.circuit.tolerance.Spreads.within;

import java.util.ArrayList;
import java.util.List;
import java.util.function.BiFunction;
import loomwright.circuit.Alternator;
import loomwright.circuit.Ballast;
import loomwright.circuit.Bounds;
import loomwright.circuit.Coil;
import loomwright.circuit.ContactBreaker;
import loomwright.circuit.Diode;
import loomwright.circuit.Dynamo;
import loomwright.circuit.EarthPoint;
import loomwright.circuit.FilamentLamp;
import loomwright.circuit.FixedResistor;
import loomwright.circuit.Fuse;
import loomwright.circuit.FusibleLink;
import loomwright.circuit.IgnitionModule;
import loomwright.circuit.Joint;
import loomwright.circuit.LedLamp;
import loomwright.circuit.Load;
import loomwright.circuit.Motor;
import loomwright.circuit.Part;
import loomwright.circuit.Relay;
import loomwright.circuit.Solenoid;
import loomwright.circuit.Switch;
import loomwright.circuit.VehicleSystem;

/**
 * The figures of a part that matter to a meter, each with how to make it a multiple of itself. Thresholds at which relays
 * and the like change over are not among them: where a reading depends on one, that is said.
 */
public final class PartFigures {
    private static final double MAX_JOINT_OHM = 1000;
    private static final double MAX_LINK_M = 5;
    private static final double MAX_SEMICONDUCTOR_V = 5;

    /** One figure; its tolerance is the usual one of its kind. */
    public record Figure(double usualFraction, boolean raisesOhms, BiFunction<Part, Double, Part> times) {}

    private PartFigures() {}

    /** Empty for parts of which a meter sees nothing, and for batteries, whose tolerance is that of the condition. */
    public static List<Figure> of(Part part, VehicleSystem system) {
        List<Figure> figures = new ArrayList<>(3);
        contacts(part, figures);
        windings(part, figures);
        loads(part, figures);
        electronics(part, system, figures);
        return figures;
    }

    private static <P extends Part> void add(
            List<Figure> figures, Class<P> kind, Part part, double fraction, BiFunction<P, Double, Part> times) {
        add(figures, kind, part, fraction, true, times);
    }

    private static <P extends Part> void add(
            List<Figure> figures,
            Class<P> kind,
            Part part,
            double fraction,
            boolean raisesOhms,
            BiFunction<P, Double, Part> times) {
        if (kind.isInstance(part)) {
            figures.add(new Figure(fraction, raisesOhms, (p, factor) -> times.apply(kind.cast(p), factor)));
        }
    }

    private static void contacts(Part part, List<Figure> to) {
        add(to, Switch.class, part, Tolerances.CONTACT, PartFigures::contact);
        add(
                to,
                ContactBreaker.class,
                part,
                Tolerances.CONTACT,
                (p, f) -> new ContactBreaker(
                        p.id(), p.label(), p.closedWhenStopped(), ohm(p.contactResistanceOhm() * f), p.ratingA()));
        add(
                to,
                Joint.class,
                part,
                Tolerances.CONTACT,
                (p, f) -> new Joint(p.id(), p.label(), p.terminals(), within(p.resistanceOhm() * f, 0, MAX_JOINT_OHM)));
        add(
                to,
                EarthPoint.class,
                part,
                Tolerances.CONTACT,
                (p, f) -> new EarthPoint(p.id(), p.label(), within(p.resistanceOhm() * f, 0, MAX_JOINT_OHM)));
        add(to, Fuse.class, part, Tolerances.FUSE, (p, f) -> p.withResistanceOhm(ohm(p.resistanceOhm() * f)));
        add(
                to,
                FusibleLink.class,
                part,
                Tolerances.WIRE,
                (p, f) -> new FusibleLink(
                        p.id(), p.label(), p.size(), within(p.lengthM() * f, Bounds.MIN_LENGTH_M, MAX_LINK_M)));
    }

    private static Part contact(Switch s, double factor) {
        return new Switch(
                s.id(),
                s.label(),
                s.terminals(),
                s.positions(),
                s.positionByCondition(),
                s.position(),
                ohm(s.contactResistanceOhm() * factor),
                s.ratingA(),
                s.momentary(),
                s.contactFaults());
    }

    private static void windings(Part part, List<Figure> to) {
        add(
                to,
                Coil.class,
                part,
                Tolerances.WINDING,
                (p, f) -> new Coil(
                        p.id(),
                        p.label(),
                        ohm(p.primaryResistanceOhm() * f),
                        p.inductanceMh(),
                        p.turnsRatio(),
                        p.use(),
                        p.operateV(),
                        p.releaseV(),
                        p.meantLive(),
                        p.meantLiveWhen()));
        add(to, Relay.class, part, Tolerances.WINDING, (p, f) -> relay(p, f, 1));
        add(to, Relay.class, part, Tolerances.CONTACT, (p, f) -> relay(p, 1, f));
        add(to, Solenoid.class, part, Tolerances.WINDING, (p, f) -> solenoid(p, f, 1, 1));
        if (part instanceof Solenoid s && s.pullInResistanceOhm() != null) {
            add(to, Solenoid.class, part, Tolerances.WINDING, (p, f) -> solenoid(p, 1, f, 1));
        }
        add(to, Solenoid.class, part, Tolerances.CONTACT, (p, f) -> solenoid(p, 1, 1, f));
        if (part instanceof Ballast ballast) {
            for (int i = 0; i < ballast.elementsOhm().size(); i++) {
                int at = i;
                add(to, Ballast.class, part, Tolerances.RESISTOR, (p, f) -> {
                    List<Double> elements = new ArrayList<>(p.elementsOhm());
                    elements.set(at, ohm(elements.get(at) * f));
                    return new Ballast(p.id(), p.label(), elements);
                });
            }
        }
    }

    private static Relay relay(Relay p, double coil, double contact) {
        return new Relay(
                p.id(),
                p.label(),
                ohm(p.coilResistanceOhm() * coil),
                p.pullInV(),
                p.dropOutV(),
                ohm(p.contactResistanceOhm() * contact),
                p.ratingA(),
                p.meantLive(),
                p.meantLiveWhen());
    }

    private static Solenoid solenoid(Solenoid p, double holdIn, double pullIn, double contact) {
        Double pullInOhm = p.pullInResistanceOhm();
        return new Solenoid(
                p.id(),
                p.label(),
                ohm(p.holdInResistanceOhm() * holdIn),
                pullInOhm == null ? null : (Double) ohm(pullInOhm * pullIn),
                p.operateV(),
                p.releaseV(),
                ohm(p.contactResistanceOhm() * contact),
                p.ratingA(),
                p.meantLive(),
                p.meantLiveWhen());
    }

    private static void loads(Part part, List<Figure> to) {
        add(
                to,
                FixedResistor.class,
                part,
                Tolerances.RESISTOR,
                (p, f) -> new FixedResistor(p.id(), p.label(), ohm(p.resistanceOhm() * f), p.ratingW()));
        add(to, Motor.class, part, Tolerances.MOTOR, (p, f) -> p.withResistanceOhm(ohm(p.resistanceOhm() * f)));
        add(to, FilamentLamp.class, part, Tolerances.LAMP_POWER, false, (p, f) -> lamp(p, f, 1));
        add(to, FilamentLamp.class, part, Tolerances.LAMP_COLD, (p, f) -> lamp(p, 1, f));
        if (part instanceof Load load) {
            add(to, Load.class, part, Tolerances.LOAD, load.draw().resistanceOhm() != null, LoadFigure::times);
        }
    }

    private static FilamentLamp lamp(FilamentLamp p, double power, double cold) {
        return new FilamentLamp(
                p.id(),
                p.label(),
                p.ratedV(),
                within(p.ratedW() * power, Bounds.MIN_POWER_W, Bounds.MAX_POWER_W),
                within(p.coldFraction() * cold, 0.01, 1),
                p.operateV(),
                p.releaseV(),
                p.meantLive(),
                p.meantLiveWhen());
    }

    private static void electronics(Part part, VehicleSystem system, List<Figure> to) {
        add(
                to,
                Diode.class,
                part,
                Tolerances.SEMICONDUCTOR,
                (p, f) -> new Diode(
                        p.id(),
                        p.label(),
                        within(p.forwardV() * f, 0, MAX_SEMICONDUCTOR_V),
                        p.slopeOhm(),
                        p.ratingA()));
        add(to, IgnitionModule.class, part, Tolerances.SEMICONDUCTOR, (p, f) -> module(p, f, 1, 1));
        add(to, IgnitionModule.class, part, Tolerances.SEMICONDUCTOR, (p, f) -> module(p, 1, f, 1));
        if (part instanceof IgnitionModule m && m.limitA() != null) {
            add(to, IgnitionModule.class, part, Tolerances.LIMIT, (p, f) -> module(p, 1, 1, f));
        }
        add(to, Dynamo.class, part, Tolerances.REGULATOR, (p, f) -> dynamo(p, system, f, 1, 1));
        add(to, Dynamo.class, part, Tolerances.LIMIT, (p, f) -> dynamo(p, system, 1, f, 1));
        add(to, Dynamo.class, part, Tolerances.WINDING, (p, f) -> dynamo(p, system, 1, 1, f));
        add(to, LedLamp.class, part, Tolerances.LAMP_POWER, false, (p, f) -> led(p, system, f));
        add(to, Alternator.class, part, Tolerances.REGULATOR, (p, f) -> alternator(p, system, f, 1, 1));
        add(to, Alternator.class, part, Tolerances.LIMIT, (p, f) -> alternator(p, system, 1, f, 1));
        add(to, Alternator.class, part, Tolerances.WINDING, (p, f) -> alternator(p, system, 1, 1, f));
    }

    private static double ampere(double value) {
        return within(value, Bounds.MIN_CURRENT_A, Bounds.MAX_CURRENT_A);
    }

    private static IgnitionModule module(IgnitionModule p, double volts, double own, double limit) {
        Double limitA = p.limitA();
        return new IgnitionModule(
                p.id(),
                p.label(),
                within(p.saturationV() * volts, 0, MAX_SEMICONDUCTOR_V),
                limitA == null ? null : (Double) ampere(limitA * limit),
                ampere(p.supplyA() * own),
                p.minimumSupplyV(),
                p.conductsWhenStopped());
    }

    private static Dynamo dynamo(Dynamo p, VehicleSystem system, double volts, double limit, double winding) {
        return new Dynamo(
                p.id(),
                p.label(),
                p.regulation(),
                within(p.regulatedV(system) * volts, 0.01, Bounds.MAX_VOLTAGE_V),
                ampere(p.limitA() * limit),
                p.sourceResistanceOhm(),
                ohm(p.armatureResistanceOhm() * winding),
                ohm(p.fieldResistanceOhm(system) * winding),
                p.speed(),
                p.selfExciting());
    }

    private static LedLamp led(LedLamp p, VehicleSystem system, double current) {
        return new LedLamp(
                p.id(),
                p.label(),
                new LedLamp.LedCurve(
                        p.ratedV(system),
                        ampere(p.curve().currentA() * current),
                        p.minimumV(system),
                        p.curve().constantCurrent()),
                p.plus(),
                p.operateV(),
                p.releaseV(),
                p.meantLive(),
                p.meantLiveWhen());
    }

    private static Alternator alternator(Alternator p, VehicleSystem system, double volts, double limit, double field) {
        return new Alternator(
                p.id(),
                p.label(),
                within(p.regulatedV(system) * volts, 0.01, Bounds.MAX_VOLTAGE_V),
                p.sourceResistanceOhm(),
                ampere(p.limitA() * limit),
                new Alternator.Exciter(
                        ohm(p.fieldResistanceOhm(system) * field),
                        ampere(p.exciter().exciterLimitA() * limit),
                        p.exciter().exciterDiodes(),
                        p.exciter().selfExciting()),
                p.rectifier(),
                p.leakageA(),
                p.senseLost(),
                p.speedRpm());
    }

    /** The one figure by which a load is given. */
    private static final class LoadFigure {
        private LoadFigure() {}

        static Part times(Load p, double factor) {
            Double ohms = p.draw().resistanceOhm();
            Double amperes = p.draw().currentA();
            Double watts = p.draw().powerW();
            return new Load(
                    p.id(),
                    p.label(),
                    new Load.LoadDraw(
                            ohms == null ? null : (Double) ohm(ohms * factor),
                            amperes == null ? null : (Double) ampere(amperes * factor),
                            watts == null
                                    ? null
                                    : (Double) within(watts * factor, Bounds.MIN_POWER_W, Bounds.MAX_POWER_W),
                            p.draw().minimumV(),
                            p.draw().maximumV()),
                    p.switchOnOhm(),
                    p.plus(),
                    p.operateV(),
                    p.releaseV(),
                    p.meantLive(),
                    p.meantLiveWhen());
        }
    }
}
