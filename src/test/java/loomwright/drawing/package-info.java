/**
 * What is drawn, read back: elements and escapes ({@code MarkupTest}), widths ({@code TextWidthTest}), dots ({@code
 * PngTest}). {@link loomwright.drawing.Labels} finds the labels of a picture with the room that each takes.
 */
@NullMarked
package loomwright.drawing;

import org.jspecify.annotations.NullMarked;
