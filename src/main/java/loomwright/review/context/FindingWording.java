package loomwright.review.context;

import java.math.BigDecimal;
import java.math.MathContext;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.stream.Collectors;
import loomwright.answer.Finding;
import loomwright.backfeed.Survey.Moment;

/** How findings put figures and times into words. */
public final class FindingWording {
    private static final MathContext THREE_FIGURES = new MathContext(3);

    /** Of how many limits a value is: what the findings of one severity are sorted by. */
    public static final String TIMES_LIMIT = "timesLimit";

    private FindingWording() {}

    /** Three significant figures, without exponent and without needless zeros. */
    public static String number(double value) {
        return new BigDecimal(value).round(THREE_FIGURES).stripTrailingZeros().toPlainString();
    }

    /** A word of a closed set as the contract writes it. */
    static String word(Enum<?> value) {
        return value.name().toLowerCase(Locale.ROOT).replace('_', '-');
    }

    /** The step, and the switches that stand otherwise than in the plan. */
    public static String when(Moment moment) {
        return words(moment.solved().step().description(), moment.situation().changed());
    }

    public static String words(String step, Map<String, String> switches) {
        return switches.isEmpty()
                ? step
                : step
                        + switches.entrySet().stream()
                                .map(e -> e.getKey() + " " + e.getValue())
                                .collect(Collectors.joining(", ", " (", ")"));
    }

    public static Finding.Figure figure(String name, double value) {
        return new Finding.Figure(name, value);
    }

    /** A value against its limit, in the order in which they are read. */
    public static List<Finding.Figure> against(String name, double value, String limitName, double limit) {
        return List.of(figure(name, value), figure(limitName, limit), figure(TIMES_LIMIT, value / limit));
    }

    public static List<Finding.Figure> with(List<Finding.Figure> figures, Finding.Figure... more) {
        List<Finding.Figure> all = new ArrayList<>(figures);
        all.addAll(List.of(more));
        return all;
    }
}
