package loomwright.operation;

import java.util.Optional;
import loomwright.circuit.Alternator;
import loomwright.circuit.Consumer;
import loomwright.circuit.ControlBox;
import loomwright.circuit.Dynamo;
import loomwright.circuit.Flasher;
import loomwright.circuit.Generator;
import loomwright.circuit.IgnitionModule;
import loomwright.circuit.Load;
import loomwright.circuit.Motor;
import loomwright.circuit.Part;
import loomwright.circuit.Relay;
import loomwright.circuit.Solenoid;
import loomwright.circuit.Stabiliser;
import loomwright.circuit.VehicleSystem;

/**
 * A part whose electrical nature changes with the voltage it senses: it becomes active from {@code operateV}, stays so
 * down to {@code releaseV}, and is never active above {@code maximumV}.
 */
record Threshold(Part part, Sense sense, double operateV, double releaseV, double maximumV) {

    /** The voltage a part acts on, given what a meter shows between its terminals, and whether it is active. */
    @FunctionalInterface
    interface Sense {
        double effectiveV(Meter meter, boolean active);
    }

    /** Voltage of one of the part's terminals against another, V. */
    @FunctionalInterface
    interface Meter {
        double acrossV(String terminal, String other);
    }

    /** The threshold of a part that has one. */
    static Optional<Threshold> find(Part part, VehicleSystem system) {
        if (part instanceof Relay
                || part instanceof Solenoid
                || (part instanceof Motor motor && motor.generatesRunningDown())) {
            FeedStrength.Limits limits = FeedStrength.limits((Consumer) part, system);
            return Optional.of(
                    new Threshold(part, senseOf(part), limits.operateV(), limits.releaseV(), Double.MAX_VALUE));
        }
        if (part instanceof IgnitionModule module) {
            double minimumV = module.minimumSupplyV(system);
            Sense supply = (meter, active) -> Math.abs(meter.acrossV(IgnitionModule.SUPPLY, IgnitionModule.RETURN));
            return Optional.of(new Threshold(part, supply, minimumV, minimumV, Double.MAX_VALUE));
        }
        if (part instanceof Alternator alternator && !alternator.selfExciting()) {
            // What lights its field: without that the machine gives nothing, however fast it turns.
            double excitedV = Alternator.LEAST_FIELD_A * alternator.fieldResistanceOhm(system);
            String earthed = alternator.earthedPole(system);
            Sense field = (meter, active) -> Math.abs(meter.acrossV(Alternator.WARNING_LAMP, earthed));
            return Optional.of(new Threshold(part, field, excitedV, excitedV, Double.MAX_VALUE));
        }
        if (part instanceof Dynamo dynamo && !dynamo.selfExciting()) {
            double buildUpV = Dynamo.buildUpV(system);
            Sense field = (meter, active) -> Math.abs(meter.acrossV(Dynamo.FIELD, Dynamo.EARTH));
            return Optional.of(new Threshold(part, field, buildUpV, buildUpV, Double.MAX_VALUE));
        }
        if (part instanceof ControlBox box) {
            return Optional.of(new Threshold(
                    part, cutOut(box, system), box.cutInV(system), box.cutOutV(system), Double.MAX_VALUE));
        }
        if (part instanceof Stabiliser stabiliser) {
            double outputV = stabiliser.outputV(system);
            Sense feed = (meter, active) -> Math.abs(meter.acrossV(Stabiliser.FEED, Stabiliser.EARTH));
            return Optional.of(new Threshold(part, feed, outputV, outputV, Double.MAX_VALUE));
        }
        if (part instanceof Flasher flasher) {
            return Optional.of(ofFlasher(flasher, system));
        }
        if (part instanceof Load load && load.switches(system)) {
            // A constant current sets in by itself above its minimum; only its maximum is a limit of its own.
            double minimumV = load.draw().currentA() == null ? load.minimumV(system) : 0;
            Double maximumV = load.draw().maximumV();
            return Optional.of(new Threshold(
                    part, senseOf(part), minimumV, minimumV, maximumV == null ? Double.MAX_VALUE : maximumV));
        }
        return Optional.empty();
    }

    /** An electronic one works from some volts of its own, if it has lamps; the tell-tale contact of a thermal one by the current of the lamps. */
    private static Threshold ofFlasher(Flasher flasher, VehicleSystem system) {
        if (flasher.electronic()) {
            Sense supply = (meter, active) -> {
                double supplyV = Math.abs(meter.acrossV(Flasher.FEED, Flasher.EARTH));
                double contactV = Math.abs(meter.acrossV(Flasher.FEED, Flasher.OUTPUT));
                return flasher.stuck() != null || flasher.senses(contactV, active, system) ? supplyV : 0;
            };
            double leastV = flasher.leastSupplyV(system);
            return new Threshold(flasher, supply, leastV, leastV, Double.MAX_VALUE);
        }
        double leastV = flasher.minimumA(system) * flasher.contactOhm(system);
        // The volts across an open contact are those of no current.
        Sense current = (meter, active) ->
                flasher.stuck() == Flasher.Stuck.OPEN ? 0 : Math.abs(meter.acrossV(Flasher.FEED, Flasher.OUTPUT));
        return new Threshold(flasher, current, leastV, leastV, Double.MAX_VALUE);
    }

    /** Whether it stays as it is between two limits, so that what went before counts. */
    boolean remembers() {
        return part instanceof Relay
                || part instanceof Solenoid
                || part instanceof Motor
                || part instanceof Generator
                || part instanceof ControlBox;
    }

    /** What a consumer acts on: the voltage across it, but for a solenoid with two windings, or a polarised load. */
    static Sense senseOf(Part part) {
        if (part instanceof Solenoid solenoid && solenoid.pullInResistanceOhm() != null) {
            return twoWindings(solenoid.holdInResistanceOhm(), solenoid.pullInResistanceOhm());
        }
        Consumer consumer = (Consumer) part;
        if (part instanceof Load load && load.plus() != null) {
            double sign = load.feedTerminal().equals(load.plus()) ? 1 : -1;
            return (meter, active) -> Math.max(0, sign * meter.acrossV(load.feedTerminal(), load.returnTerminal()));
        }
        return (meter, active) -> Math.abs(meter.acrossV(consumer.feedTerminal(), consumer.returnTerminal()));
    }

    /**
     * Two windings of equal turns on one core (common practice): what counts is the sum of their currents. When the key
     * lets go of terminal 50 the closed contact feeds the pull-in winding backwards into the hold-in winding; the
     * currents are equal and opposite, and the plunger falls out though there are volts at 50.
     *
     * <p>The sum is stated as the voltage that would give the same pull: at rest with both windings across it, once
     * pulled in (when the contact has shorted the pull-in winding) with the hold-in winding alone.
     */
    private static Sense twoWindings(double holdInOhm, double pullInOhm) {
        return (meter, active) -> {
            double sumA = meter.acrossV(Solenoid.CONTROL, Solenoid.RETURN) / holdInOhm
                    + meter.acrossV(Solenoid.CONTROL, Solenoid.MOTOR) / pullInOhm;
            double conductance = active ? 1 / holdInOhm : 1 / holdInOhm + 1 / pullInOhm;
            return Math.abs(sumA) / conductance;
        };
    }

    /**
     * Two windings: the shunt coil pulls by the volts at D, the series turn by the current from D to the battery, which opens the
     * contact when it is reversed (reverse-current relay: US Army TM 55-1279).
     */
    private static Sense cutOut(ControlBox box, VehicleSystem system) {
        double sign = system.earthPolarity().feedSign();
        double perVolt = box.seriesOhm(system) / box.contactResistanceOhm();
        return (meter, active) -> {
            double shuntV = sign * meter.acrossV(ControlBox.ARMATURE, ControlBox.EARTH);
            return active ? shuntV + perVolt * sign * meter.acrossV(ControlBox.ARMATURE, ControlBox.BATTERY) : shuntV;
        };
    }

    /** Whether it is active at {@code effectiveV}, given whether it was. */
    boolean activeAt(double effectiveV, boolean before) {
        return effectiveV <= maximumV && effectiveV >= (before ? releaseV : operateV);
    }
}
