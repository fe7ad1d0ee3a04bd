package loomwright.circuit.fault;

/**
 * A battery that is no longer what the plan takes it for. It feeds less in every condition but with the engine running,
 * when the charging system holds the volts. Of several batteries in series no meter at the ends of the row tells which it is;
 * several side by side are all taken to have it, since the plan has one supply for them, so that one of them alone is not in it.
 */
public sealed interface BatteryFault extends SizedFault permits DischargedBattery, WornBattery {}
