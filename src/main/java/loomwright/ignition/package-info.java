/**
 * The ignition of a vehicle with battery and coil: what the feed leaves for the coil, and what the coil leaves for the
 * spark.
 *
 * <p>Read for the spark: {@link loomwright.ignition.Firing} (how often a coil is asked), then
 * {@link loomwright.ignition.DwellLaw} and {@link loomwright.ignition.Dwell} (how long it is charged), then
 * {@link loomwright.ignition.PrimaryCircuit} and {@link loomwright.ignition.PrimaryCurrent} (what it then carries),
 * {@link loomwright.ignition.CoilData} and {@link loomwright.ignition.SecondaryVoltage} (what that raises),
 * {@link loomwright.ignition.BreakdownFormula} and {@link loomwright.ignition.BreakdownVoltage} (what the gap asks for),
 * and last {@link loomwright.ignition.Spark}, which answers a {@link loomwright.ignition.SparkInput}.
 * {@link loomwright.ignition.SelfHeating} serves every winding and resistor.
 */
@NullMarked
package loomwright.ignition;

import org.jspecify.annotations.NullMarked;
