package loomwright.operation;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.OptionalDouble;
import java.util.stream.IntStream;
import loomwright.circuit.Ammeter;
import loomwright.circuit.Consumer;
import loomwright.circuit.ContactBreaker;
import loomwright.circuit.ControlBox;
import loomwright.circuit.Diode;
import loomwright.circuit.Electromagnet;
import loomwright.circuit.Flasher;
import loomwright.circuit.Generator;
import loomwright.circuit.IgnitionModule;
import loomwright.circuit.Load;
import loomwright.circuit.Motor;
import loomwright.circuit.Part;
import loomwright.circuit.Plan;
import loomwright.circuit.Stabiliser;
import loomwright.circuit.Switch;
import loomwright.circuit.Wire;
import loomwright.operation.PlanReadings.BranchReading;
import loomwright.operation.PlanReadings.ConnectorReading;
import loomwright.operation.PlanReadings.FlashReading;
import loomwright.operation.PlanReadings.NodeReading;
import loomwright.operation.PlanReadings.PartReading;
import loomwright.operation.PlanReadings.Residuals;
import loomwright.operation.PlanReadings.StepReadings;
import loomwright.operation.PlanReadings.SwitchOnReading;
import loomwright.operation.PlanReadings.Transients;
import loomwright.operation.PlanReadings.WireReading;
import org.jspecify.annotations.Nullable;

/** Reads the tables off solved steps. */
public final class Reader {
    /** A node is called live from this share of the nominal voltage: what makes a test lamp's filament visible. */
    private static final double LIVE_FRACTION = 0.05;
    /** What is left of a zero after the arithmetic, V or A. */
    private static final double NOTHING = 1e-12;
    /** A diode conducts from here: beside the hundreds of amperes of a starter rounding comes to some 1e-11 A. */
    private static final double CONDUCTING_A = 1e-9;
    /** An ammeter's needle stays at zero below this (common practice, no source). */
    private static final double LEAST_SHOWN_A = 0.1;

    private final SolvedStep solved;

    private Reader(SolvedStep solved) {
        this.solved = solved;
    }

    /**
     * Reads solved steps.
     *
     * @param solver solves flasher units once more with their contact open, and loads in the instant of switching on
     */
    public static PlanReadings read(Plan plan, List<SolvedStep> steps, PlanSolver solver) {
        Map<Step, List<FlashReading>> flashes = Flashing.read(plan, steps, solver);
        Map<Step, List<SwitchOnReading>> switchOns = SwitchOns.read(plan, steps, solver);
        return new PlanReadings(
                plan.name(),
                steps.stream()
                        .map(s -> new Reader(s)
                                .read(
                                        flashes.getOrDefault(s.step(), List.of()),
                                        switchOns.getOrDefault(s.step(), List.of())))
                        .toList());
    }

    private StepReadings read(List<FlashReading> flashes, List<SwitchOnReading> switchOns) {
        if (!solved.solved()) {
            return new StepReadings(
                    solved.step(),
                    solved.step().description(),
                    false,
                    List.of(),
                    List.of(),
                    List.of(),
                    List.of(),
                    new Transients(flashes, List.of()),
                    StepFindings.of(solved),
                    new Residuals(null, null));
        }
        return new StepReadings(
                solved.step(),
                solved.step().description(),
                !solved.oscillating(),
                nodes(),
                solved.plan().wires().stream().map(this::wire).toList(),
                solved.plan().parts().stream().map(this::part).toList(),
                connectors(),
                new Transients(flashes, switchOns),
                StepFindings.of(solved),
                new Residuals(solved.kirchhoffResidual(), solved.powerResidual()));
    }

    private List<NodeReading> nodes() {
        List<NodeReading> nodes = new ArrayList<>();
        for (int i = 0; i < solved.nodeNames().size(); i++) {
            OptionalDouble voltageV = solved.voltageV(i);
            nodes.add(new NodeReading(
                    solved.nodeNames().get(i),
                    solved.terminalsOf(i),
                    voltageV.isPresent() ? (Double) clean(voltageV.getAsDouble()) : null,
                    voltageV.isEmpty(),
                    isLive(i)));
        }
        return nodes;
    }

    private boolean isLive(int node) {
        double limitV = LIVE_FRACTION * solved.plan().system().nominalVoltageV();
        return Math.abs(solved.voltageV(node).orElse(0)) >= limitV;
    }

    private static double clean(double figure) {
        return Math.abs(figure) < NOTHING ? 0 : figure;
    }

    private WireReading wire(Wire wire) {
        Wiring.Run run = solved.run(wire);
        int from = run.from().node();
        int to = run.to().node();
        int branch = run.branch();
        return new WireReading(
                wire.id(),
                run.from().name(),
                run.to().name(),
                branch < 0 ? 0 : clean(solved.currentA(branch)),
                clean(solved.acrossV(from, to)),
                branch < 0 ? 0 : clean(solved.powerW(branch)),
                isLive(from) || isLive(to),
                branch >= 0 && solved.isAgainstFeed(branch));
    }

    private PartReading part(Part part) {
        int first = solved.firstBranchOf(part.id());
        int end = solved.endBranchOf(part.id());
        Consumer consumer = part instanceof Consumer c ? c : null;
        return new PartReading(
                part.id(),
                part.kind(),
                state(part, first, end),
                consumer == null ? null : (Double) clean(solved.acrossV(consumer)),
                part instanceof Motor motor ? speedShare(motor) : null,
                consumer == null ? null : solved.activity(consumer),
                consumer == null ? null : (Boolean) solved.isMeant(consumer),
                powerW(IntStream.range(first, end)),
                branches(IntStream.range(first, end)));
    }

    /** Of a motor that has the volts to turn. */
    private @Nullable Double speedShare(Motor motor) {
        return solved.activity(motor) == FeedStrength.OPERATES
                ? (Double) motor.speedShare(
                        Math.abs(solved.acrossV(motor)), solved.plan().system())
                : null;
    }

    private List<ConnectorReading> connectors() {
        Map<String, List<Integer>> contacts = new LinkedHashMap<>();
        solved.plan().connectors().forEach(c -> contacts.put(c.id(), new ArrayList<>()));
        for (int i = 0; i < solved.branches().size(); i++) {
            Branch branch = solved.branches().get(i);
            if (branch.owner() == Branch.Owner.CONNECTOR) {
                Objects.requireNonNull(contacts.get(branch.id())).add(i);
            }
        }
        List<ConnectorReading> connectors = new ArrayList<>();
        contacts.forEach((id, own) -> connectors.add(new ConnectorReading(
                id,
                powerW(own.stream().mapToInt(Integer::intValue)),
                branches(own.stream().mapToInt(Integer::intValue)))));
        return connectors;
    }

    private double powerW(IntStream branches) {
        return clean(branches.mapToDouble(solved::powerW).sum());
    }

    private List<BranchReading> branches(IntStream indices) {
        return indices.mapToObj(i -> {
                    Branch branch = solved.branches().get(i);
                    return new BranchReading(
                            branch.from(),
                            branch.to(),
                            clean(solved.currentA(i)),
                            clean(solved.acrossV(branch.fromNode(), branch.toNode())));
                })
                .toList();
    }

    private @Nullable String state(Part part, int first, int end) {
        if (part instanceof Switch chosen) {
            return chosen.in(solved.step().condition()).name();
        }
        PartState state = partState(part, first, end);
        return state == null ? null : state.code();
    }

    private @Nullable PartState partState(Part part, int first, int end) {
        boolean active = solved.isActive(part);
        if (part instanceof Electromagnet) {
            return active ? PartState.PULLED_IN : PartState.RELEASED;
        } else if (part instanceof ContactBreaker) {
            return first < end ? PartState.CLOSED : PartState.OPEN;
        } else if (part instanceof IgnitionModule) {
            return end - first > 1 ? PartState.CONDUCTING : PartState.BLOCKING;
        } else if (part instanceof Diode) {
            return solved.currentA(first) >= CONDUCTING_A ? PartState.CONDUCTING : PartState.BLOCKING;
        } else if (part instanceof ControlBox) {
            return active ? PartState.CLOSED : PartState.OPEN;
        } else if (part instanceof Stabiliser) {
            return active ? PartState.REGULATING : PartState.NOT_REGULATING;
        } else if (part instanceof Flasher flasher) {
            return PartState.valueOf(Flashing.state(solved, flasher).name());
        } else if (part instanceof Ammeter) {
            return charge(solved.currentA(first));
        } else if (part instanceof Generator generator) {
            return generates(generator) ? PartState.CHARGING : PartState.NOT_CHARGING;
        }
        if (part instanceof Motor motor) {
            return motor.stalled() ? PartState.STALLED : solved.generates(motor) ? PartState.RUNNING_DOWN : null;
        }
        return part instanceof Load load && solved.isOff(load) ? PartState.OFF : null;
    }

    /** What an ammeter shows; its a is on the side of the battery. */
    private PartState charge(double currentA) {
        if (Math.abs(currentA) < LEAST_SHOWN_A) {
            return PartState.ZERO;
        }
        boolean out = currentA > 0 == solved.plan().system().earthPolarity().feedSign() > 0;
        return out ? PartState.DISCHARGE : PartState.CHARGE;
    }

    private boolean generates(Generator generator) {
        return solved.step().charging()
                && OutputOverSpeed.charges(generator)
                && (generator.selfExciting() || solved.isActive(generator));
    }
}
