/**
 * How figures, words and tables look when they leave the service, in JSON and outside it.
 *
 * <p>Read {@link loomwright.service.form.SignificantDigits} first.
 */
@NullMarked
package loomwright.service.form;

import org.jspecify.annotations.NullMarked;
