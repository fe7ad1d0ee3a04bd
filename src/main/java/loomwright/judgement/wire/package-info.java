/**
 * What a wire and its fuse may carry: ampacity, temperature under load, strength, load share and rating of fuses, how a
 * budget of volts is split. Each rule once, with its source.
 */
@NullMarked
package loomwright.judgement.wire;

import org.jspecify.annotations.NullMarked;
