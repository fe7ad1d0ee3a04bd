package loomwright.network;

import static loomwright.message.Arg.plain;

import loomwright.answer.InputError;
import loomwright.answer.InputErrors;

/**
 * A two-terminal element of a network. Its current is positive when it flows from {@link #from} to {@link #to} through
 * the element; its voltage is that of {@code from} against {@code to}.
 *
 * <p>A switch needs no element: open it is left out, closed it is a {@link Resistor} of its contact resistance.
 */
public sealed interface Element
        permits Resistor,
                VoltageSource,
                TwoSlopeSource,
                CurrentSource,
                PowerLoad,
                UnidirectionalElement,
                SensedSource,
                Lamp {
    /** Name for messages, unique in its network. */
    String id();

    /** Index of the node at which a positive current enters. */
    int from();

    /** Index of the node at which a positive current leaves. */
    int to();

    /** Largest voltage accepted, volts. */
    double MAXIMUM_V = 1e6;

    /** Largest current accepted, amperes. */
    double MAXIMUM_A = 1e6;

    /** Largest power accepted, watts. */
    double MAXIMUM_W = 1e9;

    /** Smallest resistance accepted apart from 0, ohms. */
    double MINIMUM_OHM = 1e-9;

    /** Largest resistance accepted, ohms. */
    double MAXIMUM_OHM = 1e12;

    /** Notes a fault unless a resistance is 0 (ideal) or one that can be calculated with. */
    static void checkResistance(InputErrors faults, String pointer, double ohm) {
        // Asked of every element of every network: what to say is made only where there is something to say.
        if (ohm == 0 || (ohm >= MINIMUM_OHM && ohm <= MAXIMUM_OHM)) {
            return;
        }
        faults.check(
                false,
                InputError.Code.OUT_OF_RANGE,
                pointer,
                ohm,
                AcceptedElement.ZERO_OR_NUMBER,
                plain("min", MINIMUM_OHM),
                plain("max", MAXIMUM_OHM));
    }
}
