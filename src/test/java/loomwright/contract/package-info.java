/**
 * How the contract is kept.
 *
 * <ul>
 *   <li>{@link loomwright.contract.ContractBundle}: puts the files under {@code src/main/openapi} together as
 *       {@code openapi.yaml}
 *   <li>{@link loomwright.contract.ContractBundleTest}: the bundle is up to date, its files are short and all in use
 *   <li>{@link loomwright.contract.OpenAnswersTest}: what answers may gain is left open
 *   <li>{@link loomwright.contract.ContractChangesTest}: what a newer contract may not change
 * </ul>
 */
@NullMarked
package loomwright.contract;

import org.jspecify.annotations.NullMarked;
