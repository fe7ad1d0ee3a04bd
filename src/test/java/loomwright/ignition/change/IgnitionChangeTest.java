package loomwright.ignition.change;

import static loomwright.message.Arg.arg;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.catchThrowableOfType;

import java.util.List;
import loomwright.answer.Caution;
import loomwright.answer.Finding;
import loomwright.answer.InputError;
import loomwright.answer.RejectedInput;
import loomwright.answer.Severity;
import loomwright.ignition.change.ChangeInput.BypassFrom;
import loomwright.ignition.primary.CoilPreset;
import loomwright.ignition.spark.CoilInput;
import loomwright.ignition.spark.EngineInput;
import loomwright.ignition.spark.FeedInput;
import loomwright.ignition.spark.GapInput;
import loomwright.ignition.spark.SearchInput;
import loomwright.ignition.spark.SparkInput;
import loomwright.ignition.spark.SwitchInput;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.DisplayName;
import org.junit.jupiter.api.Test;

/** A change of ignition: 1 coil and ballast, 2 what carries the current, 3 the bypass left, 4 the gap, 5 no objection. */
class IgnitionChangeTest {
    private static final SparkInput BALLASTED = ignition(CoilPreset.FOR_BALLAST, 1.5, SwitchInput.breaker(null), 0.65);
    private static final SparkInput UNBALLASTED =
            ignition(CoilPreset.FOR_BALLAST, null, SwitchInput.breaker(null), 0.65);
    private static final SparkInput DIRECT =
            ignition(CoilPreset.FOR_DIRECT_FEED, null, SwitchInput.breaker(null), 0.65);

    private static SparkInput ignition(
            CoilPreset coil, @Nullable Double ballastOhm, SwitchInput closing, double gapMm) {
        return new SparkInput(
                3000.0,
                new FeedInput(null, null, ballastOhm, null, null),
                CoilInput.of(coil),
                null,
                null,
                closing,
                new EngineInput(null, null, null),
                GapInput.of(gapMm),
                null,
                SearchInput.COMMON);
    }

    private static List<Finding> findings(ChangeInput input) {
        return IgnitionChange.calculate(input).result().findings();
    }

    private static ChangeInput of(SparkInput before, SparkInput after) {
        return new ChangeInput(
                before,
                after,
                new FittedParts(null, null, null, null, null, null, null, null),
                new BypassLead(null, null, null));
    }

    private static ChangeInput bypassed(SparkInput after, BypassFrom from) {
        return new ChangeInput(
                BALLASTED,
                after,
                new FittedParts(null, null, null, null, null, null, null, null),
                new BypassLead(true, from, null));
    }

    private static Finding finding(List<Finding> findings, String code) {
        return findings.stream()
                .filter(one -> one.code().equals(code))
                .findFirst()
                .orElseThrow(() -> new AssertionError(code + " is not among " + findings));
    }

    // 1 coil and ballast

    @Test
    void aCoilForABallastFedDirectlyOverheats() {
        Finding found = finding(findings(of(BALLASTED, UNBALLASTED)), "coil-overheats");
        assertThat(found.severity()).isEqualTo(Severity.DANGER);
        // By hand: (12.6 - 0.15) / 1.55 A, squared, in 1.5 ohm.
        assertThat(found.figures().get(0).value()).isBetween(96.7, 96.9);
    }

    /** By hand: of 14.2 V feed (0.05 ohm) and contacts leave 13.5 V at the coil's 1.3 ohm, 1.88 times its 7.2 V. */
    @Test
    void aCoilFor6VStaysOnTheSupplyOfTheVehicle() {
        SparkInput sixVolt = ignition(CoilPreset.FOR_DIRECT_FEED_6V, null, SwitchInput.breaker(null), 0.65);
        var answer = IgnitionChange.calculate(of(DIRECT, sixVolt));
        Finding found = finding(answer.result().findings(), "coil-overheats");
        assertThat(found.severity()).isEqualTo(Severity.DANGER);
        assertThat(found.figures())
                .filteredOn(f -> f.name().equals("closedA"))
                .singleElement()
                .satisfies(f -> assertThat(f.value()).isBetween(10.3, 10.5));
        assertThat(answer.working().get(0))
                .isEqualTo(ChangeText.ONE_SUPPLY.with(arg("supplyV", 14.2), arg("from", "usual")));
    }

    @Test
    void aSupplyGivenOnOneSideIsThatOfTheOther() {
        SparkInput sixVolt = ignition(CoilPreset.FOR_DIRECT_FEED_6V, null, SwitchInput.breaker(null), 0.65);
        var given =
                IgnitionChange.calculate(of(sixVolt, sixVolt.withSupplyV(6.3))).result();
        assertThat(given.before().closed()).isEqualTo(given.after().closed());
        assertThat(given.findings()).noneMatch(f -> f.code().equals("coil-overheats"));
    }

    /** One vehicle: what one side says of engine, speed, gap and compression the other need not repeat. */
    @Test
    void whatOneSideSaysOfTheEngineHoldsForTheOther() {
        GapInput wide = new GapInput(0.8, null, null, 9.5, null, null, null, null, null);
        SparkInput said = onEngine(3600.0, new EngineInput(6, null, null), wide);
        SparkInput silent = onEngine(null, new EngineInput(null, null, null), GapInput.of(null));
        SparkInput other = onEngine(3000.0, new EngineInput(4, null, null), GapInput.of(0.65));
        double saidRatio = marginRatios(of(said, said)).get(0);
        assertThat(marginRatios(of(said, silent))).containsExactly(saidRatio, saidRatio);
        assertThat(marginRatios(of(silent, said))).containsExactly(saidRatio, saidRatio);
        assertThat(marginRatios(of(said, other)).get(1)).isGreaterThan(1.05 * saidRatio);
    }

    private static SparkInput onEngine(@Nullable Double speedRpm, EngineInput engine, GapInput gap) {
        return new SparkInput(
                speedRpm,
                new FeedInput(null, null, 1.5, null, null),
                CoilInput.of(CoilPreset.FOR_BALLAST),
                null,
                null,
                SwitchInput.breaker(null),
                engine,
                gap,
                null,
                SearchInput.COMMON);
    }

    private static List<Double> marginRatios(ChangeInput input) {
        ChangeResult result = IgnitionChange.calculate(input).result();
        return List.of(
                result.before().at().margin().marginRatio(),
                result.after().at().margin().marginRatio());
    }

    @Test
    void aCoilForDirectFeedBehindABallastIsWeak() {
        SparkInput weak = ignition(CoilPreset.FOR_DIRECT_FEED, 1.5, SwitchInput.breaker(null), 0.65);
        Finding found = finding(findings(of(DIRECT, weak)), "coil-weak");
        assertThat(found.severity()).isEqualTo(Severity.WARNING);
        assertThat(found.figures().get(0).value())
                .isLessThan(found.figures().get(1).value());
    }

    @Test
    void aHighEnergyCoilWithoutALimitIsADanger() {
        SparkInput unlimited = ignition(CoilPreset.HIGH_ENERGY, null, SwitchInput.breaker(null), 0.65);
        List<Finding> found = findings(of(DIRECT, unlimited));
        assertThat(finding(found, "no-current-limit").severity()).isEqualTo(Severity.DANGER);
        assertThat(finding(found, "no-current-limit").figures().get(0).value()).isGreaterThan(15);
    }

    // 2 what carries the current

    @Test
    void moduleBallastWireFuseAndLinkAreJudgedByTheirRatings() {
        SparkInput strong = ignition(CoilPreset.HIGH_ENERGY, 0.2, SwitchInput.limitingModule(8), 0.65);
        ChangeInput input = new ChangeInput(
                DIRECT,
                strong,
                new FittedParts(null, 5.0, 0.5, "22 AWG", 60.0, 55.0, 2.0, "20 AWG"),
                new BypassLead(null, null, null));
        List<Finding> found = findings(input);
        assertThat(found)
                .extracting(Finding::code)
                .contains("module-overloaded", "ballast-overloaded", "fuse-too-small", "fusible-link-too-thick");
        assertThat(finding(found, "module-overloaded").figures().get(0).value()).isEqualTo(8);
        assertThat(found).extracting(Finding::severity).isSorted();
    }

    @Test
    @DisplayName("a wire of 18 AWG at 50 C carries 11.6 A, so four amperes and a fuse of 7.5 A are nothing to it")
    void aWireThatCarriesTheCurrentIsNotMentioned() {
        ChangeInput input = new ChangeInput(
                BALLASTED,
                DIRECT,
                new FittedParts(null, null, null, "18 AWG", null, null, 7.5, null),
                new BypassLead(null, null, null));
        assertThat(findings(input)).extracting(Finding::code).containsExactly("key-not-to-be-left-on");
    }

    @Test
    void aWireThatDoesNotIsADanger() {
        SparkInput burning = ignition(CoilPreset.HIGH_ENERGY, null, SwitchInput.breaker(null), 0.65);
        ChangeInput input = new ChangeInput(
                DIRECT,
                burning,
                new FittedParts(null, null, null, "18 AWG", 60.0, 50.0, null, null),
                new BypassLead(null, null, null));
        assertThat(finding(findings(input), "wire-overloaded").severity()).isEqualTo(Severity.DANGER);
    }

    // 3 the bypass left

    @Test
    @DisplayName("a bypass at the start wire with the ballast gone works the starter with the key on, by hand")
    void aBypassAtTheStartWireWorksTheStarter() {
        List<Finding> found = findings(bypassed(UNBALLASTED, BypassFrom.START_WIRE));
        Finding starts = finding(found, "bypass-starts-engine");
        assertThat(starts.severity()).isEqualTo(Severity.DANGER);
        // Coil 1.53 ohm and solenoid 0.77 ohm in parallel behind 0.0515 ohm at 14.2 V.
        double parallel = 1 / (1 / 1.53 + 1 / 0.77);
        assertThat(starts.figures().get(0).value())
                .isBetween(14.2 * parallel / (parallel + 0.0516), 14.2 * parallel / (parallel + 0.0514));
        assertThat(finding(found, "bypass-without-ballast").remedy()).isEqualTo(ChangeFinding.REMOVE_BYPASS.with());
    }

    @Test
    void whereTheStarterMayTurnTheAnswerWarnsOfMovingParts() {
        assertThat(IgnitionChange.calculate(bypassed(UNBALLASTED, BypassFrom.START_WIRE))
                        .cautions())
                .contains(Caution.MOVING_PARTS);
        assertThat(IgnitionChange.calculate(bypassed(UNBALLASTED, BypassFrom.SWITCH_CONTACT))
                        .cautions())
                .doesNotContain(Caution.MOVING_PARTS);
    }

    @Test
    void theBallastLeavesTheSolenoidLittle() {
        List<Finding> found = findings(bypassed(BALLASTED, BypassFrom.START_WIRE));
        assertThat(found).extracting(Finding::code).doesNotContain("bypass-starts-engine", "bypass-without-ballast");
        assertThat(finding(found, "bypass-holds-starter").figures().get(0).value())
                .isBetween(3.0, 4.0);
    }

    @Test
    void aBypassFromAContactOfItsOwnJoinsTwoFeeds() {
        assertThat(finding(findings(bypassed(UNBALLASTED, BypassFrom.SOLENOID_CONTACT)), "bypass-not-isolated")
                        .severity())
                .isEqualTo(Severity.WARNING);
        assertThat(finding(findings(bypassed(BALLASTED, BypassFrom.SWITCH_CONTACT)), "bypass-not-isolated")
                        .severity())
                .isEqualTo(Severity.NOTE);
    }

    // 4 the gap

    @Test
    @DisplayName("a gap of 1.1 to 1.2 mm needs a coil and module made for it (common practice, no source)")
    void aWiderGapWithoutTheEnergyForItIsSaid() {
        for (double gapMm : List.of(1.1, 1.2)) {
            SparkInput wide = ignition(CoilPreset.FOR_DIRECT_FEED, null, SwitchInput.breaker(null), gapMm);
            Finding found = finding(findings(of(DIRECT, wide)), "gap-without-energy");
            assertThat(found.severity()).isEqualTo(Severity.WARNING);
            SparkInput made = ignition(CoilPreset.HIGH_ENERGY, null, SwitchInput.limitingModule(6.5), gapMm);
            assertThat(findings(of(DIRECT, made))).isEmpty();
        }
    }

    // 5 no objection, and input at fault

    @Test
    void aLikeForLikeChangeHasNoFindings() {
        ChangeResult result = IgnitionChange.calculate(of(DIRECT, DIRECT)).result();
        assertThat(result.findings()).isEmpty();
        assertThat(result.comparison()).allMatch(one -> one.before() == one.after());
    }

    @Test
    void faultsOfBothSidesAndOfTheRatingsAreSaidTogether() {
        SparkInput wrong = ignition(CoilPreset.FOR_BALLAST, 99.0, SwitchInput.breaker(null), 77);
        ChangeInput input = new ChangeInput(
                wrong,
                wrong,
                new FittedParts(null, null, null, "no such", null, 99.0, null, null),
                new BypassLead(null, null, null));
        RejectedInput rejected = catchThrowableOfType(RejectedInput.class, () -> IgnitionChange.calculate(input));
        assertThat(rejected.faults())
                .extracting(InputError::pointer)
                .contains("/before/gapMm", "/after/gapMm", "/before/ballastResistanceOhm", "/wireSize", "/ambientC");
    }
}
