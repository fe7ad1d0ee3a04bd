package loomwright.review.part;

import static loomwright.message.Arg.arg;

import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import loomwright.answer.Basis;
import loomwright.answer.Finding;
import loomwright.circuit.Connector;
import loomwright.circuit.ConnectorHalf;
import loomwright.circuit.Part;
import loomwright.message.Argument.Thing;
import loomwright.operation.Branch;
import loomwright.review.context.Check;
import loomwright.review.context.FindingCode;
import loomwright.review.context.FindingWording;
import loomwright.review.context.PeakCurrents.Peak;
import loomwright.review.context.ReviewContext;
import loomwright.review.context.ReviewText;

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
        return Finding.warning(
                        FindingCode.CONNECTOR_OVERLOADED.with(
                                arg("connector", new Thing(connector.id(), connector.id(), Thing.Kind.CONNECTOR)),
                                arg("currentA", peak.currentA()),
                                arg("ratingA", ratingA),
                                FindingWording.limitRatio(peak.currentA(), ratingA),
                                arg("pin", way),
                                FindingWording.when(peak.moment())),
                        Basis.computed("current against the rating given", "comparison"))
                .about(ids)
                .remedy(ReviewText.FIT_LARGER_CONNECTOR.with());
    }
}
