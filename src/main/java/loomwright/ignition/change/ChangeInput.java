package loomwright.ignition.change;

import static loomwright.message.Arg.arg;

import java.util.Optional;
import loomwright.ignition.spark.SparkInput;
import loomwright.ignition.spark.SwitchInput;
import loomwright.message.Message;

/**
 * An ignition as it is and as it will be, and what carries its current.
 *
 * @param before as it is
 * @param after as it will be
 */
public record ChangeInput(SparkInput before, SparkInput after, FittedParts fitted, BypassLead bypass) {

    /**
     * With the same supply, speed, engine, plug gap and compression on both sides where one of them leaves them open: it is
     * one vehicle.
     */
    ChangeInput onOneSupply() {
        SparkInput was = before.completedFrom(after);
        SparkInput is = after.completedFrom(before);
        boolean bothGiven = before.feed().supplyV() != null && after.feed().supplyV() != null;
        return bothGiven ? withSides(was, is) : withSides(was.withSupplyV(oneSupplyV()), is.withSupplyV(oneSupplyV()));
    }

    /** With the ratings of contacts and module at the sides that have them. */
    ChangeInput withSwitchRatings() {
        return withSides(rated(before), rated(after));
    }

    private SparkInput rated(SparkInput side) {
        return side.withSwitchRatingA(
                side.primarySwitch().kind() == SwitchInput.Kind.MODULE ? fitted.moduleA() : fitted.contactsA());
    }

    /** What {@link #onOneSupply} did, for the working; empty if both supplies are given. */
    Optional<Message> supplyWorking() {
        boolean was = before.feed().supplyV() != null;
        boolean is = after.feed().supplyV() != null;
        if (was && is) {
            return Optional.empty();
        }
        return Optional.of(ChangeText.ONE_SUPPLY.with(
                arg("supplyV", oneSupplyV()), arg("from", was ? "before" : is ? "after" : "usual")));
    }

    private double oneSupplyV() {
        Double given = before.feed().supplyV() == null
                ? after.feed().supplyV()
                : before.feed().supplyV();
        return given == null ? before.supplyV() : given;
    }

    private ChangeInput withSides(SparkInput was, SparkInput is) {
        return new ChangeInput(was, is, fitted, bypass);
    }

    /** Where a bypass gets its current. */
    public enum BypassFrom {
        /** The wire from the key to the solenoid, terminal 50. */
        START_WIRE,
        /** A contact of the solenoid of its own, terminal 15a. */
        SOLENOID_CONTACT,
        /** A contact of the key switch of its own. */
        SWITCH_CONTACT
    }
}
