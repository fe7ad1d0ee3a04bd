package loomwright.review.wire;

import static loomwright.message.Arg.arg;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import loomwright.circuit.Plan;
import loomwright.circuit.Wire;
import loomwright.conductor.ConductorSize;
import loomwright.judgement.wire.BudgetSplit;
import loomwright.message.Arg;
import loomwright.message.Message;
import loomwright.operation.SolvedStep;
import loomwright.review.context.ReviewText;

/** Where no one wire brings a circuit within its limit: the sizes of all of them that do, with least copper. */
final class SplitSizes {
    /** A lamp that is brighter draws more: of the limit so much is used. Common practice, no source. */
    private static final double USED = 0.95;

    /** A wire of the way, with what its copper alone loses. */
    private record Part(Wire wire, ConductorSize size, double copperV, BudgetSplit.Run run) {}

    private SplitSizes() {}

    /**
     * The wires to renew with the size of each; empty if joints and contacts leave nothing for wires, or none is thick
     * enough.
     *
     * @param lostV by id of wire or part, in the feed and, as far as it counts, in the return
     * @param limitV what the circuit may lose
     */
    static Optional<Message> find(Plan plan, SolvedStep solved, Map<String, Double> lostV, double limitV) {
        List<Part> parts = new ArrayList<>();
        lostV.forEach((id, volts) ->
                plan.findWire(id).flatMap(wire -> part(solved, wire, volts)).ifPresent(parts::add));
        double copperV = parts.stream().mapToDouble(Part::copperV).sum();
        double fixedV = lostV.values().stream().mapToDouble(v -> v).sum() - copperV;
        double budgetV = USED * limitV - fixedV;
        if (budgetV <= 0 || parts.size() < 2) {
            return Optional.empty();
        }
        List<Double> shares =
                BudgetSplit.splitV(budgetV, parts.stream().map(Part::run).toList());
        List<Message> renewed = new ArrayList<>();
        for (int i = 0; i < parts.size(); i++) {
            Part part = parts.get(i);
            double shareV = shares.get(i);
            if (part.copperV() > shareV) {
                Optional<ConductorSize> thicker = thicker(part, shareV);
                if (thicker.isEmpty()) {
                    return Optional.empty();
                }
                renewed.add(ReviewText.WIRES_OF_SIZE.with(
                        Arg.things("wires", List.of(part.wire().thing())),
                        arg("size", thicker.orElseThrow().name())));
            }
        }
        return renewed.isEmpty()
                ? Optional.empty()
                : Optional.of(ReviewText.FIT_SIZES_FOR_DROP.with(Arg.messages("sizes", renewed)));
    }

    private static Optional<Part> part(SolvedStep solved, Wire wire, double volts) {
        String size = wire.conductor().size();
        Double metres = wire.metres();
        double currentA = Math.abs(solved.currentA(wire));
        double jointsV = currentA
                * (wire.joints().fromJointResistanceOhm() + wire.joints().toJointResistanceOhm());
        return size == null || metres == null || currentA == 0
                ? Optional.empty()
                : Optional.of(new Part(
                        wire,
                        ConductorSize.parse(size),
                        Math.max(0, volts - jointsV),
                        new BudgetSplit.Run(metres, currentA)));
    }

    private static Optional<ConductorSize> thicker(Part part, double shareV) {
        return ConductorSize.list(part.size().system()).stream()
                .filter(size ->
                        part.copperV() * size.wireOhmPerM(20) / part.size().wireOhmPerM(20) <= shareV)
                .findFirst();
    }
}
