package loomwright.backfeed;

import java.util.List;
import loomwright.circuit.Battery;
import loomwright.circuit.Consumer;
import loomwright.circuit.Electromagnet;
import loomwright.circuit.Generator;
import loomwright.circuit.Part;
import loomwright.circuit.Plan;
import loomwright.circuit.Relay;
import loomwright.operation.FeedStrength;
import loomwright.operation.SettingScan;
import loomwright.operation.SolvedStep;
import loomwright.operation.Step;
import org.jspecify.annotations.Nullable;

/**
 * What a remedy is judged by in one step of one combination: as reported, or to about eight digits by a scan. Loads, batteries and
 * machines stand in the order in which {@link Asked} has them.
 *
 * @param acrossV volts from feed to return, their amount; 0 of a load that is dead
 * @param chargeA what each battery takes up, 0 or more
 * @param excited whether each machine that charges is excited
 * @param addedWorks whether what the remedy adds does something: a diode conducts, a relay pulls in
 */
@SuppressWarnings("ArrayRecordComponent") // never compared
record LoadFigures(
        StepState at,
        FeedStrength[] strength,
        boolean[] meant,
        boolean[] pulledIn,
        double[] acrossV,
        double[] effectiveV,
        double[] chargeA,
        boolean[] excited,
        boolean addedWorks) {

    /**
     * What is asked about.
     *
     * @param added what a remedy adds that must do something; absent if there is none
     */
    record Asked(
            List<Consumer> loads,
            List<Battery> batteries,
            List<Generator> machines,
            @Nullable Part added) {
        static Asked of(Plan plan, @Nullable Part added) {
            return new Asked(
                    plan.listParts(Consumer.class),
                    plan.listParts(Battery.class),
                    plan.listParts(Generator.class),
                    added);
        }
    }

    private static LoadFigures empty(Asked asked, Step step, boolean solved, boolean oscillating, boolean addedWorks) {
        int loads = asked.loads().size();
        return new LoadFigures(
                new StepState(step, solved, oscillating),
                new FeedStrength[loads],
                new boolean[loads],
                new boolean[loads],
                new double[loads],
                new double[loads],
                new double[asked.batteries().size()],
                new boolean[asked.machines().size()],
                addedWorks);
    }

    /** As reported. */
    static LoadFigures of(Asked asked, SolvedStep at) {
        Part added = asked.added();
        LoadFigures figures = empty(
                asked,
                at.step(),
                at.solved(),
                at.oscillating(),
                added == null
                        || (at.solved()
                                && does(
                                        added,
                                        at.isActive(added),
                                        added instanceof Relay ? 0 : at.currentA(at.firstBranchOf(added.id())))));
        for (int c = 0; at.solved() && c < asked.loads().size(); c++) {
            Consumer load = asked.loads().get(c);
            figures.put(
                    c, at.activity(load), at.isMeant(load), at.isActive(load), at.acrossV(load), at.effectiveV(load));
            figures.pulledIn[c] &= hasArmature(load);
        }
        for (int b = 0; at.solved() && b < asked.batteries().size(); b++) {
            figures.chargeA[b] = chargeA(
                    at.currentA(at.firstBranchOf(asked.batteries().get(b).id())));
        }
        for (int m = 0; m < asked.machines().size(); m++) {
            figures.excited[m] = at.isActive(asked.machines().get(m));
        }
        return figures;
    }

    /**
     * What a scan says of the step that it settled last.
     *
     * @param number of each load among those of the scan
     */
    static LoadFigures of(Asked asked, SettingScan at, int[] number, MeantTable meant, Step step, int[] setting) {
        Part added = asked.added();
        boolean solved = at.solved();
        LoadFigures figures = empty(
                asked,
                step,
                solved,
                at.oscillating(),
                added == null
                        || (solved
                                && does(
                                        added,
                                        at.isActive(added),
                                        added instanceof Relay ? 0 : at.currentA(added.id()))));
        for (int c = 0; solved && c < number.length; c++) {
            int load = number[c];
            figures.put(
                    c,
                    at.activity(load),
                    meant.isMeant(load, step, setting),
                    at.isPulledIn(load),
                    at.acrossV(load),
                    at.effectiveV(load));
        }
        for (int b = 0; solved && b < asked.batteries().size(); b++) {
            figures.chargeA[b] = chargeA(at.currentA(asked.batteries().get(b).id()));
        }
        for (int m = 0; m < asked.machines().size(); m++) {
            figures.excited[m] = at.isActive(asked.machines().get(m));
        }
        return figures;
    }

    private void put(int c, FeedStrength does, boolean isMeant, boolean isIn, double volts, double actsOnV) {
        strength[c] = does;
        meant[c] = isMeant;
        pulledIn[c] = isIn;
        // What is dead may float, and then has no volts of its own.
        acrossV[c] = does == FeedStrength.DEAD ? 0 : Math.abs(volts);
        effectiveV[c] = actsOnV;
    }

    private static boolean does(Part added, boolean active, double currentA) {
        return added instanceof Relay ? active : Math.abs(currentA) > FeedStrength.TRICKLE_A;
    }

    private static boolean hasArmature(Consumer load) {
        return load instanceof Electromagnet;
    }

    private static double chargeA(double currentA) {
        return Math.max(0, -currentA);
    }

    /** Whether a load is fed though it should not be. */
    boolean isUnintended(int load) {
        return !meant[load] && strength[load] != FeedStrength.DEAD;
    }

    boolean operates(int load) {
        return strength[load] == FeedStrength.OPERATES;
    }

    /** Whether a load does more than in other figures. */
    boolean isStronger(int load, LoadFigures than) {
        return strength[load].compareTo(than.strength[load]) < 0;
    }

    /** The step, and how its solution ended. */
    record StepState(Step step, boolean solved, boolean oscillating) {}
}
