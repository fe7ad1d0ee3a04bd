package loomwright;

import static loomwright.message.Arg.arg;

import java.io.IOException;
import java.io.PrintStream;
import java.nio.file.Path;
import java.util.List;
import java.util.concurrent.Callable;
import java.util.concurrent.CountDownLatch;
import loomwright.message.Arg;
import loomwright.message.Message;
import loomwright.service.Server;
import loomwright.service.entrance.AccessRules;
import loomwright.service.entrance.ApiKeys;
import loomwright.service.limits.Options;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine;
import picocli.CommandLine.Command;
import picocli.CommandLine.Help.Visibility;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Spec;

/** Starts the service from the command line and stops it on SIGTERM or SIGINT. */
@Command(
        name = "loomwright",
        mixinStandardHelpOptions = true,
        showDefaultValues = true,
        sortOptions = false,
        subcommands = {CheckCommand.class, RehearseCommand.class})
public final class Main implements Callable<Integer> {
    /** What to paste into a shell for a first answer; {@code %1$s} is the address of the service. */
    private static final String FIRST_CALL =
            "curl -s %1$s/v1/examples/sandpiper-unguarded-bypass | curl -s --json @- %1$s/v1/plans/backfeed";

    @Option(names = "--host")
    private String host = Options.DEFAULT.host();

    @Option(names = "--port")
    private int port = Options.DEFAULT.port();

    @Option(names = "--allow-origin", showDefaultValue = Visibility.NEVER)
    private List<String> allowedOrigins = List.of();

    @Option(names = "--api-key-file")
    private @Nullable Path apiKeyFile;

    @Option(names = "--requests-per-second")
    private double requestsPerSecond = AccessRules.OPEN.requestsPerSecond();

    @Option(names = "--burst")
    private int burst = AccessRules.OPEN.burst();

    @Option(names = "--trusted-proxies")
    private int trustedProxies = AccessRules.OPEN.trustedProxies();

    @Option(names = "--warm-up")
    private boolean warmUp;

    @Mixin
    private WorkLimits work = new WorkLimits();

    @Mixin
    private ServerLimits serving = new ServerLimits();

    @Spec
    private CommandSpec spec = CommandSpec.create();

    public static void main(String[] args) {
        int code = commandLine().execute(args);
        if (code != 0) {
            System.exit(code);
        }
    }

    /** The command line; what is wrong with one is said in one line, without the list of all options. */
    static CommandLine commandLine() {
        CommandLine main = new CommandLine(new Main()).setResourceBundle(new OptionWords());
        main.getSubcommands().values().forEach(command -> command.setResourceBundle(new OptionWords()));
        return main.setParameterExceptionHandler((wrong, arguments) -> {
            CommandLine command = wrong.getCommandLine();
            command.getErr().println(wrong.getMessage());
            command.getErr()
                    .println(CommandText.HELP
                            .with(arg("command", command.getCommandSpec().qualifiedName()))
                            .text());
            return command.getCommandSpec().exitCodeOnInvalidInput();
        });
    }

    @Override
    public Integer call() throws InterruptedException {
        Options options = options();
        ListenAddress.failure(host, port).ifPresent(failure -> {
            throw OptionNames.wrong(spec, failure, null);
        });
        Server server = warmUp ? Server.startAndWarmUp(options) : Server.start(options);
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
                work,
                file -> serving.with(work, file)
                        .withAddress(host, port)
                        .withAllowedOrigins(allowedOrigins)
                        .withEntrance(new AccessRules(keys(), requestsPerSecond, burst, trustedProxies)));
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
                throw OptionNames.wrong(spec, CommandText.CANNOT_BE_READ.with(arg("file", file.toString())), e);
            }
        });
    }

    private static void announce(PrintStream out, String address) {
        Arg at = arg("address", address);
        for (Message line : List.of(
                CommandText.ANSWERS_AT.with(at),
                CommandText.CONTRACT.with(at),
                CommandText.DOCUMENTATION.with(at),
                CommandText.FIRST_ANSWER.with(arg("command", FIRST_CALL.formatted(address))))) {
            out.println(line.text());
        }
    }
}
