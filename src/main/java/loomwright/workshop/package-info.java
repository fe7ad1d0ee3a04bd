/**
 * Questions of the bench, each answered by one law: condenser, dwell and contact gap, polarity of the spark, the coil that
 * suits a ballast, the test of a starter by its volts, a resistor in front of a load, a resistor wound from wire. What
 * they judge is asked of {@code judgement}; where no law is known the answer says so.
 */
@NullMarked
package loomwright.workshop;

import org.jspecify.annotations.NullMarked;
