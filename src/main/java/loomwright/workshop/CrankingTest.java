package loomwright.workshop;

import static loomwright.message.Arg.arg;

import java.util.ArrayList;
import java.util.List;
import loomwright.answer.Answer;
import loomwright.answer.Caution;
import loomwright.answer.Finding;
import loomwright.answer.InputError;
import loomwright.answer.InputErrors;
import loomwright.answer.Severity;
import loomwright.circuit.BatteryLaw;
import loomwright.circuit.VehicleSystem;
import loomwright.judgement.CrankingRule;
import loomwright.judgement.DropRule;
import loomwright.judgement.Ratio;
import loomwright.judgement.Verdict;
import loomwright.message.Message;
import org.jspecify.annotations.Nullable;

/** A starter that turns too slowly: battery, cables, or the starter itself, by the volts while it cranks. */
public final class CrankingTest {
    private static final double NOMINAL_V = 12;
    private static final int USUAL_CYLINDERS = 4;
    private static final double USUAL_TEMPERATURE_C = 20;
    /** Charge below which the battery is charged before anything is judged. Common practice, no source. */
    private static final double LEAST_CHARGE = 0.75;

    private CrankingTest() {}

    /** What is at fault. */
    public enum Cause {
        NONE_FOUND,
        BATTERY,
        CABLES,
        STARTER_OR_ENGINE
    }

    /**
     * What was measured while the starter turned; ignition cut.
     *
     * @param batteryPostsV required, 0 to 40
     * @param starterV from the starter's terminal to its body, 0 to 40
     * @param feedDropV from the battery's live post to the starter's terminal, 0 to 40
     * @param earthDropV from the starter's body to the earthed post, 0 to 40
     * @param restV at the posts before, everything off, 0 to 40
     * @param currentA 1 to 3000
     * @param turnsSlowly whether the engine turns too slowly; true unless said
     * @param nominalVoltageV 6, 12 or 24; 12 unless said
     * @param temperatureC of the battery, -40 to 60; 20 unless said
     * @param cylinders of a petrol engine, 1 to 12; 4 unless said
     */
    public record Input(
            @Nullable Double batteryPostsV,
            @Nullable Double starterV,
            @Nullable Double feedDropV,
            @Nullable Double earthDropV,
            @Nullable Double restV,
            @Nullable Double currentA,
            @Nullable Boolean turnsSlowly,
            @Nullable Integer nominalVoltageV,
            @Nullable Double temperatureC,
            @Nullable Integer cylinders) {
        public Input {
            VehicleSystem.checkNominal(new InputErrors(), nominalVoltageV)
                    .required("/batteryPostsV", batteryPostsV)
                    .range("/batteryPostsV", batteryPostsV, 0, 40)
                    .range("/starterV", starterV, 0, 40)
                    .range("/feedDropV", feedDropV, 0, 40)
                    .range("/earthDropV", earthDropV, 0, 40)
                    .range("/restV", restV, 0, 40)
                    .range("/currentA", currentA, 1, 3000)
                    .range("/temperatureC", temperatureC, -40, 60)
                    .range("/cylinders", cylinders == null ? null : cylinders.doubleValue(), 1, 12)
                    .check(
                            starterV == null || batteryPostsV == null || starterV <= batteryPostsV,
                            InputError.Code.CONTRADICTION,
                            "/starterV",
                            starterV,
                            AcceptedBench.AT_POSTS)
                    .reject();
        }

        double nominalV() {
            return nominalVoltageV == null ? NOMINAL_V : nominalVoltageV;
        }

        double postsV() {
            return batteryPostsV == null ? 0 : batteryPostsV;
        }

        /** What both cables lose; absent if nothing says so. */
        @Nullable
        Double cablesV() {
            return starterV != null
                    ? Double.valueOf(postsV() - starterV)
                    : feedDropV != null && earthDropV != null ? Double.valueOf(feedDropV + earthDropV) : null;
        }
    }

    /**
     * The answer.
     *
     * @param cause what to repair first
     * @param leastPostsV what a good battery holds at this temperature
     * @param cablesV lost in both cables; absent if it was not measured
     * @param cablesOhm of both cables; absent without a current
     * @param findings all that is wrong, the first cause first
     */
    public record Result(
            Cause cause,
            double leastPostsV,
            @Nullable Double cablesV,
            @Nullable Double cablesOhm,
            List<Finding> findings) {}

    /** Answers. */
    public static Answer<Result> judge(Input input) {
        double leastV = CrankingRule.leastPostsV(
                input.temperatureC() == null ? USUAL_TEMPERATURE_C : input.temperatureC(), input.nominalV());
        List<Finding> battery = battery(input, leastV);
        List<Finding> cables = cables(input);
        List<Finding> starter = starter(input, battery.isEmpty() && cables.isEmpty());
        List<Finding> findings = new ArrayList<>(starter);
        findings.addAll(battery);
        findings.addAll(cables);
        Double cablesV = input.cablesV();
        Double currentA = input.currentA();
        Cause cause = !starter.isEmpty()
                ? Cause.STARTER_OR_ENGINE
                : !battery.isEmpty() ? Cause.BATTERY : !cables.isEmpty() ? Cause.CABLES : Cause.NONE_FOUND;
        List<Message> working = List.of(
                WorkshopMessage.POSTS_LIMIT.with(arg("postsV", input.postsV()), arg("leastV", leastV)),
                WorkshopMessage.CABLES_LIMIT.with(
                        arg("limitV", DropRule.STARTER.findingV(input.nominalV())),
                        arg("feedLimitV", CrankingRule.feedMostV(input.nominalV())),
                        arg("earthLimitV", CrankingRule.earthMostV(input.nominalV()))));
        return new Answer<>(
                new Result(
                        cause,
                        leastV,
                        cablesV,
                        cablesV == null || currentA == null ? null : Double.valueOf(cablesV / currentA),
                        findings),
                working,
                List.of(
                        CrankingRule.POSTS_BASIS,
                        DropRule.STARTER.basis(),
                        CrankingRule.CABLE_BASIS,
                        CrankingRule.CURRENT_BASIS,
                        BatteryLaw.EMF_BASIS),
                List.of(Caution.MOVING_PARTS, Caution.HIGH_CURRENT, Caution.LOCAL_CODES));
    }

    private static List<Finding> battery(Input input, double leastV) {
        List<Finding> findings = new ArrayList<>();
        Double restV = input.restV();
        double leastRestV = BatteryLaw.emfV(LEAST_CHARGE, BatteryLaw.USUAL_C, input.nominalV());
        Message remedy = WorkshopMessage.CHARGE_AND_TEST_BATTERY.with();
        if (restV != null && restV < leastRestV) {
            findings.add(Finding.warning(
                            WorkshopMessage.BATTERY_DISCHARGED.with(arg("restV", restV), arg("leastRestV", leastRestV)),
                            BatteryLaw.EMF_BASIS)
                    .remedy(remedy));
        }
        if (input.postsV() < leastV) {
            findings.add(Finding.warning(
                            WorkshopMessage.BATTERY_LOW_WHILE_CRANKING.with(
                                    arg("postsV", input.postsV()), arg("leastV", leastV)),
                            CrankingRule.POSTS_BASIS)
                    .remedy(remedy));
        }
        return findings;
    }

    /** Drops of each side where they were measured, else of both; with the current their ohms as well. */
    private static List<Finding> cables(Input input) {
        List<Finding> findings = new ArrayList<>();
        double nominalV = input.nominalV();
        side(findings, WorkshopMessage.STARTER_FEED_LOSES, input.feedDropV(), CrankingRule.feedMostV(nominalV));
        side(findings, WorkshopMessage.STARTER_EARTH_LOSES, input.earthDropV(), CrankingRule.earthMostV(nominalV));
        Double cablesV = input.cablesV();
        Double currentA = input.currentA();
        if (findings.isEmpty() && cablesV != null) {
            Verdict verdict = currentA == null
                    ? DropRule.STARTER.judge(cablesV, nominalV)
                    : CrankingRule.judgeCables(cablesV / currentA, currentA, false, nominalV);
            verdict.level()
                    .severity()
                    .ifPresent(severity -> findings.add(Finding.of(
                                    severity,
                                    WorkshopMessage.STARTER_CABLES_LOSE.with(
                                            arg("dropV", cablesV),
                                            arg(
                                                    "limitV",
                                                    currentA == null ? verdict.limit() : verdict.limit() * currentA)),
                                    verdict.basis())
                            .remedy(WorkshopMessage.CLEAN_STARTER_JOINTS.with())));
        }
        return findings;
    }

    private static void side(List<Finding> findings, WorkshopMessage message, @Nullable Double dropV, double mostV) {
        if (dropV != null) {
            Ratio.of(dropV, mostV)
                    .level()
                    .severity()
                    .ifPresent(severity -> findings.add(Finding.of(
                                    severity,
                                    message.with(arg("dropV", dropV), arg("limitV", mostV)),
                                    DropRule.STARTER.basis())
                            .remedy(WorkshopMessage.CLEAN_STARTER_JOINTS.with())));
        }
    }

    /** A starter that draws too much pulls a good battery down; with all else good, a slow one is at fault itself. */
    private static List<Finding> starter(Input input, boolean allElseGood) {
        Double currentA = input.currentA();
        double mostA = CrankingRule.mostPetrolA(input.cylinders() == null ? USUAL_CYLINDERS : input.cylinders())
                * NOMINAL_V
                / input.nominalV();
        if (currentA != null && currentA > mostA) {
            return List.of(Finding.of(
                            Ratio.of(currentA, mostA).level().severity().orElse(Severity.NOTE),
                            WorkshopMessage.STARTER_DRAWS_TOO_MUCH.with(arg("currentA", currentA), arg("mostA", mostA)),
                            CrankingRule.CURRENT_BASIS)
                    .remedy(WorkshopMessage.FREE_STARTER_OR_ENGINE.with()));
        }
        boolean slow = input.turnsSlowly() == null || input.turnsSlowly();
        return slow && allElseGood && input.cablesV() != null
                ? List.of(Finding.warning(WorkshopMessage.STARTER_OR_ENGINE_SLOW.with(), CrankingRule.POSTS_BASIS)
                        .remedy(WorkshopMessage.MEASURE_STARTER_CURRENT.with(arg("mostA", mostA))))
                : List.of();
    }
}
