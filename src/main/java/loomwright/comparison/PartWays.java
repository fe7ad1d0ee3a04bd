package loomwright.comparison;

import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import loomwright.circuit.Alternator;
import loomwright.circuit.Ballast;
import loomwright.circuit.ConnectorHalf;
import loomwright.circuit.ControlBox;
import loomwright.circuit.Dynamo;
import loomwright.circuit.EarthPoint;
import loomwright.circuit.Flasher;
import loomwright.circuit.IgnitionModule;
import loomwright.circuit.Joint;
import loomwright.circuit.Part;
import loomwright.circuit.Relay;
import loomwright.circuit.Solenoid;
import loomwright.circuit.Switch;
import loomwright.circuit.VehicleSystem;

/** The ways through a part, whatever its state: pairs of terminals. */
final class PartWays {
    private PartWays() {}

    static List<List<String>> of(Part part, VehicleSystem system) {
        List<List<String>> ways = new ArrayList<>(work(part, system));
        if (part instanceof Relay) {
            ways.add(List.of(Relay.COIL_FEED, Relay.COIL_RETURN));
        } else if (part instanceof Solenoid solenoid) {
            ways.add(List.of(Solenoid.CONTROL, Solenoid.RETURN));
            if (solenoid.pullInResistanceOhm() != null) {
                ways.add(List.of(Solenoid.CONTROL, Solenoid.MOTOR));
            }
        }
        return ways;
    }

    /** The ways that a part is there for: of a relay or solenoid its contacts, not its coil. */
    static List<List<String>> work(Part part, VehicleSystem system) {
        if (part instanceof Relay) {
            return List.of(List.of(Relay.COMMON, Relay.MAKE), List.of(Relay.COMMON, Relay.BREAK));
        } else if (part instanceof Solenoid) {
            return List.of(List.of(Solenoid.SUPPLY, Solenoid.MOTOR), List.of(Solenoid.SUPPLY, Solenoid.BYPASS));
        } else if (part instanceof Switch chosen) {
            return contacts(chosen);
        } else if (part instanceof Ballast) {
            return chain(part.terminals());
        } else if (part instanceof IgnitionModule) {
            return List.of(
                    List.of(IgnitionModule.SUPPLY, IgnitionModule.RETURN),
                    List.of(IgnitionModule.SWITCHED, IgnitionModule.RETURN));
        } else if (part instanceof Alternator alternator) {
            return List.of(
                    List.of(Alternator.OUTPUT, Alternator.RETURN),
                    List.of(Alternator.WARNING_LAMP, alternator.earthedPole(system)));
        } else if (part instanceof Dynamo) {
            return List.of(List.of(Dynamo.ARMATURE, Dynamo.EARTH), List.of(Dynamo.FIELD, Dynamo.EARTH));
        } else if (part instanceof ControlBox) {
            return List.of(
                    List.of(ControlBox.ARMATURE, ControlBox.BATTERY),
                    List.of(ControlBox.BATTERY, ControlBox.LOADS),
                    List.of(ControlBox.ARMATURE, ControlBox.FIELD));
        } else if (part instanceof Flasher) {
            return List.of(List.of(Flasher.FEED, Flasher.OUTPUT), List.of(Flasher.FEED, Flasher.TELL_TALE));
        } else if (part instanceof Joint || part instanceof EarthPoint || part instanceof ConnectorHalf) {
            return List.of();
        }
        return chain(part.terminals());
    }

    private static List<List<String>> chain(List<String> terminals) {
        List<List<String>> ways = new ArrayList<>();
        for (int i = 1; i < terminals.size(); i++) {
            ways.add(List.of(terminals.get(i - 1), terminals.get(i)));
        }
        return ways;
    }

    private static List<List<String>> contacts(Switch chosen) {
        Set<List<String>> ways = new LinkedHashSet<>();
        for (Switch.Position position : chosen.positions()) {
            for (List<String> joined : position.joins()) {
                ways.addAll(chain(joined));
            }
        }
        return List.copyOf(ways);
    }
}
