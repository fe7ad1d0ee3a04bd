/**
 * The plan document, as a specification: P01 the closed set of parts, P02 references and ids, P03 a plan as a circuit,
 * P04 the forms of ids and names of terminals, P05 the supply, P06 cautions, P07 when
 * something is meant to be live. {@link loomwright.circuit.Plans} makes plans for
 * all tests.
 */
package loomwright.circuit;
