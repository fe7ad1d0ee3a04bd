package loomwright.review;

import java.util.List;
import loomwright.review.context.Check;
import loomwright.review.feed.EarthedPoles;
import loomwright.review.feed.StepHealth;
import loomwright.review.feed.UnconnectedParts;
import loomwright.review.feed.UnintendedFeeds;
import loomwright.review.feed.UnpoweredLoads;
import loomwright.review.fuse.FuseLoads;
import loomwright.review.fuse.FuseProtection;
import loomwright.review.fuse.LinkCurrents;
import loomwright.review.fuse.LinkProtection;
import loomwright.review.ignition.BypassGuard;
import loomwright.review.ignition.CoilVoltages;
import loomwright.review.ignition.CrankingVoltage;
import loomwright.review.ignition.ModuleCurrents;
import loomwright.review.ignition.ModuleSupply;
import loomwright.review.ignition.PrimaryCircuits;
import loomwright.review.part.BatteryIsolation;
import loomwright.review.part.ChargingDrops;
import loomwright.review.part.ChargingVoltage;
import loomwright.review.part.ConnectorFit;
import loomwright.review.part.ConnectorRatings;
import loomwright.review.part.Excitation;
import loomwright.review.part.FaultyContacts;
import loomwright.review.part.FlasherLoads;
import loomwright.review.part.GaugeVoltages;
import loomwright.review.part.KeyOffDrain;
import loomwright.review.part.LampVoltages;
import loomwright.review.part.PartRatings;
import loomwright.review.part.Rectifiers;
import loomwright.review.part.ReversedDiodes;
import loomwright.review.part.ReversedPolarity;
import loomwright.review.part.SenseTerminals;
import loomwright.review.part.StalledMotors;
import loomwright.review.part.WindingVoltages;
import loomwright.review.wire.EarthDrops;
import loomwright.review.wire.ReversedWires;
import loomwright.review.wire.UnfusedWires;
import loomwright.review.wire.VoltageDrops;
import loomwright.review.wire.WireCurrents;

/** All checks, in the order in which findings of equal weight are reported. */
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
            new UnconnectedParts(),
            new UnpoweredLoads(),
            new VoltageDrops(),
            new EarthDrops(),
            new PartRatings(),
            new ReversedDiodes(),
            new ReversedPolarity(),
            new LampVoltages(),
            new WindingVoltages(),
            new ChargingVoltage(),
            new ChargingDrops(),
            new SenseTerminals(),
            new Excitation(),
            new Rectifiers(),
            new FaultyContacts(),
            new BatteryIsolation(),
            new StalledMotors(),
            new FlasherLoads(),
            new GaugeVoltages(),
            new KeyOffDrain(),
            new ConnectorRatings(),
            new ConnectorFit(),
            new CoilVoltages(),
            new PrimaryCircuits(),
            new BypassGuard(),
            new CrankingVoltage(),
            new ModuleSupply(),
            new ModuleCurrents());

    private Checks() {}
}
