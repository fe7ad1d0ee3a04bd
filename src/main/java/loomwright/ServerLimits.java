package loomwright;

import static loomwright.OptionNames.named;

import java.util.Map;
import loomwright.backfeed.BackfeedLimits;
import loomwright.bulk.BulkLimits;
import loomwright.network.NetworkLimits;
import loomwright.service.limits.CalculationLimits;
import loomwright.service.limits.Options;
import loomwright.service.limits.ServiceLimits;
import picocli.CommandLine.Option;

/** Limits that only a service has, and all limits put together. */
final class ServerLimits {
    private static final ServiceLimits S = ServiceLimits.DEFAULT;
    private static final CalculationLimits C = CalculationLimits.DEFAULT;

    @Option(names = "--threads")
    private int threads = S.threads();

    /**
     * Options with all limits.
     *
     * @param file those without an option
     * @throws loomwright.answer.RejectedInput that names the options and the limits of the file that are out of range
     */
    Options with(WorkLimits work, LimitsFile file) {
        ServiceLimits service = service(work, file);
        CalculationLimits calculation = calculation(work, file);
        boolean checkEveryRequest = file.get("check-every-request", 0) != 0;
        file.rejectOthers();
        return Options.DEFAULT
                .withLimits(service)
                .withCalculation(calculation)
                .withCheckEveryRequest(checkEveryRequest);
    }

    private ServiceLimits service(WorkLimits work, LimitsFile file) {
        return new ServiceLimits(
                work.bodyBytes,
                file.get("head-bytes", S.headBytes()),
                new ServiceLimits.JsonLimits(
                        file.get("nesting-depth", S.json().nestingDepth()),
                        file.get("string-chars", S.json().stringChars()),
                        file.get("name-chars", S.json().nameChars()),
                        file.get("number-chars", S.json().numberChars()),
                        file.get("tokens", S.json().tokens())),
                threads,
                file.get("connections", S.connections()),
                new ServiceLimits.Waits(
                        file.get("idle-ms", S.waits().idleMs()),
                        file.get("arrival-ms", S.waits().arrivalMs()),
                        file.get("drain-ms", S.waits().drainMs()),
                        file.get("stop-ms", S.waits().stopMs())));
    }

    private static CalculationLimits calculation(WorkLimits work, LimitsFile file) {
        NetworkLimits network = named(
                Map.of(
                        "maxNodes",
                        "network-nodes",
                        "maxElements",
                        "network-elements",
                        "maxIterations",
                        "network-steps"),
                () -> new NetworkLimits(
                        file.get("network-nodes", C.network().maxNodes()),
                        file.get("network-elements", C.network().maxElements()),
                        file.get("network-steps", C.network().maxIterations())));
        BackfeedLimits backfeed = named(
                Map.of(
                        "maxCombinations",
                        "combinations",
                        "solvedCombinations",
                        "solved-combinations",
                        "maxPaths",
                        "paths",
                        "maxTrials",
                        "remedies",
                        "timeMs",
                        "search-ms"),
                () -> new BackfeedLimits(
                        file.get("combinations", C.backfeed().maxCombinations()),
                        file.get("solved-combinations", C.backfeed().solvedCombinations()),
                        file.get("paths", C.backfeed().maxPaths()),
                        file.get("remedies", C.backfeed().maxTrials()),
                        file.get("search-ms", C.backfeed().timeMs())));
        BulkLimits bulk = named(
                Map.of(
                        "threads",
                        "--bulk-threads",
                        "windowLines",
                        "bulk-lines",
                        "windowBytes",
                        "bulk-bytes",
                        "runs",
                        "bulk-runs",
                        "silenceMs",
                        "bulk-silence-ms"),
                () -> new BulkLimits(
                        work.bulkThreads,
                        file.get("bulk-lines", C.bulk().windowLines()),
                        file.get("bulk-bytes", C.bulk().windowBytes()),
                        file.get("bulk-runs", C.bulk().runs()),
                        file.get("bulk-silence-ms", C.bulk().silenceMs())));
        return named(
                Map.of("network/maxElements", "network-elements", "timeMs", "--calculation-ms"),
                () -> new CalculationLimits(network, backfeed, bulk, work.calculationMs));
    }
}
