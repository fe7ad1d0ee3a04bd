package loomwright.operation;

import java.util.Map;

/**
 * What lies between two terminals in the network of {@link DenseOracle}.
 *
 * @param owner the part, wire or connector it belongs to
 * @param a node of {@code from}
 * @param b node of {@code to}
 */
record OracleElement(String owner, String from, String to, int a, int b, Law law) {
    static final String CHASSIS = "chassis";
    /** What a load that is off lets through, as a share of what it would take at its least voltage. */
    static final double IDLE_SHARE = 1e-6;

    static final double LAMP_EXPONENT = 0.55;

    /** The law between two terminals. */
    sealed interface Law {}

    record Ohmic(double ohm) implements Law {}

    /** A source with one resistance while it gives and another while it takes. */
    record Store(double emfV, double givingOhm, double takingOhm) implements Law {}

    /** Nothing up to a threshold, then a slope, up to a limit. */
    record Valve(double thresholdV, double slopeOhm, double limitA) implements Law {}

    /** A {@link Valve} whose source is raised by the volts between two other nodes, at most by {@code highestV}. */
    record Sensed(Valve own, int above, int below, double highestV) implements Law {}

    record Filament(double ratedV, double ratedW, double coldFraction) implements Law {
        double conductanceS(double volts) {
            double v = Math.abs(volts) / ratedV;
            double hotS = ratedW / (ratedV * ratedV);
            double coldS = hotS / coldFraction;
            return v == 0 ? coldS : Math.min(coldS, hotS * Math.pow(v, LAMP_EXPONENT - 1));
        }
    }

    record Power(double watts, double leastV) implements Law {
        double conductanceS(double volts) {
            double v = Math.max(Math.abs(volts), leastV);
            return watts / (v * v);
        }
    }

    /** How the branch between two terminals of an owner is called, whichever way it is drawn. */
    static String key(String owner, String from, String to) {
        return sign(from, to) > 0 ? owner + " " + from + ">" + to : owner + " " + to + ">" + from;
    }

    /** Whether {@link #key} keeps the direction. */
    static int sign(String from, String to) {
        return from.compareTo(to) <= 0 ? 1 : -1;
    }

    static int node(Map<String, Integer> nodes, String terminal) {
        Integer node = nodes.get(terminal);
        if (node == null) {
            throw new IllegalArgumentException(terminal);
        }
        return node;
    }
}
