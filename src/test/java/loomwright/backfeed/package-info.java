/**
 * Unintended feeds, as a specification: B01 a start bypass without a relay, B02 a warning lamp that keeps an ignition
 * alive, B03 a lost common earth, B04 a relay held in through a lamp, B05 two feeds joined by one switch, B06 what holds
 * of every path and remedy, B07 earth polarity, B08 limits, B09 that settings solved together come out as alone, B10 shorts
 * scanned, B11 what is meant by one of several switches or left unsaid, B12 against every setting, B13 memory over switches,
 * B14 remedies that hold, B15 paths that are the load's own, B16 what is fed forward, B17 what is normal or merely incomplete,
 * B18 decisions as reported, B19 against every combination, B20 what is told, B21 clues, B22 single faults, B23 lamps that stay
 * lit.
 */
package loomwright.backfeed;
