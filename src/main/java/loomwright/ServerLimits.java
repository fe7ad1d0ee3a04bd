package loomwright;

import static loomwright.OptionNames.named;

import java.util.Map;
import loomwright.backfeed.BackfeedLimits;
import loomwright.bulk.BulkLimits;
import loomwright.mistakes.MistakesLimits;
import loomwright.network.NetworkLimits;
import loomwright.service.limits.CalculationLimits;
import loomwright.service.limits.Options;
import loomwright.service.limits.ServiceLimits;
import picocli.CommandLine.Option;

/** Limits that only a service has, one option each. */
final class ServerLimits {
    private static final ServiceLimits S = ServiceLimits.DEFAULT;
    private static final CalculationLimits C = CalculationLimits.DEFAULT;

    @Option(names = "--head-bytes", description = "Largest request line and headers together.")
    private int headBytes = S.headBytes();

    @Option(names = "--threads", description = "Most requests worked on at once.")
    private int threads = S.threads();

    @Option(names = "--connections", description = "Most connections open at once.")
    private int connections = S.connections();

    @Option(names = "--idle-ms", description = "How long a connection may be silent, in ms.")
    private int idleMs = S.idleMs();

    @Option(names = "--arrival-ms", description = "How long a body may take to arrive, in ms.")
    private int arrivalMs = S.arrivalMs();

    @Option(names = "--drain-ms", description = "How long a stop goes on serving after /ready has said so, in ms.")
    private int drainMs = S.drainMs();

    @Option(names = "--stop-ms", description = "How long a stop waits for requests in flight, in ms.")
    private int stopMs = S.stopMs();

    @Option(names = "--mistakes", description = "Most mistakes times settings of the free switches that are solved.")
    private int mistakes = C.mistakes().maxSolutions();

    @Option(names = "--bulk-runs", description = "Most bulk runs at once.")
    private int bulkRuns = C.bulk().runs();

    @Option(
            names = "--bulk-silence-ms",
            description = "How long a bulk run may wait for a line, or for its reader, in ms.")
    private int bulkSilenceMs = C.bulk().silenceMs();

    /**
     * Options with all limits.
     *
     * @throws loomwright.answer.RejectedInput that names the options out of range
     */
    Options with(WorkLimits work) {
        return Options.DEFAULT.withLimits(service(work)).withCalculation(calculation(work));
    }

    private ServiceLimits service(WorkLimits work) {
        return new ServiceLimits(
                work.bodyBytes,
                headBytes,
                work.nestingDepth,
                work.stringChars,
                work.nameChars,
                work.numberChars,
                work.tokens,
                threads,
                connections,
                idleMs,
                arrivalMs,
                drainMs,
                stopMs);
    }

    private CalculationLimits calculation(WorkLimits work) {
        NetworkLimits network = named(
                Map.of(
                        "maxNodes",
                        "--network-nodes",
                        "maxElements",
                        "--network-elements",
                        "maxIterations",
                        "--network-steps"),
                () -> new NetworkLimits(work.networkNodes, work.networkElements, work.networkSteps));
        BackfeedLimits backfeed = named(
                Map.of(
                        "maxCombinations",
                        "--combinations",
                        "solvedCombinations",
                        "--solved-combinations",
                        "maxPaths",
                        "--paths",
                        "maxTrials",
                        "--remedies",
                        "timeMs",
                        "--search-ms"),
                () -> new BackfeedLimits(
                        work.combinations, work.solvedCombinations, work.paths, work.remedies, work.searchMs));
        MistakesLimits most = named(Map.of("maxSolutions", "--mistakes"), () -> new MistakesLimits(mistakes));
        BulkLimits bulk = named(
                Map.of(
                        "threads",
                        "--bulk-threads",
                        "windowLines",
                        "--bulk-lines",
                        "windowBytes",
                        "--bulk-bytes",
                        "runs",
                        "--bulk-runs",
                        "silenceMs",
                        "--bulk-silence-ms"),
                () -> new BulkLimits(work.bulkThreads, work.bulkLines, work.bulkBytes, bulkRuns, bulkSilenceMs));
        return named(
                Map.of("network/maxElements", "--network-elements", "timeMs", "--calculation-ms"),
                () -> new CalculationLimits(network, backfeed, most, bulk, work.calculationMs));
    }
}
