package loomwright.operation.fault;

/**
 * A battery that is no longer what the plan takes it for. It feeds less in every condition but with the engine running,
 * when the charging system holds the volts. Of several batteries no meter at the ends of the row tells which it is.
 */
public sealed interface BatteryFault extends SizedFault permits DischargedBattery, WornBattery {}
