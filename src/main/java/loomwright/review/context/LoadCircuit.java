package loomwright.review.context;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import java.util.function.IntPredicate;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import loomwright.circuit.Ballast;
import loomwright.circuit.Battery;
import loomwright.circuit.Consumer;
import loomwright.circuit.Electromagnet;
import loomwright.circuit.FixedResistor;
import loomwright.circuit.Flasher;
import loomwright.circuit.Generator;
import loomwright.circuit.IgnitionModule;
import loomwright.circuit.Part;
import loomwright.circuit.Plan;
import loomwright.circuit.Relay;
import loomwright.circuit.Solenoid;
import loomwright.circuit.Stabiliser;
import loomwright.circuit.TerminalRef;
import loomwright.operation.Branch;
import loomwright.operation.CurrentPaths;
import loomwright.operation.SolvedStep;
import loomwright.operation.Step;

/**
 * The way that most of a load's current takes: along the feed, which is the live side, and along the return, on the side
 * of the chassis.
 *
 * <p>From one source every way has the same voltage, so the drops of feed and return are those of any of them as long as it
 * meets the same resistances that are there on purpose: those are no drop. Of several sources it is that of the widest way.
 */
public final class LoadCircuit {
    private final SolvedStep solved;
    private final List<Integer> feed;
    private final List<Integer> back;
    private final Map<String, Double> feedContributorsV;
    private final Map<String, Double> returnContributorsV;
    private final double supplyV;

    private LoadCircuit(SolvedStep solved, List<Integer> feed, List<Integer> back, double supplyV) {
        this.solved = solved;
        this.feed = feed;
        this.back = back;
        this.feedContributorsV = contributors(feed);
        this.returnContributorsV = contributors(back);
        this.supplyV = supplyV;
    }

    /** The loop of a load; empty if no current comes from a source to it. */
    public static Optional<LoadCircuit> find(SolvedStep solved, Consumer load) {
        return find(solved, new CurrentPaths(solved), load);
    }

    /** The same, if the paths of that step are at hand. */
    public static Optional<LoadCircuit> find(SolvedStep solved, CurrentPaths paths, Consumer load) {
        int branch = solved.findBranch(load);
        return branch < 0 ? Optional.empty() : find(solved, paths, branch);
    }

    /** The loop of one branch of a part, such as the supply of a module. */
    public static Optional<LoadCircuit> find(SolvedStep solved, int branch) {
        return find(solved, new CurrentPaths(solved), branch);
    }

    private static Optional<LoadCircuit> find(SolvedStep solved, CurrentPaths paths, int branch) {
        List<Integer> way = paths.widest(paths.head(branch), paths.tail(branch));
        int first = -1;
        int last = -1;
        double supplyV = 0;
        for (int i = 0; i < way.size(); i++) {
            if (isSource(solved, way.get(i))) {
                first = first < 0 ? i : first;
                last = i;
                Branch source = solved.branches().get(way.get(i));
                supplyV += Math.abs(solved.acrossV(source.fromNode(), source.toNode()));
            }
        }
        if (first < 0) {
            return Optional.empty();
        }
        // The way leads from the load by its return to the source, and from there by the feed to the load.
        return Optional.of(new LoadCircuit(solved, way.subList(last + 1, way.size()), way.subList(0, first), supplyV));
    }

    private static boolean isSource(SolvedStep solved, int index) {
        return solved.powerW(index) < 0
                && solved.partOf(index)
                        .filter(p -> p instanceof Battery || p instanceof Generator)
                        .isPresent();
    }

    /** Volts at the terminals of the source. */
    public double supplyV() {
        return supplyV;
    }

    public double feedDropV() {
        return feedContributorsV.values().stream()
                .mapToDouble(Double::doubleValue)
                .sum();
    }

    public double returnDropV() {
        return returnContributorsV.values().stream()
                .mapToDouble(Double::doubleValue)
                .sum();
    }

    /** What loses volts in the feed, by id of wire, part or connector. */
    public Map<String, Double> feedContributorsV() {
        return feedContributorsV;
    }

    public Map<String, Double> returnContributorsV() {
        return returnContributorsV;
    }

    private Map<String, Double> contributors(List<Integer> way) {
        Map<String, Double> drops = new LinkedHashMap<>();
        for (int index : way) {
            Branch branch = solved.branches().get(index);
            if (!isOnPurpose(solved, index)) {
                double acrossV = Math.abs(solved.acrossV(branch.fromNode(), branch.toNode()));
                drops.merge(branch.id(), acrossV + warmedV(index, branch), Double::sum);
            }
        }
        return drops;
    }

    /**
     * What a wire loses more once its current has warmed it: the circuit is solved with its copper as warm as the place.
     * A starter turns too shortly for that.
     */
    private double warmedV(int index, Branch branch) {
        if (branch.owner() != Branch.Owner.WIRE
                || solved.step() == Step.CRANK
                || solved.step().passing()) {
            return 0;
        }
        Plan plan = solved.plan();
        double currentA = Math.abs(solved.currentA(index));
        return plan.findWire(branch.id())
                .flatMap(wire -> WireRating.find(wire, plan.system())
                        .filter(rating -> wire.metres() != null && !rating.tooHot())
                        .map(rating ->
                                currentA * rating.warmedOhmPerM(currentA) * Objects.requireNonNull(wire.metres())))
                .orElse(0.0);
    }

    /** Whether the resistance of a branch is there to be used: of a ballast, another load, a module. */
    static boolean isOnPurpose(SolvedStep solved, int index) {
        Branch branch = solved.branches().get(index);
        return solved.partOf(index)
                .filter(part -> part instanceof Ballast
                        || part instanceof FixedResistor
                        || part instanceof Stabiliser
                        || part instanceof Flasher
                        || part instanceof Generator
                        || part instanceof Battery
                        || part instanceof IgnitionModule
                        || (part instanceof Consumer && !isContact(part, branch)))
                .isPresent();
    }

    /** Whether a branch of a part is the contact of a relay or solenoid. */
    public static boolean isContact(Part part, Branch branch) {
        String from = part instanceof Relay ? Relay.COMMON : Solenoid.SUPPLY;
        return part instanceof Electromagnet
                && branch.from().equals(part.terminal(from).toString());
    }

    /** Whether the current goes through a part of some kind, but for the load and the source themselves. */
    boolean leadsThrough(IntPredicate branch) {
        return feed.stream().anyMatch(branch::test) || back.stream().anyMatch(branch::test);
    }

    /** Whether the contact of a solenoid is in the feed. */
    public boolean throughSolenoid() {
        return leadsThrough(i -> solved.partOf(i)
                .filter(p ->
                        p instanceof Solenoid && isContact(p, solved.branches().get(i)))
                .isPresent());
    }

    /** Resistance on purpose in front of or behind the load, ohm; 0 without any. */
    public double ballastOhm() {
        return ballasts()
                .filter(i -> solved.currentA(i) != 0)
                .mapToDouble(this::ohm)
                .sum();
    }

    private double ohm(int index) {
        Branch branch = solved.branches().get(index);
        return Math.abs(solved.acrossV(branch.fromNode(), branch.toNode()) / solved.currentA(index));
    }

    /** The end of the first ballast or resistor in the feed that lies towards the source; empty if there is none. */
    public Optional<TerminalRef> aheadOfBallast() {
        return feed.stream()
                .filter(i -> isBallast(solved, i))
                .findFirst()
                .map(i -> solved.branches().get(i))
                .map(branch -> TerminalRef.parse(
                        fromChassisV(branch.fromNode()) >= fromChassisV(branch.toNode())
                                ? branch.from()
                                : branch.to()));
    }

    private double fromChassisV(int node) {
        return Math.abs(solved.voltageV(node).orElse(0));
    }

    private static boolean isBallast(SolvedStep solved, int branch) {
        return solved.partOf(branch)
                .filter(p -> p instanceof Ballast || p instanceof FixedResistor)
                .isPresent();
    }

    /** The most that any of these resistances carries, A; more than the load where some of it leaves on the way. */
    public double ballastA() {
        return ballasts().mapToDouble(i -> Math.abs(solved.currentA(i))).max().orElse(0);
    }

    /** The ids of these resistances. */
    public Set<String> ballastIds() {
        return ballasts().mapToObj(i -> solved.branches().get(i).id()).collect(Collectors.toSet());
    }

    private IntStream ballasts() {
        return Stream.concat(feed.stream(), back.stream())
                .mapToInt(Integer::intValue)
                .filter(i -> isBallast(solved, i));
    }

    /** A module in the loop. */
    public Optional<IgnitionModule> findModule() {
        return Stream.concat(feed.stream(), back.stream())
                .flatMap(i -> solved.partOf(i).stream())
                .filter(IgnitionModule.class::isInstance)
                .map(IgnitionModule.class::cast)
                .findFirst();
    }

    /** The wires in it. */
    public List<String> wires() {
        return Stream.concat(feed.stream(), back.stream())
                .map(i -> solved.branches().get(i))
                .filter(b -> b.owner() == Branch.Owner.WIRE)
                .map(Branch::id)
                .toList();
    }
}
