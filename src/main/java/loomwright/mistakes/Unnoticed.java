package loomwright.mistakes;

import java.util.stream.DoubleStream;
import loomwright.circuit.Battery;
import loomwright.circuit.Consumer;
import loomwright.circuit.Part;
import loomwright.circuit.Plan;
import loomwright.mistakes.Notices.Fed;
import loomwright.operation.Branch;
import loomwright.operation.FeedStrength;
import loomwright.operation.SettingScan;
import loomwright.operation.SolvedStep;

/**
 * Tells the steps that a mistake changes in nothing that is said of mistakes, by the figures of a quick look: those need not be solved in
 * full. Currents are compared as a whole: no part carries more than before by more than all wires together. Where it is not sure, it
 * says no.
 */
final class Unnoticed {
    /** A figure of the quick look that is closer than this to what is noticed is not sure, as a share. */
    private static final double TOO_CLOSE = 1e-6;

    private final Overloads overloads;

    Unnoticed(Capacities capacities) {
        this.overloads = new Overloads(capacities);
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
        double movedA = movedA(scan, sound);
        return !Double.isNaN(movedA)
                && loadsAreAlike(scan, sound)
                && overloads.addsNothing(
                        sound,
                        faulty,
                        movedA,
                        battery -> scan.acrossV(battery.terminal(Battery.PLUS), battery.terminal(Battery.MINUS)))
                && opensNothing(faulty, sound, movedA)
                && ReversedElectronics.addsNothing(sound, scan::acrossV);
    }

    /** By how much the currents of all wires differ; not a number if wires are others, or one carries current the other way. */
    private static double movedA(SettingScan scan, SolvedStep sound) {
        int feed = sound.plan().system().earthPolarity().feedSign();
        double movedA = 0;
        for (int wire = 0; wire < scan.wires(); wire++) {
            Branch here = scan.branch(wire);
            Branch there = wire < sound.branches().size() ? sound.branches().get(wire) : here;
            double nowA = scan.currentA(wire);
            double wasA = wire < sound.branches().size() ? sound.currentA(wire) : 0;
            boolean same = here.owner() == there.owner() && here.id().equals(there.id());
            boolean turned =
                    feed * nowA < -(1 - TOO_CLOSE) * FeedStrength.TRICKLE_A && feed * wasA >= -FeedStrength.TRICKLE_A;
            if (!same || turned) {
                return Double.NaN;
            }
            movedA += Math.abs(nowA - wasA);
        }
        return movedA;
    }

    private static boolean loadsAreAlike(SettingScan scan, SolvedStep sound) {
        for (int c = 0; c < scan.consumers().size(); c++) {
            Consumer load = scan.consumers().get(c);
            Part there = sound.plan().findPart(load.id()).orElse(null);
            if (!(there instanceof Consumer before) || there.getClass() != load.getClass()) {
                continue;
            }
            boolean active = scan.isActive(load);
            FeedStrength activity = scan.activity(c);
            double volts = scan.effectiveV(c);
            boolean noticed = DoubleStream.of(1 - TOO_CLOSE, 1 + TOO_CLOSE)
                    .mapToObj(share -> Fed.of(load, active, activity, share * volts))
                    .anyMatch(fed -> Notices.effect(sound, before, fed).isPresent());
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
