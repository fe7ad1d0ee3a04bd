package loomwright.diagnosis;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import java.util.stream.Stream;
import loomwright.circuit.Condition;
import loomwright.circuit.Fuse;
import loomwright.circuit.Plan;
import loomwright.circuit.Plans;
import loomwright.circuit.TerminalRef;
import loomwright.circuit.fault.BlownFuse;
import loomwright.circuit.fault.LostEarth;
import loomwright.circuit.fault.ShortToEarth;
import loomwright.circuit.fault.SingleFault;
import loomwright.circuit.fault.SingleFault.Kind;
import loomwright.circuit.fault.SingleFaults;
import loomwright.circuit.fault.StuckRelay;
import loomwright.diagnosis.DiagnosisReport.Explanation;
import loomwright.diagnosis.DiagnosisReport.Verdict;
import loomwright.message.Argument;
import loomwright.operation.Probe;
import loomwright.operation.Quantity;
import loomwright.operation.Step;
import org.junit.jupiter.api.Test;

/** One fault that explains all readings, those that the readings cannot tell from it, and no fault at all. */
class D04_SingleFaultsTest {
    private static final Plan SANDPIPER = Plans.example("sandpiper-as-built");

    private static List<Measurement> volts(Condition condition, String... points) {
        return Stream.of(points).map(p -> Bedside.volts(p, condition)).toList();
    }

    private static DiagnosisReport diagnose(Plan plan, SingleFault fault, List<Measurement> measurements) {
        return Bedside.diagnose(plan, Bedside.exact(plan, List.of(fault), measurements));
    }

    private static List<Kind> kinds(Explanation explanation) {
        return explanation.candidates().stream()
                .map(c -> c.faults().get(0).kind())
                .distinct()
                .toList();
    }

    @Test
    void readingsAsThePlanHasThemNeedNoFault() {
        List<Measurement> points = volts(Condition.RUN, "battery.plus", "F1.b", "heater.a", "pump.a");
        DiagnosisReport report =
                Bedside.diagnose(Bedside.TWO_LOADS, Bedside.exact(Bedside.TWO_LOADS, List.of(), points));
        assertThat(report.conclusion().verdict()).isEqualTo(Verdict.PLAN_CONSISTENT);
        assertThat(Bedside.codes(report)).contains(DiagnosisText.LOAD_ITSELF);
        assertThat(report.explanations().get(0).faultCount()).isZero();
        assertThat(report.readings()).noneMatch(r -> r.compared().deviates());
    }

    /** 12 V at F1.a and none at F1.b: the fuse, or the wire off it that nothing shows to be off. */
    @Test
    void aBlownFuseIsNamedFirst() {
        DiagnosisReport report = diagnose(
                Bedside.TWO_LOADS,
                new BlownFuse("F1"),
                volts(Condition.RUN, "battery.plus", "F1.a", "F1.b", "heater.a", "pump.a"));
        assertThat(report.conclusion().verdict()).isEqualTo(Verdict.SINGLE_FAULT);
        assertThat(report.explanations().get(0).candidates()).anyMatch(c -> Bedside.accuses(c, Kind.FUSE_BLOWN, "F1"));
    }

    @Test
    void faultsThatTheReadingsCannotTellApartAreOneExplanation() {
        DiagnosisReport report = diagnose(
                Bedside.TWO_LOADS, new BlownFuse("F1"), volts(Condition.RUN, "battery.plus", "heater.a", "pump.a"));
        Explanation first = report.explanations().get(0);
        assertThat(kinds(first)).contains(Kind.FUSE_BLOWN, Kind.WIRE_OFF);
        assertThat(first.candidates()).anyMatch(c -> Bedside.accuses(c, Kind.WIRE_OFF, "W3"));
        assertThat(Bedside.codes(report)).contains(DiagnosisText.EQUAL_EXPLANATIONS);
    }

    @Test
    void aShortThatBlowsItsFuseShowsNoVoltsAndIsTiedWithTheFuseUntilItIsMeasuredInOhms() {
        ShortToEarth fault = new ShortToEarth(new TerminalRef("heater", "a"));
        Plan plan = Bedside.TWO_LOADS;
        List<Measurement> points = volts(Condition.RUN, "battery.plus", "F1.a", "F1.b", "heater.a", "pump.a");
        List<MeterReading> readings = Bedside.noisy(
                Bedside.bench(plan)
                        .measure(List.of(fault), Set.of("F1"), points)
                        .orElseThrow()
                        .figures(),
                points,
                1,
                null);
        DiagnosisReport report = Bedside.diagnose(plan, readings);
        assertThat(kinds(report.explanations().get(0))).contains(Kind.FUSE_BLOWN, Kind.SHORT_TO_EARTH);
        assertThat(report.explanations().get(0).candidates())
                .anySatisfy(c -> assertThat(c.fusesBlown()).containsExactly("F1"));
        List<MeterReading> more = Stream.concat(
                        readings.stream(),
                        Stream.of(Bedside.reading(
                                new Measurement(Probe.toEarth("heater.a"), Quantity.OHMS, Step.OFF, Map.of()), 0.1)))
                .toList();
        Explanation told = Bedside.diagnose(plan, more).explanations().get(0);
        assertThat(kinds(told))
                .contains(Kind.SHORT_TO_EARTH)
                .doesNotContain(Kind.FUSE_BLOWN, Kind.WIRE_OFF, Kind.OPEN_INSIDE);
    }

    /** Near-dead shorts that are offered with all fuses whole, by the terminal that they are at. */
    private static List<String> wholeFuseShorts(DiagnosisReport report, String... parts) {
        return report.explanations().stream()
                .flatMap(e -> e.candidates().stream())
                .filter(c -> c.fusesBlown().isEmpty())
                .flatMap(c -> c.faults().stream())
                .filter(f -> f.kind() == Kind.SHORT_TO_EARTH && Objects.requireNonNull(f.resistanceOhm()) < 0.1)
                .map(f -> f.ids().get(0) + "."
                        + ((Argument.Verbatim) Objects.requireNonNull(
                                        f.description().arguments().get("terminal")))
                                .text())
                .filter(List.of(parts)::contains)
                .toList();
    }

    /** F1 of 5 A would carry hundreds of ampere and is gone before the meter is read, wherever behind it the short is. */
    @Test
    void aShortIsNotOfferedWithAFuseWholeThatOpensBeforeAReadingButWithItBlown() {
        for (String at : List.of("F1.b", "heater.a")) {
            List<Measurement> points = volts(Condition.RUN, "battery.plus", "F2.b", at);
            ShortToEarth fault = new ShortToEarth(TerminalRef.parse(at));
            DiagnosisReport whole = diagnose(Bedside.TWO_LOADS, fault, points);
            assertThat(wholeFuseShorts(whole, "F1.b", "heater.a")).isEmpty();
            PredictedFigures after = Bedside.bench(Bedside.TWO_LOADS)
                    .measure(List.of(fault), Set.of("F1"), points)
                    .orElseThrow()
                    .figures();
            DiagnosisReport blown = Bedside.diagnose(Bedside.TWO_LOADS, Bedside.noisy(after, points, 1, null));
            assertThat(wholeFuseShorts(blown, "F1.b", "heater.a")).isEmpty();
            assertThat(blown.explanations().get(0).candidates())
                    .anyMatch(c -> Bedside.accuses(
                            c, Kind.SHORT_TO_EARTH, fault.terminal().part(), "F1"));
        }
    }

    /** F1 of 1.5 A carries 2.1 A with the heater sound: it opens by itself some time, but with a short at once. */
    @Test
    void aShortOpensAFuseThatIsTooSmallAnyway() {
        Plan plan = Bedside.TWO_LOADS.withPart(
                new Fuse("F1", null, 1.5, Fuse.RatedBy.CARRY, Fuse.Construction.BLADE, 0.005));
        Bench.Measured after = Bedside.bench(plan)
                .measure(
                        List.of(new ShortToEarth(TerminalRef.parse("heater.a"))),
                        Set.of("F1"),
                        volts(Condition.RUN, "F1.a", "heater.a"))
                .orElseThrow();
        DiagnosisReport report = Bedside.diagnose(
                plan, Bedside.noisy(after.figures(), volts(Condition.RUN, "F1.a", "heater.a"), 1, null));
        assertThat(report.explanations().get(0).candidates())
                .anyMatch(c -> Bedside.accuses(c, Kind.SHORT_TO_EARTH, "heater", "F1"));
    }

    /** With F1 whole, F1.a would read as little as heater.a; it reads the 3 ohm of the pump. */
    @Test
    void aShortHasBlownItsFuseBeforeOhmsAreTaken() {
        List<Measurement> ohms = Stream.of("heater.a", "F1.a")
                .map(p -> new Measurement(Probe.toEarth(p), Quantity.OHMS, Step.OFF, Map.of()))
                .toList();
        DiagnosisReport report = Bedside.diagnose(
                Bedside.TWO_LOADS, List.of(Bedside.reading(ohms.get(0), 0.05), Bedside.reading(ohms.get(1), 3.1)));
        assertThat(report.conclusion().verdict()).isEqualTo(Verdict.SINGLE_FAULT);
        assertThat(report.explanations().get(0).candidates())
                .anyMatch(c -> Bedside.accuses(c, Kind.SHORT_TO_EARTH, "heater", "F1"));
    }

    /** A short over 1.6 ohm of wire makes the 5 A fuse carry 7.9 A: that may take minutes, in which readings are taken. */
    @Test
    void aShortIsOfferedWithAFuseWholeThatTakesItsTime() {
        Plan plan = Plans.of(
                "{'kind':'battery','id':'battery'},{'kind':'earth','id':'body'},{'kind':'fuse','id':'F1','ratingA':5},"
                        + "{'kind':'load','id':'heater','resistanceOhm':6,'meantLive':['run']}",
                Bedside.wire("W1", "battery.minus", "body.31", 0.001)
                        + "," + Bedside.wire("W2", "battery.plus", "F1.a", 0.01)
                        + "," + Bedside.wire("W3", "F1.b", "heater.a", 1.6)
                        + "," + Bedside.wire("W4", "heater.b", "body.31", 0.01));
        DiagnosisReport report = diagnose(
                plan,
                new ShortToEarth(TerminalRef.parse("heater.a")),
                volts(Condition.RUN, "F1.a", "F1.b", "heater.a"));
        assertThat(wholeFuseShorts(report, "heater.a")).isNotEmpty();
        assertThat(report.explanations().get(0).explains()).isTrue();
    }

    /** What a burnt-out lamp no longer draws moves no volts that a meter shows, but it is open on ohms. */
    @Test
    void aLampThatHasBurntOutIsToldByItsOhmsAndAdvisedOnByItsVolts() {
        SingleFault burntOut = SingleFaults.listWithinParts(SANDPIPER).stream()
                .filter(f -> f.kind() == Kind.OPEN_INSIDE && f.ids().contains("tail"))
                .findFirst()
                .orElseThrow();
        Probe across = Probe.of("tail.a", "tail.b");
        Measurement volts = new Measurement(across, Quantity.VOLTS, Step.RUN, Map.of("lights", "side"));
        DiagnosisReport voltsOnly = diagnose(SANDPIPER, burntOut, List.of(volts));
        assertThat(voltsOnly.conclusion().verdict()).isEqualTo(Verdict.PLAN_CONSISTENT);
        assertThat(fed(voltsOnly)).contains("tail");
        Measurement ohms = new Measurement(across, Quantity.OHMS, Step.OFF, Map.of());
        DiagnosisReport both = diagnose(SANDPIPER, burntOut, List.of(volts, ohms));
        assertThat(both.conclusion().verdict()).isEqualTo(Verdict.SINGLE_FAULT);
        assertThat(both.explanations().get(0).candidates()).anyMatch(c -> Bedside.accuses(c, Kind.OPEN_INSIDE, "tail"));
    }

    /** 12.6 V from the battery to a lamp that is switched off say that it is not fed. */
    @Test
    void aLoadIsMeasuredToBeFedOnlyAgainstItsReturnOrTheChassis() {
        assertThat(measuredFed("battery.plus", "tail.a", "out")).isEmpty();
        assertThat(measuredFed("tail.a", "earth", "side")).contains("tail");
        assertThat(measuredFed("tail.b", "tail.a", "side")).contains("tail");
    }

    private static List<String> measuredFed(String from, String to, String lights) {
        Measurement volts = new Measurement(Probe.of(from, to), Quantity.VOLTS, Step.RUN, Map.of("lights", lights));
        DiagnosisReport report = Bedside.diagnose(SANDPIPER, Bedside.exact(SANDPIPER, List.of(), List.of(volts)));
        assertThat(report.conclusion().verdict()).isEqualTo(Verdict.PLAN_CONSISTENT);
        return fed(report);
    }

    private static List<String> fed(DiagnosisReport report) {
        return report.conclusion().summary().stream()
                .filter(m -> m.code() == DiagnosisText.LOAD_ITSELF)
                .flatMap(m -> m.ids().stream())
                .toList();
    }

    @Test
    void aLostEarthLiftsWhatIsBoltedToIt() {
        Plan plan = Plans.of(
                "{'kind':'battery','id':'battery'},{'kind':'earth','id':'body'},{'kind':'earth','id':'rear'},"
                        + "{'kind':'load','id':'lamp','resistanceOhm':5,'meantLive':['run']}",
                Bedside.wire("W1", "battery.minus", "body.31", 0.001)
                        + "," + Bedside.wire("W2", "battery.plus", "lamp.a", 0.02)
                        + "," + Bedside.wire("W3", "lamp.b", "rear.31", 0.02));
        DiagnosisReport report =
                diagnose(plan, new LostEarth("rear"), volts(Condition.RUN, "battery.plus", "lamp.b", "rear.31"));
        assertThat(kinds(report.explanations().get(0))).contains(Kind.EARTH_LOST);
    }

    @Test
    void aSolenoidThatNeverPullsInIsTold() {
        DiagnosisReport report = diagnose(
                SANDPIPER,
                new StuckRelay("solenoid", false),
                volts(Condition.CRANK, "battery.plus", "solenoid.30", "solenoid.50", "solenoid.45", "coil.15"));
        assertThat(report.conclusion().verdict()).isEqualTo(Verdict.SINGLE_FAULT);
        assertThat(report.explanations().get(0).candidates())
                .anyMatch(c -> Bedside.accuses(c, Kind.RELAY_STUCK_OPEN, "solenoid"));
    }

    @Test
    void whatTheReadingsCannotShowIsCounted() {
        DiagnosisReport report =
                diagnose(Bedside.TWO_LOADS, new BlownFuse("F1"), volts(Condition.RUN, "battery.plus", "heater.a"));
        assertThat(report.tried().notShown())
                .isPositive()
                .isLessThan(report.tried().singleFaults());
    }

    @Test
    void probabilitiesAddUpToNoMoreThanOneAndFallWithTheRank() {
        DiagnosisReport report = diagnose(
                SANDPIPER, new BlownFuse("F2"), volts(Condition.RUN, "battery.plus", "F2.a", "F2.b", "blower.33"));
        assertThat(report.explanations()).extracting(e -> -e.probability()).isSorted();
        assertThat(report.explanations().stream()
                        .mapToDouble(Explanation::probability)
                        .sum())
                .isBetween(0.9, 1 + 1e-9);
    }
}
