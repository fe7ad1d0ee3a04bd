/**
 * The catalogue and the formatter, simplest first: {@code PropertyNameTest}, {@code QuantityFormatTest},
 * {@code PluralRulesTest}, {@code MessagePatternTest}, {@code MessageTest}, {@code CatalogueTest}.
 */
@NullMarked
package loomwright.message;

import org.jspecify.annotations.NullMarked;
