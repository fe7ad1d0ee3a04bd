/**
 * A plan at work, as a specification, from simple to compound: O01 every kind of part has a model, O02 one battery and
 * one load, O03 wires, O04 relays, O05 solenoids, O06 charging, O07 breaker and module, O08 loads with voltage limits, O09
 * no rest, O10 shorts and floating parts, O11 laws that hold in every plan, O12 earth polarity, O13 what a meter shows, O14
 * figures in words, O15 no rest means that there is none, O16 connectors, O17 the
 * second, plain way to the same figures, O18 what is meant to be live where the plan leaves it
 * unsaid, O19 batteries and machines, O20 loads that are off, O21 dead shorts, O22 races, O23 mirrored and shuffled vehicles,
 * O24 vehicles made at random against that second way.
 */
package loomwright.operation;
