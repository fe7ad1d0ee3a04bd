package loomwright.review.context;

import java.util.Optional;
import loomwright.circuit.Place;
import loomwright.circuit.VehicleSystem;
import loomwright.circuit.Wire;
import loomwright.conductor.Ampacity;
import loomwright.conductor.ConductorSize;

/**
 * What one wire of a plan may carry where it lies.
 *
 * @param size its size
 * @param ambientC around it
 * @param insulationC what its insulation stands
 * @param assumed whether the plan does not say so, and PVC was assumed
 * @param ampacity its continuous current; empty if it lies too hot or no table lists it
 */
public record WireRating(
        ConductorSize size, double ambientC, double insulationC, boolean assumed, Optional<Ampacity> ampacity) {

    /** Empty for a wire of which only the resistance is known. */
    public static Optional<WireRating> find(Wire wire, VehicleSystem system) {
        String size = wire.size();
        if (size == null) {
            return Optional.empty();
        }
        Double insulation = wire.insulationTemperatureC();
        Integer bundle = wire.bundleCount();
        return Optional.of(of(
                ConductorSize.parse(size),
                system.temperatureC(wire.place()),
                insulation == null ? Ampacity.USUAL_INSULATION_C : insulation,
                insulation == null,
                wire.place() == Place.ENGINE_BAY,
                bundle == null ? 1 : bundle));
    }

    /**
     * The bundle factors are applied wherever the plan says how many wires lie together, though the regulation asks for
     * them only from 50 V on: heat does not ask for the voltage.
     */
    public static WireRating of(
            ConductorSize size,
            double ambientC,
            double insulationC,
            boolean assumed,
            boolean engineSpace,
            int bundleCount) {
        Optional<Ampacity> ampacity = ambientC < insulationC
                ? Ampacity.findFirst(
                                size,
                                new Ampacity.Conditions(
                                        insulationC, ambientC, engineSpace, bundleCount, bundleCount > 1))
                        .filter(a -> a.allowedA() > 0)
                : Optional.empty();
        return new WireRating(size, ambientC, insulationC, assumed, ampacity);
    }

    /** Whether its insulation stands no load at all there. */
    public boolean tooHot() {
        return ambientC >= insulationC;
    }

    /** Heat of a current, W for each metre, with the conductor as warm as its surroundings. */
    public double heatWPerM(double currentA) {
        return currentA * currentA * size.resistanceOhmPerM(ambientC);
    }
}
