package loomwright.operation;

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
 * digits, but to four where wires without resistance carry a short, since these count as 1e-7 ohm.
 *
 * <p>Cost on a harness of 60 nodes: tens of microseconds for the seven steps of one short. Not thread safe.
 */
public final class SweptShorts {
    private final Wiring wiring;
    private final SweptSteps steps;
    /** By terminal, which addition its short is. */
    private final Map<TerminalRef, Integer> shorts = new HashMap<>();

    private SweptShorts(Wiring wiring, SweptSteps steps, List<TerminalRef> terminals) {
        this.wiring = wiring;
        this.steps = steps;
        for (int k = 0; k < terminals.size(); k++) {
            shorts.put(terminals.get(k), k);
        }
    }

    static Optional<SweptShorts> of(
            Wiring wiring, List<List<Part>> open, List<TerminalRef> terminals, double resistanceOhm) {
        List<Resistor> joined = terminals.stream()
                .map(t -> new Resistor(t.toString(), wiring.node(t), Wiring.CHASSIS_NODE, resistanceOhm))
                .toList();
        return SweptSteps.of(wiring, open, joined, List.of()).map(steps -> new SweptShorts(wiring, steps, terminals));
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
        long active = 0;
        for (Step step : Step.values()) {
            SweptStep swept = steps.get(step);
            active = swept.settle(settingAndShort, active);
            if (active == SweptStep.UNCERTAIN) {
                return Optional.empty();
            }
            currentsA.put(step, branch < 0 ? 0 : Math.abs(swept.currentA(branch)));
        }
        return Optional.of(currentsA);
    }
}
