package loomwright.backfeed;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.BitSet;
import java.util.Comparator;
import java.util.Deque;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.IntStream;
import loomwright.circuit.Consumer;
import loomwright.circuit.Part;
import loomwright.circuit.Switch;
import loomwright.network.NetworkLimits;
import loomwright.operation.Move;
import loomwright.operation.SettingScan;
import loomwright.operation.Step;
import loomwright.operation.SwitchSettings;
import org.jspecify.annotations.Nullable;

/**
 * Finds what a relay that stays in after a switch has moved back brings about: states that no setting has by itself. From the
 * plan as drawn it goes level by level in the number of switch moves, with the key turned in any way between them.
 *
 * <p>A move needs no solution where the relays already do what they do afresh in the setting it leads to; from there on nothing
 * new can come but what that setting shows by itself. Only states that differ from the fresh one are followed further.
 * Breadth-first search over (setting, step, state); cost: a solution for each move between settings whose fresh states differ.
 */
final class MoveSearch {
    /** Switches set before a state is left for one that no setting has by itself; the key may be turned any number of times. */
    private static final int MOST_CHANGES = 3;
    /** Switch moves in a row, with those that follow what stays in. */
    private static final int MOST_MOVES = 5;

    private static final Step[] STEPS = Step.values();
    /** Where the key can be turned from each step. */
    private static final Map<Step, List<Step>> TURNS = Map.of(
            Step.OFF, List.of(Step.ACCESSORY),
            Step.ACCESSORY, List.of(Step.RUN, Step.OFF),
            Step.RUN, List.of(Step.CRANK, Step.ACCESSORY, Step.OFF),
            Step.CRANK, List.of(Step.RUNNING, Step.RUN),
            Step.RUNNING, List.of(Step.OFF_ENGINE_TURNING),
            Step.OFF_ENGINE_TURNING, List.of(Step.OFF_AGAIN),
            Step.OFF_AGAIN, List.of(Step.ACCESSORY));

    private final SettingCodes codes;
    private final FreshStates fresh;
    private final UnintendedFeedScan feeds;
    private final SettingScan scan;
    private final int mostTries;
    private final SearchClock clock;
    private final Map<Node, Came> reached = new HashMap<>();
    /** Settings, steps and states that they began in: many ways lead to most of them, and the first is the shortest. */
    private final Set<Node> begun = new HashSet<>();
    /** By load and step. */
    private final Map<LoadInStep, Found> strongest = new HashMap<>();

    private final Map<LoadInStep, Found> simplest = new HashMap<>();

    private boolean complete = true;
    private int tries;
    private int deepest;

    /** Parts doing what they do in a state that the setting does not have by itself. */
    private record Node(int setting, Step step, int state) {}

    /** How a node was reached: by a move, from another node, or from the fresh state of a setting. */
    private record Came(@Nullable Node from, int freshSetting, Step freshStep, Move move, int moves) {}

    private record LoadInStep(int consumer, Step step) {}

    /**
     * A load fed more strongly than in the same setting afresh.
     *
     * @param moves all that is done, in order, for {@link loomwright.operation.MovedPlan}
     */
    record Found(int consumer, long code, Step step, Feed feed, List<Move> moves, int switchMoves) {}

    /**
     * What the search looked at.
     *
     * @param switchMoves how many in a row
     * @param complete whether no state was left to follow, or none within that many moves was left out
     */
    record Extent(int switchMoves, boolean complete) {}

    /**
     * Prepares a search.
     *
     * @param mostTries moves that are tried at most, so that what is found does not depend on how quick the machine is
     */
    MoveSearch(SettingCodes codes, FreshStates fresh, NetworkLimits limits, int mostTries, SearchClock clock) {
        this.codes = codes;
        this.fresh = fresh;
        this.feeds = new UnintendedFeedScan(codes.settings(), limits);
        this.scan = feeds.scan();
        this.mostTries = mostTries;
        this.clock = clock;
    }

    /** Of each load in each step the strongest case, and the one in which the fewest switches stand otherwise than drawn. */
    List<Found> find(int settings) {
        Deque<Node> level = new ArrayDeque<>();
        List<int[]> withChanges = settingsByChanges(settings, 0);
        for (int moves = 0; moves <= MOST_MOVES; moves++) {
            Deque<Node> next = new ArrayDeque<>();
            for (int[] setting : withChanges) {
                if (isOver(settings)) {
                    complete = false;
                    return found();
                }
                fromFresh(setting, moves, level, next);
            }
            while (!level.isEmpty()) {
                if (isOver(settings)) {
                    complete = false;
                    return found();
                }
                follow(level.remove(), moves, level, next);
            }
            deepest = Math.min(moves, MOST_CHANGES);
            level = next;
            withChanges = moves < MOST_CHANGES ? settingsByChanges(settings, moves + 1) : List.of();
        }
        boolean allSettings = codes.settings().open().size() <= MOST_CHANGES || fresh.distinct() == 1;
        complete &= level.isEmpty() && allSettings;
        return found();
    }

    private boolean isOver(int settings) {
        return tries >= mostTries || !clock.at(settings);
    }

    Extent extent() {
        return new Extent(deepest, complete);
    }

    private List<Found> found() {
        Set<Found> found = new LinkedHashSet<>(strongest.values());
        found.addAll(simplest.values());
        return found.stream()
                .sorted(Comparator.comparingInt(Found::consumer)
                        .thenComparing(Found::step)
                        .thenComparing(Found::feed)
                        .thenComparingLong(Found::code))
                .toList();
    }

    private List<int[]> settingsByChanges(int settings, int changes) {
        List<int[]> found = new ArrayList<>();
        combine(codes.settings().drawn(), 0, changes, found);
        found.removeIf(setting -> codes.number(setting) >= settings || !fresh.isKnown(codes.number(setting)));
        return found;
    }

    private void combine(int[] setting, int from, int changes, List<int[]> found) {
        if (changes == 0) {
            found.add(setting.clone());
            return;
        }
        for (int p = from; p <= setting.length - changes; p++) {
            for (int s = 1; s < codes.settings().open().get(p).size(); s++) {
                setting[p] = s;
                combine(setting, p + 1, changes - 1, found);
            }
            setting[p] = 0;
        }
    }

    /** Makes each move from what a setting does afresh. */
    private void fromFresh(int[] setting, int moves, Deque<Node> level, Deque<Node> next) {
        int number = codes.number(setting);
        for (Step step : STEPS) {
            int state = fresh.at(number, step);
            for (Step turned : turns(step)) {
                // Turned on step by step is what afresh means.
                if (turned.place() != step.place() + 1) {
                    arrive(setting, turned, state, null, number, step, Move.key(turned), moves)
                            .ifPresent(level::add);
                }
            }
            if (moves < MOST_CHANGES) {
                moveSwitches(setting, step, state, null, number, step, moves, next);
            }
        }
    }

    private void follow(Node node, int moves, Deque<Node> level, Deque<Node> next) {
        int[] setting = codes.settings().drawn();
        codes.settings().read(node.setting(), setting);
        for (Step turned : turns(node.step())) {
            arrive(setting, turned, node.state(), node, 0, node.step(), Move.key(turned), moves)
                    .ifPresent(level::add);
        }
        if (moves < MOST_MOVES) {
            moveSwitches(setting, node.step(), node.state(), node, 0, node.step(), moves, next);
        }
    }

    private void moveSwitches(
            int[] setting,
            Step step,
            int state,
            @Nullable Node from,
            int freshSetting,
            Step freshStep,
            int moves,
            Deque<Node> next) {
        for (int p = 0; p < setting.length; p++) {
            int stood = setting[p];
            List<Part> positions = codes.settings().open().get(p);
            for (int s = 0; s < positions.size(); s++) {
                if (s != stood) {
                    setting[p] = s;
                    Part part = positions.get(s);
                    Move move = new Move(part.id(), SwitchSettings.position(part));
                    arrive(setting, step, state, from, freshSetting, freshStep, move, moves + 1)
                            .ifPresent(next::add);
                }
            }
            setting[p] = stood;
        }
    }

    private static List<Step> turns(Step step) {
        return TURNS.getOrDefault(step, List.of());
    }

    private Optional<Node> arrive(
            int[] setting,
            Step step,
            int state,
            @Nullable Node from,
            int freshSetting,
            Step freshStep,
            Move move,
            int moves) {
        int number = codes.number(setting);
        if (!fresh.isKnown(number) || fresh.at(number, step) == state) {
            return Optional.empty();
        }
        if (!begun.add(new Node(number, step, state))) {
            return Optional.empty();
        }
        tries++;
        BitSet active = scan.settle(setting.clone(), step, fresh.state(state));
        int rests = scan.solved() ? fresh.numberOf(scan.memory(active)) : fresh.at(number, step);
        Node node = new Node(number, step, rests);
        if (rests == fresh.at(number, step) || reached.containsKey(node)) {
            return Optional.empty();
        }
        reached.put(node, new Came(from, freshSetting, freshStep, move, moves));
        if (momentaryAtRest(setting)) {
            judge(setting, node, moves);
        }
        return Optional.of(node);
    }

    /** A spring-loaded switch is back before anything is reported. */
    private boolean momentaryAtRest(int[] setting) {
        return IntStream.range(0, setting.length)
                .noneMatch(p -> setting[p] != 0
                        && codes.settings().open().get(p).get(0) instanceof Switch chosen
                        && chosen.momentary());
    }

    private void judge(int[] setting, Node node, int moves) {
        List<Consumer> consumers = feeds.consumers();
        Feed[] held = new Feed[consumers.size()];
        Arrays.setAll(held, c -> feeds.feedNow(setting, node.step(), c));
        if (IntStream.range(0, held.length).noneMatch(c -> isNews(c, held[c], node, moves))) {
            return;
        }
        scan.settle(setting.clone(), node.step(), fresh.state(fresh.at(node.setting(), node.step())));
        for (int c = 0; c < held.length; c++) {
            if (!held[c].isDead() && ScanTask.isWorse(held[c], feeds.feedNow(setting, node.step(), c))) {
                LoadInStep where = new LoadInStep(c, node.step());
                Found found = new Found(c, codes.code(setting), node.step(), held[c], sequence(node), moves);
                strongest.merge(where, found, (a, b) -> strongestFirst().compare(b, a) < 0 ? b : a);
                simplest.merge(where, found, (a, b) -> simplestFirst().compare(b, a) < 0 ? b : a);
            }
        }
    }

    /** Whether a load that is fed so would be the strongest case yet, or the simplest, of what a state keeps in. */
    private boolean isNews(int consumer, Feed held, Node node, int moves) {
        if (held.isDead()) {
            return false;
        }
        LoadInStep where = new LoadInStep(consumer, node.step());
        Found known = strongest.get(where);
        Found simple = simplest.get(where);
        if (known == null || simple == null) {
            return true;
        }
        int[] setting = codes.settings().drawn();
        codes.settings().read(node.setting(), setting);
        Found found = new Found(consumer, codes.code(setting), node.step(), held, List.of(), moves);
        return strongestFirst().compare(found, known) < 0 || simplestFirst().compare(found, simple) < 0;
    }

    private static Comparator<Found> strongestFirst() {
        return Comparator.comparing(Found::feed).thenComparingInt(Found::switchMoves);
    }

    /** The fewest switches that do not stand as drawn in the end. */
    private Comparator<Found> simplestFirst() {
        return Comparator.<Found>comparingInt(one -> codes.changes(one.code()))
                .thenComparingInt(Found::switchMoves)
                .thenComparing(Found::feed);
    }

    /** All that is done to get to a node: how the switches stand at first, the key turned on, and the moves. */
    private List<Move> sequence(Node node) {
        Deque<Move> moves = new ArrayDeque<>();
        Node at = node;
        Set<Node> seen = new HashSet<>();
        while (at != null && seen.add(at)) {
            Came came = reached.get(at);
            if (came == null) {
                throw new IllegalStateException("no way leads to " + at);
            }
            moves.addFirst(came.move());
            if (came.from() == null) {
                moves.addFirst(Move.key(came.freshStep()));
                int[] setting = codes.settings().drawn();
                codes.settings().read(came.freshSetting(), setting);
                codes.settings()
                        .positions(setting, true)
                        .forEach((id, position) -> moves.addFirst(new Move(id, position)));
            }
            at = came.from();
        }
        return List.copyOf(moves);
    }
}
