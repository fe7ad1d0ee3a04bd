package loomwright.readings;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import loomwright.circuit.Coil;
import loomwright.circuit.Condition;
import loomwright.circuit.Consumer;
import loomwright.circuit.ContactBreaker;
import loomwright.circuit.Plan;
import loomwright.circuit.Switch;
import loomwright.circuit.TerminalRef;
import loomwright.message.Message;
import loomwright.operation.Contacts;
import loomwright.operation.FeedStrength;
import loomwright.operation.Intent;
import loomwright.operation.Point;
import loomwright.operation.Probe;
import loomwright.operation.Quantity;
import loomwright.operation.SolvedStep;
import loomwright.operation.Step;
import loomwright.operation.UsualIntent;
import loomwright.readings.ReadingsSheet.Purpose;

/**
 * The volts worth measuring around each load.
 *
 * <p>A load is measured in the first condition, in the order off to running, in which it should be live and is; an
 * ignition coil in each. First what it gets, then what is lost in the feed and the return, then the points that halve the
 * way. While the engine turns nobody has business at the coil's switched side: hundreds of volts.
 */
final class Circuits {
    private static final List<Step> STEPS = List.of(Step.OFF, Step.ACCESSORY, Step.RUN, Step.CRANK, Step.RUNNING);
    private final SolvedVariants variants;
    private final Plan plan;
    private final List<Condition> conditions;
    private final Set<String> chargeLamps;
    private final List<Map<String, String>> settings = new ArrayList<>(List.of(Map.of()));
    private final List<String> unfed = new ArrayList<>();
    private final Set<String> onTheWay = new HashSet<>();

    Circuits(SolvedVariants variants, List<Condition> conditions) {
        this.variants = variants;
        this.plan = variants.plan();
        this.conditions = conditions;
        this.chargeLamps = UsualIntent.chargeLamps(plan);
    }

    /** Loads that are never fed in the conditions asked for, by {@link #of}. */
    List<String> unfed() {
        return unfed;
    }

    /** Ids of what the current of the loads goes through, by {@link #of}. */
    Set<String> onTheWay() {
        return onTheWay;
    }

    List<ReadingCandidate> of(Consumer load) {
        List<ReadingCandidate> found = new ArrayList<>();
        for (Step step : STEPS) {
            List<Map<String, List<String>>> meant =
                    conditions.contains(step.condition()) ? Intent.settings(load, plan, step, chargeLamps) : List.of();
            if (!meant.isEmpty() && (found.isEmpty() || load instanceof Coil)) {
                found.addAll(in(load, step, setting(meant)));
            }
        }
        if (found.isEmpty()) {
            unfed.add(load.displayName());
        }
        return found;
    }

    private List<ReadingCandidate> in(Consumer load, Step step, Map<String, String> setting) {
        boolean atContacts = load instanceof Coil
                && !step.engineTurning()
                && !plan.listParts(ContactBreaker.class).isEmpty();
        ReadingState situation = new ReadingState(step, setting, atContacts ? Contacts.CLOSED : Contacts.EITHER);
        SolvedStep solved = variants.in(situation);
        if (!solved.solved() || solved.activity(load) != FeedStrength.OPERATES) {
            return List.of();
        }
        Around around = new Around(load, situation, solved);
        around.load();
        around.ways();
        if (atContacts) {
            around.contactsOpen();
        }
        return around.found;
    }

    /**
     * Positions of the free switches with which a load should be live; one that serves already, if there is one.
     *
     * @param meant as {@link Intent#settings} tells, not empty
     */
    private Map<String, String> setting(List<Map<String, List<String>>> meant) {
        for (Map<String, String> one : settings) {
            if (meant.stream().anyMatch(positions -> allServe(one, positions))) {
                return one;
            }
        }
        Map<String, String> made = new HashMap<>();
        meant.get(0).forEach((id, positions) -> {
            if (!serves(Map.of(), id, positions)) {
                made.put(id, positions.get(0));
            }
        });
        settings.add(made);
        return made;
    }

    private boolean allServe(Map<String, String> setting, Map<String, List<String>> positions) {
        return positions.entrySet().stream().allMatch(e -> serves(setting, e.getKey(), e.getValue()));
    }

    private boolean serves(Map<String, String> setting, String id, List<String> positions) {
        Switch chosen = (Switch) plan.findPart(id).orElseThrow();
        return positions.contains(
                setting.getOrDefault(id, chosen.in(Condition.OFF).name()));
    }

    /** The readings around one load in one situation. */
    private final class Around {
        private final Consumer load;
        private final ReadingState situation;
        private final SolvedStep solved;
        private final TerminalRef feed;
        private final TerminalRef back;
        private final List<ReadingCandidate> found = new ArrayList<>();

        Around(Consumer load, ReadingState situation, SolvedStep solved) {
            this.load = load;
            this.situation = situation;
            this.solved = solved;
            this.feed = load.terminal(load.feedTerminal());
            this.back = load.terminal(load.returnTerminal());
        }

        private boolean keepOff() {
            return load instanceof Coil && situation.step().engineTurning();
        }

        private void add(Purpose purpose, ReadingState when, Point from, Point to, Message tells) {
            found.add(new ReadingCandidate(purpose, when, load.id(), Quantity.VOLTS, new Probe(from, to), tells));
        }

        void load() {
            if (keepOff()) {
                add(Purpose.LOAD, situation, new Point(feed), Point.EARTH, ReadingText.COIL_AT_WORK.with());
            } else {
                add(Purpose.LOAD, situation, new Point(feed), new Point(back), ReadingWording.load(load));
            }
        }

        void ways() {
            Optional<Poles> poles = Poles.of(solved);
            if (poles.isEmpty()) {
                return;
            }
            TerminalRef start = poles.get().live();
            LoadFeed path = LoadFeed.of(solved, start, feed);
            for (TerminalRef output : Poles.charging(plan)) {
                if (path.legs().isEmpty()) {
                    start = output;
                    path = LoadFeed.of(solved, start, feed);
                }
            }
            path.legs().forEach(leg -> onTheWay.add(leg.branch().id()));
            List<LoadFeed.Leg> resistors = path.resistors();
            // Charging, the current comes from battery or alternator, and no figure of the way from one of them is
            // steady.
            if (path.legs().isEmpty() || situation.step().charging()) {
                return;
            }
            Point end = resistors.isEmpty()
                    ? new Point(feed)
                    : Point.parse(resistors.get(0).in());
            add(
                    Purpose.FEED_DROP,
                    situation,
                    new Point(start),
                    end,
                    ReadingWording.feedDrop(load, !resistors.isEmpty()));
            wayBack(poles.get());
            if (keepOff()) {
                return;
            }
            for (LoadFeed.Leg leg : resistors) {
                add(
                        Purpose.ACROSS_PART,
                        situation,
                        Point.parse(leg.in()),
                        Point.parse(leg.out()),
                        ReadingText.ACROSS.with());
            }
            path.halfSplit()
                    .forEach(at -> add(
                            Purpose.HALF_SPLIT,
                            situation,
                            Point.parse(at),
                            Point.EARTH,
                            ReadingWording.halfSplit(load)));
        }

        private void wayBack(Poles poles) {
            Probe probe = new Probe(new Point(back), new Point(poles.earthed()));
            if (!keepOff() && LoadFeed.of(solved, back, poles.earthed()).plain()) {
                add(Purpose.RETURN_DROP, situation, probe.from(), probe.to(), ReadingWording.returnDrop(load));
            }
        }

        void contactsOpen() {
            ReadingState open = new ReadingState(situation.step(), situation.setting(), Contacts.OPEN);
            add(Purpose.LOAD, open, new Point(back), Point.EARTH, ReadingText.CONTACTS_OPEN.with());
        }
    }
}
