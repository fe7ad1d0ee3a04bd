package loomwright.ignition.ballast;

import static loomwright.message.Arg.arg;
import static loomwright.message.Arg.list;
import static loomwright.message.Arg.messages;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import loomwright.answer.Answer;
import loomwright.answer.Basis;
import loomwright.answer.Caution;
import loomwright.answer.Finding;
import loomwright.circuit.Condition;
import loomwright.ignition.FeedNeed;
import loomwright.ignition.ballast.BallastResult.InCondition;
import loomwright.ignition.ballast.BallastResult.Turned;
import loomwright.ignition.ballast.FeedState.ElementState;
import loomwright.ignition.spark.SparkFinding;
import loomwright.ignition.spark.SparkRemedy;
import loomwright.judgement.ignition.CoilWindow;
import loomwright.judgement.ignition.IgnitionRule;
import loomwright.judgement.ignition.ModuleSupplyRule;
import loomwright.message.Arg;
import loomwright.message.Argument.Count;
import loomwright.message.Message;
import org.jspecify.annotations.Nullable;

/** What a ballast leaves for the coil, with and without bypass, in each condition of the key. */
public final class BallastFeed {
    /** An element that has less than this share of the coil's current is out of the circuit to anybody's purpose. */
    private static final double TAKEN_OUT_SHARE = 0.1;

    private static final double SAME_A = 1e-9;

    private BallastFeed() {}

    /**
     * The whole answer for one feed.
     *
     * <p>The feed is set out as a plan and solved like any plan: I = (U - drop) / (sum of the resistances) where nothing
     * branches. Averages are those of a resistance that is switched: dwell fraction times the closed figure; the coil's
     * inductance makes the true ones smaller, which the spark calculation shows.
     *
     * @param input what is known; the rest is taken as common, and said
     * @return states, readings, faults; the heats add up to what the battery gives within 1e-9
     * @throws loomwright.answer.RejectedInput with every fault of the input
     */
    public static Answer<BallastResult> calculate(BallastInput input) {
        FeedResolver.Resolved resolved = FeedResolver.resolve(input);
        IgnitionFeed feed = resolved.feed();
        BallastResult result = result(feed);
        List<Message> working = new ArrayList<>(resolved.assumed());
        working.addAll(BallastWorking.lines(feed, result));
        return new Answer<>(result, working, basis(feed), cautions(result));
    }

    private static BallastResult result(IgnitionFeed feed) {
        Map<Condition, FeedState> without = FeedSolver.states(feed, false);
        Map<Condition, FeedState> with = feed.ballast().bypassTap() == null ? Map.of() : FeedSolver.states(feed, true);
        List<InCondition> conditions = without.entrySet().stream()
                .map(entry -> new InCondition(
                        entry.getKey(), feed.supplies().in(entry.getKey()), entry.getValue(), with.get(entry.getKey())))
                .toList();
        FeedState keyOn = conditions.get(0).withoutBypass();
        FeedState cranking = with.get(Condition.CRANK);
        List<Integer> out = cranking == null ? List.of() : takenOut(cranking);
        Turned turned = turned(feed, conditions);
        return new BallastResult(
                new BallastResult.KeyOn(keyOn.electric().coilV(), keyOn.verdict()),
                conditions,
                crankingSupply(feed),
                new BallastResult.Turning(polarity(feed, turned, out), turned),
                new BallastResult.Bypassing(out, cranking == null ? null : bypass(cranking, out)),
                ElementFaults.of(feed, keyOn),
                feed.thermal().asked() ? Warming.of(feed) : null,
                feedNeed(feed),
                findings(feed),
                FeedPlan.of(feed, FeedPlan.Bypass.BY_CONDITION, true));
    }

    /** The largest current that lasts: contacts closed at rest, or the mean while running. */
    static FeedNeed feedNeed(IgnitionFeed feed) {
        Map<Condition, FeedState> states = FeedSolver.states(feed, false);
        double restA = feed.closing().module()
                ? 0
                : Objects.requireNonNull(states.get(Condition.RUN)).electric().currentA();
        double runningA =
                Objects.requireNonNull(states.get(Condition.RUNNING)).electric().averageA();
        return restA >= runningA ? FeedNeed.keyOn(restA) : FeedNeed.running(runningA, null);
    }

    /** What the judge finds in the primary circuit, and a module that is short of volts. */
    static List<Finding> findings(IgnitionFeed feed) {
        List<Finding> findings = new ArrayList<>(IgnitionRule.findings(feed.loop()));
        if (feed.closing().module()) {
            double crankingV = feed.supplies().crankingV();
            double deadV = feed.closing().deadBelowV();
            ModuleSupplyRule.judge(crankingV, feed.nominalVoltageV(), deadV)
                    .level()
                    .severity()
                    .ifPresent(severity -> findings.add(Finding.of(
                                    severity,
                                    SparkFinding.MODULE_SUPPLY_LOW.with(
                                            arg("supplyV", crankingV),
                                            arg("deadV", deadV),
                                            arg("sureV", ModuleSupplyRule.sureV(feed.nominalVoltageV(), deadV))),
                                    ModuleSupplyRule.BASIS)
                            .remedy(SparkRemedy.forModule(feed.nominalVoltageV(), deadV))));
        }
        findings.sort(Comparator.comparing(Finding::severity));
        return findings;
    }

    static List<Integer> takenOut(FeedState state) {
        return state.elements().stream()
                .filter(element -> Math.abs(element.currentA())
                        < TAKEN_OUT_SHARE * Math.abs(state.electric().currentA()))
                .map(ElementState::element)
                .toList();
    }

    private static Turned turned(IgnitionFeed feed, List<InCondition> conditions) {
        IgnitionFeed turned = feed.turned();
        Map<Condition, FeedState> without = FeedSolver.states(turned, false);
        Map<Condition, FeedState> with = feed.ballast().bypassTap() == null ? without : FeedSolver.states(turned, true);
        boolean same = true;
        for (InCondition in : conditions) {
            same &= same(in.withoutBypass(), without.get(in.condition()));
            FeedState before = in.withBypass();
            same &= before == null || same(before, with.get(in.condition()));
        }
        int count = feed.ballast().elements20Ohm().size();
        FeedState keyOn = known(without.get(Condition.RUN));
        FeedState cranking = known(with.get(Condition.CRANK));
        return new Turned(
                same,
                turned.elementsOhm(),
                keyOn.electric().coilV(),
                cranking.electric().coilV(),
                feed.ballast().bypassTap() == null
                        ? List.of()
                        : takenOut(cranking).stream()
                                .map(element -> count + 1 - element)
                                .sorted()
                                .toList());
    }

    private static FeedState known(@Nullable FeedState state) {
        if (state == null) {
            throw new IllegalStateException("a condition was not solved");
        }
        return state;
    }

    private static boolean same(FeedState before, @Nullable FeedState after) {
        return Math.abs(before.electric().currentA() - known(after).electric().currentA())
                <= SAME_A * Math.max(1, before.electric().currentA());
    }

    private static Message polarity(IgnitionFeed feed, Turned turned, List<Integer> out) {
        if (feed.ballast().elements20Ohm().isEmpty()) {
            return BallastText.NO_BALLAST.with();
        }
        if (feed.ballast().bypassTap() == null || feed.ballast().elements20Ohm().size() == 1) {
            return BallastText.TURNED.with();
        }
        return BallastText.TURNED_WITH_TAP.with(
                elements("asMounted", out),
                elements("turned", turned.bypassedElements()),
                arg("same", turned.sameAnswer() ? "yes" : "no"),
                arg("crankingCoilV", turned.crankingCoilV()));
    }

    private static Message bypass(FeedState cranking, List<Integer> out) {
        return BallastText.BYPASSED.with(
                messages(
                        "carried",
                        cranking.elements().stream()
                                .map(element -> BallastText.ELEMENT_CARRIES.with(
                                        arg("element", element.element()),
                                        arg("currentA", element.carriesNothing() ? 0 : element.currentA())))
                                .toList()),
                elements("takenOut", out));
    }

    private static Arg elements(String name, List<Integer> elements) {
        return list(name, elements.stream().map(element -> new Count(element)).toList());
    }

    private static Message crankingSupply(IgnitionFeed feed) {
        double crankingV = feed.supplies().crankingV();
        double usualV = feed.window().crankingV();
        return BallastText.CRANKING_SUPPLY.with(
                arg("crankingV", crankingV), arg("usualV", usualV), arg("usual", crankingV <= usualV ? "yes" : "no"));
    }

    static List<Basis> basis(IgnitionFeed feed) {
        List<Basis> basis = new ArrayList<>(List.of(
                Basis.computed("node voltages and currents", "Kirchhoff's laws and Ohm's law"),
                CoilWindow.BASIS,
                IgnitionRule.COMBINATION_BASIS,
                IgnitionRule.HEAT_BASIS,
                Basis.commonPractice("about 10 V or less at the battery while cranking, 12 V system"),
                Basis.commonPractice("assumed values: 12.6 V at rest, 10 V cranking, 14.2 V charging at 12 V"),
                Basis.computed(
                        "averages", "dwell fraction times the figure with contacts closed, inductance left out")));
        if (feed.temperatures().coilC() != 20 || feed.thermal().asked()) {
            basis.add(Basis.fromMemory("copper 0.00393 per K at 20 C", "IEC 60028"));
        }
        basis.addAll(FeedNeed.BASIS);
        return basis;
    }

    static List<Caution> cautions(BallastResult result) {
        List<Caution> cautions = new ArrayList<>(List.of(Caution.DISCONNECT_BATTERY, Caution.HIGH_TENSION));
        boolean hot = result.conditions().stream()
                .anyMatch(in -> in.withoutBypass().heat().ballastHeatW() >= 1);
        if (hot) {
            cautions.add(Caution.HOT_BALLAST);
        }
        cautions.add(Caution.KEY_LEFT_ON);
        cautions.add(Caution.MOVING_PARTS);
        cautions.add(Caution.LOCAL_CODES);
        return cautions;
    }
}
