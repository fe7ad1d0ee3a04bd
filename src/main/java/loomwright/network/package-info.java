/**
 * Nodes, elements and the solver of a resistive network. Knows nothing of vehicles.
 *
 * <p>Reading list: {@link loomwright.network.Network} and the kinds of {@link loomwright.network.Element} (what is
 * solved), {@link loomwright.network.NetworkSolver} (how, in the order it happens), {@link loomwright.network.Solution}
 * (what comes out); then, one idea each: {@code Contraction} (ideal branches), {@code BranchLaw} (the laws), {@code
 * OperatingPoint}, {@code NewtonLoop}, {@code Islands}, {@code StarElimination}, {@code OneWayStates}, {@code FloatingNodePlacement},
 * {@code Outcome}.
 * Apart from these: {@link loomwright.network.NetworkScan} for many subsets of one network.
 *
 * <p>Methods from general circuit theory, named from memory: nodal analysis on supernodes (any introduction to
 * electric circuits); the solution of a network of monotone branches as the minimum of its co-content (W. Millar, "Some
 * general theorems for non-linear systems possessing resistance", Philosophical Magazine, 1951); minimum-degree
 * order (A. George and J. W. H. Liu, "Computer Solution of Large Sparse Positive Definite Systems", 1981).
 */
@NullMarked
package loomwright.network;

import org.jspecify.annotations.NullMarked;
