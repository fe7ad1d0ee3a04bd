package loomwright.circuit.tolerance;

import java.util.ArrayList;
import java.util.List;
import loomwright.circuit.Battery;
import loomwright.circuit.Condition;
import loomwright.circuit.Conditions;
import loomwright.circuit.Connector;
import loomwright.circuit.Part;
import loomwright.circuit.Plan;
import loomwright.circuit.ResolvedSupply;
import loomwright.circuit.Supply;
import loomwright.circuit.Wire;

/** A plan in whose figures many small changes are made before it is a plan again. For one thread, short-lived. */
public final class PlanDraft {
    private final Plan original;
    private final List<Part> parts;
    private final List<Wire> wires;
    private final List<Connector> connectors;
    private double supplyShare;
    private double internalFactor = 1;

    PlanDraft(Plan original) {
        this.original = original;
        this.parts = new ArrayList<>(original.parts());
        this.wires = new ArrayList<>(original.wires());
        this.connectors = new ArrayList<>(original.connectors());
    }

    List<Part> parts() {
        return parts;
    }

    List<Wire> wires() {
        return wires;
    }

    List<Connector> connectors() {
        return connectors;
    }

    /** Moves the EMF of every condition by this share of its tolerance, -1 to 1. */
    void supplyShare(double share) {
        supplyShare = share;
    }

    void internalFactor(double factor) {
        internalFactor = factor;
    }

    Plan plan() {
        return new Plan(
                original.schema(),
                original.name(),
                original.system(),
                new Conditions(
                        supply(Condition.OFF),
                        supply(Condition.ACCESSORY),
                        supply(Condition.RUN),
                        supply(Condition.CRANK),
                        supply(Condition.RUNNING)),
                parts.stream().map(this::moved).toList(),
                wires,
                connectors,
                original.notes());
    }

    private Supply supply(Condition condition) {
        return moved(original.supply(condition));
    }

    private Supply moved(ResolvedSupply supply) {
        double emfV = supply.emfV() * (1 + supplyShare * supply.tolerancePercent() / 100);
        return new Supply(
                Spreads.within(emfV, 0.1, 100),
                Spreads.within(supply.internalResistanceOhm() * internalFactor, 0, 10),
                Spreads.within(supply.chargeResistanceOhm() * internalFactor, 0, 10),
                supply.tolerancePercent());
    }

    /** What a battery states itself varies like the rest of the supply. */
    private Part moved(Part part) {
        return part instanceof Battery battery ? battery.withOwn(moved(battery.in(Condition.OFF, original))) : part;
    }
}
