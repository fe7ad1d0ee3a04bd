package loomwright.backfeed.sneak;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.LinkedBlockingQueue;
import java.util.concurrent.ThreadPoolExecutor;
import java.util.concurrent.TimeUnit;
import loomwright.answer.Progress;
import loomwright.answer.Severity;
import loomwright.backfeed.sneak.PlanSweep.Found;
import loomwright.backfeed.sneak.SneakReport.FaultSneaks;
import loomwright.backfeed.sneak.SneakReport.Sneak;
import loomwright.circuit.Plan;
import loomwright.circuit.fault.SingleFault;
import loomwright.circuit.fault.SingleFaults;
import loomwright.network.NetworkLimits;

/**
 * Finds every load that is fed unasked in any setting of the free switches and breaker contacts, with the smallest
 * settings that show it and the path of the current; if wanted once more with each single fault in the plan.
 *
 * <p>All settings are gone through by {@link loomwright.operation.Sweep}; the smallest that show something are solved again
 * in full, and what is reported are those figures. Should the two ever disagree, all settings are solved in full.
 *
 * <p>Cost: some tens of microseconds for each setting of a harness of 60 nodes, and some milliseconds for each that is
 * followed; with a fault twice that, as the sound plan is solved beside it. May be used by several threads; they share its
 * pool.
 */
public final class SneakSearch {
    private static final int KEEP_IDLE_S = 1;

    private final SneakLimits limits;
    private final NetworkLimits networkLimits;
    private final ExecutorService pool;

    public SneakSearch(SneakLimits limits, NetworkLimits networkLimits) {
        this.limits = limits;
        this.networkLimits = networkLimits;
        this.pool = threads(limits.threads());
    }

    /** They end when they have nothing to do, so nobody has to close the search. */
    private static ExecutorService threads(int count) {
        ThreadPoolExecutor pool = new ThreadPoolExecutor(
                count, count, KEEP_IDLE_S, TimeUnit.SECONDS, new LinkedBlockingQueue<>(), work -> {
                    Thread thread = new Thread(work, "sneak-search");
                    thread.setDaemon(true);
                    return thread;
                });
        pool.allowCoreThreadTimeOut(true);
        return pool;
    }

    /**
     * Searches a plan as it is.
     *
     * @throws loomwright.answer.RejectedInput OVER_LIMIT if the switches make too many combinations
     * @throws loomwright.answer.OutOfTime if it takes too long
     */
    public SneakReport find(Plan plan, Progress progress) {
        return find(plan, List.of(), progress);
    }

    /**
     * Searches a plan as it is and with each single fault in it. Of the latter is told what the fault alone brings about:
     * loads that are fed more strongly than in the same setting without it, and by more than a trickle.
     *
     * @throws loomwright.answer.RejectedInput OVER_LIMIT if switches and faults make too many combinations
     * @throws loomwright.answer.OutOfTime if it takes too long
     */
    public SneakReport findWithFaults(Plan plan, Progress progress) {
        return find(plan, SingleFaults.list(plan), progress);
    }

    private SneakReport find(Plan plan, List<SingleFault> faults, Progress progress) {
        Settings settings = Settings.of(plan, faults.size(), limits.maxCombinations());
        Watch watch = new Watch(progress, limits.timeMs(), settings.count() * (faults.size() + 1L));
        PlanSweep sound = new PlanSweep(settings, null, limits, networkLimits, pool, watch);
        Found found = sound.find();
        int inFull = found.inFull();
        boolean complete = found.complete();
        List<FaultSneaks> withFaults = new ArrayList<>();
        for (SingleFault fault : faults) {
            Settings faulty = Settings.of(fault.applyTo(plan), limits.maxCombinations());
            Found more = new PlanSweep(faulty, sound, limits, networkLimits, pool, watch).find();
            inFull += more.inFull();
            complete &= more.complete();
            if (!more.sneaks().isEmpty()) {
                withFaults.add(new FaultSneaks(fault.kind(), fault.ids(), fault.description(), more.sneaks()));
            }
        }
        withFaults.sort(Comparator.comparing(SneakSearch::worst));
        return new SneakReport(
                plan.name(), settings.count(), faults.size(), inFull, complete, found.sneaks(), withFaults);
    }

    private static Severity worst(FaultSneaks faulty) {
        return faulty.sneaks().stream()
                .map(Sneak::severity)
                .min(Comparator.naturalOrder())
                .orElseThrow();
    }
}
