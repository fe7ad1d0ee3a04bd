package loomwright.circuit.tolerance;

import java.util.ArrayList;
import java.util.List;
import loomwright.circuit.Bounds;
import loomwright.circuit.Connector;
import loomwright.circuit.Diode;
import loomwright.circuit.Generator;
import loomwright.circuit.IgnitionModule;
import loomwright.circuit.LedLamp;
import loomwright.circuit.Load;
import loomwright.circuit.Part;
import loomwright.circuit.Plan;
import loomwright.circuit.Stabiliser;
import loomwright.circuit.Wire;
import org.jspecify.annotations.Nullable;

/** All figures of a plan that are known within a tolerance, in a fixed order. */
public record Spreads(Plan plan, List<Spread> list) {
    private static final String SUPPLY = "supply";
    private static final double MAX_JOINT_OHM = 1000;

    public static Spreads of(Plan plan, Tolerances tolerances) {
        List<Spread> list = new ArrayList<>();
        // The tolerance of the EMF is that of each condition: here its share.
        list.add(new Spread(SUPPLY, 1, true, (draft, factor) -> draft.supplyShare(factor - 1)));
        list.add(new Spread(SUPPLY, Tolerances.FUSE, true, PlanDraft::internalFactor));
        for (int i = 0; i < plan.parts().size(); i++) {
            int at = i;
            Part part = plan.parts().get(i);
            for (PartFigures.Figure figure : PartFigures.of(part, plan.system())) {
                double fraction = tolerances.of(part.id(), figure.usualFraction());
                list.add(new Spread(
                        part.id(),
                        fraction,
                        figure.raisesOhms(),
                        (draft, factor) -> draft.parts()
                                .set(at, figure.times().apply(draft.parts().get(at), factor))));
            }
        }
        for (int i = 0; i < plan.wires().size(); i++) {
            int at = i;
            Wire wire = plan.wires().get(i);
            list.add(new Spread(
                    wire.id(),
                    tolerances.of(wire.id(), Tolerances.WIRE),
                    true,
                    (draft, factor) -> draft.wires().set(at, times(wire, factor))));
        }
        for (int i = 0; i < plan.connectors().size(); i++) {
            int at = i;
            Connector c = plan.connectors().get(i);
            list.add(new Spread(
                    c.id(),
                    tolerances.of(c.id(), Tolerances.CONTACT),
                    true,
                    (draft, factor) -> draft.connectors()
                            .set(at, new Connector(c.id(), c.halves(), ohm(c.contactResistanceOhm() * factor)))));
        }
        return new Spreads(plan, list.stream().filter(s -> s.fraction() > 0).toList());
    }

    /** The plan with each figure moved by a share of its tolerance, -1 to 1, in the order of {@link #list}. */
    public Plan moved(double[] shares) {
        PlanDraft draft = new PlanDraft(plan);
        for (int i = 0; i < shares.length; i++) {
            if (shares[i] != 0) {
                list.get(i).move(draft, shares[i]);
            }
        }
        return draft.plan();
    }

    /** The plan with every resistance as low (-1) or as high (1) as may be. */
    public Plan ohms(double share) {
        return moved(
                list.stream().mapToDouble(s -> s.raisesOhms() ? share : -share).toArray());
    }

    /** Whether a figure may push something that conducts one way only over its bend, so that both ends must be tried. */
    public boolean bends(int at) {
        String id = list.get(at).id();
        return id.equals(SUPPLY)
                || plan.findPart(id)
                        .filter(p -> p instanceof Generator
                                || p instanceof Diode
                                || p instanceof LedLamp
                                || p instanceof Stabiliser
                                || p instanceof IgnitionModule
                                || p instanceof Load)
                        .isPresent();
    }

    static double within(double value, double least, double most) {
        return Math.max(least, Math.min(most, value));
    }

    public static double ohm(double value) {
        return within(value, Bounds.MIN_RESISTANCE_OHM, Bounds.MAX_RESISTANCE_OHM);
    }

    private static @Nullable Double length(@Nullable Double value, double factor) {
        return value == null ? null : (Double) within(value * factor, Bounds.MIN_LENGTH_M, Bounds.MAX_LENGTH_M);
    }

    private static Wire times(Wire w, double factor) {
        Double given = w.conductor().resistanceOhm();
        return new Wire(
                w.id(),
                w.from(),
                w.to(),
                new Wire.Conductor(
                        w.conductor().size(),
                        length(w.conductor().lengthM(), factor),
                        length(w.conductor().lengthFt(), factor),
                        given == null ? null : (Double) ohm(given * factor)),
                w.colour(),
                w.laid(),
                new Wire.EndJoints(
                        within(w.joints().fromJointResistanceOhm() * factor, 0, MAX_JOINT_OHM),
                        within(w.joints().toJointResistanceOhm() * factor, 0, MAX_JOINT_OHM)),
                w.directed());
    }
}
