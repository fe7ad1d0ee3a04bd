/** The pieces of a sheet: {@code WordsTest}, {@code PicturesTest}. Whole sheets: {@code SheetTest} of the service. */
@NullMarked
package loomwright.drawing.sheet;

import org.jspecify.annotations.NullMarked;
