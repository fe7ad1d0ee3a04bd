package loomwright.workshop;

import static loomwright.message.Arg.arg;
import static loomwright.message.Arg.plain;
import static loomwright.message.Arg.texts;

import java.util.List;
import java.util.stream.DoubleStream;
import loomwright.answer.Accepted;
import loomwright.answer.Answer;
import loomwright.answer.Basis;
import loomwright.answer.Caution;
import loomwright.answer.Finding;
import loomwright.answer.InputError;
import loomwright.answer.InputErrors;
import loomwright.ignition.ballast.PreferredNumbers;
import loomwright.judgement.ignition.BallastPartRule;
import org.jspecify.annotations.Nullable;

/** A resistor in front of any load that is to have less than the supply. */
public final class SeriesResistor {
    public static final Basis LAW = Basis.computed("R = (supply - load) / I, heat I^2 R", "Ohm's and Joule's laws");
    private static final Basis PRACTICE = Basis.commonPractice(
            "a resistor suits a load of steady current; of a motor, a radio or a lamp at switch-on the volts move with the"
                    + " current");

    /** Above this heat a resistor for a load is a stove. Common practice, no source. */
    private static final double MUCH_HEAT_W = 25;

    private SeriesResistor() {}

    /**
     * What is asked. One of current, watts and ohms of the load.
     *
     * @param supplyV required, 1 to 100: the highest that there is
     * @param loadV required, 0.1 to 100: what the load is to have
     * @param currentA of the load at its volts, 0.0001 to 1000
     * @param powerW of the load at its volts, 0.001 to 10 000
     * @param loadOhm of the load, 0.01 to 1 000 000
     */
    public record Input(
            @Nullable Double supplyV,
            @Nullable Double loadV,
            @Nullable Double currentA,
            @Nullable Double powerW,
            @Nullable Double loadOhm) {
        public Input {
            InputErrors faults = new InputErrors()
                    .required("/supplyV", supplyV)
                    .required("/loadV", loadV)
                    .range("/supplyV", supplyV, 1, 100)
                    .range("/loadV", loadV, 0.1, 100)
                    .range("/currentA", currentA, 1e-4, 1000)
                    .range("/powerW", powerW, 1e-3, 10_000)
                    .range("/loadOhm", loadOhm, 0.01, 1e6);
            faults.reject();
            int given = (currentA == null ? 0 : 1) + (powerW == null ? 0 : 1) + (loadOhm == null ? 0 : 1);
            faults.check(
                            given == 1,
                            given == 0 ? InputError.Code.MISSING : InputError.Code.CONTRADICTION,
                            "/currentA",
                            currentA,
                            Accepted.EXACTLY_ONE,
                            texts("names", List.of("currentA", "powerW", "loadOhm")))
                    .check(
                            supplyV == null || loadV == null || loadV < supplyV,
                            InputError.Code.CONTRADICTION,
                            "/loadV",
                            loadV,
                            Accepted.LESS_THAN,
                            arg("name", "supplyV"),
                            plain("limit", supplyV == null ? 0 : supplyV))
                    .reject();
        }
    }

    /**
     * A value to buy.
     *
     * @param resistorOhm of the series E24
     * @param loadV what the load has then, its ohms staying as they are
     * @param currentA then
     * @param heatW in the resistor
     * @param ratingW to buy
     */
    public record Choice(double resistorOhm, double loadV, double currentA, double heatW, double ratingW) {}

    /**
     * The answer.
     *
     * @param resistorOhm exactly
     * @param currentA through both
     * @param heatW in the resistor
     * @param ratingW to buy: at least twice the heat
     * @param standard the nearest standard values, below and above
     */
    public record Result(
            double resistorOhm,
            double currentA,
            double heatW,
            double ratingW,
            List<Choice> standard,
            List<Finding> findings) {}

    /** Answers. */
    public static Answer<Result> choose(Input input) {
        double supplyV = input.supplyV() == null ? 0 : input.supplyV();
        double loadV = input.loadV() == null ? 0 : input.loadV();
        double currentA = current(input, loadV);
        double loadOhm = loadV / currentA;
        double ohm = (supplyV - loadV) / currentA;
        double heatW = currentA * (supplyV - loadV);
        List<Choice> standard = DoubleStream.of(PreferredNumbers.below(ohm), PreferredNumbers.above(ohm))
                .distinct()
                .mapToObj(value -> choice(value, loadOhm, supplyV))
                .toList();
        List<Finding> findings = heatW <= MUCH_HEAT_W
                ? List.of()
                : List.of(Finding.note(WorkshopMessage.RESISTOR_HEAT.with(arg("heatW", heatW)), PRACTICE)
                        .remedy(WorkshopMessage.USE_CONVERTER.with()));
        return new Answer<>(
                new Result(ohm, currentA, heatW, BallastPartRule.ratingToBuyW(heatW), standard, findings),
                List.of(
                        WorkshopMessage.RESISTOR_LAW.with(
                                arg("supplyV", supplyV),
                                arg("loadV", loadV),
                                arg("currentA", currentA),
                                arg("resistorOhm", ohm),
                                arg("heatW", heatW)),
                        WorkshopMessage.RESISTOR_FOLLOWS_CURRENT.with()),
                List.of(LAW, BallastPartRule.BASIS, PreferredNumbers.BASIS, PRACTICE),
                List.of(Caution.HOT_BALLAST, Caution.DISCONNECT_BATTERY, Caution.LOCAL_CODES));
    }

    private static double current(Input input, double loadV) {
        Double currentA = input.currentA();
        Double powerW = input.powerW();
        Double loadOhm = input.loadOhm();
        return currentA != null ? currentA : powerW != null ? powerW / loadV : loadOhm == null ? 0 : loadV / loadOhm;
    }

    private static Choice choice(double ohm, double loadOhm, double supplyV) {
        double currentA = supplyV / (ohm + loadOhm);
        double heatW = currentA * currentA * ohm;
        return new Choice(ohm, currentA * loadOhm, currentA, heatW, BallastPartRule.ratingToBuyW(heatW));
    }
}
