package loomwright;

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
import loomwright.bulk.PlanFiles;
import loomwright.bulk.Summary;
import loomwright.service.LocalRun;
import loomwright.service.limits.Options;
import me.tongfei.progressbar.ConsoleProgressBarConsumer;
import me.tongfei.progressbar.ProgressBar;
import me.tongfei.progressbar.ProgressBarBuilder;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** Checks many plans without the service. */
@Command(
        name = "check",
        description = {
            "Checks files of plans without the service, and answers as POST /v1/bulk/{operation} does.",
            "",
            "The report goes to standard output or --out, progress and the counts to standard error."
        },
        exitCodeListHeading = "%nExit code:%n",
        exitCodeList = {
            "0:nothing worse than notes",
            "1:a warning at worst",
            "2:danger",
            "3:a line could not be answered, or not all lines could be read",
            "64:the command line is wrong",
            "70:a fault of the program"
        },
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
        CSV
    }

    @Parameters(
            arity = "1..*",
            paramLabel = "FILE",
            description = "Files, or folders with .json (one plan each), .ndjson or .jsonl (one plan a line).")
    private List<Path> given = List.of();

    @Option(names = "--operation", description = "What is asked of each: review, backfeed, solution, …")
    private String operation = "review";

    @Option(names = "--report", description = "Form of the report: ${COMPLETION-CANDIDATES}.")
    private Form form = Form.NDJSON;

    @Option(names = "--out", description = "File for the report.")
    private @Nullable Path out;

    @Option(names = "--quiet", description = "No progress and no counts.")
    private boolean quiet;

    @Mixin
    private WorkLimits limits = new WorkLimits();

    @Spec
    private CommandSpec spec = CommandSpec.create();

    @Override
    public Integer call() throws IOException {
        Options options = OptionNames.checked(spec, () -> new ServerLimits().with(limits));
        LocalRun run = LocalRun.of(options);
        if (!run.operations().contains(operation)) {
            throw wrong("--operation is one of: " + String.join(", ", run.operations()));
        }
        try (PlanFiles files = PlanFiles.find(given, options.limits().bodyBytes());
                OutputStream report = report(files)) {
            Summary summary = quiet
                    ? run.run(operation, files, report, form == Form.CSV, () -> {})
                    : runWithProgress(run, files, report);
            return exitCode(summary);
        } catch (NoSuchFileException e) {
            throw wrong("cannot be read: " + e.getFile());
        }
    }

    private Summary runWithProgress(LocalRun run, PlanFiles files, OutputStream report) throws IOException {
        AtomicLong done = new AtomicLong();
        long startNs = System.nanoTime();
        Summary summary;
        try (ProgressBar bar = new ProgressBarBuilder()
                .setTaskName(operation)
                .setInitialMax(files.totalBytes())
                .setUnit(" kB", KILOBYTE)
                .setUpdateIntervalMillis(REFRESH_MS)
                .setConsumer(new ConsoleProgressBarConsumer(System.err))
                .build()) {
            summary = run.run(operation, files, report, form == Form.CSV, () -> {
                long count = done.incrementAndGet();
                bar.stepTo(files.passedBytes());
                bar.setExtraMessage(rate(count, System.nanoTime() - startNs));
            });
        }
        say(summary);
        return summary;
    }

    private static String rate(long count, long ns) {
        return String.format(Locale.ROOT, " %,d plans, %.0f/s", count, count * 1e9 / Math.max(ns, 1));
    }

    private void say(Summary summary) {
        PrintWriter err = spec.commandLine().getErr();
        err.printf(Locale.ROOT, "%,d answered, %,d not%n", summary.answers(), summary.problems());
        for (Summary.Count count : summary.findings()) {
            err.printf(
                    Locale.ROOT,
                    "%-8s %-28s %,d times in %,d plans%n",
                    count.severity().name().toLowerCase(Locale.ROOT),
                    count.code(),
                    count.count(),
                    count.lines());
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

    /** Standard output, unlike {@link System#out}, does not keep quiet about what could not be written. */
    private OutputStream report(PlanFiles files) throws IOException {
        if (out == null) {
            return new BufferedOutputStream(new FileOutputStream(FileDescriptor.out) {
                @Override
                public void close() {
                    // Others write to it too.
                }
            });
        }
        if (files.awaits(out)) {
            throw wrong("--out is one of the files to be checked: " + out);
        }
        try {
            return new BufferedOutputStream(Files.newOutputStream(out));
        } catch (IOException e) {
            throw wrong("cannot be written: " + out);
        }
    }

    private ParameterException wrong(String what) {
        return new ParameterException(spec.commandLine(), what);
    }
}
