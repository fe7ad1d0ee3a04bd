package loomwright.sizing;

import static loomwright.message.Arg.arg;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import loomwright.answer.Assumption;
import loomwright.conductor.ConductorSize;
import loomwright.judgement.Dependence.Unknown;
import loomwright.judgement.Sensitivity;
import loomwright.judgement.Verdict;
import loomwright.judgement.wire.WireAmpacity;
import loomwright.judgement.wire.WireConditions;

/**
 * What a wire is exposed to, and what of that was assumed.
 *
 * @param conditions as taken
 * @param bundleAsked wires that lie together as the question says, whether that lowers the ampacity or not
 * @param ambientKnown whether the question gives the ambient
 * @param insulationKnown whether it names the insulation
 * @param bundleKnown whether it says how many wires lie together
 */
record Surroundings(
        WireConditions conditions,
        int bundleAsked,
        boolean ambientKnown,
        boolean insulationKnown,
        boolean bundleKnown) {

    /** A verdict about a wire under some conditions. */
    @FunctionalInterface
    interface Judge {
        Verdict under(WireConditions conditions);
    }

    WireAmpacity ampacity(ConductorSize size) {
        return WireAmpacity.of(size.areaMm2(), conditions);
    }

    /** Tries everything that was assumed at its other usual ends. */
    Sensitivity tried(Judge judge) {
        Sensitivity tried = new Sensitivity(judge.under(conditions));
        if (!ambientKnown) {
            double hotC = conditions.ambientC() + WireConditions.HOTTER_K;
            tried.with(Unknown.AMBIENT_C, conditions.ambientC(), hotC, () -> judge.under(conditions.withAmbient(hotC)));
        }
        if (!insulationKnown) {
            for (double other : new double[] {WireConditions.OLD_RUBBER_C, WireConditions.THIN_WALL_C}) {
                tried.with(
                        Unknown.INSULATION_C,
                        conditions.insulationC(),
                        other,
                        () -> judge.under(conditions.withInsulation(other)));
            }
        }
        if (!bundleKnown) {
            tried.with(
                    Unknown.BUNDLE_COUNT,
                    conditions.bundleCount(),
                    WireConditions.FULL_LOOM,
                    () -> judge.under(conditions.withBundle(WireConditions.FULL_LOOM)));
        }
        if (unknowns() > 1) {
            Verdict worst = judge.under(worst());
            tried.with(Unknown.ALL_TOGETHER, judge.under(conditions).limit(), worst.limit(), () -> worst);
        }
        return tried;
    }

    private int unknowns() {
        return (ambientKnown ? 0 : 1) + (insulationKnown ? 0 : 1) + (bundleKnown ? 0 : 1);
    }

    /** Everything that was assumed at its bad end. */
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

    /** What was taken where the question says nothing. */
    List<Assumption> assumptions() {
        List<Assumption> said = new ArrayList<>();
        if (!insulationKnown) {
            said.add(SizingAssumption.INSULATION.of(
                    Map.of("insulationC", conditions.insulationC()), arg("insulationC", conditions.insulationC())));
        }
        if (!ambientKnown) {
            said.add(SizingAssumption.AMBIENT.of(
                    Map.of("ambientC", conditions.ambientC()), arg("ambientC", conditions.ambientC())));
        }
        if (!bundleKnown) {
            said.add(SizingAssumption.BUNDLE.of(Map.of("bundleCount", 1)));
        } else if (bundleAsked > conditions.bundleCount()) {
            said.add(SizingAssumption.BUNDLE_NOT_APPLIED.of(Map.of("bundleFactors", false), arg("wires", bundleAsked)));
        }
        return said;
    }
}
