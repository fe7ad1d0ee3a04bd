/**
 * Plans as lists, as a specification: L01 cells from text, L02 lengths and values, L03 ends in an owner's words, L04 the lists as
 * people write them, L05 out and in again, L06 hostile files, L07 what is assumed and what is asked.
 * {@link loomwright.list.Lists} reads lists for all of them.
 */
package loomwright.list;
