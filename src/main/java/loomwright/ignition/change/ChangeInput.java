package loomwright.ignition.change;

import static loomwright.message.Arg.arg;

import java.util.Optional;
import loomwright.ignition.spark.SparkInput;
import loomwright.ignition.spark.SwitchInput;
import loomwright.message.Message;
import org.jspecify.annotations.Nullable;

/**
 * An ignition as it is and as it will be, and what carries its current.
 *
 * @param before as it is
 * @param after as it will be
 * @param contactsA what the contacts may break, 0.5 to 30; 5 if left out
 * @param moduleA what the module may switch, 0.5 to 60; not judged if left out
 * @param ballastW what the ballast may turn into heat, 0.1 to 1000; not judged if left out
 * @param wireSize size of the feed wire; not judged if left out
 * @param wireInsulationC its insulation rating, 60 to 250; 80 if left out
 * @param ambientC around it, -60 to 55; 50 if left out
 * @param fuseA rating of the fuse in the feed, 0.5 to 500; not judged if left out
 * @param fusibleLinkSize size of the fusible link in the feed; not judged if left out
 * @param bypassLeft whether the bypass stays in place, false if left out
 * @param bypassFrom where the bypass comes from; the start wire if left out
 * @param solenoidOhm resistance of the solenoid at the start wire, 0.05 to 100; 0.77 if left out
 */
public record ChangeInput(
        SparkInput before,
        SparkInput after,
        @Nullable Double contactsA,
        @Nullable Double moduleA,
        @Nullable Double ballastW,
        @Nullable String wireSize,
        @Nullable Double wireInsulationC,
        @Nullable Double ambientC,
        @Nullable Double fuseA,
        @Nullable String fusibleLinkSize,
        @Nullable Boolean bypassLeft,
        @Nullable BypassFrom bypassFrom,
        @Nullable Double solenoidOhm) {

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
        return side.withSwitchRatingA(side.primarySwitch().kind() == SwitchInput.Kind.MODULE ? moduleA : contactsA);
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
        return new ChangeInput(
                was,
                is,
                contactsA,
                moduleA,
                ballastW,
                wireSize,
                wireInsulationC,
                ambientC,
                fuseA,
                fusibleLinkSize,
                bypassLeft,
                bypassFrom,
                solenoidOhm);
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
