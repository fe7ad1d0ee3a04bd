package loomwright;

import loomwright.service.limits.CalculationLimits;
import loomwright.service.limits.ServiceLimits;
import picocli.CommandLine.Option;

/** Limits of what is read and calculated, one option each: they hold in the service and in {@link CheckCommand}. */
final class WorkLimits {
    private static final ServiceLimits S = ServiceLimits.DEFAULT;
    private static final CalculationLimits C = CalculationLimits.DEFAULT;

    @Option(names = "--body-bytes", description = "Largest body of a request, line or file of a plan.")
    int bodyBytes = S.bodyBytes();

    @Option(names = "--nesting-depth", description = "Deepest nesting of JSON.")
    int nestingDepth = S.nestingDepth();

    @Option(names = "--string-chars", description = "Longest text in JSON.")
    int stringChars = S.stringChars();

    @Option(names = "--name-chars", description = "Longest property name in JSON.")
    int nameChars = S.nameChars();

    @Option(names = "--number-chars", description = "Longest number in JSON.")
    int numberChars = S.numberChars();

    @Option(names = "--tokens", description = "Most names, values and brackets in one piece of JSON.")
    int tokens = S.tokens();

    @Option(names = "--network-nodes", description = "Most nodes of a network.")
    int networkNodes = C.network().maxNodes();

    @Option(names = "--network-elements", description = "Most elements of a network.")
    int networkElements = C.network().maxElements();

    @Option(names = "--network-steps", description = "Most steps of one nonlinear solution.")
    int networkSteps = C.network().maxIterations();

    @Option(names = "--calculation-ms", description = "How long a calculation of a plan may take, in ms.")
    int calculationMs = C.timeMs();

    @Option(names = "--combinations", description = "Most combinations of switch positions in a backfeed search.")
    int combinations = C.backfeed().maxCombinations();

    @Option(
            names = "--solved-combinations",
            description = "Most combinations that a review solves with all figures, and that remedies are proved on.")
    int solvedCombinations = C.backfeed().solvedCombinations();

    @Option(
            names = "--search-ms",
            description = "How long a backfeed search may take, in ms; then it tells what it has found.")
    int searchMs = C.backfeed().timeMs();

    @Option(names = "--paths", description = "Most ways of the current told for one load.")
    int paths = C.backfeed().maxPaths();

    @Option(names = "--remedies", description = "Most remedies tried for one load.")
    int remedies = C.backfeed().maxTrials();

    @Option(names = "--bulk-threads", description = "Threads that work on the lines of many, all together.")
    int bulkThreads = C.bulk().threads();

    @Option(names = "--bulk-lines", description = "Most lines of a run that are read and not yet answered.")
    int bulkLines = C.bulk().windowLines();

    @Option(names = "--bulk-bytes", description = "The same in bytes.")
    int bulkBytes = C.bulk().windowBytes();
}
