package loomwright.review.context;

import static loomwright.message.Arg.arg;

import java.util.List;
import java.util.Optional;
import java.util.function.Function;
import loomwright.circuit.VehicleSystem;
import loomwright.circuit.Wire;
import loomwright.conductor.ConductorSize;
import loomwright.conductor.SizeSystem;
import loomwright.judgement.Dependence;
import loomwright.judgement.Verdict;
import loomwright.judgement.wire.WireAmpacity;
import loomwright.judgement.wire.WireConditions;
import loomwright.judgement.wire.WireUnknowns;
import loomwright.message.Message;

/**
 * What one wire of a plan may carry where it lies.
 *
 * @param size its size
 * @param assumed whether the plan does not name its insulation, and PVC was assumed
 * @param ampacity its continuous current; 0 if it lies too hot
 */
public record WireRating(ConductorSize size, boolean assumed, WireAmpacity ampacity) {

    /** Empty for a wire of which only the resistance is known. */
    public static Optional<WireRating> find(Wire wire, VehicleSystem system) {
        String size = wire.conductor().size();
        if (size == null) {
            return Optional.empty();
        }
        Double insulation = wire.laid().insulationTemperatureC();
        Integer bundle = wire.laid().bundleCount();
        return Optional.of(of(
                asWritten(ConductorSize.parse(size), size),
                insulation == null,
                new WireConditions(
                        insulation == null ? WireConditions.USUAL_INSULATION_C : insulation,
                        system.temperatureC(wire.laid().place()),
                        bundle == null ? 1 : bundle)));
    }

    /** 4.5 mm2 stays 4.5 mm2, though its figures are those of 65/0.30. */
    private static ConductorSize asWritten(ConductorSize size, String text) {
        return size.system() == SizeSystem.STRANDS
                ? new ConductorSize(
                        size.system(), text.strip(), size.areaMm2(), size.resistanceOhmPerM20C(), size.basis())
                : size;
    }

    /**
     * The bundle lowers the ampacity wherever the plan says how many wires lie together, though the regulation asks for
     * that only from 50 V on: heat does not ask for the voltage.
     */
    public static WireRating of(ConductorSize size, boolean assumed, WireConditions conditions) {
        return new WireRating(size, assumed, WireAmpacity.of(size.areaMm2(), conditions));
    }

    /**
     * What of a wire's surroundings the plan leaves open and would turn a verdict: the largest mover with what settles it;
     * empty if nothing would. A temperature that is the usual one counts as open.
     */
    public static List<Message> dependsOn(Wire wire, VehicleSystem system, Function<WireAmpacity, Verdict> judge) {
        return find(wire, system)
                .map(rating -> {
                    WireConditions conditions = rating.ampacity().conditions();
                    return new WireUnknowns(
                                    conditions,
                                    conditions.ambientC()
                                            != WireConditions.usualAmbientC(
                                                    wire.laid().place()),
                                    !rating.assumed(),
                                    wire.laid().bundleCount() != null)
                                    .tried(other -> judge.apply(
                                            WireAmpacity.of(rating.size().areaMm2(), other)))
                                    .turns()
                                    .stream()
                                    .limit(1)
                                    .map(WireRating::message)
                                    .toList();
                })
                .orElse(List.of());
    }

    private static Message message(Dependence turn) {
        return ReviewText.DEPENDS_ON.with(
                arg("unknown", turn.unknown()),
                arg("otherC", turn.other()),
                arg("wires", (int) Math.round(turn.other())),
                arg("level", turn.level()),
                arg("settledBy", turn.settledBy()));
    }

    public double ambientC() {
        return ampacity.conditions().ambientC();
    }

    public double insulationC() {
        return ampacity.conditions().insulationC();
    }

    public double allowedA() {
        return ampacity.allowedA();
    }

    /** Whether its insulation stands no load at all there. */
    public boolean tooHot() {
        return ampacity.conditions().tooHot();
    }

    /** By how much a lasting current raises its resistance above that of its surroundings' temperature, ohm per metre. */
    double warmedOhmPerM(double currentA) {
        return size.wireOhmPerM(ampacity.loadedC(currentA)) - size.wireOhmPerM(ambientC());
    }

    /** Heat of a current, W for each metre, with the conductor as warm as its surroundings. */
    public double heatWPerM(double currentA) {
        return currentA * currentA * size.wireOhmPerM(ambientC());
    }
}
