package loomwright.mistakes;

import java.util.LinkedHashSet;
import java.util.List;
import java.util.OptionalDouble;
import java.util.Set;
import loomwright.circuit.Fuse;
import loomwright.circuit.FusibleLink;
import loomwright.circuit.Part;
import loomwright.circuit.Plan;
import loomwright.circuit.Wire;
import loomwright.circuit.fault.BlownFuse;
import loomwright.conductor.ConductorSize;
import loomwright.conductor.FusingCurrent;
import loomwright.judgement.wire.FuseRule;
import loomwright.operation.StepFigures;

/** Which fuses open. */
public final class Fuses {
    /** A fuse that takes longer at a current is taken to stand it (common practice, no source). */
    private static final double SOONER_OR_LATER_S = 1800;

    /** Nobody has taken a reading by this time (common practice, no source). */
    private static final double BEFORE_A_READING_S = 5;

    private Fuses() {}

    /** The current that opens a fuse sooner or later; a fusible link by Preece's equation. Empty for other parts. */
    static OptionalDouble opensAtA(Part part) {
        if (part instanceof Fuse fuse) {
            return OptionalDouble.of(FuseRule.opensWithinA(fuse, SOONER_OR_LATER_S));
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
    public static Set<String> firstToOpen(Plan plan, List<? extends StepFigures> steps) {
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
     * Whether a fuse opens before anybody could take a reading, within 5 s: by the limits of its standard, a
     * fusible link when a wire of its size melts in that time by Onderdonk's equation.
     */
    public static boolean opensBeforeAReading(Plan plan, String fuse, List<? extends StepFigures> steps) {
        Part part = plan.findPart(fuse).orElseThrow();
        double limitA = Double.POSITIVE_INFINITY;
        if (part instanceof Fuse cartridge) {
            limitA = FuseRule.opensWithinA(cartridge, BEFORE_A_READING_S);
        } else if (part instanceof FusibleLink link) {
            limitA = FusingCurrent.onderdonkA(
                    ConductorSize.parse(link.size()).areaMm2(),
                    BEFORE_A_READING_S,
                    plan.system().ambientTemperatureC());
        }
        return mostA(part, steps) >= limitA;
    }

    /**
     * The highest current in a wire as a share of that at which it melts within 5 s, before anybody could take a reading, by
     * Onderdonk's equation.
     */
    public static double meltingBeforeAReading(Plan plan, List<? extends StepFigures> steps) {
        double most = 0;
        for (Wire wire : plan.wires()) {
            String size = wire.conductor().size();
            if (size != null) {
                double limitA = FusingCurrent.onderdonkA(
                        ConductorSize.parse(size).areaMm2(),
                        BEFORE_A_READING_S,
                        plan.system().ambientTemperatureC());
                for (StepFigures solved : steps) {
                    if (solved.solved()) {
                        most = Math.max(most, Math.abs(solved.currentA(wire)) / limitA);
                    }
                }
            }
        }
        return most;
    }

    private static double mostA(Part part, List<? extends StepFigures> steps) {
        return steps.stream().mapToDouble(solved -> solved.mostA(part)).max().orElse(0);
    }

    static Plan blown(Plan plan, Set<String> fuses) {
        Plan changed = plan;
        for (String fuse : fuses) {
            changed = new BlownFuse(fuse).applyTo(changed);
        }
        return changed;
    }
}
