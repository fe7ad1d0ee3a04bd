/** Checks of parts against their ratings: contacts, diodes, lamps, windings, connectors, charging voltage. */
@NullMarked
package loomwright.review.part;

import org.jspecify.annotations.NullMarked;
