/**
 * How the contract is kept.
 *
 * <ul>
 *   <li>{@link loomwright.contract.ContractBundle}: puts the files under {@code src/main/openapi} together as
 *       {@code openapi.yaml}
 *   <li>{@link loomwright.contract.ContractBundleTest}: the bundle is up to date, its files are short and all in use
 * </ul>
 */
@NullMarked
package loomwright.contract;

import org.jspecify.annotations.NullMarked;
