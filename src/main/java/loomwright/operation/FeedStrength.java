package loomwright.operation;

import loomwright.circuit.Coil;
import loomwright.circuit.Consumer;
import loomwright.circuit.Electromagnet;
import loomwright.circuit.FilamentLamp;
import loomwright.circuit.LedLamp;
import loomwright.circuit.LightingConsumer;
import loomwright.circuit.Load;
import loomwright.circuit.Motor;
import loomwright.circuit.Relay;
import loomwright.circuit.Solenoid;
import loomwright.circuit.VehicleSystem;
import loomwright.judgement.LoadKind;
import loomwright.message.MessageCode;

/**
 * How strongly a consumer is fed.
 *
 * <p>The usual limits, for a consumer that does not state its own. Relay, solenoid, coil and LED: see {@link LoadKind}. Lamp: plainly
 * lit from half, dark below a tenth of its rated voltage. Motor: 0.4 and, standing, {@link LoadKind#MOTOR}; any other load: 0.6 and 0.3 of the nominal voltage
 * (common practice, no source: rounded so that a doubtful case counts as live).
 */
public enum FeedStrength implements MessageCode {
    /** It does what it is for. */
    OPERATES,
    /** A relay or solenoid: too little to pull in, enough to stay in once it is. */
    HOLDS,
    /** A lamp: lit, though not as it should be. */
    GLOWS,
    /** A motor: too little to run, enough to stand still and heat. */
    STALLS,
    /** Some current, too little to do anything. */
    LEAKS,
    /** No volts and no current worth naming. */
    DEAD;

    /** A current below this is no trickle but what any meter and moist dust lets through. */
    public static final double TRICKLE_A = 1e-3;
    /** Volts below this share of the nominal voltage are the drop of a sound joint or shared earth. */
    private static final double TRICKLE_FRACTION = 0.005;

    /** Below this share of its rated voltage a filament does not even glow: Draper point, rule of {@link LoadKind#FILAMENT}. */
    private static final double DARK_SHARE = LoadKind.FILAMENT.creepsFrom();

    /** A consumer's voltages: it operates from the one, has surely let go below the other. */
    public record Limits(double operateV, double releaseV) {}

    /** The volts below which nothing at all is noticed of a consumer. */
    static double deadV(Consumer consumer, VehicleSystem system) {
        double trickleV = TRICKLE_FRACTION * system.nominalVoltageV();
        return consumer instanceof FilamentLamp lamp ? Math.max(trickleV, DARK_SHARE * lamp.ratedV()) : trickleV;
    }

    public static Limits limits(Consumer consumer, VehicleSystem system) {
        Limits usual = usualLimits(consumer, system);
        Double operateV = consumer.operateV();
        Double releaseV = consumer.releaseV();
        double operates = operateV == null ? usual.operateV() : operateV;
        double releases = releaseV == null ? usual.releaseV() : releaseV;
        return new Limits(operates, Math.min(releases, operates));
    }

    private static Limits usualLimits(Consumer consumer, VehicleSystem system) {
        double nominalV = system.nominalVoltageV();
        if (consumer instanceof Relay) {
            return of(LoadKind.RELAY, nominalV);
        } else if (consumer instanceof Solenoid) {
            return of(LoadKind.SOLENOID, nominalV);
        } else if (consumer instanceof FilamentLamp lamp) {
            return new Limits(LoadKind.FILAMENT.weakFrom() * lamp.ratedV(), 0.1 * lamp.ratedV());
        } else if (consumer instanceof LedLamp led) {
            return new Limits(
                    led.voltsAt(LoadKind.LED.worksFrom(), system), led.voltsAt(LoadKind.LED.creepsFrom(), system));
        } else if (consumer instanceof Motor) {
            return new Limits(0.4 * nominalV, LoadKind.MOTOR.creepsFrom() * nominalV);
        } else if (consumer instanceof Coil coil) {
            double ohm = coil.primaryResistanceOhm();
            Limits usual = of(LoadKind.COIL, nominalV);
            return new Limits(
                    Math.min(usual.operateV(), LoadKind.COIL_SPARKS_A * ohm),
                    Math.min(usual.releaseV(), LoadKind.COIL_DEAD_A * ohm));
        }
        return new Limits(Load.WORKS_FROM * nominalV, 0.3 * nominalV);
    }

    private static Limits of(LoadKind kind, double nominalV) {
        return new Limits(kind.worksFrom() * nominalV, kind.creepsFrom() * nominalV);
    }

    /**
     * How strongly a consumer is fed.
     *
     * @param acrossV voltage across it, its amount
     * @param currentA current through it, its amount
     */
    public static FeedStrength of(Consumer consumer, VehicleSystem system, double acrossV, double currentA) {
        return of(consumer, limits(consumer, system), system, acrossV, currentA);
    }

    /** The same for limits worked out before. */
    static FeedStrength of(Consumer consumer, Limits limits, VehicleSystem system, double acrossV, double currentA) {
        if (currentA < TRICKLE_A || acrossV < deadV(consumer, system)) {
            return DEAD;
        } else if (consumer instanceof Motor motor && motor.stalled()) {
            return LEAKS;
        } else if (acrossV >= limits.operateV()) {
            return OPERATES;
        } else if (acrossV < limits.releaseV()) {
            return LEAKS;
        } else if (consumer instanceof Electromagnet) {
            return HOLDS;
        } else if (consumer instanceof Motor) {
            return STALLS;
        }
        return consumer instanceof LightingConsumer ? GLOWS : LEAKS;
    }
}
