/**
 * The sheet of readings, as a specification: R01 what is measured and in which order, R02 the bounds hold, R03 options and
 * refusals, R04 the meter, R05 the few readings of a bench sheet.
 */
package loomwright.readings;
