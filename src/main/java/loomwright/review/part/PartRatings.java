package loomwright.review.part;

import static loomwright.message.Arg.arg;

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
import loomwright.circuit.Electromagnet;
import loomwright.circuit.FixedResistor;
import loomwright.circuit.Part;
import loomwright.circuit.Relay;
import loomwright.circuit.Solenoid;
import loomwright.circuit.Switch;
import loomwright.judgement.Level;
import loomwright.judgement.Ratio;
import loomwright.judgement.ignition.IgnitionRule;
import loomwright.message.Message;
import loomwright.operation.Branch;
import loomwright.operation.SolvedStep;
import loomwright.review.context.Check;
import loomwright.review.context.FindingCode;
import loomwright.review.context.FindingWording;
import loomwright.review.context.LoadCircuit;
import loomwright.review.context.PeakCurrents;
import loomwright.review.context.PeakCurrents.Peak;
import loomwright.review.context.ReviewContext;
import loomwright.review.context.ReviewText;
import loomwright.review.context.WorstCaseOrder;
import loomwright.review.ignition.PrimaryCircuits;
import org.jspecify.annotations.Nullable;

/** Contacts, diodes and resistors against what they may carry. Of a switch the terminal that carries most counts. */
public final class PartRatings implements Check {
    private static final Basis GIVEN = Basis.computed("current against the rating given", "comparison");

    /** A part's current at its largest, and what is said of its limit. */
    private record Load(Part part, Moment moment, double currentA, double ratingA, Basis basis) {}

    @Override
    public List<Finding> check(ReviewContext context) {
        List<Finding> findings = new ArrayList<>();
        for (Part part : context.plan().parts()) {
            load(context, part)
                    .filter(load -> load.currentA() > load.ratingA())
                    .filter(load -> !(part instanceof Diode diode) || !ReversedDiodes.isReversed(context, diode))
                    .ifPresent(load -> findings.add(overloaded(context, load)));
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
                    // With the ballast bypassed they carry more for as long as the engine is cranked.
                    ? branch(context.lasting(), part, IgnitionRule.CONTACTS_A, IgnitionRule.CONTACTS_BASIS)
                    : branch(context, part, ratingA, GIVEN);
        }
        return part instanceof Diode diode ? branch(context, part, diode.ratingA(), GIVEN) : Optional.empty();
    }

    private static Optional<Load> branch(ReviewContext context, Part part, @Nullable Double ratingA, Basis basis) {
        return branch(context.everAtAll(), part, ratingA, basis);
    }

    private static Optional<Load> branch(PeakCurrents currents, Part part, @Nullable Double ratingA, Basis basis) {
        if (ratingA == null) {
            return Optional.empty();
        }
        boolean coilToo = part instanceof Electromagnet;
        String bypass =
                part instanceof Solenoid ? part.terminal(Solenoid.BYPASS).toString() : "";
        Optional<Peak> peak = currents.find(
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
    private static Message remedy(ReviewContext context, Part part) {
        if (part instanceof Diode) {
            return ReviewText.FIT_LARGER_DIODE.with();
        }
        return part instanceof ContactBreaker breaker
                ? PrimaryCircuits.findContactRemedy(context, breaker).orElseGet(ReviewText.SPARE_CONTACTS::with)
                : ReviewText.USE_RELAY.with();
    }

    private static Level level(Load load) {
        return load.part() instanceof ContactBreaker breaker
                ? IgnitionRule.judgeContacts(load.currentA(), breaker.ratingA()).level()
                : Ratio.of(load.currentA(), load.ratingA()).level();
    }

    private static Finding overloaded(ReviewContext context, Load load) {
        FindingCode code = load.part() instanceof Diode ? FindingCode.DIODE_OVERLOADED : FindingCode.CONTACT_OVERLOADED;
        return Finding.of(
                        level(load).severity().orElse(Severity.NOTE),
                        code.with(
                                arg("part", load.part().thing()),
                                arg("currentA", load.currentA()),
                                arg("ratingA", load.ratingA()),
                                FindingWording.limitRatio(load.currentA(), load.ratingA()),
                                FindingWording.when(load.moment())),
                        load.basis())
                .remedy(remedy(context, load.part()));
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
                    return Finding.warning(
                                    FindingCode.RESISTOR_OVERHEATED.with(
                                            arg("resistor", resistor.thing()),
                                            arg("powerW", powerW),
                                            arg("ratingW", allowedW),
                                            FindingWording.limitRatio(powerW, allowedW),
                                            FindingWording.when(peak.moment())),
                                    Basis.computed("heat I^2 R against the rating given", "Joule's law"))
                            .remedy(ReviewText.FIT_LARGER_RESISTOR.with());
                });
    }
}
