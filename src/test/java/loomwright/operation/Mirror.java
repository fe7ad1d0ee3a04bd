package loomwright.operation;

import java.util.List;
import loomwright.circuit.Alternator;
import loomwright.circuit.Battery;
import loomwright.circuit.EarthPolarity;
import loomwright.circuit.Part;
import loomwright.circuit.Plan;
import loomwright.circuit.TerminalRef;
import loomwright.circuit.VehicleSystem;
import loomwright.circuit.Wire;

/** The same vehicle with the other pole earthed: the battery turned round, its alternator left out. */
public final class Mirror {
    private Mirror() {}

    public static Plan withoutAlternator(Plan plan) {
        List<String> gone =
                plan.listParts(Alternator.class).stream().map(Part::id).toList();
        return plan.with(
                plan.parts().stream().filter(p -> !gone.contains(p.id())).toList(),
                plan.wires().stream()
                        .filter(w -> !gone.contains(w.from().part()) && !gone.contains(w.to().part()))
                        .toList());
    }

    public static Plan of(Plan plan) {
        VehicleSystem system = plan.system();
        List<Wire> wires = plan.wires().stream()
                .map(w -> w.withEnds(turned(plan, w.from()), turned(plan, w.to())))
                .toList();
        return new Plan(
                plan.schema(),
                plan.name(),
                new VehicleSystem(
                        system.nominalVoltageV(),
                        system.earthPolarity() == EarthPolarity.NEGATIVE
                                ? EarthPolarity.POSITIVE
                                : EarthPolarity.NEGATIVE,
                        system.ambientTemperatureC(),
                        system.engineBayTemperatureC()),
                plan.conditions(),
                plan.parts(),
                wires,
                plan.connectors(),
                plan.notes());
    }

    private static TerminalRef turned(Plan plan, TerminalRef ref) {
        if (plan.findPart(ref.part()).orElseThrow() instanceof Battery) {
            return new TerminalRef(ref.part(), ref.terminal().equals(Battery.PLUS) ? Battery.MINUS : Battery.PLUS);
        }
        return ref;
    }
}
