package loomwright.operation;

import loomwright.circuit.Ballast;
import loomwright.circuit.Battery;
import loomwright.circuit.Coil;
import loomwright.circuit.ControlBox;
import loomwright.circuit.Diode;
import loomwright.circuit.FixedResistor;
import loomwright.circuit.Fuse;
import loomwright.circuit.FusibleLink;
import loomwright.circuit.Generator;
import loomwright.circuit.IgnitionModule;
import loomwright.circuit.LedLamp;
import loomwright.circuit.LightingConsumer;
import loomwright.circuit.Load;
import loomwright.circuit.Motor;
import loomwright.circuit.Part;
import loomwright.circuit.Plan;
import loomwright.circuit.Relay;
import loomwright.circuit.Solenoid;
import loomwright.circuit.Stabiliser;
import loomwright.circuit.tolerance.Tolerances;
import loomwright.network.Element;
import loomwright.network.Resistor;
import loomwright.network.SensedSource;
import loomwright.network.UnidirectionalElement;
import org.jspecify.annotations.Nullable;

/** The usual tolerance of what a branch stands for, from {@link Tolerances}. */
final class BranchTolerance {
    private BranchTolerance() {}

    /** By which fraction the resistance of a branch, or what it takes at its voltage, may be off. */
    static double fraction(Branch branch, @Nullable Part part) {
        if (part == null) {
            return branch.owner() == Branch.Owner.WIRE ? Tolerances.WIRE : Tolerances.CONTACT;
        } else if (part instanceof Relay) {
            return between(branch, part, Relay.COIL_FEED, Relay.COIL_RETURN) ? Tolerances.WINDING : Tolerances.CONTACT;
        } else if (part instanceof Solenoid) {
            return between(branch, part, Solenoid.CONTROL, Solenoid.RETURN)
                            || between(branch, part, Solenoid.CONTROL, Solenoid.MOTOR)
                    ? Tolerances.WINDING
                    : Tolerances.CONTACT;
        } else if (part instanceof Coil || part instanceof Generator) {
            return Tolerances.WINDING;
        } else if (part instanceof Ballast || part instanceof FixedResistor) {
            return Tolerances.RESISTOR;
        } else if (part instanceof Motor) {
            return Tolerances.MOTOR;
        } else if (part instanceof ControlBox) {
            return between(branch, part, ControlBox.ARMATURE, ControlBox.EARTH)
                    ? Tolerances.WINDING
                    : Tolerances.CONTACT;
        } else if (part instanceof Stabiliser) {
            return between(branch, part, Stabiliser.FEED, Stabiliser.EARTH) ? Tolerances.WINDING : Tolerances.CONTACT;
        } else if (part instanceof LightingConsumer) {
            return Tolerances.LAMP_POWER;
        } else if (part instanceof Load) {
            return Tolerances.LOAD;
        } else if (part instanceof Fuse || part instanceof Battery) {
            return Tolerances.FUSE;
        } else if (part instanceof FusibleLink) {
            return Tolerances.WIRE;
        } else if (part instanceof Diode || part instanceof IgnitionModule) {
            return Tolerances.SEMICONDUCTOR;
        }
        return Tolerances.CONTACT;
    }

    private static boolean between(Branch branch, Part part, String one, String other) {
        String first = part.id() + "." + one;
        String second = part.id() + "." + other;
        return (branch.from().equals(first) && branch.to().equals(second))
                || (branch.from().equals(second) && branch.to().equals(first));
    }

    /**
     * By how much the current of a branch changes at the same voltage if its figures are off by their tolerance, A; 0 for
     * one that is exact.
     */
    static double changeA(
            Plan plan, Branch branch, @Nullable Part part, Element element, double currentA, double slopeS) {
        if (element instanceof UnidirectionalElement oneWay && !(part instanceof Load || part instanceof LedLamp)) {
            double volts = part instanceof Generator || part instanceof Stabiliser
                    ? Tolerances.REGULATOR * oneWay.thresholdV()
                    : Tolerances.SEMICONDUCTOR * oneWay.thresholdV();
            return slopeS > 0 ? -slopeS * volts : Tolerances.LIMIT * currentA;
        }
        if (element instanceof SensedSource source) {
            return slopeS > 0 ? slopeS * Tolerances.REGULATOR * source.regulatedV() : Tolerances.LIMIT * currentA;
        }
        double share = fraction(branch, part);
        return element instanceof Resistor ? -share * currentA : share * currentA;
    }
}
