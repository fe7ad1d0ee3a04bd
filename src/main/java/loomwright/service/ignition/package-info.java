/**
 * Ignition over HTTP: each question in the names and units of the contract, turned once into what the domain takes, and
 * each answer back.
 *
 * <p>Ranges are not checked here: the domain knows them, and a test holds the contract to the same verdict.
 */
@NullMarked
package loomwright.service.ignition;

import org.jspecify.annotations.NullMarked;
