/**
 * Every rule that judges right numbers, each once, with its source: what fits, what is borderline, what is a note, a
 * warning, a danger. Pure functions that return data; nothing here words a sentence or solves a circuit.
 *
 * <p>Reading order: {@link loomwright.judgement.Level}, {@link loomwright.judgement.Ratio} and
 * {@link loomwright.judgement.Verdict} for how a figure becomes a level; {@link loomwright.judgement.DropRule} for volts
 * lost; {@link loomwright.judgement.LoadKind} for what works, glows or is dead; {@link loomwright.circuit.BatteryLaw},
 * {@link loomwright.judgement.ChargingRule} and {@link loomwright.judgement.CrankingRule} for the supply.
 */
@NullMarked
package loomwright.judgement;

import org.jspecify.annotations.NullMarked;
