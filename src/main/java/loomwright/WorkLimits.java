package loomwright;

import java.nio.file.Path;
import loomwright.service.limits.CalculationLimits;
import loomwright.service.limits.ServiceLimits;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Option;

/** Limits of what is read and calculated: they hold in the service and in {@link CheckCommand}. */
final class WorkLimits {
    private static final CalculationLimits C = CalculationLimits.DEFAULT;

    @Option(names = "--body-bytes")
    int bodyBytes = ServiceLimits.DEFAULT.bodyBytes();

    @Option(names = "--calculation-ms")
    int calculationMs = C.timeMs();

    @Option(names = "--bulk-threads")
    int bulkThreads = C.bulk().threads();

    @Option(names = "--limits", paramLabel = "FILE")
    @Nullable
    Path limits;
}
