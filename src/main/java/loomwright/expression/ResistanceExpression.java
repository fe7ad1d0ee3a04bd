package loomwright.expression;

import static loomwright.message.Arg.arg;

import java.util.ArrayList;
import java.util.List;
import loomwright.answer.InputError;
import loomwright.answer.InputErrors;
import loomwright.network.Element;

/**
 * A series/parallel network in textbook notation, for example {@code 1 + (6 || 13)}.
 *
 * <pre>
 * series   = parallel { ( "+" | blank ) parallel }
 * parallel = value { ( "||" | "∥" ) value }
 * value    = number [ prefix ] [ ohm ] | "(" series ")"
 * number   = digits [ "." digits ] [ ("e" | "E") [ "-" ] digits ]        such as 4.7, .5, 1e-3
 * prefix   = "k" or "K" kilo, "M" mega, "m" milli, as in SI: 4.7m is 4.7 milliohms
 * ohm      = "Ω" | "ohm" | "ohms" | "R"
 * </pre>
 *
 * {@code ||} binds tighter than {@code +}: {@code 1 + 6 || 13} is {@code 1 + (6 || 13)}. Blanks may stand anywhere
 * between these symbols; a blank alone between two values means series, as does {@code +}. A letter may
 * stand for the point, as on a resistor: 4k7 is 4.7k, 2R2 is 2.2. A resistance is 0, a link, or from 1e-9 to 1e12 ohms. At most {@value #MAXIMUM_LENGTH} characters and {@value #MAXIMUM_DEPTH} brackets within each other.
 */
public final class ResistanceExpression {
    public static final int MAXIMUM_LENGTH = 4000;
    public static final int MAXIMUM_DEPTH = 100;

    enum Join {
        NONE,
        SERIES,
        PARALLEL
    }

    /**
     * A resistor or a group.
     *
     * @param ohm of a resistor
     * @param members of a group, all of them earlier in the list
     */
    record Term(Join join, double ohm, List<Integer> members) {}

    /** Members before their group, so the last one is the whole. */
    private final List<Term> terms;

    private ResistanceExpression(List<Term> terms) {
        this.terms = List.copyOf(terms);
    }

    /**
     * Reads an expression.
     *
     * @throws loomwright.answer.RejectedInput with the pointer "network": MALFORMED with the character position, counted
     *     from 1, in its text; OVER_LIMIT; OUT_OF_RANGE for a resistance
     */
    public static ResistanceExpression parse(String text) {
        return new ResistanceExpression(new ExpressionParser(text).terms());
    }

    /**
     * The resistance of the whole, step by step.
     *
     * <p>R = R1 + R2 + … in series, 1/R = 1/R1 + 1/R2 + … in parallel.
     */
    public Reduction reduce() {
        Values values = new Values();
        return new Reduction(values.total(), values.steps, List.of());
    }

    /**
     * The same, with the voltage, current and power of each resistor.
     *
     * @param acrossV voltage over the whole, −1e6 to 1e6 V
     */
    public Reduction reduce(double acrossV) {
        new InputErrors()
                .range("acrossV", acrossV, -Element.MAXIMUM_V, Element.MAXIMUM_V)
                .check(
                        terms.stream().noneMatch(term -> term.join() == Join.NONE && term.ohm() == 0),
                        InputError.Code.OUT_OF_RANGE,
                        "network",
                        "0",
                        AcceptedExpression.OHMS_UNDER_VOLTS,
                        arg("name", "acrossV"))
                .reject();
        Values values = new Values();
        return new Reduction(values.total(), values.steps, values.shares(acrossV));
    }

    /** The resistance of each term. */
    private final class Values {
        private final double[] ohm = new double[terms.size()];
        private final String[] name = new String[terms.size()];
        private final List<Reduction.Step> steps = new ArrayList<>();

        Values() {
            int resistors = 0;
            for (int i = 0; i < ohm.length; i++) {
                Term term = terms.get(i);
                if (term.join() == Join.NONE) {
                    ohm[i] = term.ohm();
                    name[i] = "R" + ++resistors;
                    continue;
                }
                List<ReductionSteps.Named> parts = term.members().stream()
                        .map(m -> new ReductionSteps.Named(name[m], ohm[m]))
                        .toList();
                name[i] = "T" + (steps.size() + 1);
                double sum = parts.stream()
                        .mapToDouble(p -> term.join() == Join.SERIES ? p.ohm() : 1 / p.ohm())
                        .sum();
                ohm[i] = term.join() == Join.SERIES ? sum : 1 / sum;
                steps.add(
                        term.join() == Join.SERIES
                                ? ReductionSteps.series(parts, new ReductionSteps.Named(name[i], ohm[i]))
                                : ReductionSteps.parallel(parts, new ReductionSteps.Named(name[i], ohm[i])));
            }
        }

        double total() {
            return ohm[ohm.length - 1];
        }

        /** From the whole down: voltage divides in series, current in parallel. */
        List<Reduction.Share> shares(double acrossV) {
            double[] voltage = new double[ohm.length];
            voltage[ohm.length - 1] = acrossV;
            for (int i = ohm.length - 1; i >= 0; i--) {
                for (int member : terms.get(i).members()) {
                    voltage[member] =
                            terms.get(i).join() == Join.PARALLEL ? voltage[i] : voltage[i] * (ohm[member] / ohm[i]);
                }
            }
            List<Reduction.Share> shares = new ArrayList<>();
            for (int i = 0; i < ohm.length; i++) {
                if (terms.get(i).join() == Join.NONE) {
                    double a = voltage[i] / ohm[i];
                    shares.add(new Reduction.Share(name[i], ohm[i], voltage[i], a, voltage[i] * a));
                }
            }
            return shares;
        }
    }
}
