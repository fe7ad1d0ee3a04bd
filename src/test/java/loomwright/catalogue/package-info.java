/** The catalogue of parts, as a specification: C01 its kinds, terminals and values. */
package loomwright.catalogue;
