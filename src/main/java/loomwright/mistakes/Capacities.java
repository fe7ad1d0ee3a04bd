package loomwright.mistakes;

import java.util.LinkedHashMap;
import java.util.Map;
import java.util.OptionalDouble;
import loomwright.circuit.ContactBreaker;
import loomwright.circuit.Diode;
import loomwright.circuit.Part;
import loomwright.circuit.Plan;
import loomwright.circuit.Relay;
import loomwright.circuit.Solenoid;
import loomwright.circuit.Switch;
import loomwright.circuit.VehicleSystem;
import loomwright.circuit.Wire;
import loomwright.conductor.ConductorSize;
import loomwright.judgement.wire.WireAmpacity;
import loomwright.judgement.wire.WireConditions;
import loomwright.operation.Branch;
import org.jspecify.annotations.Nullable;

/** What the wires and parts of a plan may carry. */
final class Capacities {
    private final Map<String, Double> wireA = new LinkedHashMap<>();
    private final Map<String, Part> parts;

    Capacities(Plan plan) {
        this.parts = plan.partsById();
        for (Wire wire : plan.wires()) {
            ampacityA(wire, plan.system()).ifPresent(a -> wireA.put(wire.id(), a));
        }
    }

    /** Amperes that a branch may carry; empty where nothing is known. */
    OptionalDouble currentA(Branch branch) {
        Double ampacityA = branch.owner() == Branch.Owner.WIRE ? wireA.get(branch.id()) : null;
        if (ampacityA != null) {
            return OptionalDouble.of(ampacityA);
        }
        Part part = branch.owner() == Branch.Owner.PART ? parts.get(branch.id()) : null;
        Double ratingA = part == null ? null : ratingA(part, branch);
        return ratingA == null ? OptionalDouble.empty() : OptionalDouble.of(ratingA);
    }

    private static @Nullable Double ratingA(Part part, Branch branch) {
        boolean contact =
                branch.from().endsWith("." + Relay.COMMON) || branch.to().endsWith("." + Relay.COMMON);
        if (part instanceof Relay relay) {
            return contact ? relay.ratingA() : null;
        } else if (part instanceof Solenoid solenoid) {
            return contact ? solenoid.ratingA() : null;
        } else if (part instanceof Switch chosen) {
            return chosen.ratingA();
        } else if (part instanceof Diode diode) {
            return diode.ratingA();
        }
        return part instanceof ContactBreaker breaker ? breaker.ratingA() : null;
    }

    private static OptionalDouble ampacityA(Wire wire, VehicleSystem system) {
        String size = wire.conductor().size();
        Double insulation = wire.laid().insulationTemperatureC();
        Integer bundle = wire.laid().bundleCount();
        WireConditions conditions = new WireConditions(
                insulation == null ? WireConditions.USUAL_INSULATION_C : insulation,
                system.temperatureC(wire.laid().place()),
                bundle == null ? 1 : bundle);
        return size == null || conditions.tooHot()
                ? OptionalDouble.empty()
                : OptionalDouble.of(WireAmpacity.of(ConductorSize.parse(size).areaMm2(), conditions)
                        .allowedA());
    }
}
