package loomwright.operation;

import java.util.BitSet;
import java.util.EnumMap;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.IntStream;
import loomwright.circuit.Part;
import loomwright.circuit.TerminalRef;
import loomwright.circuit.Wire;
import loomwright.network.Resistor;

/**
 * What wires carry while one terminal after another touches the chassis, far quicker than by {@link
 * PlanSettings#stepsJoinedToChassis}; or it says that the figures are not to be relied on. They are the same to about eight
 * digits, but to three where wires without resistance carry a short, since these may count as 1e-6 ohm.
 *
 * <p>Cost on a harness of 60 nodes: tens of microseconds for the seven steps of one short. Not thread safe.
 */
public final class ShortScan {
    private final Wiring wiring;
    private final DecisionCircuits circuits;
    /** By terminal, which addition its short is. */
    private final Map<TerminalRef, Integer> shorts = new HashMap<>();

    ShortScan(
            Wiring wiring,
            Thresholds thresholds,
            List<List<Part>> open,
            List<TerminalRef> terminals,
            double resistanceOhm) {
        this.wiring = wiring;
        List<Resistor> joined = terminals.stream()
                .map(t -> new Resistor(t.toString(), wiring.node(t), Wiring.CHASSIS_NODE, resistanceOhm))
                .toList();
        circuits = new DecisionCircuits(wiring, thresholds, open, joined, List.of(), false);
        for (int k = 0; k < terminals.size(); k++) {
            shorts.put(terminals.get(k), k);
        }
    }

    /**
     * The current of a wire in each {@link Step}, its amount, A, while a terminal touches the chassis.
     *
     * @param touching one of those prepared for
     * @param setting of each open part
     * @return empty if it is for {@link PlanSolver} to say
     */
    public Optional<Map<Step, Double>> currentsA(Wire wire, TerminalRef touching, List<Integer> setting) {
        Integer shorted = shorts.get(touching);
        if (shorted == null) {
            throw new IllegalArgumentException(touching + " was not prepared for");
        }
        int branch = wiring.run(wire.id()).branch();
        int[] settingAndShort = IntStream.concat(
                        setting.stream().mapToInt(Integer::intValue), IntStream.of(1 + shorted))
                .toArray();
        Map<Step, Double> currentsA = new EnumMap<>(Step.class);
        BitSet active = new BitSet();
        for (Step step : Step.values()) {
            DecisionCircuit circuit = circuits.get(step);
            StableState state = circuit.settle(settingAndShort, active);
            if (state.outcome() == StableState.Outcome.UNDECIDED) {
                return Optional.empty();
            }
            active = state.active();
            currentsA.put(step, branch < 0 ? 0 : Math.abs(circuit.currentA(branch)));
        }
        return Optional.of(currentsA);
    }
}
