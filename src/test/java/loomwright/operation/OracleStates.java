package loomwright.operation;

import java.util.List;
import loomwright.circuit.Alternator;
import loomwright.circuit.ControlBox;
import loomwright.circuit.Dynamo;
import loomwright.circuit.EarthPolarity;
import loomwright.circuit.Flasher;
import loomwright.circuit.IgnitionModule;
import loomwright.circuit.Load;
import loomwright.circuit.Motor;
import loomwright.circuit.Part;
import loomwright.circuit.Plan;
import loomwright.circuit.Relay;
import loomwright.circuit.Solenoid;
import loomwright.circuit.Stabiliser;
import loomwright.circuit.VehicleSystem;

/** What the parts that have states want, by the figures of {@link DenseOracle}. */
final class OracleStates {
    /** Exciter current from which a machine generates, A (common practice, no source). */
    private static final double EXCITED_A = 0.1;

    private final Plan plan;
    private final VehicleSystem system;
    private final double feedSign;
    private final OracleParts parts;

    OracleStates(Plan plan, OracleParts parts) {
        this.plan = plan;
        this.system = plan.system();
        this.feedSign = system.earthPolarity() == EarthPolarity.NEGATIVE ? 1 : -1;
        this.parts = parts;
    }

    /** The parts that have states. */
    List<Part> stateful() {
        return plan.parts().stream()
                .filter(p -> isSwitching(p)
                        || p instanceof IgnitionModule
                        || (p instanceof Alternator machine && !machine.selfExciting())
                        || (p instanceof Dynamo machine && !machine.selfExciting())
                        || p instanceof ControlBox
                        || p instanceof Stabiliser
                        || p instanceof Flasher
                        || (p instanceof Load load && parts.limited(load)))
                .toList();
    }

    static boolean isSwitching(Part part) {
        return part instanceof Relay || part instanceof Solenoid || OracleParts.generates(part);
    }

    /** How far a part is from changing its state, as a share of its limit: positive if it is content. */
    double contentment(Part part, OracleFigures figures, boolean active) {
        if (part instanceof Relay relay) {
            return hysteresis(
                    Math.abs(figures.acrossV(relay, "86", "85")),
                    parts.orElse(relay.pullInV(), 8),
                    parts.orElse(relay.dropOutV(), 1.5),
                    active);
        } else if (part instanceof Solenoid solenoid) {
            return hysteresis(
                    pull(solenoid, figures, active),
                    parts.orElse(solenoid.operateV(), 8),
                    parts.orElse(solenoid.releaseV(), 3),
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
            double builtUpV = parts.orElse(null, 0.5);
            return hysteresis(Math.abs(figures.acrossV(dynamo, "F", "E")), builtUpV, builtUpV, active);
        } else if (part instanceof ControlBox box) {
            return hysteresis(
                    cutOutV(box, figures, active),
                    parts.orElse(box.cutInV(), 13),
                    parts.orElse(box.cutOutV(), 10.1),
                    active);
        } else if (part instanceof Stabiliser stabiliser) {
            double outputV = parts.orElse(stabiliser.outputV(), 10);
            return hysteresis(Math.abs(figures.acrossV(stabiliser, "B", "E")), outputV, outputV, active);
        } else if (part instanceof Flasher flasher && flasher.electronic()) {
            double supplied = Math.abs(figures.acrossV(flasher, "49", "31")) / parts.orElse(null, 6) - 1;
            double contactV = Math.abs(figures.acrossV(flasher, "49", "49a"));
            double loaded = contactV / (active ? 0.001 * parts.flasherOhm(flasher) : parts.orElse(null, 1.2)) - 1;
            return active ? Math.min(supplied, loaded) : -Math.min(supplied, loaded);
        } else if (part instanceof Flasher flasher) {
            double leastA = 0.7 * orElse47(flasher) / system.nominalVoltageV();
            double lampsA = Math.abs(figures.acrossV(flasher, "49", "49a")) / parts.flasherOhm(flasher);
            return hysteresis(lampsA, leastA, leastA, active);
        } else if (part instanceof Motor motor) {
            double across = Math.abs(figures.acrossV(motor, "33", "32"));
            return hysteresis(across, 0.4 * system.nominalVoltageV(), 0.1 * system.nominalVoltageV(), active);
        } else if (part instanceof Load load) {
            double volts = figures.acrossV(load, "a", "b");
            volts = load.plus() == null
                    ? Math.abs(volts)
                    : Math.max(0, load.plus().equals("a") ? volts : -volts);
            double leastV = load.draw().currentA() == null ? load.minimumV(system) : 0;
            double above = leastV == 0 ? Double.POSITIVE_INFINITY : volts / leastV - 1;
            Double mostV = load.draw().maximumV();
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
    private double cutOutV(ControlBox box, OracleFigures figures, boolean closed) {
        double coilV = feedSign * figures.acrossV(box, "D", "E");
        double batteryA = closed ? feedSign * figures.acrossV(box, "D", "A") / box.contactResistanceOhm() : 0;
        double opensV = Math.min(parts.orElse(box.cutOutV(), 10.1), parts.orElse(box.cutInV(), 13));
        return coilV + batteryA * Math.max(0, parts.orElse(null, 12.6) - opensV) / box.reverseCurrentA();
    }

    /** The terminals between which a part acts. */
    private List<String> sensed(Part part) {
        if (part instanceof Relay) {
            return List.of("86", "85");
        } else if (part instanceof Solenoid solenoid) {
            return solenoid.pullInResistanceOhm() == null ? List.of("50", "31") : List.of("50", "31", "45");
        } else if (part instanceof Motor) {
            return List.of("33", "32");
        } else if (part instanceof IgnitionModule) {
            return List.of("15", "31");
        } else if (part instanceof Dynamo) {
            return List.of("F", "E");
        } else if (part instanceof ControlBox) {
            return List.of("D", "E");
        } else if (part instanceof Stabiliser) {
            return List.of("B", "E");
        } else if (part instanceof Flasher flasher) {
            return List.of("49", flasher.electronic() ? "31" : "49a");
        } else if (part instanceof Alternator) {
            return List.of("D+", feedSign > 0 ? "B-" : "B+");
        }
        return List.of("a", "b");
    }

    boolean senses(Part part, OracleFigures figures) {
        List<String> terminals = sensed(part);
        return terminals.stream()
                .allMatch(t -> figures.joined(part.id() + "." + t, part.id() + "." + terminals.get(0)));
    }

    private static double hysteresis(double figure, double operates, double releases, boolean active) {
        return active ? figure / Math.min(releases, operates) - 1 : 1 - figure / operates;
    }

    /** Two windings of equal turns pull by the sum of their currents, told as the volts that would pull as hard. */
    private double pull(Solenoid solenoid, OracleFigures figures, boolean in) {
        double holdA = figures.acrossV(solenoid, "50", "31") / solenoid.holdInResistanceOhm();
        Double pullInOhm = solenoid.pullInResistanceOhm();
        if (pullInOhm == null) {
            return Math.abs(holdA) * solenoid.holdInResistanceOhm();
        }
        double pullA = figures.acrossV(solenoid, "50", "45") / pullInOhm;
        double perVolt = 1 / solenoid.holdInResistanceOhm() + (in ? 0 : 1 / pullInOhm);
        return Math.abs(holdA + pullA) / perVolt;
    }
}
