package loomwright.ignition.change;

import org.jspecify.annotations.Nullable;

/**
 * What carries the current of an ignition, as far as it is known.
 *
 * @param contactsA what the contacts may break, 0.5 to 30; 5 if left out
 * @param moduleA what the module may switch, 0.5 to 60; not judged if left out
 * @param ballastW what the ballast may turn into heat, 0.1 to 1000; not judged if left out
 * @param wireSize size of the feed wire; not judged if left out
 * @param wireInsulationC its insulation rating, 60 to 250; 80 if left out
 * @param ambientC around it, -60 to 55; 50 if left out
 * @param fuseA rating of the fuse in the feed, 0.5 to 500; not judged if left out
 * @param fusibleLinkSize size of the fusible link in the feed; not judged if left out
 */
public record FittedParts(
        @Nullable Double contactsA,
        @Nullable Double moduleA,
        @Nullable Double ballastW,
        @Nullable String wireSize,
        @Nullable Double wireInsulationC,
        @Nullable Double ambientC,
        @Nullable Double fuseA,
        @Nullable String fusibleLinkSize) {}
