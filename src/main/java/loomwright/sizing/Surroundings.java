package loomwright.sizing;

import static loomwright.message.Arg.arg;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.function.Function;
import loomwright.answer.Assumption;
import loomwright.conductor.ConductorSize;
import loomwright.judgement.Sensitivity;
import loomwright.judgement.Verdict;
import loomwright.judgement.wire.WireAmpacity;
import loomwright.judgement.wire.WireConditions;
import loomwright.judgement.wire.WireUnknowns;

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

    WireAmpacity ampacity(ConductorSize size) {
        return WireAmpacity.of(size.areaMm2(), conditions);
    }

    /** Tries everything that was assumed at its other usual ends. */
    Sensitivity tried(Function<WireConditions, Verdict> judge) {
        return new WireUnknowns(conditions, ambientKnown, insulationKnown, bundleKnown).tried(judge);
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
