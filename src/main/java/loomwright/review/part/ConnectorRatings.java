package loomwright.review.part;

import static loomwright.review.context.FindingWording.number;

import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import loomwright.answer.Basis;
import loomwright.answer.Finding;
import loomwright.answer.Severity;
import loomwright.circuit.Connector;
import loomwright.circuit.ConnectorHalf;
import loomwright.circuit.Part;
import loomwright.operation.Branch;
import loomwright.review.context.Check;
import loomwright.review.context.FindingCode;
import loomwright.review.context.FindingWording;
import loomwright.review.context.PeakCurrents.Peak;
import loomwright.review.context.ReviewContext;

/** Each way of a connector against the rating of the weaker half. */
public final class ConnectorRatings implements Check {
    @Override
    public List<Finding> check(ReviewContext context) {
        List<Finding> findings = new ArrayList<>();
        for (Connector connector : context.plan().connectors()) {
            Optional<Double> ratingA = connector.halves().stream()
                    .flatMap(half -> context.plan().findPart(half).stream())
                    .map(part -> part instanceof ConnectorHalf half ? half.ratingA() : null)
                    .filter(Objects::nonNull)
                    .min(Double::compare);
            Part half = context.plan().findPart(connector.halves().get(0)).orElseThrow();
            for (String way : half.terminals()) {
                context.lasting()
                        .find(
                                Branch.Owner.CONNECTOR,
                                connector.id(),
                                b -> b.from().equals(half.terminal(way).toString()))
                        .filter(peak -> ratingA.isPresent() && peak.currentA() > ratingA.get())
                        .ifPresent(peak -> findings.add(overloaded(connector, way, peak, ratingA.orElseThrow())));
            }
        }
        return findings;
    }

    private static Finding overloaded(Connector connector, String way, Peak peak, double ratingA) {
        List<String> ids = new ArrayList<>(List.of(connector.id()));
        ids.addAll(connector.halves());
        return FindingCode.CONNECTOR_OVERLOADED.finding(
                Severity.WARNING,
                ids,
                "Way " + way + " of connector " + connector.id() + " carries " + number(peak.currentA()) + " A, "
                        + FindingWording.when(peak.moment()) + "; it may carry " + number(ratingA) + " A.",
                FindingWording.against("currentA", peak.currentA(), "ratingA", ratingA),
                Basis.computed("current against the rating given", "comparison"),
                "Take a connector for more current, or divide the load over two ways.");
    }
}
