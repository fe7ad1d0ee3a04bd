package loomwright.operation;

import java.util.List;
import loomwright.circuit.Alternator;
import loomwright.circuit.Battery;
import loomwright.circuit.Diode;
import loomwright.circuit.EarthPolarity;
import loomwright.circuit.LedLamp;
import loomwright.circuit.Load;
import loomwright.circuit.Part;
import loomwright.circuit.Plan;
import loomwright.circuit.TerminalRef;
import loomwright.circuit.VehicleSystem;
import loomwright.circuit.Wire;

/** The same vehicle with the other pole earthed: batteries, alternators, diodes, LED lamps and polarised loads turned round. */
public final class Mirror {
    private Mirror() {}

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
                plan.parts().stream().map(Mirror::turned).toList(),
                wires,
                plan.connectors(),
                plan.notes());
    }

    private static Part turned(Part part) {
        if (part instanceof Load load) {
            return new Load(
                    load.id(),
                    load.label(),
                    load.draw(),
                    load.switchOnOhm(),
                    load.minus(),
                    load.operateV(),
                    load.releaseV(),
                    load.meantLive(),
                    load.meantLiveWhen());
        }
        return part instanceof LedLamp led
                ? new LedLamp(
                        led.id(),
                        led.label(),
                        led.curve(),
                        led.minus(),
                        led.operateV(),
                        led.releaseV(),
                        led.meantLive(),
                        led.meantLiveWhen())
                : part;
    }

    private static TerminalRef turned(Plan plan, TerminalRef ref) {
        Part part = plan.findPart(ref.part()).orElseThrow();
        if (part instanceof Battery) {
            return other(ref, Battery.PLUS, Battery.MINUS);
        } else if (part instanceof Alternator) {
            return other(ref, Alternator.OUTPUT, Alternator.RETURN);
        }
        if (part instanceof Diode) {
            return other(ref, Diode.ANODE, Diode.CATHODE);
        }
        return ref;
    }

    private static TerminalRef other(TerminalRef ref, String one, String other) {
        if (ref.terminal().equals(one)) {
            return new TerminalRef(ref.part(), other);
        }
        return ref.terminal().equals(other) ? new TerminalRef(ref.part(), one) : ref;
    }
}
