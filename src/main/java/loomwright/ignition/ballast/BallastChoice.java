package loomwright.ignition.ballast;

import static loomwright.message.Arg.arg;
import static loomwright.message.Arg.texts;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.stream.Stream;
import loomwright.answer.Accepted;
import loomwright.answer.Answer;
import loomwright.answer.Basis;
import loomwright.answer.Caution;
import loomwright.answer.InputError;
import loomwright.answer.InputErrors;
import loomwright.circuit.Condition;
import loomwright.ignition.Bisection;
import loomwright.ignition.ballast.ChoiceResult.Gives;
import loomwright.ignition.ballast.ChoiceResult.KeyOnFigures;
import loomwright.ignition.ballast.ChoiceResult.Series;
import loomwright.ignition.ballast.ChoiceResult.Standard;
import loomwright.ignition.ballast.ChoiceResult.Tap;
import loomwright.judgement.ignition.BallastPartRule;
import loomwright.judgement.ignition.CoilKind;
import loomwright.judgement.ignition.IgnitionRule;
import loomwright.message.Message;
import org.jspecify.annotations.Nullable;

/** The questions about a ballast backwards: which one gives a wanted voltage, current or heat, and where its tap sits. */
public final class BallastChoice {
    private static final double LEAST_OHM = 1e-3;
    private static final double MOST_OHM = 100;
    private static final double TOLERANCE_OHM = 1e-12;
    /** Ends and middle of the usual ranges, 1.2 to 1.8 ohm and some of 0.9 to 2.0. Common practice, no source. */
    private static final List<Double> COMMON_OHM = List.of(0.9, 1.2, 1.5, 1.8, 2.0);

    private BallastChoice() {}

    /**
     * Finds ballast and tap.
     *
     * <p>The coil's current falls as the ballast grows, so the ballast that gives a wanted current is found by halving on
     * the same solved network that answers the forward question. Voltage and heat are turned into a current first: I = U /
     * R, I = sqrt(P / R).
     *
     * @param input what is wanted
     * @return the ballast in ohms at its temperature; forward again it gives what was wanted within 1e-9
     * @throws loomwright.answer.RejectedInput with every fault of the input
     */
    public static Answer<ChoiceResult> calculate(ChoiceInput input) {
        InputErrors faults = new InputErrors()
                .range("/wantedCoilV", input.wantedCoilV(), 0.1, 60)
                .range("/wantedCoilA", input.wantedCoilA(), 0.01, 100)
                .range("/wantedCoilHeatW", input.wantedCoilHeatW(), 0.01, 1000)
                .range("/ballastOhm", input.ballastOhm(), LEAST_OHM, MOST_OHM)
                .range("/wantedCrankingCoilV", input.wantedCrankingCoilV(), 0.1, 60);
        long given = Stream.of(input.wantedCoilV(), input.wantedCoilA(), input.wantedCoilHeatW(), input.ballastOhm())
                .filter(value -> value != null)
                .count();
        faults.check(
                given == 1,
                given == 0 ? InputError.Code.MISSING : InputError.Code.CONTRADICTION,
                "/wantedCoilV",
                input.wantedCoilV(),
                Accepted.EXACTLY_ONE,
                texts("names", List.of("wantedCoilV", "wantedCoilA", "wantedCoilHeatW", "ballastOhm")));
        FeedResolver.Resolved resolved = FeedResolver.resolve(input.feed(), faults);
        BallastChoice.Search search = new Search(resolved.feed(), input);
        ChoiceResult result = search.result();
        List<Message> working = new ArrayList<>(resolved.assumed());
        working.addAll(search.working);
        List<Basis> basis = new ArrayList<>(BallastFeed.basis(resolved.feed()));
        basis.add(PreferredNumbers.BASIS);
        basis.add(BallastPartRule.BASIS);
        basis.add(Basis.commonPractice("ballasts of 0.9, 1.2, 1.5, 1.8 and 2.0 ohm are the common ones"));
        return new Answer<>(
                result, working, basis, List.of(Caution.DISCONNECT_BATTERY, Caution.HOT_BALLAST, Caution.LOCAL_CODES));
    }

    /** One search. */
    private static final class Search {
        private final IgnitionFeed feed;
        private final ChoiceInput wanted;
        private final List<Message> working = new ArrayList<>();

        Search(IgnitionFeed feed, ChoiceInput wanted) {
            this.feed = feed;
            this.wanted = wanted;
        }

        ChoiceResult result() {
            Double ohm = wanted.ballastOhm() != null ? wanted.ballastOhm() : ballastOhm(wantedA());
            if (ohm == null) {
                return new ChoiceResult(
                        null, needsBallast(), notReached(), without(), null, List.of(), null, null, List.of());
            }
            Gives exact = gives(ohm);
            Message text = BallastText.BALLAST_GIVES.with(
                    arg("ballastOhm", ohm),
                    arg("need", need()),
                    arg("coilPrimaryOhm", feed.coil20Ohm()),
                    arg("coilV", exact.keyOn().coilV()),
                    arg("coilA", exact.keyOn().coilA()),
                    arg("coilW", exact.keyOn().coilHeatW()),
                    arg("runningCoilV", exact.runningCoilV()),
                    arg("runningCoilW", exact.runningCoilHeatW()),
                    arg("ballastW", exact.keyOn().ballastHeatW()),
                    arg("ratingW", exact.ratingToBuyW()));
            working.add(text);
            IgnitionFeed chosen = feed.withElements(List.of(ohm));
            return new ChoiceResult(
                    ohm,
                    needsBallast(),
                    text,
                    without(),
                    exact,
                    nearest(ohm),
                    tap(ohm),
                    BallastFeed.feedNeed(chosen),
                    BallastFeed.findings(chosen));
        }

        private boolean needsBallast() {
            return CoilKind.ofOhm(feed.coil20Ohm(), feed.nominalVoltageV()) == CoilKind.WITH_BALLAST;
        }

        /** What the coil is made for. */
        private String need() {
            return CoilKind.ofOhm(feed.coil20Ohm(), feed.nominalVoltageV())
                    .name()
                    .toLowerCase(Locale.ROOT)
                    .replace('_', '-');
        }

        private double wantedA() {
            Double volts = wanted.wantedCoilV();
            Double watts = wanted.wantedCoilHeatW();
            Double amperes = wanted.wantedCoilA();
            if (volts != null) {
                double a = volts / feed.coilOhm();
                working.add(BallastText.WANTED_BY_VOLTAGE.with(
                        arg("coilV", volts), arg("coilOhm", feed.coilOhm()), arg("wantedA", a)));
                return a;
            }
            if (watts != null) {
                double a = Math.sqrt(watts / feed.coilOhm());
                working.add(BallastText.WANTED_BY_HEAT.with(
                        arg("coilW", watts), arg("coilOhm", feed.coilOhm()), arg("wantedA", a)));
                return a;
            }
            return amperes == null ? 0 : amperes;
        }

        /** The ballast for a current; null where even the least or the largest does not give it. */
        private @Nullable Double ballastOhm(double wantedA) {
            if (excess(LEAST_OHM, wantedA) < 0 || excess(MOST_OHM, wantedA) > 0) {
                return null;
            }
            double ohm = Bisection.root(r -> excess(r, wantedA), LEAST_OHM, MOST_OHM, TOLERANCE_OHM);
            Double limitA = feed.closing().limitA();
            if (limitA != null && wantedA >= limitA) {
                return null;
            }
            if (!feed.closing().module()) {
                working.add(BallastText.BALLAST_BY_OHMS_LAW.with(
                        arg("supplyV", feed.supplies().atRestV()),
                        arg("wantedA", wantedA),
                        arg("feedOhm", feed.leads().feedOhm()),
                        arg("coilOhm", feed.coilOhm()),
                        arg("contactOhm", feed.closing().contactOhm()),
                        arg("returnOhm", feed.leads().returnOhm()),
                        arg("ballastOhm", ohm)));
            }
            return ohm;
        }

        private double excess(double ohm, double wantedA) {
            return FeedSolver.coilA(feed.withElements(List.of(ohm)), Condition.RUN, false) - wantedA;
        }

        private Message notReached() {
            Gives none = gives(LEAST_OHM);
            return BallastText.BALLAST_NOT_REACHED.with(
                    arg("need", need()),
                    arg("coilPrimaryOhm", feed.coil20Ohm()),
                    arg("coilV", none.keyOn().coilV()),
                    arg("coilA", none.keyOn().coilA()),
                    arg("coilW", none.keyOn().coilHeatW()),
                    arg("limited", feed.closing().limitA() == null ? "no" : "yes"),
                    arg("mostOhm", MOST_OHM),
                    arg("leastV", gives(MOST_OHM).keyOn().coilV()));
        }

        /** A coil that needs no ballast is best without: that comes before any ballast. */
        private @Nullable Gives without() {
            return CoilKind.ofOhm(feed.coil20Ohm(), feed.nominalVoltageV()) == CoilKind.DIRECT
                    ? gives(feed.withoutBallast(), 0)
                    : null;
        }

        private Gives gives(double ohm) {
            return gives(feed.withElements(List.of(ohm)), ohm);
        }

        private Gives gives(IgnitionFeed with, double ohm) {
            Map<Condition, FeedState> states = FeedSolver.states(with, false);
            FeedState state = in(states, Condition.RUN);
            FeedState running = in(states, Condition.RUNNING);
            return new Gives(
                    ohm,
                    new KeyOnFigures(
                            state.electric().coilV(),
                            state.electric().currentA(),
                            state.heat().coilHeatW(),
                            state.heat().ballastHeatW()),
                    in(states, Condition.CRANK).electric().coilV(),
                    running.electric().coilV(),
                    running.heat().coilHeatW(),
                    ohm == 0 ? 0 : BallastPartRule.ratingToBuyW(state.heat().ballastHeatW()),
                    IgnitionRule.level(with.loop()),
                    state.verdict());
        }

        private static FeedState in(Map<Condition, FeedState> states, Condition condition) {
            FeedState state = states.get(condition);
            if (state == null) {
                throw new IllegalStateException("not solved: " + condition);
            }
            return state;
        }

        private List<Standard> nearest(double ohm) {
            List<Standard> nearest = new ArrayList<>();
            nearest.add(new Standard(Series.E12, gives(PreferredNumbers.nearest(PreferredNumbers.E12, ohm))));
            nearest.add(new Standard(Series.E24, gives(PreferredNumbers.nearest(PreferredNumbers.E24, ohm))));
            COMMON_OHM.stream()
                    .sorted((a, b) -> Double.compare(Math.abs(a - ohm), Math.abs(b - ohm)))
                    .forEach(common -> nearest.add(new Standard(Series.COMMON, gives(common))));
            return nearest;
        }

        private @Nullable Tap tap(double totalOhm) {
            Double wantedV = wanted.wantedCrankingCoilV();
            if (wantedV == null) {
                return null;
            }
            double wantedA = wantedV / feed.coilOhm();
            double least = LEAST_OHM / 10;
            double afterOhm;
            boolean reached = false;
            if (crankingA(totalOhm, least) < wantedA) {
                afterOhm = least;
            } else if (crankingA(totalOhm, totalOhm - least) > wantedA) {
                afterOhm = totalOhm - least;
            } else {
                reached = true;
                afterOhm = Bisection.root(
                        after -> crankingA(totalOhm, after) - wantedA, least, totalOhm - least, TOLERANCE_OHM);
            }
            double currentA = crankingA(totalOhm, afterOhm);
            double coilV = currentA * feed.coilOhm();
            Message text = reached
                    ? BallastText.TAP.with(
                            arg("afterOhm", afterOhm), arg("beforeOhm", totalOhm - afterOhm), arg("coilV", coilV))
                    : BallastText.TAP_NOT_REACHED.with(arg("wantedV", wantedV), arg("coilV", coilV));
            working.add(text);
            return new Tap(reached, totalOhm - afterOhm, afterOhm, coilV, currentA, text);
        }

        private double crankingA(double totalOhm, double afterOhm) {
            IgnitionFeed tapped =
                    feed.withElements(List.of(totalOhm - afterOhm, afterOhm)).withTap(1);
            return FeedSolver.coilA(tapped, Condition.CRANK, true);
        }
    }
}
