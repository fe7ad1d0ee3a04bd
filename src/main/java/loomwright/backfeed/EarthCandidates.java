package loomwright.backfeed;

import static loomwright.message.Arg.arg;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import loomwright.backfeed.BackfeedReport.Occurrence;
import loomwright.backfeed.BackfeedReport.Remedy.Kind;
import loomwright.backfeed.Survey.Moment;
import loomwright.circuit.Coil;
import loomwright.circuit.Consumer;
import loomwright.circuit.EarthPoint;
import loomwright.circuit.Joint;
import loomwright.circuit.Part;
import loomwright.circuit.Plan;
import loomwright.circuit.TerminalRef;
import loomwright.circuit.Wire;
import loomwright.judgement.DropRule;
import loomwright.operation.Branch;
import loomwright.operation.Joined;
import loomwright.operation.MissingConnections;
import loomwright.operation.MissingConnections.Missing;
import loomwright.operation.SolvedStep;

/**
 * Remedies where a way to the chassis, or a joint, is bad or missing: the joints and earth points that lose more than a sound one
 * may while the load is fed, on the current's way or off it, made good; and for each load on the way an earth of its own, once a
 * splice.
 */
final class EarthCandidates {
    private final Plan plan;
    private final PlanEdit edit;
    private final double mostV;
    /** By id of the wire, those of its ends that have a resistance. */
    private final Map<String, List<BadEnd>> badEnds = new HashMap<>();

    EarthCandidates(Plan plan) {
        this.plan = plan;
        this.edit = new PlanEdit(plan);
        this.mostV = DropRule.EARTH_JOINT.findingV(plan.system().nominalVoltageV());
        for (Wire wire : plan.wires()) {
            badEnds.put(
                    wire.id(),
                    Stream.of(new BadEnd(wire, true), new BadEnd(wire, false))
                            .filter(end -> end.ohm() > 0)
                            .toList());
        }
    }

    /** Joints and earth points to be made good, those that lose most first. */
    List<Candidate> repairs(Survey survey, Consumer load) {
        Map<Place, Double> lostV = new LinkedHashMap<>();
        for (Moment moment : survey.solvedMoments()) {
            if (moment.isUnintended(load)) {
                collect(moment.solved(), lostV);
            }
        }
        return lostV.entrySet().stream()
                .filter(lost -> lost.getValue() > mostV)
                .sorted(Map.Entry.<Place, Double>comparingByValue().reversed())
                .map(lost -> lost.getKey().repair(this, lost.getValue()))
                .toList();
    }

    /** A place with a resistance that should not be there. */
    private sealed interface Place {
        Candidate repair(EarthCandidates in, double lostV);
    }

    private record BadEarth(EarthPoint earth) implements Place {
        @Override
        public Candidate repair(EarthCandidates in, double lostV) {
            return in.made(earth, new EarthPoint(earth.id(), earth.label(), 0.0), lostV);
        }
    }

    private record BadJoint(Joint joint) implements Place {
        @Override
        public Candidate repair(EarthCandidates in, double lostV) {
            return in.made(joint, new Joint(joint.id(), joint.label(), joint.terminals(), 0.0), lostV);
        }
    }

    private record BadEnd(Wire wire, boolean atFrom) implements Place {
        double ohm() {
            return atFrom
                    ? wire.joints().fromJointResistanceOhm()
                    : wire.joints().toJointResistanceOhm();
        }

        @Override
        public Candidate repair(EarthCandidates in, double lostV) {
            return in.made(this, lostV);
        }
    }

    private void collect(SolvedStep solved, Map<Place, Double> lostV) {
        for (int i = 0; i < solved.branches().size(); i++) {
            Branch branch = solved.branches().get(i);
            double acrossV = Math.abs(solved.acrossV(branch.fromNode(), branch.toNode()));
            Part part = solved.partOf(i).orElse(null);
            if (part instanceof EarthPoint earth) {
                lostV.merge(new BadEarth(earth), acrossV, Math::max);
            } else if (part instanceof Joint joint) {
                lostV.merge(new BadJoint(joint), acrossV, Math::max);
            } else if (branch.owner() == Branch.Owner.WIRE) {
                double currentA = Math.abs(solved.currentA(i));
                for (BadEnd end : badEnds.getOrDefault(branch.id(), List.of())) {
                    lostV.merge(end, currentA * end.ohm(), Math::max);
                }
            }
        }
    }

    private Candidate made(Part bad, Part good, double lostV) {
        return new Candidate(
                Kind.REPAIR,
                BackfeedText.REPAIR_JOINT.with(arg("place", bad.thing()), arg("lostV", lostV), arg("limitV", mostV)),
                bad.id(),
                null,
                () -> plan.withPart(good));
    }

    private Candidate made(BadEnd end, double lostV) {
        Wire wire = end.wire();
        Wire good = end.atFrom()
                ? wire.withJoints(0, wire.joints().toJointResistanceOhm())
                : wire.withJoints(wire.joints().fromJointResistanceOhm(), 0);
        return new Candidate(
                Kind.REPAIR,
                BackfeedText.REPAIR_WIRE_END.with(
                        arg("wire", wire.thing()),
                        edit.at("terminal", end.atFrom() ? wire.from() : wire.to()),
                        arg("lostV", lostV),
                        arg("limitV", mostV)),
                wire.id(),
                null,
                () -> plan.with(
                        plan.parts(),
                        plan.wires().stream()
                                .map(w -> w.equals(wire) ? good : w)
                                .toList()));
    }

    /** An earth for each load on the way of the current; loads whose returns meet at one splice get one there. */
    List<Candidate> ownEarths(List<Occurrence> occurrences) {
        List<Candidate> candidates = new ArrayList<>();
        Map<String, TerminalRef> lostReturns = MissingConnections.of(plan).stream()
                .filter(missing -> missing.kind() == MissingConnections.Kind.NO_RETURN)
                .collect(Collectors.toMap(missing -> missing.part().id(), Missing::at));
        Set<TerminalRef> earthed = new LinkedHashSet<>();
        occurrences.stream()
                .flatMap(o -> o.paths().stream())
                .flatMap(p -> p.steps().stream())
                .filter(s -> s.owner() == Branch.Owner.PART)
                .map(BackfeedReport.PathStep::id)
                .distinct()
                .flatMap(id -> plan.findPart(id).stream())
                .filter(Consumer.class::isInstance)
                .map(Consumer.class::cast)
                .forEach(consumer -> {
                    Optional<Joint> splice = splice(consumer, lostReturns);
                    TerminalRef at = splice.map(joint -> joint.terminal(freest(joint)))
                            .orElseGet(() -> consumer.terminal(consumer.returnTerminal()));
                    // A coil that is earthed itself is never switched: it burns out and gives no spark.
                    if ((splice.isPresent() || !(consumer instanceof Coil)) && earthed.add(at)) {
                        candidates.add(ownEarth(consumer, splice, at));
                    }
                });
        return candidates;
    }

    /** Where the return of a load ends with others; not where a coil meets others ahead of its points. */
    private Optional<Joint> splice(Consumer consumer, Map<String, TerminalRef> lostReturns) {
        return Optional.ofNullable(lostReturns.get(consumer.id()))
                .map(at -> plan.findPart(at.part()).orElseThrow())
                .filter(Joint.class::isInstance)
                .map(Joint.class::cast)
                .or(() -> consumer instanceof Coil ? Optional.empty() : spliceWithoutEarth(consumer));
    }

    private Candidate ownEarth(Consumer consumer, Optional<Joint> splice, TerminalRef at) {
        Part part = splice.<Part>map(joint -> joint).orElse(consumer);
        EarthPoint earth = new EarthPoint(plan.freeId("earth-" + part.id(), ""), null, 0.0);
        List<Wire> wires = new ArrayList<>(plan.wires());
        wires.add(PlanEdit.fitted(plan.freeId("earth-" + part.id(), "-lead"), at, earth.terminal(EarthPoint.TERMINAL)));
        return new Candidate(
                Kind.SEPARATE_EARTH,
                splice.isPresent()
                        ? BackfeedText.EARTH_SPLICE.with(arg("splice", part.thing()))
                        : BackfeedText.SEPARATE_EARTH.with(arg("part", part.thing()), edit.at("terminal", at)),
                part.id(),
                null,
                () -> plan.with(edit.with(earth), wires));
    }

    /**
     * The splice at which the return of a load meets others though nothing leads from there to the chassis; empty if there is
     * none, or the chassis is reached.
     */
    private Optional<Joint> spliceWithoutEarth(Consumer consumer) {
        TerminalRef back = consumer.terminal(consumer.returnTerminal());
        if (Joined.isEarthed(plan, back)) {
            return Optional.empty();
        }
        return Joined.with(plan, List.of(back)).stream()
                .flatMap(reached -> plan.findPart(reached.part()).stream())
                .filter(Joint.class::isInstance)
                .map(Joint.class::cast)
                .distinct()
                .max(Comparator.comparingLong(plan::wiresAt));
    }

    private String freest(Joint joint) {
        return joint.terminals().stream()
                .min(Comparator.comparingLong(name -> plan.wiresAt(joint.terminal(name))))
                .orElseThrow();
    }
}
