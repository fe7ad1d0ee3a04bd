package loomwright.review.part;

import static loomwright.review.context.FindingWording.number;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import loomwright.answer.Basis;
import loomwright.answer.Finding;
import loomwright.answer.Severity;
import loomwright.backfeed.Survey.Moment;
import loomwright.circuit.ContactBreaker;
import loomwright.circuit.Diode;
import loomwright.circuit.FixedResistor;
import loomwright.circuit.Part;
import loomwright.circuit.Relay;
import loomwright.circuit.Solenoid;
import loomwright.circuit.Switch;
import loomwright.ignition.UsualIgnition;
import loomwright.judgement.Ratio;
import loomwright.operation.Branch;
import loomwright.operation.SolvedStep;
import loomwright.review.context.Check;
import loomwright.review.context.FindingCode;
import loomwright.review.context.FindingWording;
import loomwright.review.context.LoadCircuit;
import loomwright.review.context.PeakCurrents.Peak;
import loomwright.review.context.ReviewContext;
import loomwright.review.context.WorstCaseOrder;
import org.jspecify.annotations.Nullable;

/** Contacts, diodes and resistors against what they may carry. Of a switch the terminal that carries most counts. */
public final class PartRatings implements Check {
    private static final Basis GIVEN = Basis.computed("current against the rating given", "comparison");
    private static final Basis BREAKER = Basis.verified(
            "contacts of a plain ignition switch about 4 to 5 A", "Army manual TM 9-8000, chapter 15 (ignition)");

    /** A part's current at its largest, and what is said of its limit. */
    private record Load(Part part, Moment moment, double currentA, double ratingA, Basis basis) {}

    @Override
    public List<Finding> check(ReviewContext context) {
        List<Finding> findings = new ArrayList<>();
        for (Part part : context.plan().parts()) {
            load(context, part)
                    .filter(load -> load.currentA() > load.ratingA())
                    .filter(load -> !(part instanceof Diode diode) || !ReversedDiodes.isReversed(context, diode))
                    .ifPresent(load -> findings.add(overloaded(load)));
            if (part instanceof FixedResistor resistor) {
                heat(context, resistor).ifPresent(findings::add);
            }
        }
        return findings;
    }

    private static Optional<Load> load(ReviewContext context, Part part) {
        if (part instanceof Switch chosen) {
            Double ratingA = chosen.ratingA();
            return ratingA == null
                    ? Optional.empty()
                    : largest(context, chosen)
                            .map(load -> new Load(part, load.moment(), load.currentA(), ratingA, GIVEN));
        } else if (part instanceof Relay relay) {
            return branch(context, part, relay.ratingA(), GIVEN);
        } else if (part instanceof Solenoid solenoid) {
            return branch(context, part, solenoid.ratingA(), GIVEN);
        } else if (part instanceof ContactBreaker breaker) {
            Double ratingA = breaker.ratingA();
            return ratingA == null
                    ? branch(context, part, UsualIgnition.CONTACTS_A, BREAKER)
                    : branch(context, part, ratingA, GIVEN);
        }
        return part instanceof Diode diode ? branch(context, part, diode.ratingA(), GIVEN) : Optional.empty();
    }

    private static Optional<Load> branch(ReviewContext context, Part part, @Nullable Double ratingA, Basis basis) {
        if (ratingA == null) {
            return Optional.empty();
        }
        boolean coilToo = part instanceof Relay || part instanceof Solenoid;
        String bypass =
                part instanceof Solenoid ? part.terminal(Solenoid.BYPASS).toString() : "";
        Optional<Peak> peak = context.everAtAll()
                .find(
                        Branch.Owner.PART,
                        part.id(),
                        b -> !coilToo || (LoadCircuit.isContact(part, b) && !b.to().equals(bypass)));
        return peak.map(p -> new Load(part, p.moment(), p.currentA(), ratingA, basis));
    }

    /** The moment in which one terminal of a switch carries most. */
    private static Optional<Load> largest(ReviewContext context, Switch chosen) {
        return context.moments().stream()
                .min(WorstCaseOrder.mostOf(m -> terminalA(m.solved(), chosen.id())))
                .map(m -> new Load(chosen, m, terminalA(m.solved(), chosen.id()), 0, GIVEN));
    }

    private static double terminalA(SolvedStep solved, String id) {
        Map<String, Double> intoA = new LinkedHashMap<>();
        for (int i = solved.firstBranchOf(id); i < solved.endBranchOf(id); i++) {
            Branch branch = solved.branches().get(i);
            intoA.merge(branch.from(), solved.currentA(i), Double::sum);
            intoA.merge(branch.to(), -solved.currentA(i), Double::sum);
        }
        return intoA.values().stream().mapToDouble(Math::abs).max().orElse(0);
    }

    /** A relay does not lower the current of contact points: only ohms do, or a module that they drive. */
    private static String remedy(Part part) {
        if (part instanceof Diode) {
            return "Fit a diode for more current and give it metal to shed its heat to.";
        }
        return part instanceof ContactBreaker
                ? "Fit more ballast, a coil of more ohms, or a module that the points drive."
                : "Take the load through a relay, or fit a part for more current.";
    }

    private static Finding overloaded(Load load) {
        FindingCode code = load.part() instanceof Diode ? FindingCode.DIODE_OVERLOADED : FindingCode.CONTACT_OVERLOADED;
        return code.finding(
                Ratio.of(load.currentA(), load.ratingA()).level().severity().orElse(Severity.NOTE),
                List.of(load.part().id()),
                load.part().displayName() + ": " + number(load.currentA()) + " A, " + FindingWording.when(load.moment())
                        + "; it may carry " + number(load.ratingA()) + " A.",
                FindingWording.against("currentA", load.currentA(), "ratingA", load.ratingA()),
                load.basis(),
                remedy(load.part()));
    }

    private static Optional<Finding> heat(ReviewContext context, FixedResistor resistor) {
        Double ratingW = resistor.ratingW();
        return context.lasting()
                .find(Branch.Owner.PART, resistor.id())
                .filter(peak ->
                        ratingW != null && peak.currentA() * peak.currentA() * resistor.resistanceOhm() > ratingW)
                .map(peak -> {
                    double powerW = peak.currentA() * peak.currentA() * resistor.resistanceOhm();
                    double allowedW = ratingW == null ? powerW : ratingW;
                    return FindingCode.RESISTOR_OVERHEATED.finding(
                            Severity.WARNING,
                            List.of(resistor.id()),
                            resistor.displayName() + " turns " + number(powerW) + " W into heat, "
                                    + FindingWording.when(peak.moment()) + "; it is made for " + number(allowedW)
                                    + " W.",
                            FindingWording.against("powerW", powerW, "ratingW", allowedW),
                            Basis.computed("heat I^2 R against the rating given", "Joule's law"),
                            "Fit a resistor of the same ohms for more watts, clear of wiring.");
                });
    }
}
