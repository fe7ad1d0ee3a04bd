package loomwright.diagnosis;

import java.util.Arrays;
import java.util.Map;
import org.jspecify.annotations.Nullable;

/**
 * One figure for each measurement, V or ohm, in their order; with the ignition's contacts closed, and open where that may be
 * as well.
 */
final class PredictedFigures {
    private final double[] values;
    private final double[] open;
    private @Nullable Spread closedSpread;
    private @Nullable Spread openSpread;

    /** How far the figures may be off in a sound vehicle: for each, how each figure of the plan moves it, V; and for ohms the whole. */
    @SuppressWarnings("ArrayRecordComponent") // never compared
    record Spread(Map<String, Double>[] moves, double[] ohms) {}

    PredictedFigures(double[] values) {
        this(values, values);
    }

    PredictedFigures(double[] values, double[] open) {
        this.values = values.clone();
        this.open = open.clone();
    }

    PredictedFigures withSpread(Spread closed, Spread opened) {
        PredictedFigures same = new PredictedFigures(values, open);
        same.closedSpread = closed;
        same.openSpread = opened;
        return same;
    }

    double at(int measurement) {
        return values[measurement];
    }

    double open(int measurement) {
        return open[measurement];
    }

    @Nullable
    Spread spread(boolean contactsOpen) {
        return contactsOpen ? openSpread : closedSpread;
    }

    /** Whether open contacts make no difference. */
    boolean single() {
        return Arrays.equals(values, open);
    }

    int count() {
        return values.length;
    }
}
