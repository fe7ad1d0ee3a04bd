package loomwright.ignition.spark;

import java.util.ArrayList;
import java.util.List;
import loomwright.answer.Answer;
import loomwright.answer.Basis;
import loomwright.answer.Caution;
import loomwright.answer.RejectedInput;
import loomwright.ignition.FeedNeed;
import loomwright.ignition.SelfHeating;
import loomwright.ignition.gap.BreakdownFormula;
import loomwright.ignition.primary.PrimarySwitch;
import loomwright.message.Message;
import org.jspecify.annotations.Nullable;

/** How much spark an ignition with battery and coil has, and how much it is asked for. */
public final class Spark {

    /** Above this a coil's insulation is believed to be lost. Common practice, no source. */
    private static final double COIL_CEILING_C = 200;

    /** A part the size of a ballast burns skin from about here. Common practice, no source. */
    private static final double HOT_W = 1;

    private Spark() {}

    /**
     * The whole answer for one ignition.
     *
     * <p>Primary current by the exact solution of the RL circuit, energy L i^2 / 2, available voltage min(N U_clamp,
     * sqrt(2 eta E / C)), required voltage by a published breakdown formula.
     *
     * @param input what is known; the rest is taken as common, and said
     * @return figures at the point asked about, sweeps, and where the margin ends
     * @throws RejectedInput with every fault of the input
     */
    public static Answer<SparkResult> calculate(SparkInput input) {
        SparkInput.Resolved question = input.resolve();
        SparkResult result = result(question);
        List<Message> working = new ArrayList<>(question.assumed());
        working.addAll(SparkWorking.lines(question, result));
        return new Answer<>(result, working, basis(question, result), cautions(question, result));
    }

    private static SparkResult result(SparkInput.Resolved question) {
        SparkSystem system = question.system();
        MarginSearch search = question.search();
        double supplyV = question.supplyV();
        boolean bypassed = question.bypassed();
        SparkPoint at = system.at(question.speedRpm(), supplyV, bypassed);
        SparkResult.@Nullable HotCoil hotCoil =
                question.coilHeating().map(h -> hotCoil(question, h)).orElse(null);
        Boundary reserveEndsRpm = search.endsRpm(system, supplyV, bypassed, search.reserveRatio());
        return new SparkResult(
                at,
                system.demand(),
                closed(system, supplyV, bypassed),
                new SparkResult.SparkEnds(
                        search.endsRpm(system, supplyV, bypassed, 1),
                        reserveEndsRpm,
                        search.startsAboveV(system),
                        search.largestGapMm(system, at)),
                search.speedsRpm().stream()
                        .map(rpm -> system.at(rpm, supplyV, bypassed))
                        .toList(),
                search.suppliesV().stream()
                        .map(volts -> system.at(question.speedRpm(), volts, bypassed))
                        .toList(),
                feedNeed(question),
                hotCoil,
                new SparkFindings(question, at, reserveEndsRpm, hotCoil).list());
    }

    /** The largest current that lasts: the mean at the speed that draws most, or all contacts closed at rest. */
    private static FeedNeed feedNeed(SparkInput.Resolved question) {
        SparkSystem system = question.system();
        MarginSearch search = question.search();
        SparkPoint most = system.greatestMean(
                search.crankingSpeedRpm(), search.topSpeedRpm(), question.supplyV(), question.bypassed());
        double restA = system.primarySwitch() instanceof PrimarySwitch.Module
                ? 0
                : system.firing().coils() * system.closedA(question.supplyV(), question.bypassed());
        return restA >= most.means().allCoilsA()
                ? FeedNeed.keyOn(restA)
                : FeedNeed.running(most.means().allCoilsA(), most.speedRpm());
    }

    private static SparkResult.Closed closed(SparkSystem system, double supplyV, boolean bypassed) {
        double currentA = system.closedA(supplyV, bypassed);
        double coilV = currentA * system.coilResistanceOhm();
        return new SparkResult.Closed(
                currentA, coilV, coilV * currentA, currentA * currentA * system.ballastOhm(bypassed));
    }

    private static SparkResult.HotCoil hotCoil(SparkInput.Resolved question, SelfHeating heating) {
        SparkSystem system = question.system();
        double perOhm = system.coil().primaryResistanceOhm() * SelfHeating.COPPER_PER_K;
        SelfHeating.End end = heating.solve(
                ohm -> {
                    double temperatureC = 20 + (ohm - system.coil().primaryResistanceOhm()) / perOhm;
                    return at(question, temperatureC).heat().coilHeatW();
                },
                COIL_CEILING_C);
        return new SparkResult.HotCoil(
                end,
                end instanceof SelfHeating.Settled settled
                        ? at(question, settled.hot().temperatureC())
                        : null);
    }

    private static SparkPoint at(SparkInput.Resolved question, double coilTemperatureC) {
        return question.system()
                .withCoilTemperatureC(coilTemperatureC)
                .at(question.speedRpm(), question.supplyV(), question.bypassed());
    }

    private static List<Basis> basis(SparkInput.Resolved question, SparkResult result) {
        List<Basis> basis = new ArrayList<>(List.of(
                Basis.computed("dwell time and time between sparks", "from angle and speed"),
                Basis.verified(
                        "current rise in a coil, exact",
                        "OpenStax University Physics vol. 2, section 14.4 (RL circuits)"),
                Basis.verified("stored energy L i^2 / 2", "OpenStax College Physics, section 23.9 (inductance)"),
                Basis.computed("available voltage sqrt(2 eta E / C)", "from the energy of a charged capacitance"),
                Basis.commonPractice("spark that burns at constant voltage, so that its current falls evenly"),
                Basis.commonPractice("assumed values, reserve ratio, polytropic compression"),
                result.demand().plug().basis()));
        basis.addAll(FeedNeed.BASIS);
        if (question.system().coilTemperatureC() != 20 || result.hotCoil() != null) {
            basis.add(Basis.fromMemory("copper 0.00393 per K at 20 C", "IEC 60028"));
        }
        if (result.demand().secondGapV() > 0) {
            basis.add(BreakdownFormula.LINEAR.basis());
            basis.add(Basis.commonPractice("second gap of a wasted spark at 1 bar and 430 C"));
        }
        return basis;
    }

    private static List<Caution> cautions(SparkInput.Resolved question, SparkResult result) {
        List<Caution> cautions = new ArrayList<>(List.of(Caution.HIGH_TENSION));
        if (question.system().primarySwitch() instanceof PrimarySwitch.ContactBreaker) {
            cautions.add(Caution.KEY_LEFT_ON);
        }
        if (result.at().heat().ballastHeatW() >= HOT_W || result.closed().ballastHeatW() >= HOT_W) {
            cautions.add(Caution.HOT_BALLAST);
        }
        cautions.add(Caution.LOCAL_CODES);
        return cautions;
    }
}
