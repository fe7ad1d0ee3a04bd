package loomwright.catalogue;

import loomwright.answer.Basis;

/**
 * What a value is taken for where nobody states it.
 *
 * @param property the property of the plan document
 * @param value in the unit of that property
 * @param basis where it is from
 * @param note what to know before relying on it; empty for nothing
 */
public record UsualValue(String property, double value, Basis basis, String note) {
    /** The same for a part of other figures. */
    public UsualValue withValue(double other) {
        return new UsualValue(property, other, basis, note);
    }
}
