package loomwright;

import static loomwright.message.Arg.arg;

import java.io.BufferedOutputStream;
import java.io.FileDescriptor;
import java.io.FileOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.io.PrintWriter;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.concurrent.Callable;
import java.util.concurrent.atomic.AtomicLong;
import loomwright.answer.Severity;
import loomwright.bulk.LineReader;
import loomwright.bulk.LineSource;
import loomwright.bulk.PlanFiles;
import loomwright.bulk.Summary;
import loomwright.message.Message;
import loomwright.service.LocalRun;
import loomwright.service.limits.Options;
import me.tongfei.progressbar.ConsoleProgressBarConsumer;
import me.tongfei.progressbar.ProgressBar;
import me.tongfei.progressbar.ProgressBarBuilder;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Help.Ansi;
import picocli.CommandLine.Help.Visibility;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** Checks many plans without the service. */
@Command(
        name = "check",
        exitCodeOnInvalidInput = 64,
        exitCodeOnExecutionException = 70,
        mixinStandardHelpOptions = true,
        showDefaultValues = true,
        sortOptions = false)
final class CheckCommand implements Callable<Integer> {
    private static final int UNANSWERED = 3;
    private static final int REFRESH_MS = 500;
    private static final int KILOBYTE = 1_000;

    /** How the report is written. */
    enum Form {
        NDJSON,
        CSV,
        CARS
    }

    @Parameters(arity = "0..*", paramLabel = "FILE", descriptionKey = "files", showDefaultValue = Visibility.NEVER)
    private List<Path> given = List.of();

    @Option(names = "--operation")
    private String operation = "review";

    @Option(names = "--list")
    private boolean list;

    @Option(names = "--report")
    private Form form = Form.NDJSON;

    @Option(names = "--worst-first")
    private boolean worstFirst;

    @Option(names = "--out")
    private @Nullable Path out;

    @Option(names = "--quiet")
    private boolean quiet;

    @Mixin
    private WorkLimits limits = new WorkLimits();

    @Spec
    private CommandSpec spec = CommandSpec.create();

    @Override
    public Integer call() throws IOException {
        Options options = OptionNames.checked(spec, limits, file -> new ServerLimits().with(limits, file));
        LocalRun run = LocalRun.of(options);
        if (!run.operations().contains(operation)) {
            throw wrong(CommandText.OPERATION_MUST_BE.with(arg("operations", String.join(", ", run.operations()))));
        }
        if (worstFirst && form != Form.CARS) {
            throw wrong(CommandText.ORDER_IS_OF_CARS.with());
        }
        if (list && !given.isEmpty()) {
            throw wrong(CommandText.LIST_IS_OF_INPUT.with());
        }
        return given.isEmpty() ? filter(run, options) : checkFiles(run, options);
    }

    /** Lines or cars on standard input, as from a pipe. */
    private int filter(LocalRun run, Options options) throws IOException {
        if (isAtTerminal()) {
            throw wrong(CommandText.NOTHING_TO_CHECK.with());
        }
        try (OutputStream report = report(file -> false)) {
            LineSource lines = list
                    ? run.cars(System.in)
                    : new LineReader(System.in, options.limits().bodyBytes());
            Summary summary = run.run(operation, lines, report, form(), () -> {});
            if (!quiet) {
                say(summary);
            }
            return exitCode(summary);
        }
    }

    private int checkFiles(LocalRun run, Options options) throws IOException {
        try (PlanFiles files = PlanFiles.find(
                        given, run.lists(operation), options.limits().bodyBytes());
                OutputStream report = report(files::awaits)) {
            // Whoever keeps standard error in a file wants no bar in it.
            boolean watched = !quiet && isAtTerminal();
            Summary summary =
                    watched ? runWithProgress(run, files, report) : run.run(operation, files, report, form(), () -> {});
            if (!quiet) {
                say(summary);
            }
            return exitCode(summary);
        } catch (NoSuchFileException e) {
            throw wrong(CommandText.CANNOT_BE_READ.with(arg("file", e.getFile())));
        }
    }

    /** Whether a person sits there; knows of newer Javas too, in which there always is a console. */
    private static boolean isAtTerminal() {
        return Ansi.AUTO.enabled();
    }

    private LocalRun.Report form() {
        return switch (form) {
            case NDJSON -> given.isEmpty() ? LocalRun.Report.PIPE : LocalRun.Report.NDJSON;
            case CSV -> LocalRun.Report.CSV;
            case CARS -> worstFirst ? LocalRun.Report.CARS_WORST_FIRST : LocalRun.Report.CARS;
        };
    }

    private Summary runWithProgress(LocalRun run, PlanFiles files, OutputStream report) throws IOException {
        AtomicLong done = new AtomicLong();
        long startNs = System.nanoTime();
        try (ProgressBar bar = new ProgressBarBuilder()
                .setTaskName(operation)
                .setInitialMax(files.totalBytes())
                .setUnit(" kB", KILOBYTE)
                .setUpdateIntervalMillis(REFRESH_MS)
                .setConsumer(new ConsoleProgressBarConsumer(System.err))
                .build()) {
            return run.run(operation, files, report, form(), () -> {
                long count = done.incrementAndGet();
                bar.stepTo(files.passedBytes());
                bar.setExtraMessage(rate(count, System.nanoTime() - startNs));
            });
        }
    }

    private static String rate(long count, long ns) {
        return " "
                + CommandText.RATE
                        .with(arg("plans", count), arg("rate", Math.round(count * 1e9 / Math.max(ns, 1))))
                        .text();
    }

    private void say(Summary summary) {
        PrintWriter err = spec.commandLine().getErr();
        err.println(CommandText.ANSWERED
                .with(arg("answers", summary.answers()), arg("problems", summary.problems()))
                .text());
        for (Summary.Count count : summary.findings()) {
            err.println(CommandText.FINDINGS_COUNTED
                    .with(
                            arg("severity", count.severity().name().toLowerCase(Locale.ROOT)),
                            arg("code", count.code()),
                            arg("count", count.count()),
                            arg("plans", count.lines()))
                    .text());
        }
        err.flush();
    }

    private static int exitCode(Summary summary) {
        if (summary.problems() > 0 || !summary.complete()) {
            return UNANSWERED;
        }
        Severity worst = summary.findings().isEmpty()
                ? Severity.NOTE
                : summary.findings().get(0).severity();
        return switch (worst) {
            case DANGER -> 2;
            case WARNING -> 1;
            case NOTE -> 0;
        };
    }

    /** Knows whether a file is still to be read. */
    @FunctionalInterface
    private interface Waiting {
        boolean awaits(Path file) throws IOException;
    }

    /** Standard output, unlike {@link System#out}, does not keep quiet about what could not be written. */
    private OutputStream report(Waiting waiting) throws IOException {
        if (out == null) {
            return new BufferedOutputStream(new FileOutputStream(FileDescriptor.out) {
                @Override
                public void close() {
                    // Others write to it too.
                }
            });
        }
        if (waiting.awaits(out)) {
            throw wrong(CommandText.REPORT_OVER_PLAN.with(arg("file", out.toString())));
        }
        try {
            return new BufferedOutputStream(Files.newOutputStream(out));
        } catch (IOException e) {
            throw wrong(CommandText.CANNOT_BE_WRITTEN.with(arg("file", out.toString())));
        }
    }

    private ParameterException wrong(Message what) {
        return OptionNames.wrong(spec, what, null);
    }
}
