package loomwright.ignition.spark;

import loomwright.ignition.AssumedValue;
import loomwright.ignition.Assumptions;
import loomwright.ignition.primary.Firing;
import loomwright.ignition.primary.Firing.Arrangement;
import org.jspecify.annotations.Nullable;

/**
 * Engine and firing as asked about. Names and ranges as in {@link Firing}.
 *
 * @param cylinders 4 if left out
 * @param strokes 4 if left out
 * @param arrangement distributor if left out
 */
public record EngineInput(
        @Nullable Integer cylinders,
        @Nullable Integer strokes,
        @Nullable Arrangement arrangement) {

    /** With what is left out here taken from another. */
    EngineInput completedFrom(EngineInput other) {
        return new EngineInput(
                cylinders == null ? other.cylinders : cylinders,
                strokes == null ? other.strokes : strokes,
                arrangement == null ? other.arrangement : arrangement);
    }

    Firing resolve(Assumptions assumptions) {
        return new Firing(
                assumptions.or(cylinders, AssumedValue.CYLINDERS, 4),
                assumptions.or(strokes, AssumedValue.STROKES, 4),
                assumptions.or(arrangement, AssumedValue.ARRANGEMENT, Arrangement.DISTRIBUTOR));
    }
}
