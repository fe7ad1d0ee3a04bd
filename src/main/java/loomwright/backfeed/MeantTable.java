package loomwright.backfeed;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import loomwright.circuit.Consumer;
import loomwright.circuit.Plan;
import loomwright.operation.Intent;
import loomwright.operation.Step;
import loomwright.operation.SwitchSettings;
import loomwright.operation.UsualIntent;

/** In which settings each consumer should be live, worked out once: what {@link Intent} says of the plan so set. */
final class MeantTable {
    private final Map<Step, List<List<Alternative>>> meant = new EnumMap<>(Step.class);

    /** Positions of open parts that must agree, all of them. */
    @SuppressWarnings("ArrayRecordComponent") // never compared
    private record Alternative(int[] part, boolean[][] agrees) {
        boolean in(int[] setting) {
            for (int k = 0; k < part.length; k++) {
                if (!agrees[k][setting[part[k]]]) {
                    return false;
                }
            }
            return true;
        }
    }

    MeantTable(SwitchSettings settings, List<Consumer> consumers) {
        Set<String> chargeLamps = UsualIntent.chargeLamps(settings.plan());
        for (Step step : Step.values()) {
            List<List<Alternative>> here = new ArrayList<>();
            for (Consumer consumer : consumers) {
                here.add(alternatives(settings, Intent.settings(consumer, settings.plan(), step, chargeLamps)));
            }
            meant.put(step, here);
        }
    }

    private static List<Alternative> alternatives(SwitchSettings settings, List<Map<String, List<String>>> meant) {
        Plan plan = settings.plan();
        List<Alternative> alternatives = new ArrayList<>();
        for (Map<String, List<String>> positions : meant) {
            List<Integer> parts = new ArrayList<>();
            List<boolean[]> agrees = new ArrayList<>();
            boolean possible = true;
            for (Map.Entry<String, List<String>> entry : positions.entrySet()) {
                int part = settings.indexOf(entry.getKey());
                if (part < 0) {
                    // A switch that is held as it is drawn.
                    possible &= entry.getValue()
                            .contains(SwitchSettings.position(
                                    plan.findPart(entry.getKey()).orElseThrow()));
                    continue;
                }
                boolean[] agreeing = new boolean[settings.open().get(part).size()];
                for (int s = 0; s < agreeing.length; s++) {
                    agreeing[s] = entry.getValue()
                            .contains(SwitchSettings.position(
                                    settings.open().get(part).get(s)));
                }
                parts.add(part);
                agrees.add(agreeing);
            }
            if (possible) {
                alternatives.add(new Alternative(
                        parts.stream().mapToInt(Integer::intValue).toArray(), agrees.toArray(boolean[][]::new)));
            }
        }
        return alternatives;
    }

    boolean isMeant(int consumer, Step step, int[] setting) {
        for (Alternative one : Objects.requireNonNull(meant.get(step)).get(consumer)) {
            if (one.in(setting)) {
                return true;
            }
        }
        return false;
    }
}
