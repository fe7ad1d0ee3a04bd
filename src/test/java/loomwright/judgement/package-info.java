/** The rules that judge, held to published figures and cases. */
@NullMarked
package loomwright.judgement;

import org.jspecify.annotations.NullMarked;
