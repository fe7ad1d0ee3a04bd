package loomwright.review.mistakes;

import java.util.LinkedHashSet;
import java.util.List;
import java.util.OptionalDouble;
import java.util.Set;
import loomwright.circuit.Fuse;
import loomwright.circuit.FusibleLink;
import loomwright.circuit.Part;
import loomwright.circuit.Plan;
import loomwright.conductor.ConductorSize;
import loomwright.conductor.FusingCurrent;
import loomwright.operation.SolvedStep;
import loomwright.operation.fault.BlownFuse;

/** Which fuses open. */
public final class Fuses {
    /** Share of its rating at which a blade fuse opens within the half hour (ISO 8820-3, from memory). */
    private static final double BLOWS_FROM = 1.35;

    /** Share of its rating at which a blade fuse opens within {@link #AT_ONCE_S} (table blade-fuse-limits). */
    private static final double OPENS_AT_ONCE_FROM = 2;

    /** Nobody takes a set of readings in this time. */
    private static final double AT_ONCE_S = 5;

    private Fuses() {}

    /** The current that opens a fuse sooner or later; a fusible link by Preece's equation. Empty for other parts. */
    static OptionalDouble opensAtA(Part part) {
        if (part instanceof Fuse fuse) {
            return OptionalDouble.of(BLOWS_FROM * fuse.ratingA());
        } else if (part instanceof FusibleLink link) {
            double areaMm2 = ConductorSize.parse(link.size()).areaMm2();
            return OptionalDouble.of(FusingCurrent.preeceA(2 * Math.sqrt(areaMm2 / Math.PI)));
        }
        return OptionalDouble.empty();
    }

    /**
     * The fuse that is furthest above what opens it in any step, alone in the set: once it is open the others may not
     * have to. Empty if none opens.
     */
    public static Set<String> firstToOpen(Plan plan, List<SolvedStep> steps) {
        Set<String> first = new LinkedHashSet<>();
        double highest = 1;
        for (Part part : plan.parts()) {
            OptionalDouble limitA = opensAtA(part);
            double share = limitA.isEmpty() ? 0 : mostA(part, steps) / limitA.getAsDouble();
            if (share > highest) {
                highest = share;
                first.clear();
                first.add(part.id());
            }
        }
        return first;
    }

    /**
     * Whether a fuse opens before anybody could take readings: a blade fuse within 5 s, a fusible link when a wire of its
     * size melts in that time by Onderdonk's equation.
     */
    public static boolean opensAtOnce(Plan plan, String fuse, List<SolvedStep> steps) {
        Part part = plan.findPart(fuse).orElseThrow();
        double limitA = Double.POSITIVE_INFINITY;
        if (part instanceof Fuse blade) {
            limitA = OPENS_AT_ONCE_FROM * blade.ratingA();
        } else if (part instanceof FusibleLink link) {
            limitA = FusingCurrent.onderdonkA(
                    ConductorSize.parse(link.size()).areaMm2(),
                    AT_ONCE_S,
                    plan.system().ambientTemperatureC());
        }
        return mostA(part, steps) >= limitA;
    }

    private static double mostA(Part part, List<SolvedStep> steps) {
        double mostA = 0;
        for (SolvedStep solved : steps) {
            for (int i = solved.firstBranchOf(part.id()); solved.solved() && i < solved.endBranchOf(part.id()); i++) {
                mostA = Math.max(mostA, Math.abs(solved.currentA(i)));
            }
        }
        return mostA;
    }

    static Plan blown(Plan plan, Set<String> fuses) {
        Plan changed = plan;
        for (String fuse : fuses) {
            changed = new BlownFuse(fuse).applyTo(changed);
        }
        return changed;
    }
}
