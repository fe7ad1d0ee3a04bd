/**
 * A plan at work: the plan in each condition becomes a network, the network is solved, the solution is read back in terms
 * of the plan.
 *
 * <p>Reading list: {@link loomwright.operation.PlanSolver} is the entry; it goes through the {@link
 * loomwright.operation.Step}s in the order they happen, so that what a relay or solenoid did before is remembered.
 * {@link loomwright.operation.Wiring} gives the plan's terminals their nodes, {@link loomwright.operation.PartModels}
 * says what each kind of part is electrically, {@link loomwright.operation.Settling} finds the state that relays and
 * the like settle in. {@link loomwright.operation.SolvedStep} holds a solved step,
 * {@link loomwright.operation.PlanReadings} makes the tables of it. {@link loomwright.operation.Meter} says what a
 * meter shows between two points of it, {@link loomwright.operation.DisconnectedPlan} with the battery disconnected.
 *
 * <p>Where thousands of settings are to be looked through, {@link loomwright.operation.SweptSteps} solves them quickly and
 * says when it cannot: {@link loomwright.operation.Sweep} for what is fed when it should be off, {@link
 * loomwright.operation.SweptShorts} for what flows in a short.
 */
@NullMarked
package loomwright.operation;

import org.jspecify.annotations.NullMarked;
