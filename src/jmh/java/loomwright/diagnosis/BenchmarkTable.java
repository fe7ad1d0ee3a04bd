package loomwright.diagnosis;

import java.io.PrintStream;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.TreeMap;

/** Counts cases, and writes what share of them was as it should be. */
final class BenchmarkTable {
    private static final int DECILES = 10;

    private final Map<String, int[]> counts = new TreeMap<>();
    private final List<Integer> readings = new ArrayList<>();
    private final List<Long> processorMs = new ArrayList<>();
    private final int[] told = new int[DECILES];
    private final int[] right = new int[DECILES];

    /** Counts a case of a kind. */
    void count(String what, boolean is) {
        int[] both = counts.computeIfAbsent(what, key -> new int[2]);
        both[0] += is ? 1 : 0;
        both[1]++;
    }

    void readings(int taken) {
        readings.add(taken);
    }

    /** Processor time of one answer. */
    void answered(long ms) {
        processorMs.add(ms);
    }

    /** Whether an explanation that was told with a probability was right. */
    void told(double probability, boolean isRight) {
        int decile = (int) Math.min(DECILES - 1, DECILES * probability);
        told[decile]++;
        right[decile] += isRight ? 1 : 0;
    }

    /** Writes it, with the bare counts at the end of each line so that runs can be put together. */
    void write(PrintStream out) {
        out.println();
        out.println("| measured | cases | share |");
        out.println("| --- | --- | --- |");
        counts.forEach((what, both) -> row(out, what, both[0] + " of " + both[1], share(both[0], both[1])));
        row(out, "readings after the sign, median", "", String.valueOf(median(readings)));
        row(out, "processor time of one answer, median, ms", "", String.valueOf(median(processorMs)));
        out.println();
        out.println("| told with | cases | right |");
        out.println("| --- | --- | --- |");
        for (int d = 0; d < DECILES; d++) {
            row(out, 10 * d + " to " + (10 * d + 10) + " %", right[d] + " of " + told[d], share(right[d], told[d]));
        }
    }

    private static void row(PrintStream out, String... cells) {
        out.println("| " + String.join(" | ", cells) + " |");
    }

    private static String share(int part, int whole) {
        return whole == 0 ? "none" : String.format(Locale.ROOT, "%.1f %%", 100.0 * part / whole);
    }

    private static <T extends Number & Comparable<T>> long median(List<T> numbers) {
        return numbers.stream()
                .sorted()
                .skip(numbers.size() / 2)
                .findFirst()
                .map(Number::longValue)
                .orElse(0L);
    }
}
