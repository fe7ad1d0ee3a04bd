package loomwright.judgement.wire;

import java.util.function.Function;
import loomwright.judgement.Dependence.Unknown;
import loomwright.judgement.Sensitivity;
import loomwright.judgement.Verdict;

/**
 * What of a wire's surroundings was assumed, to be tried at its other usual ends.
 *
 * @param conditions as taken
 * @param ambientKnown whether the temperature around it was given
 * @param insulationKnown whether its insulation was
 * @param bundleKnown whether the wires that lie with it were
 */
public record WireUnknowns(
        WireConditions conditions, boolean ambientKnown, boolean insulationKnown, boolean bundleKnown) {

    /**
     * Each unknown at its other ends, alone and all of them at their bad ones.
     *
     * @param judge the verdict under some conditions
     */
    public Sensitivity tried(Function<WireConditions, Verdict> judge) {
        Verdict base = judge.apply(conditions);
        Sensitivity tried = new Sensitivity(base);
        if (!ambientKnown) {
            double hotC = conditions.ambientC() + WireConditions.HOTTER_K;
            tried.with(Unknown.AMBIENT_C, conditions.ambientC(), hotC, () -> judge.apply(conditions.withAmbient(hotC)));
        }
        if (!insulationKnown) {
            for (double other : new double[] {WireConditions.OLD_RUBBER_C, WireConditions.THIN_WALL_C}) {
                tried.with(
                        Unknown.INSULATION_C,
                        conditions.insulationC(),
                        other,
                        () -> judge.apply(conditions.withInsulation(other)));
            }
        }
        if (!bundleKnown) {
            tried.with(
                    Unknown.BUNDLE_COUNT,
                    conditions.bundleCount(),
                    WireConditions.FULL_LOOM,
                    () -> judge.apply(conditions.withBundle(WireConditions.FULL_LOOM)));
        }
        if (count() > 1) {
            Verdict worst = judge.apply(worst());
            tried.with(Unknown.ALL_TOGETHER, base.limit(), worst.limit(), () -> worst);
        }
        return tried;
    }

    private int count() {
        return (ambientKnown ? 0 : 1) + (insulationKnown ? 0 : 1) + (bundleKnown ? 0 : 1);
    }

    private WireConditions worst() {
        WireConditions worst = conditions;
        if (!ambientKnown) {
            worst = worst.withAmbient(conditions.ambientC() + WireConditions.HOTTER_K);
        }
        if (!insulationKnown) {
            worst = worst.withInsulation(WireConditions.OLD_RUBBER_C);
        }
        return bundleKnown ? worst : worst.withBundle(WireConditions.FULL_LOOM);
    }
}
