package loomwright.review.part;

import static loomwright.message.Arg.arg;

import java.util.Comparator;
import java.util.EnumSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Stream;
import loomwright.answer.Finding;
import loomwright.backfeed.Survey.Moment;
import loomwright.circuit.Battery;
import loomwright.circuit.Diode;
import loomwright.circuit.EarthPolarity;
import loomwright.circuit.Generator;
import loomwright.circuit.TerminalRef;
import loomwright.circuit.VehicleSystem;
import loomwright.judgement.ChargingRule;
import loomwright.judgement.DropRule;
import loomwright.judgement.Level;
import loomwright.judgement.Verdict;
import loomwright.operation.FeedStrength;
import loomwright.operation.GeneratorOutput;
import loomwright.operation.SolvedStep;
import loomwright.operation.Step;
import loomwright.review.context.Check;
import loomwright.review.context.FeedGraph;
import loomwright.review.context.FindingCode;
import loomwright.review.context.FindingWording;
import loomwright.review.context.ReviewContext;
import loomwright.review.context.ReviewText;
import loomwright.review.context.WorstCaseOrder;

/**
 * Batteries that are charged at fewer volts than their machine gives: through a blocking diode, a thin wire, a bad joint. One whose
 * regulator makes up for that, as with a sense wire behind the diode, is sound.
 */
public final class ChargingDrops implements Check {
    /** With less a battery is not charged to speak of: a charge lamp lets as much through. Common practice, no source. */
    private static final double CHARGED_A = 0.5;

    private record ChargedBattery(Generator generator, Battery battery, Moment moment, Verdict verdict) {}

    @Override
    public List<Finding> check(ReviewContext context) {
        double nominalV = context.plan().system().nominalVoltageV();
        return context.plan().listParts(Battery.class).stream()
                .filter(battery -> battery.nominalVoltageV() == null || battery.nominalVoltageV() == nominalV)
                .flatMap(battery -> worst(context, battery).stream())
                .map(ChargingDrops::finding)
                .toList();
    }

    private static Optional<ChargedBattery> worst(ReviewContext context, Battery battery) {
        return context.lastingMoments().stream()
                .filter(m -> m.solved().step() == Step.RUNNING && isCharged(m.solved(), battery))
                .flatMap(m -> machines(m, battery))
                .filter(c -> c.verdict().level() != Level.FITS && isLow(c))
                .min(Comparator.comparing(
                        ChargedBattery::moment,
                        WorstCaseOrder.mostOf(m -> machines(m, battery)
                                .mapToDouble(c -> c.verdict().value())
                                .max()
                                .orElse(0))));
    }

    private static Stream<ChargedBattery> machines(Moment moment, Battery battery) {
        SolvedStep solved = moment.solved();
        VehicleSystem system = solved.plan().system();
        return solved.plan().listParts(Generator.class).stream()
                .filter(generator -> GeneratorOutput.outputA(solved, generator) > FeedStrength.TRICKLE_A)
                .map(generator -> new ChargedBattery(
                        generator,
                        battery,
                        moment,
                        DropRule.CHARGING.judge(
                                Math.max(0, lostV(solved, generator, battery)), system.nominalVoltageV())));
    }

    /** Its volts are too low as well: a machine set or sensed higher makes up for what is lost. */
    private static boolean isLow(ChargedBattery charged) {
        double nominalV = charged.moment().solved().plan().system().nominalVoltageV();
        Verdict posts = ChargingRule.judge(postsV(charged.moment().solved(), charged.battery()), nominalV);
        return posts.level() != Level.FITS && posts.value() < posts.limit();
    }

    private static boolean isCharged(SolvedStep solved, Battery battery) {
        int branch = solved.firstBranchOf(battery.id());
        return solved.powerW(branch) > 0 && Math.abs(solved.currentA(branch)) > CHARGED_A;
    }

    private static double postsV(SolvedStep solved, Battery battery) {
        return Math.abs(solved.acrossV(battery.terminal(Battery.PLUS), battery.terminal(Battery.MINUS)));
    }

    private static TerminalRef livePole(SolvedStep solved, Battery battery) {
        boolean negative = solved.plan().system().earthPolarity() == EarthPolarity.NEGATIVE;
        return battery.terminal(negative ? Battery.PLUS : Battery.MINUS);
    }

    private static double lostV(SolvedStep solved, Generator generator, Battery battery) {
        VehicleSystem system = solved.plan().system();
        return system.earthPolarity().feedSign()
                * solved.acrossV(generator.terminal(generator.livePole(system)), livePole(solved, battery));
    }

    /** The diode that leads to a battery, if it takes half of what is lost. */
    private static Optional<Diode> diode(ChargedBattery charged) {
        SolvedStep solved = charged.moment().solved();
        boolean negative = solved.plan().system().earthPolarity() == EarthPolarity.NEGATIVE;
        Set<String> behind = FeedGraph.of(solved.plan())
                .reach(
                        List.of(livePole(solved, charged.battery()).toString()),
                        EnumSet.complementOf(EnumSet.of(FeedGraph.By.DIODE)),
                        Set.of(FeedGraph.CHASSIS));
        return solved.plan().listParts(Diode.class).stream()
                .filter(diode -> diodeV(solved, diode) > charged.verdict().value() / 2
                        && behind.contains(diode.terminal(negative ? Diode.CATHODE : Diode.ANODE)
                                .toString())
                        && !behind.contains(diode.terminal(negative ? Diode.ANODE : Diode.CATHODE)
                                .toString()))
                .findFirst();
    }

    private static double diodeV(SolvedStep solved, Diode diode) {
        return solved.acrossV(diode.terminal(Diode.ANODE), diode.terminal(Diode.CATHODE));
    }

    private static Finding finding(ChargedBattery charged) {
        SolvedStep solved = charged.moment().solved();
        Verdict verdict = charged.verdict();
        Optional<Diode> diode = diode(charged);
        return Finding.of(
                        verdict.level().severity().orElseThrow(),
                        FindingCode.CHARGING_DROP.with(
                                arg("battery", charged.battery().thing()),
                                arg("generator", charged.generator().thing()),
                                arg("chargingV", postsV(solved, charged.battery())),
                                arg("dropV", verdict.value()),
                                arg("limitV", verdict.limit()),
                                arg("diode", diode.isPresent() ? "yes" : "no"),
                                arg("diodeV", diode.map(d -> diodeV(solved, d)).orElse(0.0)),
                                arg(
                                        "part",
                                        diode.map(Diode::thing)
                                                .orElse(charged.battery().thing())),
                                FindingWording.when(charged.moment())),
                        verdict.basis())
                .remedy(
                        diode.isPresent()
                                ? ReviewText.SENSE_BEHIND_DIODE.with(
                                        arg("battery", charged.battery().thing()))
                                : ReviewText.MEND_CHARGING_WIRE.with());
    }
}
