/**
 * Networks as the contract writes them, by names, against networks as the solver takes them, by index.
 *
 * <p>Read {@link loomwright.service.network.NetworkQuestion}, then {@link loomwright.service.network.NetworkReport}.
 */
@NullMarked
package loomwright.service.network;

import org.jspecify.annotations.NullMarked;
