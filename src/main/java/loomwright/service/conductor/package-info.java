/**
 * What the contract asks about conductors beyond the inputs of {@link loomwright.conductor}, and its answers as tables.
 *
 * <p>Read {@link loomwright.service.conductor.ConductorQuestion}, then
 * {@link loomwright.service.conductor.WireForms}.
 */
@NullMarked
package loomwright.service.conductor;

import org.jspecify.annotations.NullMarked;
