package loomwright.backfeed;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Map;
import loomwright.answer.Severity;
import loomwright.backfeed.BackfeedReport.Occurrence;
import loomwright.backfeed.BackfeedReport.PathStep;
import loomwright.backfeed.BackfeedReport.UnintendedFeed;
import loomwright.circuit.Condition;
import loomwright.circuit.Consumer;
import loomwright.circuit.Plan;
import loomwright.circuit.Plans;
import loomwright.circuit.ResolvedSupply;
import loomwright.circuit.Switch;
import loomwright.network.NetworkLimits;
import loomwright.operation.Move;
import loomwright.operation.MovedPlan;
import loomwright.operation.PlanSolver;
import loomwright.operation.SolvedStep;
import loomwright.operation.Step;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.IntRange;
import org.junit.jupiter.api.Test;

/** What the search tells of a load: the smallest combination, the path, how strongly, in how many combinations. */
class B20_WhatIsToldTest {
    private static UnintendedFeed feed(BackfeedReport report, String load) {
        return report.unintendedFeeds().stream()
                .filter(s -> s.load().equals(load))
                .findFirst()
                .orElseThrow(() -> new AssertionError(load + " is not fed unasked"));
    }

    @Test
    void aLoadFedAcrossATieIsToldOnceWithTheOneSwitchThatDoesIt() {
        BackfeedReport report = SwitchPlans.search(SwitchPlans.crossTie());
        assertThat(report.extent().combinations()).isEqualTo(4);
        assertThat(report.extent().searchedAll()).isTrue();
        assertThat(report.extent().switchMovesComplete()).isTrue();
        assertThat(report.unintendedFeeds()).extracting(UnintendedFeed::load).containsExactly("fan", "lamp");
        UnintendedFeed fan = feed(report, "fan");
        assertThat(fan.severity()).isEqualTo(Severity.DANGER);
        assertThat(fan.combinations()).isEqualTo(1);
        assertThat(fan.occurrences())
                .hasSize(Step.values().length)
                .allSatisfy(o -> assertThat(o.changes()).isEqualTo(Map.of("left", "on")));
    }

    @Test
    void thePathGoesFromTheSourceThroughTheTieAndBack() {
        assertThat(feed(SwitchPlans.search(SwitchPlans.crossTie()), "fan")
                        .main()
                        .paths()
                        .get(0)
                        .steps())
                .extracting(PathStep::id)
                .containsExactly("battery", "W1", "left", "W4", "W8", "fan", "W7", "W3");
    }

    @Test
    void theFiguresAreThoseOfOhmsLaw() {
        Plan plan = SwitchPlans.feedAndEarthSwitched();
        ResolvedSupply supply = plan.supply(Condition.OFF);
        // The battery, the horn, five wires and two contacts, all in series.
        double currentA = supply.emfV() / (supply.internalResistanceOhm() + 3 + 5 * 0.02 + 2 * Switch.CONTACT_OHM);
        Occurrence off = feed(SwitchPlans.search(plan), "horn").occurrences().stream()
                .filter(o -> o.step() == Step.OFF)
                .findFirst()
                .orElseThrow();
        assertThat(off.level().currentA()).isCloseTo(currentA, within(1e-9));
        assertThat(off.level().effectiveV()).isCloseTo(3 * currentA, within(1e-9));
    }

    @Test
    void twoContactsThatMustBothCloseAreToldTogether() {
        BackfeedReport report = SwitchPlans.search(SwitchPlans.feedAndEarthSwitched());
        assertThat(report.unintendedFeeds()).hasSize(1);
        assertThat(report.unintendedFeeds().get(0).combinations()).isEqualTo(1);
        assertThat(report.unintendedFeeds().get(0).occurrences().get(0).changes())
                .isEqualTo(Map.of("feed", "on", "return", "on"));
    }

    @Test
    void aSoundPlanHasNone() {
        assertThat(SwitchPlans.search(Plans.example("otter-6v-positive-earth")).unintendedFeeds())
                .isEmpty();
    }

    /** It pulls in with the key on; that it stays in once the engine runs follows from it. */
    @Test
    void theStarterThatABypassFeedsIsToldByItsCause() {
        UnintendedFeed solenoid = feed(SwitchPlans.search(Plans.example("sandpiper-unguarded-bypass")), "solenoid");
        assertThat(solenoid.severity()).isEqualTo(Severity.DANGER);
        assertThat(solenoid.main().step()).isEqualTo(Step.RUN);
        assertThat(solenoid.main().level().pulledIn()).isTrue();
        assertThat(solenoid.occurrences()).extracting(Occurrence::step).contains(Step.RUNNING);
    }

    /** What is sent back as {@code after} gives the figures that were told. */
    @Property(seed = "20261130", tries = 12)
    void everySequenceThatIsToldGivesItsFiguresAgain(
            @ForAll long seed, @ForAll @IntRange(min = 1, max = 5) int switches, @ForAll @IntRange(max = 4) int ties) {
        Plan plan = RandomHarness.of(seed, switches, ties);
        PlanSolver solver = new PlanSolver(NetworkLimits.defaults());
        for (UnintendedFeed feed : SwitchPlans.search(plan).unintendedFeeds()) {
            Consumer load = (Consumer) plan.findPart(feed.load()).orElseThrow();
            for (Occurrence one : feed.occurrences()) {
                SolvedStep solved = MovedPlan.follow(plan, Move.parse(one.after()), solver);
                assertThat(solved.step()).isEqualTo(one.step());
                assertThat(solved.effectiveV(load)).isCloseTo(one.level().effectiveV(), within(1e-9));
                assertThat(Math.abs(solved.currentA(load)))
                        .isCloseTo(one.level().currentA(), within(1e-9));
            }
        }
    }

    /** 2.4 V of 12: too little to turn it, enough to heat its windings (rule book of this project, section 6; common practice). */
    @Test
    void aMotorThatStandsAndHeatsIsAWarningAndBelowThatATrickle() {
        assertThat(fanBehind(40).severity()).isEqualTo(Severity.WARNING);
        assertThat(fanBehind(40).verdict().code()).isEqualTo(BackfeedText.STALLS);
        assertThat(fanBehind(40).main().level().effectiveV()).isBetween(0.15 * 12, 0.4 * 12);
        assertThat(fanBehind(90).severity()).isEqualTo(Severity.NOTE);
        assertThat(fanBehind(90).main().level().effectiveV()).isBetween(0.06, 0.15 * 12);
    }

    private static UnintendedFeed fanBehind(int ohm) {
        Plan plan = Plans.of(
                "{'kind':'battery','id':'battery'},{'kind':'earth','id':'earth'},"
                        + "{'kind':'resistor','id':'leak','resistanceOhm':" + ohm + "},"
                        + "{'kind':'motor','id':'fan','resistanceOhm':10,'meantLive':[]}",
                "{'id':'W1','from':'battery.plus','to':'leak.a','resistanceOhm':0.01},"
                        + "{'id':'W2','from':'leak.b','to':'fan.33','resistanceOhm':0.01},"
                        + "{'id':'W3','from':'fan.32','to':'earth.31','resistanceOhm':0.01},"
                        + "{'id':'W4','from':'battery.minus','to':'earth.31','resistanceOhm':0.01}");
        return feed(SwitchPlans.search(plan), "fan");
    }
}
