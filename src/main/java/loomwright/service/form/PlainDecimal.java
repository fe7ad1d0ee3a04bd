package loomwright.service.form;

/** Writes a number rounded as by {@link SignificantDigits} straight from its digits, several times as fast. */
public final class PlainDecimal {
    /** Room for a sign, ten digits, a point and the noughts before them. */
    public static final int LONGEST = 24;

    private static final double LEAST = 1e-3;
    private static final double MOST = 1e10;

    private PlainDecimal() {}

    /**
     * Writes {@code value} into the end of {@code text}, without exponent and trailing noughts.
     *
     * @param text at least {@link #LONGEST} characters
     * @return where it begins; −1 if it is better written with an exponent: outside 0.001 to 10^10
     */
    public static int write(double value, char[] text) {
        double amount = Math.abs(value);
        if (!(amount >= LEAST && amount < MOST)) {
            return -1;
        }
        int places = amount == Math.rint(amount) ? 0 : SignificantDigits.places(amount);
        long digits = (long) SignificantDigits.scaled(amount, places);
        while (places > 0 && digits % 10 == 0) {
            digits /= 10;
            places--;
        }
        int at = text.length;
        for (int written = 0; digits > 0 || written <= places; written++) {
            if (written == places && places > 0) {
                text[--at] = '.';
            }
            text[--at] = (char) ('0' + digits % 10);
            digits /= 10;
        }
        if (value < 0) {
            text[--at] = '-';
        }
        return at;
    }
}
