/**
 * The help page as a person uses it, in a real browser without a window.
 *
 * <p>Needs Debian's {@code chromium} and {@code chromium-driver}; where they are missing these tests say so and are left
 * out.
 */
@NullMarked
package loomwright.service.browser;

import org.jspecify.annotations.NullMarked;
