/** Coil, ballast, contacts and module judged by ohms, volts and heat, and the remedy of each mistake. */
@NullMarked
package loomwright.judgement.ignition;

import org.jspecify.annotations.NullMarked;
