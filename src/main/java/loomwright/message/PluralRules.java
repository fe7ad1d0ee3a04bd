package loomwright.message;

import java.util.LinkedHashMap;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * Which plural form a language uses for a whole number. The rules are written as in Unicode CLDR
 * ({@code n % 10 = 2..4 and n % 100 != 12..14}); source: Unicode Technical Standard 35, part 3, Language Plural Rules. Of
 * the operands only {@code n} and {@code i} differ from 0, because the numbers are whole.
 */
final class PluralRules {
    static final String OTHER = "other";

    private static final Pattern RELATION =
            Pattern.compile("\\s*([nivwftce])\\s*(?:%\\s*([0-9]+)\\s*)?(!?=)\\s*([0-9., ]+?)\\s*");

    private final Map<String, String> rules;

    /**
     * The rules of one language.
     *
     * @param rules condition by name of the form (zero, one, two, few, many); whatever meets none is {@code other}
     */
    PluralRules(Map<String, String> rules) {
        this.rules = new LinkedHashMap<>(rules);
        this.rules.values().forEach(rule -> meets(0, rule));
    }

    /** The name of the form for a number. */
    String form(long number) {
        for (Map.Entry<String, String> rule : rules.entrySet()) {
            if (meets(Math.abs(number), rule.getValue())) {
                return rule.getKey();
            }
        }
        return OTHER;
    }

    private static boolean meets(long number, String rule) {
        boolean any = false;
        for (String alternative : rule.split("\\bor\\b", -1)) {
            boolean all = true;
            for (String relation : alternative.split("\\band\\b", -1)) {
                all &= holds(number, relation);
            }
            any |= all;
        }
        return any;
    }

    private static boolean holds(long number, String relation) {
        Matcher form = RELATION.matcher(relation);
        if (!form.matches()) {
            throw new IllegalArgumentException("'" + relation.strip() + "' is no rule of plurals");
        }
        long operand = form.group(1).equals("n") || form.group(1).equals("i") ? number : 0;
        long value = form.group(2) == null ? operand : operand % Long.parseLong(form.group(2));
        boolean in = false;
        for (String range : form.group(4).split(",", -1)) {
            String[] ends = range.strip().split("\\.\\.", -1);
            in |= value >= Long.parseLong(ends[0]) && value <= Long.parseLong(ends[ends.length - 1]);
        }
        return in == form.group(3).equals("=");
    }
}
