package loomwright.review;

import java.util.List;

/** All checks, in the order in which findings of equal weight are told. */
final class Checks {
    static final List<Check> ALL = List.of(
            new EarthedPoles(),
            new StepHealth(),
            new UnintendedFeeds(),
            new ReversedWires(),
            new WireCurrents(),
            new LinkCurrents(),
            new FuseLoads(),
            new FuseProtection(),
            new LinkProtection(),
            new UnfusedWires(),
            new UnfedLoads(),
            new VoltageDrops(),
            new EarthDrops(),
            new PartRatings(),
            new ReversedDiodes(),
            new LampVoltages(),
            new WindingVoltages(),
            new ChargingVoltage(),
            new ConnectorRatings(),
            new ConnectorFit(),
            new CoilVoltages(),
            new BallastUse(),
            new BypassGuard(),
            new CrankingVoltage(),
            new ModuleCurrents());

    private Checks() {}
}
