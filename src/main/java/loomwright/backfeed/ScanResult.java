package loomwright.backfeed;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import loomwright.operation.Step;

/** What a stretch of settings showed, for each step and load. */
final class ScanResult {
    private final Map<Step, List<LeastChanges>> least = new EnumMap<>(Step.class);
    /** By load, the settings in which it is fed in some step though it should not be. */
    final int[] fedIn;
    /** Settings gone through. */
    int settings;

    /** Where wires carry most and loads have the fewest volts or the most. */
    final PeakSettings peaks;

    ScanResult(SettingCodes codes, int consumers, int wires) {
        peaks = new PeakSettings(codes, wires, consumers);
        fedIn = new int[consumers];
        for (Step step : Step.values()) {
            List<LeastChanges> here = new ArrayList<>();
            for (int c = 0; c < consumers; c++) {
                here.add(new LeastChanges(codes));
            }
            least.put(step, here);
        }
    }

    LeastChanges at(Step step, int consumer) {
        return Objects.requireNonNull(least.get(step)).get(consumer);
    }

    void addAll(ScanResult other) {
        settings += other.settings;
        peaks.addAll(other.peaks);
        for (int c = 0; c < fedIn.length; c++) {
            fedIn[c] += other.fedIn[c];
            for (Step step : Step.values()) {
                at(step, c).addAll(other.at(step, c));
            }
        }
    }

    /** Whether none had to be left out. */
    boolean complete(int consumer) {
        return least.values().stream().noneMatch(byLoad -> byLoad.get(consumer).full());
    }
}
