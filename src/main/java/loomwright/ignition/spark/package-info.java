/**
 * How much spark there is, and how much is asked for. {@link loomwright.ignition.spark.Spark} answers a
 * {@link loomwright.ignition.spark.SparkInput}; {@link loomwright.ignition.spark.SparkSystem} is the ignition at one
 * speed and supply.
 */
@NullMarked
package loomwright.ignition.spark;

import org.jspecify.annotations.NullMarked;
