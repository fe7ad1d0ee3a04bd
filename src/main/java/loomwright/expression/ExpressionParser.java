package loomwright.expression;

import static loomwright.message.Arg.arg;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.List;
import loomwright.answer.Accepted;
import loomwright.answer.InputError;
import loomwright.answer.RejectedInput;
import loomwright.expression.ResistanceExpression.Join;
import loomwright.expression.ResistanceExpression.Term;
import loomwright.message.MessageCode;
import loomwright.network.Element;

/** Reads the notation of {@link ResistanceExpression} from left to right; open brackets lie on a stack of its own. */
final class ExpressionParser {

    private static final int EXCERPT = 30;

    /** What stands within one bracket so far: the members in series, the last of them still growing in parallel. */
    private static final class Level {
        final int opened;
        final List<Integer> series = new ArrayList<>();
        List<Integer> parallel = new ArrayList<>();

        Level(int opened) {
            this.opened = opened;
        }
    }

    private final String text;
    private final List<Term> terms = new ArrayList<>();
    private final Deque<Level> outer = new ArrayDeque<>();
    private Level level = new Level(-1);
    private int at;

    ExpressionParser(String text) {
        this.text = text;
    }

    List<Term> terms() {
        if (text.length() > ResistanceExpression.MAXIMUM_LENGTH) {
            throw new RejectedInput(new InputError(
                    InputError.Code.OVER_LIMIT,
                    "network",
                    printable(text.substring(0, EXCERPT)) + "…",
                    Accepted.CHARACTERS_AT_MOST.with(arg("max", ResistanceExpression.MAXIMUM_LENGTH))));
        }
        boolean valueWanted = true;
        for (boolean blank = skipBlanks(); at < text.length(); blank = skipBlanks()) {
            char c = text.charAt(at);
            if (valueWanted) {
                valueWanted = readValue(c);
            } else if (c == ')') {
                close();
            } else if (c == '+') {
                at++;
                endParallel();
                valueWanted = true;
            } else if (text.startsWith("||", at) || c == '∥') {
                at += c == '∥' ? 1 : 2;
                valueWanted = true;
            } else if (blank && (c == '(' || startsNumber(c))) {
                endParallel();
                valueWanted = readValue(c);
            } else {
                throw malformed(at, c == '|' ? AcceptedExpression.TWO_STROKES : AcceptedExpression.JOIN);
            }
        }
        if (valueWanted) {
            throw malformed(at, AcceptedExpression.RESISTANCE);
        }
        if (!outer.isEmpty()) {
            throw malformed(level.opened, AcceptedExpression.CLOSING);
        }
        endLevel();
        return terms;
    }

    /** Reads a number or an opening bracket; whether a value is still wanted afterwards. */
    private boolean readValue(char c) {
        if (c == '(') {
            if (outer.size() == ResistanceExpression.MAXIMUM_DEPTH) {
                throw at(InputError.Code.OVER_LIMIT, at, AcceptedExpression.DEPTH);
            }
            outer.push(level);
            level = new Level(at++);
            return true;
        }
        if (!startsNumber(c)) {
            throw malformed(at, AcceptedExpression.RESISTANCE);
        }
        level.parallel.add(add(new Term(Join.NONE, number(), List.of())));
        return false;
    }

    private void close() {
        if (outer.isEmpty()) {
            throw malformed(at, AcceptedExpression.NO_CLOSING);
        }
        int whole = endLevel();
        at++;
        level = outer.pop();
        level.parallel.add(whole);
    }

    private int endLevel() {
        endParallel();
        return group(Join.SERIES, level.series);
    }

    private void endParallel() {
        level.series.add(group(Join.PARALLEL, level.parallel));
        level.parallel = new ArrayList<>();
    }

    private int group(Join join, List<Integer> members) {
        return members.size() == 1 ? members.get(0) : add(new Term(join, 0, List.copyOf(members)));
    }

    private int add(Term term) {
        terms.add(term);
        return terms.size() - 1;
    }

    private double number() {
        int begin = at;
        skipDigits();
        if (at > begin && isLetterForPoint()) {
            return inRange(begin, letterForPoint(begin));
        }
        if (at < text.length() && text.charAt(at) == '.') {
            at++;
            skipDigits();
        }
        if (at < text.length() && text.charAt(at) == ',') {
            throw malformed(at, AcceptedExpression.POINT);
        }
        skipExponent();
        String digits = text.substring(begin, at);
        if (digits.equals(".")) {
            throw malformed(begin, AcceptedExpression.RESISTANCE);
        }
        return inRange(begin, Double.parseDouble(digits) * prefix());
    }

    private double inRange(int begin, double ohm) {
        if (ohm != 0 && !(ohm >= Element.MINIMUM_OHM && ohm <= Element.MAXIMUM_OHM)) {
            throw at(InputError.Code.OUT_OF_RANGE, begin, AcceptedExpression.OHMS);
        }
        return ohm;
    }

    private boolean isLetterForPoint() {
        return at + 1 < text.length() && "kKMmR".indexOf(text.charAt(at)) >= 0 && isDigit(text.charAt(at + 1));
    }

    /** As on a resistor: 4k7 is 4.7 kilohms and 2R2 is 2.2 ohms (IEC 60062, from memory). */
    private double letterForPoint(int begin) {
        String whole = text.substring(begin, at);
        double factor = factor(text.charAt(at++));
        int fraction = at;
        skipDigits();
        double ohm = Double.parseDouble(whole + "." + text.substring(fraction, at)) * factor;
        int before = at;
        skipBlanks();
        if (!skipOhmSign()) {
            at = before;
        }
        return ohm;
    }

    private static double factor(char prefix) {
        return switch (prefix) {
            case 'k', 'K' -> 1e3;
            case 'M' -> 1e6;
            case 'm' -> 1e-3;
            default -> 1;
        };
    }

    private void skipExponent() {
        if (at < text.length() && (text.charAt(at) == 'e' || text.charAt(at) == 'E')) {
            int digits = at + 1 < text.length() && text.charAt(at + 1) == '-' ? at + 2 : at + 1;
            if (digits >= text.length() || !isDigit(text.charAt(digits))) {
                throw malformed(Math.min(digits, text.length()), AcceptedExpression.EXPONENT);
            }
            at = digits;
            skipDigits();
        }
    }

    /** Reads the prefix and the ohm sign, which may follow after blanks. */
    private double prefix() {
        int before = at;
        skipBlanks();
        double factor = at < text.length() ? factor(text.charAt(at)) : 1;
        if (factor != 1) {
            before = ++at;
            skipBlanks();
        }
        if (!skipOhmSign()) {
            at = before;
        }
        return factor;
    }

    private boolean skipOhmSign() {
        int before = at;
        if (at < text.length() && "Ω\u2126R".indexOf(text.charAt(at)) >= 0) {
            at++;
        } else if (text.regionMatches(true, at, "ohm", 0, 3)) {
            at += text.regionMatches(true, at + 3, "s", 0, 1) ? 4 : 3;
        }
        return at > before;
    }

    private void skipDigits() {
        while (at < text.length() && isDigit(text.charAt(at))) {
            at++;
        }
    }

    private boolean skipBlanks() {
        int before = at;
        while (at < text.length() && (Character.isWhitespace(text.charAt(at)) || text.charAt(at) == '\u00a0')) {
            at++;
        }
        return at > before;
    }

    private static boolean startsNumber(char c) {
        return c == '.' || isDigit(c);
    }

    private static boolean isDigit(char c) {
        return c >= '0' && c <= '9';
    }

    private RejectedInput malformed(int position, MessageCode wanted) {
        return at(InputError.Code.MALFORMED, position, wanted);
    }

    /** Names the character and shows it: the text around it with a caret below. */
    private RejectedInput at(InputError.Code code, int position, MessageCode wanted) {
        int begin = Math.max(0, position - EXCERPT);
        int end = Math.min(text.length(), position + EXCERPT);
        String excerpt = printable(text.substring(begin, end));
        return new RejectedInput(new InputError(
                code,
                "network",
                position < text.length()
                        ? printable(text.substring(position, end))
                        : AcceptedExpression.END_OF_TEXT.text(),
                AcceptedExpression.AT_CHARACTER.with(
                        arg("character", position + 1),
                        arg("wanted", wanted),
                        arg("shown", "\n" + excerpt + "\n" + " ".repeat(position - begin) + "^"))));
    }

    /** Without control characters and halves of characters. */
    private static String printable(String part) {
        return part.replaceAll("\\p{Cntrl}", " ").replaceAll("\\p{Cs}", "?");
    }
}
