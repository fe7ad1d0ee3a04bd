package loomwright.ignition.ballast;

import org.jspecify.annotations.Nullable;

/**
 * A wanted coil voltage, current or heat, and perhaps a wanted voltage while cranking.
 *
 * @param feed the feed around the ballast; its elements and tap are not looked at
 * @param wantedCoilV across the coil, key on, contacts closed, 0.1 to 60; one of these four
 * @param wantedCoilA through it, 0.01 to 100
 * @param wantedCoilHeatW in it, 0.01 to 1000
 * @param ballastOhm the ballast is there already, only the tap is wanted: 0.001 to 100
 * @param wantedCrankingCoilV across the coil while cranking with the bypass at the tap, 0.1 to 60
 */
public record ChoiceInput(
        BallastInput feed,
        @Nullable Double wantedCoilV,
        @Nullable Double wantedCoilA,
        @Nullable Double wantedCoilHeatW,
        @Nullable Double ballastOhm,
        @Nullable Double wantedCrankingCoilV) {}
