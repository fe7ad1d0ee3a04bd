package loomwright.circuit;

/** A printed series of points: straight between them, level beyond the ends. */
public final class Curve {
    private final double[] x;
    private final double[] y;

    /**
     * From its points.
     *
     * @param x rising
     * @param y as many
     */
    public Curve(double[] x, double[] y) {
        this.x = x.clone();
        this.y = y.clone();
    }

    /** The figure at a place; that of the nearest end outside the points. */
    public double at(double where) {
        int last = x.length - 1;
        if (where <= x[0]) {
            return y[0];
        }
        for (int i = 1; i <= last; i++) {
            if (where <= x[i]) {
                double share = (where - x[i - 1]) / (x[i] - x[i - 1]);
                return y[i - 1] + share * (y[i] - y[i - 1]);
            }
        }
        return y[last];
    }
}
