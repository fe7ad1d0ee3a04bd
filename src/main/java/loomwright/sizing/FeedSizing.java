package loomwright.sizing;

import static loomwright.message.Arg.arg;

import com.fasterxml.jackson.annotation.JsonUnwrapped;
import java.util.ArrayList;
import java.util.List;
import loomwright.answer.Accepted;
import loomwright.answer.Answer;
import loomwright.answer.Basis;
import loomwright.answer.Finding;
import loomwright.answer.InputError;
import loomwright.answer.RejectedInput;
import loomwright.conductor.SizeSystem;
import loomwright.judgement.Verdict;
import loomwright.judgement.wire.BudgetSplit;
import loomwright.message.Message;
import org.jspecify.annotations.Nullable;

/**
 * Several loads on one feed: a feed to a fuse box, and from there a wire with its own fuse to each load. The volts that a
 * load may lose are split over feed and branch so that they need least copper.
 */
public final class FeedSizing {
    private static final int MOST_LOADS = 20;
    /** Less is no budget. */
    private static final double LEAST_V = 1e-3;

    private FeedSizing() {}

    /**
     * One load behind the feed.
     *
     * @param label as the owner calls it
     * @param load what it is; default OTHER
     */
    public record Branch(
            @Nullable String label,
            @Nullable CircuitLoad load,
            @JsonUnwrapped LoadRating rating,
            @JsonUnwrapped RunLength run) {}

    /**
     * What is asked. Required: {@code loads} and one of {@code feedLengthM}, {@code feedLengthFt}. The rest as in
     * {@link CircuitSizing.Input}, for all wires.
     *
     * @param loads 1 to 20
     * @param feedLengthM from the battery to where the loads branch off
     * @param feedLengthFt the same in feet
     */
    public record Input(
            @Nullable List<Branch> loads,
            @Nullable Double feedLengthM,
            @Nullable Double feedLengthFt,
            @Nullable ReturnPath returnPath,
            @Nullable Double chassisOhm,
            @Nullable Double supplyV,
            @Nullable SizeSystem system,
            @JsonUnwrapped Laying laying) {
        public Input {
            loads = loads == null ? List.of() : List.copyOf(loads);
        }

        CircuitSizing.Input circuit(Branch branch, @Nullable Double limitV) {
            return new CircuitSizing.Input(
                    branch.load(),
                    branch.rating(),
                    branch.run(),
                    returnPath,
                    chassisOhm,
                    supplyV,
                    limitV,
                    system,
                    laying);
        }

        CircuitSizing.Input feed(double currentA, double limitV) {
            return new CircuitSizing.Input(
                    CircuitLoad.OTHER,
                    LoadRating.ofA(currentA),
                    new RunLength(feedLengthM, feedLengthFt),
                    returnPath == ReturnPath.WIRE ? ReturnPath.WIRE : ReturnPath.NONE,
                    null,
                    supplyV,
                    limitV,
                    system,
                    laying);
        }
    }

    /**
     * One load with its wire.
     *
     * @param label as given
     * @param budgetV what its wire may lose
     * @param circuit its wire alone
     * @param totalV lost in feed and branch together, with the smallest sizes
     * @param drop that against the limit of the load; absent if there is no such wire
     */
    public record Sized(
            @Nullable String label,
            double budgetV,
            CircuitSizing.Result circuit,
            @Nullable Double totalV,
            @Nullable Verdict drop) {}

    /**
     * The feed and its branches.
     *
     * @param currentA of all loads together
     * @param budgetV what the feed may lose
     * @param feed the feed alone
     */
    public record Result(
            double currentA, double budgetV, CircuitSizing.Result feed, List<Sized> branches, List<Finding> findings) {
        public Result {
            branches = List.copyOf(branches);
            findings = List.copyOf(findings);
        }
    }

    /**
     * Sizes a feed and what branches off.
     *
     * @param input see there
     * @throws RejectedInput with the pointers of the input's properties
     */
    public static Answer<Result> size(Input input) {
        List<Branch> loads = input.loads();
        Checked checked = new Checked();
        checked.check(
                loads != null && !loads.isEmpty() && loads.size() <= MOST_LOADS,
                InputError.Code.OUT_OF_RANGE,
                "/loads",
                loads == null ? 0 : loads.size(),
                Accepted.ENTRIES,
                arg("min", 1),
                arg("max", MOST_LOADS));
        double supplyV = checked.supply(input.supplyV());
        double feedM = feedLength(checked, input);
        checked.reject();
        List<Branch> branches = loads == null ? List.of() : loads;
        List<Answer<CircuitSizing.Result>> alone = new ArrayList<>();
        for (int i = 0; i < branches.size(); i++) {
            alone.add(sized(input.circuit(branches.get(i), null), "/loads/" + i));
        }
        double currentA =
                alone.stream().mapToDouble(a -> a.result().draws().currentA()).sum();
        double nominalV = DropLimit.nominalV(supplyV);
        double feedV = Double.POSITIVE_INFINITY;
        for (int i = 0; i < branches.size(); i++) {
            double loadA = alone.get(i).result().draws().currentA();
            double budgetV = kind(branches.get(i)).drop().newWireV(nominalV);
            List<Double> split = BudgetSplit.splitV(
                    budgetV,
                    List.of(new BudgetSplit.Run(feedM, currentA), new BudgetSplit.Run(length(branches.get(i)), loadA)));
            feedV = Math.min(feedV, split.get(0));
        }
        Answer<CircuitSizing.Result> feed = sized(input.feed(currentA, Math.max(LEAST_V, feedV)), "/loads");
        CircuitSizing.Wire feedWire = feed.result().smallest();
        double lostV = feedWire == null ? feedV : feedWire.dropV();
        List<Sized> sized = new ArrayList<>();
        List<Finding> findings = new ArrayList<>(feed.result().findings());
        List<Message> working = new ArrayList<>();
        working.add(CircuitMessage.BUDGET_SPLIT.with(arg("currentA", currentA), arg("feedV", feedV)));
        working.addAll(feed.working());
        for (int i = 0; i < branches.size(); i++) {
            Branch branch = branches.get(i);
            double leftV = Math.max(LEAST_V, kind(branch).drop().newWireV(nominalV) - lostV);
            Answer<CircuitSizing.Result> one = sized(input.circuit(branch, leftV), "/loads/" + i);
            CircuitSizing.Wire wire = one.result().smallest();
            Double totalV = wire == null ? null : lostV + wire.dropV();
            sized.add(new Sized(
                    branch.label(),
                    leftV,
                    one.result(),
                    totalV,
                    totalV == null ? null : kind(branch).drop().judge(totalV, nominalV)));
            findings.addAll(one.result().findings());
            working.addAll(one.working());
        }
        List<Basis> basis = new ArrayList<>(feed.basis());
        alone.forEach(a -> basis.addAll(a.basis()));
        basis.add(BudgetSplit.BASIS);
        return new Answer<>(
                new Result(currentA, feedV, feed.result(), sized, findings),
                working.stream().distinct().toList(),
                basis.stream().distinct().toList(),
                alone.get(0).assumptions(),
                CircuitSizing.cautions());
    }

    private static double feedLength(Checked checked, Input input) {
        Double metres = input.feedLengthM();
        Double feet = input.feedLengthFt();
        checked.check(
                metres != null || feet != null,
                InputError.Code.MISSING,
                "/feedLengthM",
                null,
                AcceptedRun.LENGTH,
                arg("metres", "feedLengthM"),
                arg("feet", "feedLengthFt"));
        return checked.optionalLength("/feedLengthM", metres, "/feedLengthFt", feet)
                .orElse(1.0);
    }

    private static CircuitLoad kind(Branch branch) {
        return branch.load() == null ? CircuitLoad.OTHER : branch.load();
    }

    private static double length(Branch branch) {
        return new Checked().length(branch.run());
    }

    /** Faults bear the place of the load that they are in. */
    private static Answer<CircuitSizing.Result> sized(CircuitSizing.Input input, String pointer) {
        try {
            return CircuitSizing.size(input);
        } catch (RejectedInput rejected) {
            throw new RejectedInput(rejected.faults().stream()
                    .map(fault -> isOfLoad(fault.pointer()) ? fault.under(pointer) : fault)
                    .toList());
        }
    }

    private static boolean isOfLoad(String pointer) {
        return List.of("/currentA", "/powerW", "/lengthM", "/lengthFt", "/load").contains(pointer);
    }
}
