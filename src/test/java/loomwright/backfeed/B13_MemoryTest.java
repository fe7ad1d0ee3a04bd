package loomwright.backfeed;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayDeque;
import java.util.Deque;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import loomwright.backfeed.BackfeedReport.Occurrence;
import loomwright.circuit.Consumer;
import loomwright.circuit.Part;
import loomwright.circuit.Plan;
import loomwright.circuit.Plans;
import loomwright.circuit.RandomVehicle;
import loomwright.circuit.Relay;
import loomwright.circuit.Solenoid;
import loomwright.circuit.Switch;
import loomwright.operation.DenseOracle;
import loomwright.operation.DenseOracle.Rests;
import loomwright.operation.Intent;
import loomwright.operation.Step;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.ShrinkingMode;
import net.jqwik.api.constraints.IntRange;
import org.junit.jupiter.api.Test;

/** Feature 13: a relay that stays in after the switch that pulled it in has moved back is found. */
class B13_MemoryTest {
    private static final int MOST_STATES = 64;
    private static final int DEEP = 3;

    private static String contact(String id) {
        return "{'kind':'switch','id':'" + id + "','terminals':['a','b'],'positions':[{'name':'off','joins':[]},"
                + "{'name':'on','joins':[['a','b']]}]},";
    }

    /**
     * Spot lamps by a relay whose coil hangs on the main beam through a switch. A wire from the lamps back to the main
     * beam keeps all of them lit once they are on: beam on, spots on, beam off.
     */
    private static Plan spotLamps() {
        StringBuilder wires = new StringBuilder();
        String[] joined = {
            "battery.minus body.31",
            "battery.plus beam-switch.a",
            "beam-switch.b beam.a",
            "beam.b body.31",
            "beam.a spot-switch.a",
            "spot-switch.b spot-relay.86",
            "spot-relay.85 body.31",
            "battery.plus spot-relay.30",
            "spot-relay.87 spots.a",
            "spots.b body.31",
            "spots.a spot-relay.86"
        };
        for (int i = 0; i < joined.length; i++) {
            String[] ends = joined[i].split(" ", -1);
            wires.append(i == 0 ? "" : ",")
                    .append("{'id':'W" + (i + 1) + "','from':'" + ends[0] + "','to':'" + ends[1]
                            + "','resistanceOhm':0.01}");
        }
        String always = "'meantLive':['off','accessory','run','crank','running'],'meantLiveWhen':[{'switches':{";
        return Plans.of(
                "{'kind':'battery','id':'battery'},{'kind':'earth','id':'body'}," + contact("beam-switch")
                        + contact("spot-switch")
                        + "{'kind':'lamp','id':'beam','ratedV':12,'ratedW':55," + always + "'beam-switch':['on']}}]},"
                        + "{'kind':'relay','id':'spot-relay','coilResistanceOhm':85," + always
                        + "'beam-switch':['on'],'spot-switch':['on']}}]},"
                        + "{'kind':'lamp','id':'spots','ratedV':12,'ratedW':55," + always
                        + "'beam-switch':['on'],'spot-switch':['on']}}]}",
                wires.toString());
    }

    @Test
    void theSpotLampsThatStayLitWithEverythingOffAreFound() {
        for (String load : List.of("spots", "spot-relay")) {
            assertThat(Searched.of(spotLamps()).feed(load).occurrences())
                    .as(load)
                    .anySatisfy(o -> {
                        assertThat(o.step()).isEqualTo(Step.OFF);
                        assertThat(o.switches())
                                .containsEntry("beam-switch", "off")
                                .containsEntry("spot-switch", "off");
                    });
        }
    }

    @Test
    void theMainBeamThatIsHeldByTheSpotLampsIsFound() {
        assertThat(Searched.of(spotLamps()).feed("beam").occurrences())
                .anySatisfy(o -> assertThat(o.switches())
                        .containsEntry("beam-switch", "off")
                        .containsEntry("spot-switch", "on"));
    }

    /** Nothing but what is found in this way, up to three moves deep, by a plain search of the test on the second solver. */
    @Property(seed = "13", tries = 8, shrinking = ShrinkingMode.OFF)
    void whateverThreeMovesOfSwitchesBringAboutIsFound(
            @ForAll @IntRange(max = 1_000_000) int seed, @ForAll @IntRange(min = 12, max = 22) int parts) {
        RandomVehicle.Shape shape =
                RandomVehicle.Shape.of(parts).withSwitches(3).withCrossTies(3);
        Plan plan = RandomVehicle.of(seed, shape);
        Set<String> found = new HashSet<>();
        Searched.of(plan)
                .report()
                .unintendedFeeds()
                .forEach(feed -> feed.occurrences().stream()
                        .map(Occurrence::step)
                        .forEach(step -> found.add(EverySetting.key(feed.load(), step))));
        assertThat(found).as("seed %s, %s", seed, shape).containsAll(remembered(plan));
    }

    /** A setting and a key step, and what was active when they were entered. */
    private record Place(Map<String, String> setting, Step step, Set<String> before, int switchMoves) {}

    /** Relays and solenoids that are in, in a step in which they are not meant to be, after some moves. */
    private static Set<String> remembered(Plan plan) {
        Set<String> held = new HashSet<>();
        Set<List<Object>> seen = new HashSet<>();
        Deque<Place> open = new ArrayDeque<>();
        open.add(new Place(Map.of(), Step.OFF, Set.of(), 0));
        while (!open.isEmpty()) {
            Place place = open.remove();
            Plan set = set(plan, place.setting());
            Rests rests = new DenseOracle(set).rests(place.step(), place.before(), MOST_STATES);
            if (rests.rests().size() != 1 || rests.raced() || rests.closest() < 1e-6) {
                continue; // what races or oscillates is told elsewhere
            }
            Set<String> state = rests.only();
            for (Consumer consumer : set.listParts(Consumer.class)) {
                if ((consumer instanceof Relay || consumer instanceof Solenoid)
                        && state.contains(consumer.id())
                        && !Intent.meantLive(consumer, set, place.step())) {
                    held.add(EverySetting.key(consumer.id(), place.step()));
                }
            }
            if (!seen.add(List.of(place.setting(), place.step(), state))) {
                continue;
            }
            for (Step next : nextOf(place.step())) {
                open.add(new Place(place.setting(), next, state, place.switchMoves()));
            }
            if (place.switchMoves() < DEEP) {
                for (Switch chosen : plan.listParts(Switch.class)) {
                    if (chosen.free()) {
                        for (Switch.Position position : chosen.positions()) {
                            Map<String, String> moved = new HashMap<>(place.setting());
                            moved.put(chosen.id(), position.name());
                            open.add(new Place(moved, place.step(), state, place.switchMoves() + 1));
                        }
                    }
                }
            }
        }
        return held;
    }

    private static List<Step> nextOf(Step step) {
        return switch (step) {
            case OFF, OFF_AGAIN -> List.of(Step.ACCESSORY);
            case ACCESSORY -> List.of(Step.RUN, Step.OFF);
            case RUN -> List.of(Step.CRANK, Step.OFF, Step.ACCESSORY);
            case CRANK -> List.of(Step.RUNNING, Step.RUN);
            case RUNNING -> List.of(Step.OFF_ENGINE_TURNING);
            case OFF_ENGINE_TURNING -> List.of(Step.OFF_AGAIN);
        };
    }

    private static Plan set(Plan plan, Map<String, String> setting) {
        Plan set = plan;
        for (Map.Entry<String, String> position : setting.entrySet()) {
            Part part = Objects.requireNonNull(plan.partsById().get(position.getKey()));
            set = set.withPart(((Switch) part).withPosition(position.getValue()));
        }
        return set;
    }
}
