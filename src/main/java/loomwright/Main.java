package loomwright;

import java.io.IOException;
import java.io.PrintStream;
import java.nio.file.Path;
import java.util.List;
import java.util.concurrent.Callable;
import java.util.concurrent.CountDownLatch;
import loomwright.service.Server;
import loomwright.service.entrance.AccessRules;
import loomwright.service.entrance.ApiKeys;
import loomwright.service.limits.Options;
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
    private double requestsPerSecond = AccessRules.OPEN.requestsPerSecond();

    @Option(names = "--burst", description = "How many of them may come at once.")
    private int burst = AccessRules.OPEN.burst();

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
    private WorkLimits work = new WorkLimits();

    @Mixin
    private ServerLimits serving = new ServerLimits();

    @Spec
    private CommandSpec spec = CommandSpec.create();

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
        return OptionNames.checked(
                spec,
                () -> serving.with(work)
                        .withAddress(host, port)
                        .withCheckEveryRequest(checkEveryRequest)
                        .withAllowedOrigins(allowedOrigins)
                        .withEntrance(new AccessRules(keys(), requestsPerSecond, burst, behindProxy)));
    }

    private ApiKeys keys() {
        Path file = apiKeyFile;
        if (file == null) {
            return ApiKeys.NONE;
        }
        return OptionNames.named(line -> "--api-key-file" + (line.isEmpty() ? "" : ", line " + line), () -> {
            try {
                return ApiKeys.read(file);
            } catch (IOException e) {
                throw new ParameterException(spec.commandLine(), "--api-key-file cannot be read: " + e, e);
            }
        });
    }

    private static void announce(PrintStream out, String address) {
        out.println("Loomwright answers at " + address);
        out.println("  contract       " + address + "/openapi.yaml");
        out.println("  documentation  " + address + "/docs");
        out.println("  first answer   " + FIRST_CALL.formatted(address));
    }
}
