package loomwright.mistakes;

import java.util.Map;
import java.util.stream.DoubleStream;
import loomwright.circuit.Battery;
import loomwright.circuit.Consumer;
import loomwright.circuit.Part;
import loomwright.circuit.Plan;
import loomwright.mistakes.Notices.Fed;
import loomwright.mistakes.SoundLoads.SoundLoad;
import loomwright.operation.Branch;
import loomwright.operation.FeedStrength;
import loomwright.operation.SettingScan;
import loomwright.operation.SolvedStep;
import loomwright.operation.Step;

/**
 * Tells the steps that a mistake changes in nothing that is said of mistakes, by the figures of a quick look: those need not be solved in
 * full. Currents are compared as a whole: no part carries more than before by more than all wires together. Where it is not sure, it
 * says no.
 */
final class Unnoticed {
    /** A figure of the quick look that is closer than this to what is noticed is not sure, as a share. */
    private static final double TOO_CLOSE = 1e-6;

    private final Overloads overloads;
    private final SoundLoads soundLoads;

    Unnoticed(Capacities capacities, SoundLoads soundLoads) {
        this.overloads = new Overloads(capacities);
        this.soundLoads = soundLoads;
    }

    /**
     * Whether it is so for the step that was looked at last.
     *
     * @param faulty the plan that was looked at
     * @param sound the same step without the mistake
     */
    boolean isSure(SettingScan scan, Plan faulty, SolvedStep sound) {
        if (!scan.restsLike(sound)) {
            return false;
        }
        double movedA = movedA(scan, faulty, sound);
        return !Double.isNaN(movedA)
                && loadsAreAlike(scan, sound.step(), soundLoads.in(sound))
                && overloads.addsNothing(
                        sound,
                        faulty,
                        movedA,
                        battery -> scan.acrossV(battery.terminal(Battery.PLUS), battery.terminal(Battery.MINUS)))
                && opensNothing(faulty, sound, movedA)
                && ReversedElectronics.addsNothing(sound, scan::acrossV);
    }

    /**
     * By how much the currents of all wires differ, one that is new or gone by what it carries; not a number if one carries current
     * against its feed that did not before, or the wires are in another order.
     */
    private static double movedA(SettingScan scan, Plan faulty, SolvedStep sound) {
        int feed = sound.plan().system().earthPolarity().feedSign();
        double movedA = 0;
        int there = 0;
        for (int here = 0; here < scan.wires(); here++) {
            while (isWire(sound, there) && isGone(sound.branches().get(there), scan.branch(here), faulty)) {
                movedA += Math.abs(sound.currentA(there));
                there++;
            }
            boolean known = isWire(sound, there)
                    && isSame(scan.branch(here), sound.branches().get(there));
            if (!known && sound.plan().findWire(scan.branch(here).id()).isPresent()) {
                return Double.NaN;
            }
            double nowA = scan.currentA(here);
            double wasA = known ? sound.currentA(there) : 0;
            if (feed * nowA < -(1 - TOO_CLOSE) * FeedStrength.TRICKLE_A && feed * wasA >= -FeedStrength.TRICKLE_A) {
                return Double.NaN;
            }
            movedA += Math.abs(nowA - wasA);
            there += known ? 1 : 0;
        }
        while (isWire(sound, there)) {
            movedA += Math.abs(sound.currentA(there));
            there++;
        }
        return movedA;
    }

    private static boolean isGone(Branch there, Branch here, Plan faulty) {
        return !isSame(here, there) && faulty.findWire(there.id()).isEmpty();
    }

    /** The wires and the ways of connectors stand before the parts. */
    private static boolean isWire(SolvedStep sound, int branch) {
        return branch < sound.branches().size() && sound.branches().get(branch).owner() != Branch.Owner.PART;
    }

    private static boolean isSame(Branch here, Branch there) {
        return here.owner() == there.owner() && here.id().equals(there.id());
    }

    private static boolean loadsAreAlike(SettingScan scan, Step step, Map<String, SoundLoad> loads) {
        for (int c = 0; c < scan.consumers().size(); c++) {
            Consumer load = scan.consumers().get(c);
            SoundLoad sound = loads.get(load.id());
            if (sound == null || sound.consumer().getClass() != load.getClass()) {
                continue;
            }
            boolean active = scan.isActive(load);
            FeedStrength activity = scan.activity(c);
            double volts = scan.effectiveV(c);
            boolean noticed = DoubleStream.of(1 - TOO_CLOSE, 1 + TOO_CLOSE)
                    .mapToObj(share -> Fed.of(load, active, activity, share * volts))
                    .anyMatch(fed -> Notices.effect(step, sound, fed).isPresent());
            if (noticed) {
                return false;
            }
        }
        return true;
    }

    private static boolean opensNothing(Plan faulty, SolvedStep sound, double movedA) {
        for (Part part : faulty.parts()) {
            double limitA = Fuses.opensAtA(part).orElse(Double.POSITIVE_INFINITY);
            if (limitA < Double.POSITIVE_INFINITY && sound.mostA(part) + movedA > (1 - TOO_CLOSE) * limitA) {
                return false;
            }
        }
        return true;
    }
}
