/**
 * The catalogue of parts: kinds, terminals with their meaning, the words by which an owner calls them, and usual values at
 * 6, 12 and 24 V with source and status. All of it is data, under {@code resources/parts}; docs, page and lists read the
 * same files. Start with {@link loomwright.catalogue.PartCatalogue}.
 */
@NullMarked
package loomwright.catalogue;

import org.jspecify.annotations.NullMarked;
