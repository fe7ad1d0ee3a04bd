package loomwright.mistakes;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import loomwright.circuit.Coil;
import loomwright.circuit.Condition;
import loomwright.circuit.Consumer;
import loomwright.circuit.Electromagnet;
import loomwright.circuit.FilamentLamp;
import loomwright.circuit.Load;
import loomwright.circuit.Part;
import loomwright.circuit.Plan;
import loomwright.message.Argument.Instant;
import loomwright.mistakes.MistakesReport.Effect;
import loomwright.mistakes.MistakesReport.Notice;
import loomwright.mistakes.SoundLoads.SoundLoad;
import loomwright.operation.FeedStrength;
import loomwright.operation.Intent;
import loomwright.operation.SolvedStep;
import loomwright.operation.Step;

/** Collects what an owner notices of a mistake, load by load. */
final class Notices {
    /** A tenth of its voltage, up or down, is seen in a lamp and felt in a motor (common practice, no source). */
    private static final double NOTICED = 0.1;

    private record Key(Effect effect, String id) {}

    private final Map<Key, Notice> found = new LinkedHashMap<>();
    private boolean mayHurt;

    /**
     * Compares the loads of one step.
     *
     * @param loads those of the sound step
     */
    void compare(SolvedStep sound, Map<String, SoundLoad> loads, SolvedStep faulty, Instant when) {
        if (!sound.solved() || !faulty.solved()) {
            return;
        }
        Map<String, Part> parts = faulty.plan().partsById();
        for (SoundLoad load : loads.values()) {
            Consumer consumer = load.consumer();
            Part now = parts.get(consumer.id());
            if (now == null || now.getClass() != consumer.getClass()) {
                continue;
            }
            Optional<Effect> effect = isMoving(faulty, consumer)
                    ? Optional.of(Effect.CHATTERS).filter(chatters -> !sound.oscillating())
                    : effect(sound.step(), load, Fed.in(faulty, consumer));
            effect.ifPresent(told -> {
                add(told, consumer, when, load.fed().effectiveV(), faulty.effectiveV(consumer));
                mayHurt |= told == Effect.UNINTENDED
                        && mayHurt(consumer, sound.plan(), sound.step().condition());
            });
        }
    }

    /** What works though it should not, or chatters, in one step of a plan without a mistake. */
    void add(SolvedStep solved, Instant when) {
        if (!solved.solved() || solved.step().passing()) {
            return;
        }
        for (Consumer consumer : solved.plan().listParts(Consumer.class)) {
            double volts = solved.effectiveV(consumer);
            if (isMoving(solved, consumer)) {
                add(Effect.CHATTERS, consumer, when, volts, volts);
            } else if (works(solved, consumer) && !solved.isMeant(consumer)) {
                add(Effect.UNINTENDED, consumer, when, volts, volts);
            }
        }
    }

    /**
     * What never works though it should, whatever the switches: told for the steps of the plan as drawn in which it should.
     *
     * @param settings all steps of each setting, the plan as drawn first
     */
    void addNeverWorking(Plan plan, List<List<SolvedStep>> settings) {
        for (Consumer consumer : plan.listParts(Consumer.class)) {
            List<SolvedStep> meant = settings.stream()
                    .flatMap(List::stream)
                    .filter(step -> isWanted(consumer, step))
                    .toList();
            if (meant.stream().noneMatch(step -> step.oscillating() || works(step, consumer))) {
                meant.forEach(step -> add(
                        Effect.STOPS,
                        consumer,
                        step.step().in(plan, Map.of()),
                        step.effectiveV(consumer),
                        step.effectiveV(consumer)));
            }
        }
    }

    /** A coil has its current while the engine turns. */
    private static boolean isWanted(Consumer consumer, SolvedStep step) {
        return step.solved()
                && !step.step().passing()
                && (step.step().engineTurning() || !(consumer instanceof Coil))
                && step.isMeant(consumer);
    }

    private static boolean isMoving(SolvedStep solved, Consumer consumer) {
        return solved.oscillating() && solved.movingParts().contains(consumer.id());
    }

    /** What an owner notices of a consumer that is so fed with a mistake, and as in the sound plan without. */
    static Optional<Effect> effect(Step step, SoundLoad sound, Fed faulty) {
        boolean meant = sound.meant();
        boolean before = sound.fed().works();
        boolean now = faulty.works();
        if (before && !now) {
            // On the way to another condition a load is not missed.
            return !meant || step.passing() ? Optional.empty() : Optional.of(dimOrDead(faulty));
        } else if (!before && now) {
            return meant ? Optional.empty() : Optional.of(Effect.UNINTENDED);
        } else if (before) {
            return meant ? change(sound.fed().effectiveV(), faulty.effectiveV()) : Optional.empty();
        }
        boolean glowsAnew =
                faulty.activity() == FeedStrength.GLOWS && sound.fed().activity() != FeedStrength.GLOWS;
        return glowsAnew ? Optional.of(Effect.GLOWS) : Optional.empty();
    }

    private static Effect dimOrDead(Fed faulty) {
        return faulty.activity() == FeedStrength.GLOWS ? Effect.GLOWS : Effect.STOPS;
    }

    private static Optional<Effect> change(double soundV, double faultyV) {
        if (faultyV < (1 - NOTICED) * soundV) {
            return Optional.of(Effect.UNDERVOLTAGE);
        }
        return faultyV > (1 + NOTICED) * soundV ? Optional.of(Effect.OVERVOLTAGE) : Optional.empty();
    }

    private static boolean works(SolvedStep solved, Consumer consumer) {
        return Fed.in(solved, consumer).works();
    }

    /**
     * How a consumer is fed.
     *
     * @param works an armature that was pulled in works as long as it is held
     */
    record Fed(boolean works, FeedStrength activity, double effectiveV) {
        static Fed of(Consumer consumer, boolean active, FeedStrength activity, double effectiveV) {
            boolean works = consumer instanceof Electromagnet ? active : activity == FeedStrength.OPERATES;
            return new Fed(works, activity, effectiveV);
        }

        static Fed in(SolvedStep solved, Consumer consumer) {
            return of(consumer, solved.isActive(consumer), solved.activity(consumer), solved.effectiveV(consumer));
        }
    }

    private void add(Effect effect, Consumer consumer, Instant when, double soundV, double faultyV) {
        found.merge(
                new Key(effect, consumer.id()),
                new Notice(effect, consumer.id(), consumer.displayName(), List.of(when), soundV, faultyV),
                (a, b) -> {
                    List<Instant> all = new ArrayList<>(a.when());
                    if (!all.contains(when)) {
                        all.add(when);
                    }
                    return new Notice(effect, a.id(), a.label(), List.copyOf(all), a.soundV(), a.faultyV());
                });
    }

    List<Notice> list() {
        return List.copyOf(found.values());
    }

    /**
     * Whether a consumer that works when it should be off may hurt somebody: all that moves, ignites or switches; not a lamp. A load may be
     * a lamp without a filament as well as a pump or a heater, so the plan must tell (common practice, no source): where only
     * its switch does not ask for it, it does what anybody in the vehicle may have it do at that time; where it is never meant
     * to be live the worst is taken.
     */
    private static boolean mayHurt(Consumer consumer, Plan plan, Condition condition) {
        return consumer instanceof Load
                ? !Intent.conditions(consumer, plan).contains(condition)
                : !(consumer instanceof FilamentLamp);
    }

    /** Whether something works when it should be off that may hurt somebody. */
    boolean mayHurt() {
        return mayHurt;
    }
}
