package loomwright.drawing.diagram;

import java.util.Collection;
import java.util.Comparator;
import java.util.Optional;
import java.util.stream.Stream;
import loomwright.answer.Finding;
import loomwright.comparison.PlanComparison;
import loomwright.comparison.PlanComparison.Kept;
import loomwright.message.Argument;
import loomwright.message.Argument.Instant;
import loomwright.message.Argument.Listing;
import loomwright.message.Argument.Nested;
import loomwright.message.Argument.Word;
import loomwright.operation.Step;

/** The step in which the worst of what a change is about shows. */
final class WorstStep {
    private WorstStep() {}

    /** Of the worst finding that goes, comes or stays, in this order where they are equally bad; else key on. */
    static Step of(PlanComparison comparison) {
        return Stream.of(
                        comparison.findings().disappear().stream(),
                        comparison.findings().appear().stream(),
                        comparison.findings().stay().stream().map(Kept::after))
                .flatMap(findings -> findings)
                .sorted(Comparator.comparing(Finding::severity))
                .flatMap(finding -> step(finding).stream())
                .findFirst()
                .orElse(Step.RUN);
    }

    private static Optional<Step> step(Finding finding) {
        return step(finding.message().arguments().values());
    }

    private static Optional<Step> step(Collection<Argument> arguments) {
        return arguments.stream().flatMap(one -> step(one).stream()).findFirst();
    }

    private static Optional<Step> step(Argument argument) {
        if (argument instanceof Instant instant && instant.step() instanceof Step step) {
            return Optional.of(step);
        } else if (argument instanceof Word word && word.code() instanceof Step step) {
            return Optional.of(step);
        } else if (argument instanceof Nested nested) {
            return step(nested.message().arguments().values());
        } else if (argument instanceof Listing listing) {
            return step(listing.items());
        }
        return Optional.empty();
    }
}
