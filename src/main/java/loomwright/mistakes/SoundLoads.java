package loomwright.mistakes;

import java.util.LinkedHashMap;
import java.util.Map;
import java.util.concurrent.ConcurrentHashMap;
import loomwright.circuit.Consumer;
import loomwright.mistakes.Notices.Fed;
import loomwright.operation.SolvedStep;

/**
 * What the loads of the sound plan do in each of its steps, worked out once: every mistake is compared with it. May be used by several
 * threads.
 */
final class SoundLoads {
    /**
     * One load in one step.
     *
     * @param meant whether it should be live
     */
    record SoundLoad(Consumer consumer, boolean meant, Fed fed) {}

    private final Map<SolvedStep, Map<String, SoundLoad>> byStep = new ConcurrentHashMap<>();

    /** By id, in the order of the plan; none where the step has no solution. */
    Map<String, SoundLoad> in(SolvedStep sound) {
        return byStep.computeIfAbsent(sound, SoundLoads::list);
    }

    private static Map<String, SoundLoad> list(SolvedStep sound) {
        Map<String, SoundLoad> loads = new LinkedHashMap<>();
        if (sound.solved()) {
            for (Consumer load : sound.plan().listParts(Consumer.class)) {
                loads.put(load.id(), new SoundLoad(load, sound.isMeant(load), Fed.in(sound, load)));
            }
        }
        return loads;
    }
}
