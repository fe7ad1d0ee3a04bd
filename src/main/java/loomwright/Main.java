package loomwright;

import java.io.IOException;
import java.io.PrintStream;
import java.nio.file.Path;
import java.util.List;
import java.util.concurrent.Callable;
import java.util.concurrent.CountDownLatch;
import java.util.function.Supplier;
import loomwright.answer.RejectedInput;
import loomwright.backfeed.BackfeedLimits;
import loomwright.backfeed.sneak.SneakLimits;
import loomwright.bulk.BulkLimits;
import loomwright.network.NetworkLimits;
import loomwright.review.mistakes.MistakesLimits;
import loomwright.service.CalculationLimits;
import loomwright.service.Options;
import loomwright.service.Server;
import loomwright.service.ServiceLimits;
import loomwright.service.entrance.ApiKeys;
import loomwright.service.entrance.EntranceRules;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Spec;

/** Starts the service from the command line and stops it on SIGTERM or SIGINT. */
@Command(
        name = "loomwright",
        description = "Computes what happens in a vehicle's low-voltage wiring; a service over HTTP.",
        mixinStandardHelpOptions = true,
        showDefaultValues = true,
        sortOptions = false,
        subcommands = {CheckCommand.class, RehearseCommand.class})
public final class Main implements Callable<Integer> {
    /** What to paste into a shell for a first answer; {@code %1$s} is the address of the service. */
    private static final String FIRST_CALL =
            "curl -s %1$s/v1/examples/sandpiper-unguarded-bypass | curl -s --json @- %1$s/v1/plans/backfeed";

    @Option(names = "--host", description = "Address to listen on.")
    private String host = Options.DEFAULT.host();

    @Option(names = "--port", description = "Port to listen on; 0 takes a free one.")
    private int port = Options.DEFAULT.port();

    @Option(
            names = "--check-every-request",
            description = "Hold every body to the contract before binding it, not only those that do not bind.")
    private boolean checkEveryRequest;

    @Option(names = "--allow-origin", description = "Web origin whose pages may call the service; may be repeated.")
    private List<String> allowedOrigins = List.of();

    @Option(
            names = "--api-key-file",
            description =
                    "File with the keys of callers, on each line a name, a blank and a key; none lets in everybody.")
    private @Nullable Path apiKeyFile;

    @Option(
            names = "--requests-per-second",
            description = "Most requests of each caller in the long run; 0 for no limit.")
    private double requestsPerSecond = EntranceRules.OPEN.requestsPerSecond();

    @Option(names = "--burst", description = "How many of them may come at once.")
    private int burst = EntranceRules.OPEN.burst();

    @Option(
            names = "--behind-proxy",
            description =
                    "Callers without a key are told apart by the address that a proxy tells (X-Forwarded-For, Forwarded);"
                            + " only with a proxy in front that overwrites what callers send of these.")
    private boolean behindProxy;

    @Option(
            names = "--warm-up",
            description =
                    "Draw a picture before saying that the service is ready: the first that is asked for comes as fast"
                            + " as later ones, for some 50 MB of memory.")
    private boolean warmUp;

    @Mixin
    private Limits limits = new Limits();

    @Spec
    private CommandSpec spec = CommandSpec.create();

    /** One option for each of the limits. */
    static final class Limits {
        private static final ServiceLimits D = ServiceLimits.DEFAULT;

        @Option(names = "--body-bytes", description = "Largest request body.")
        private int bodyBytes = D.bodyBytes();

        @Option(names = "--head-bytes", description = "Largest request line and headers together.")
        private int headBytes = D.headBytes();

        @Option(names = "--nesting-depth", description = "Deepest nesting of a JSON body.")
        private int nestingDepth = D.nestingDepth();

        @Option(names = "--string-chars", description = "Longest text in a JSON body.")
        private int stringChars = D.stringChars();

        @Option(names = "--name-chars", description = "Longest property name in a JSON body.")
        private int nameChars = D.nameChars();

        @Option(names = "--number-chars", description = "Longest number in a JSON body.")
        private int numberChars = D.numberChars();

        @Option(names = "--tokens", description = "Most names, values and brackets in a JSON body.")
        private int tokens = D.tokens();

        @Option(names = "--threads", description = "Most requests worked on at once.")
        private int threads = D.threads();

        @Option(names = "--connections", description = "Most connections open at once.")
        private int connections = D.connections();

        @Option(names = "--idle-ms", description = "How long a connection may be silent, in ms.")
        private int idleMs = D.idleMs();

        @Option(names = "--arrival-ms", description = "How long a body may take to arrive, in ms.")
        private int arrivalMs = D.arrivalMs();

        @Option(names = "--drain-ms", description = "How long a stop goes on serving after /ready has said so, in ms.")
        private int drainMs = D.drainMs();

        @Option(names = "--stop-ms", description = "How long a stop waits for requests in flight, in ms.")
        private int stopMs = D.stopMs();

        private static final CalculationLimits C = CalculationLimits.DEFAULT;

        @Option(names = "--network-nodes", description = "Most nodes of a network.")
        private int networkNodes = C.network().maxNodes();

        @Option(names = "--network-elements", description = "Most elements of a network.")
        private int networkElements = C.network().maxElements();

        @Option(names = "--network-steps", description = "Most steps of one nonlinear solution.")
        private int networkSteps = C.network().maxIterations();

        @Option(names = "--calculation-ms", description = "How long a calculation of a plan may take, in ms.")
        private int calculationMs = C.timeMs();

        @Option(names = "--combinations", description = "Most combinations of switch positions in a backfeed search.")
        private int combinations = C.backfeed().maxCombinations();

        @Option(names = "--paths", description = "Most ways of the current told for one load.")
        private int paths = C.backfeed().maxPaths();

        @Option(names = "--remedies", description = "Most remedies tried for one load.")
        private int remedies = C.backfeed().maxTrials();

        @Option(
                names = "--mistakes",
                description = "Most mistakes times settings of the free switches that are solved.")
        private int mistakes = C.mistakes().maxSolutions();

        @Option(
                names = "--sneak-combinations",
                description = "Most combinations of switch positions and faults in an exhaustive search.")
        private int sneakCombinations = C.sneaks().maxCombinations();

        @Option(names = "--sneak-cases", description = "Most combinations followed in full in an exhaustive search.")
        private int sneakCases = C.sneaks().maxCases();

        @Option(names = "--sneak-threads", description = "Threads that work on exhaustive searches, all together.")
        private int sneakThreads = C.sneaks().threads();

        @Option(names = "--sneak-ms", description = "How long an exhaustive search may take, in ms.")
        private int sneakMs = C.sneaks().timeMs();

        @Option(names = "--bulk-threads", description = "Threads that work on bulk runs, all together.")
        private int bulkThreads = C.bulk().threads();

        @Option(names = "--bulk-lines", description = "Most lines of a bulk run that are read and not yet answered.")
        private int bulkLines = C.bulk().windowLines();

        @Option(names = "--bulk-bytes", description = "The same in bytes.")
        private int bulkBytes = C.bulk().windowBytes();

        @Option(names = "--bulk-runs", description = "Most bulk runs at once.")
        private int bulkRuns = C.bulk().runs();

        @Option(
                names = "--bulk-silence-ms",
                description = "How long a bulk run may wait for a line, or for its reader, in ms.")
        private int bulkSilenceMs = C.bulk().silenceMs();

        /**
         * Options with these limits.
         *
         * @throws ParameterException if one is out of range
         */
        Options toOptions(CommandSpec spec, Supplier<Options> other) {
            try {
                return other.get().withLimits(toLimits()).withCalculation(toCalculationLimits());
            } catch (RejectedInput rejected) {
                throw new ParameterException(spec.commandLine(), rejected.getMessage(), rejected);
            }
        }

        private CalculationLimits toCalculationLimits() {
            return new CalculationLimits(
                    new NetworkLimits(networkNodes, networkElements, networkSteps),
                    new BackfeedLimits(combinations, paths, remedies),
                    new MistakesLimits(mistakes),
                    new SneakLimits(sneakCombinations, sneakCases, sneakThreads, sneakMs),
                    new BulkLimits(bulkThreads, bulkLines, bulkBytes, bulkRuns, bulkSilenceMs),
                    calculationMs);
        }

        private ServiceLimits toLimits() {
            return new ServiceLimits(
                    bodyBytes,
                    headBytes,
                    nestingDepth,
                    stringChars,
                    nameChars,
                    numberChars,
                    tokens,
                    threads,
                    connections,
                    idleMs,
                    arrivalMs,
                    drainMs,
                    stopMs);
        }
    }

    public static void main(String[] args) {
        int code = new CommandLine(new Main()).execute(args);
        if (code != 0) {
            System.exit(code);
        }
    }

    @Override
    public Integer call() throws InterruptedException {
        Server server = warmUp ? Server.startAndWarmUp(options()) : Server.start(options());
        CountDownLatch stopped = new CountDownLatch(1);
        Runtime.getRuntime()
                .addShutdownHook(new Thread(
                        () -> {
                            server.close();
                            stopped.countDown();
                        },
                        "stop"));
        announce(System.out, "http://" + (host.contains(":") ? "[" + host + "]" : host) + ":" + server.port());
        stopped.await();
        return 0;
    }

    private Options options() {
        return limits.toOptions(
                spec,
                () -> Options.DEFAULT
                        .withAddress(host, port)
                        .withCheckEveryRequest(checkEveryRequest)
                        .withAllowedOrigins(allowedOrigins)
                        .withEntrance(new EntranceRules(keys(), requestsPerSecond, burst, behindProxy)));
    }

    private ApiKeys keys() {
        if (apiKeyFile == null) {
            return ApiKeys.NONE;
        }
        try {
            return ApiKeys.read(apiKeyFile);
        } catch (IOException e) {
            throw new ParameterException(spec.commandLine(), "The file of keys cannot be read: " + e, e);
        }
    }

    private static void announce(PrintStream out, String address) {
        out.println("Loomwright answers at " + address);
        out.println("  contract       " + address + "/openapi.yaml");
        out.println("  documentation  " + address + "/docs");
        out.println("  first answer   " + FIRST_CALL.formatted(address));
    }
}
