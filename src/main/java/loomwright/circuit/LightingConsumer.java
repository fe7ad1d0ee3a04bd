package loomwright.circuit;

/** What gives light: a filament lamp or an LED. What holds for either stands here. */
public sealed interface LightingConsumer extends TwoEndedConsumer permits FilamentLamp, LedLamp {}
