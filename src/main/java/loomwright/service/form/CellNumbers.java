package loomwright.service.form;

import com.fasterxml.jackson.core.io.NumberOutput;

/** Numbers as text outside JSON: a spreadsheet cell, a column of a table. */
public final class CellNumbers {
    private CellNumbers() {}

    /** {@code value} rounded as in JSON, with a decimal point and no trailing {@code .0}. */
    public static String text(double value) {
        double rounded = SignificantDigits.round(value);
        return rounded == Math.rint(rounded) && Math.abs(rounded) < 1e15
                ? String.valueOf((long) rounded)
                : NumberOutput.toString(rounded, true);
    }
}
