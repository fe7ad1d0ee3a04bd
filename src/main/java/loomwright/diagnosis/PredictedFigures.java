package loomwright.diagnosis;

/** One figure for each measurement, V or ohm, in their order. */
final class PredictedFigures {
    private final double[] values;

    PredictedFigures(double[] values) {
        this.values = values.clone();
    }

    double at(int measurement) {
        return values[measurement];
    }

    int count() {
        return values.length;
    }
}
