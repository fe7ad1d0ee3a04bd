package loomwright.ignition.change;

import org.jspecify.annotations.Nullable;

/**
 * The bypass that feeds the coil while cranking.
 *
 * @param bypassLeft whether it stays in place, false if left out
 * @param bypassFrom where it comes from; the start wire if left out
 * @param solenoidOhm resistance of the solenoid at the start wire, 0.05 to 100; 0.77 if left out
 */
public record BypassLead(
        @Nullable Boolean bypassLeft,
        ChangeInput.@Nullable BypassFrom bypassFrom,
        @Nullable Double solenoidOhm) {}
