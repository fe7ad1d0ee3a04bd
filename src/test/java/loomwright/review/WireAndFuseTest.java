package loomwright.review;

import static loomwright.review.Reviews.codes;
import static loomwright.review.Reviews.figure;
import static loomwright.review.Reviews.find;
import static loomwright.review.Reviews.fused;
import static loomwright.review.Reviews.get;
import static loomwright.review.Reviews.plan;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import loomwright.answer.Basis;
import loomwright.answer.Caution;
import loomwright.answer.Finding;
import loomwright.answer.Severity;
import loomwright.circuit.Condition;
import loomwright.circuit.Load;
import loomwright.circuit.Plan;
import loomwright.circuit.Plans;
import loomwright.review.context.FindingCode;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.IntRange;
import org.junit.jupiter.api.Test;

/** 1 wires against their ampacity, 2 load of fuses, 3 fuses and links against the wires behind them, 4 without a fuse. */
class WireAndFuseTest {
    private static final List<String> SIZES =
            List.of("0.75 mm2", "1 mm2", "1.5 mm2", "2.5 mm2", "4 mm2", "6 mm2", "10 mm2");
    private static final List<Double> RATINGS = List.of(3.0, 5.0, 7.5, 10.0, 15.0, 20.0, 25.0, 30.0, 40.0);

    @Test
    void aSoundCircuitHasNoFinding() {
        assertThat(codes(fused(10, "2.5 mm2", 1, 3))).containsExactly("key-off-drain");
    }

    /** 33 CFR 183.425 Table 5, 80 C: 18 AWG 15 A, 16 AWG 20 A; 1 mm2 between them by the logarithms: 16.9 A. */
    @Test
    void aWireAboveItsAmpacityIsFoundWithTheTable() {
        Finding finding = get(fused(40, "1 mm2", 1, 0.7), FindingCode.WIRE_OVERLOADED);
        assertThat(finding.ids()).containsExactly("W2");
        assertThat(figure(finding, "ampacityA")).isCloseTo(16.93, within(0.01));
        // 14.2 V over 0.7 ohm, fuse 0.005, wire 0.0195 at 20 C and 0.02027 at 30 C, lead 0.0000780, earths 0.002,
        // battery 0.004375
        double currentA = 14.2 / (0.7 + 0.005 + 0.02027 + 0.000078 + 0.002 + 0.004375);
        assertThat(figure(finding, "currentA")).isCloseTo(currentA, within(1e-3));
        assertThat(figure(finding, "heatWPerM")).isCloseTo(currentA * currentA * 0.02027, within(1e-2));
        assertThat(finding.basis().source()).contains("183.425");
        assertThat(finding.basis().status()).isEqualTo(Basis.Status.VERIFIED);
    }

    @Test
    void twiceTheAmpacityIsADanger() {
        assertThat(get(fused(40, "1 mm2", 0.5, 0.4), FindingCode.WIRE_OVERLOADED)
                        .severity())
                .isEqualTo(Severity.DANGER);
    }

    @Test
    void insulationThatTheEngineBayMeltsIsFoundWithoutAnyCurrent() {
        Plan plan = plan(
                "{'kind':'load','id':'lamp','resistanceOhm':1000,'meantLive':[]},{'kind':'fuse','id':'F1','ratingA':1}",
                "{'id':'W1','from':'battery.plus','to':'F1.a','resistanceOhm':0.01},"
                        + "{'id':'W2','from':'F1.b','to':'lamp.a','size':'4 mm2','lengthM':1,"
                        + "'insulationTemperatureC':50,'place':'engine-bay'},"
                        + "{'id':'W3','from':'lamp.b','to':'body.31','resistanceOhm':0.001}");
        assertThat(get(plan, FindingCode.INSULATION_TEMPERATURE_EXCEEDED).ids()).containsExactly("W2");
    }

    @Test
    void aFuseBelowItsLoadBlowsAndOneNearItAges() {
        assertThat(codes(fused(3, "2.5 mm2", 1, 3))).contains("fuse-overloaded").doesNotContain("fuse-near-limit");
        assertThat(codes(fused(5, "2.5 mm2", 1, 3))).contains("fuse-near-limit").doesNotContain("fuse-overloaded");
        assertThat(codes(fused(7.5, "2.5 mm2", 1, 3))).containsExactly("key-off-drain");
    }

    /** 14.2 V over the load; fuse, wires, earths and battery have 0.025 ohm. One that is chosen would carry less. */
    private static Plan loaded(double share) {
        return fused(10, "2.5 mm2", 1, 14.2 / (10 * share) - 0.025);
    }

    @Test
    void aFittedFuseMayCarryFourFifthsOfItsRating() {
        assertThat(codes(loaded(0.79))).containsExactly("key-off-drain");
        Finding finding = get(loaded(0.81), FindingCode.FUSE_NEAR_LIMIT);
        assertThat(figure(finding, "currentA")).isCloseTo(8.1, within(0.05));
        assertThat(figure(finding, "continuousA")).isEqualTo(8);
        assertThat(figure(finding, "loadPercent")).isEqualTo(80);
    }

    @Test
    void aFuseTooLargeForTheWireBehindItIsADanger() {
        Finding finding = get(fused(40, "0.75 mm2", 2, 30), FindingCode.FUSE_TOO_LARGE);
        assertThat(finding.severity()).isEqualTo(Severity.DANGER);
        assertThat(finding.ids()).containsExactly("F1", "W2");
        assertThat(finding.remedy()).isNotNull();
    }

    /** 25 m of 2.5 mm2 have 0.2 ohm: a short at the end draws some 60 A, 1.5 times the rating and twice what the wire stands. */
    @Test
    void aFuseThatAShortAtTheFarEndDoesNotOpenIsADanger() {
        Finding near =
                find(fused(40, "2.5 mm2", 1, 30), FindingCode.FUSE_TOO_LARGE).orElseThrow();
        Finding far = get(fused(40, "2.5 mm2", 25, 30), FindingCode.FUSE_TOO_LARGE);
        assertThat(near.severity()).isNotEqualTo(Severity.DANGER);
        assertThat(far.severity()).isEqualTo(Severity.DANGER);
        assertThat(figure(far, "overloadA")).isBetween(50.0, 70.0);
    }

    /** Behind the relay's coil no short passes more than a few tenths of an ampere. */
    @Test
    void aFuseIsNotJudgedAgainstAWireBehindARelayCoil() {
        assertThat(codes(hornButton("negative", ""))).doesNotContain("fuse-too-large");
        assertThat(codes(hornButton("positive", ""))).doesNotContain("fuse-too-large");
    }

    @Test
    void aSpikeDiodeAcrossTheCoilLetsNoShortIntoTheWireBehindIt() {
        assertThat(codes(hornButton("negative", diode("86")))).doesNotContain("fuse-too-large");
        assertThat(codes(hornButton("positive", diode("85")))).doesNotContain("fuse-too-large");
    }

    /** That one conducts at once: all the fuse lets through goes into the thin wire. */
    @Test
    void aFuseIsJudgedAgainstWhatADiodeInTheWayOfTheFeedLetsThrough() {
        assertThat(get(hornButton("negative", diode("85")), FindingCode.FUSE_TOO_LARGE)
                        .ids())
                .contains("button-wire");
        assertThat(get(hornButton("positive", diode("86")), FindingCode.FUSE_TOO_LARGE)
                        .ids())
                .contains("button-wire");
    }

    /** A diode across the coil of the horn relay. */
    private static String diode(String cathode) {
        String anode = cathode.equals("86") ? "85" : "86";
        return ",{'id':'W5','from':'horn.86','to':'spike.cathode','size':'6 mm2','lengthM':0.1}"
                        .replace("horn.86", "horn." + cathode)
                + ",{'id':'W6','from':'horn." + anode + "','to':'spike.anode','size':'6 mm2','lengthM':0.1}";
    }

    private static Plan hornButton(String earth, String diodeWires) {
        boolean negative = earth.equals("negative");
        return Plans.of(
                12,
                earth,
                "{'kind':'battery','id':'battery'},{'kind':'earth','id':'body'},"
                        + "{'kind':'fuse','id':'F1','ratingA':35},"
                        + "{'kind':'relay','id':'horn','coilResistanceOhm':80,'meantLive':[],"
                        + "'meantLiveWhen':[{'switches':{'button':['pressed']}}]},"
                        + "{'kind':'switch','id':'button','terminals':['1','2'],'positions':["
                        + "{'name':'released','joins':[]},{'name':'pressed','joins':[['1','2']]}]}"
                        + (diodeWires.isEmpty() ? "" : ",{'kind':'diode','id':'spike'}"),
                "{'id':'W0','from':'battery." + (negative ? "minus" : "plus")
                        + "','to':'body.31','resistanceOhm':0.001},"
                        + "{'id':'W1','from':'battery." + (negative ? "plus" : "minus")
                        + "','to':'F1.a','size':'25 mm2','lengthM':0.1},"
                        + "{'id':'W2','from':'F1.b','to':'horn.86','size':'6 mm2','lengthM':1},"
                        + "{'id':'button-wire','from':'horn.85','to':'button.1','size':'0.75 mm2','lengthM':2},"
                        + "{'id':'W4','from':'button.2','to':'body.31','resistanceOhm':0.001}" + diodeWires);
    }

    @Property(seed = "501", tries = 60)
    void aLargerFuseNeverProtectsBetter(
            @ForAll @IntRange(max = 6) int size,
            @ForAll @IntRange(max = 7) int rating,
            @ForAll @IntRange(min = 1, max = 30) int metres) {
        boolean found = has(fused(RATINGS.get(rating), SIZES.get(size), metres, 20), FindingCode.FUSE_TOO_LARGE);
        boolean larger = has(fused(RATINGS.get(rating + 1), SIZES.get(size), metres, 20), FindingCode.FUSE_TOO_LARGE);
        assertThat(larger || !found).isTrue();
    }

    @Property(seed = "502", tries = 60)
    void aThickerWireNeverAddsAFindingOfCurrentOrDrop(
            @ForAll @IntRange(max = 5) int size,
            @ForAll @IntRange(min = 1, max = 80) int halfAmps,
            @ForAll @IntRange(min = 1, max = 30) int metres) {
        // A load of constant current: with one of constant resistance the thicker wire would carry more.
        Plan thin = constant(fused(40, SIZES.get(size), metres, 1), halfAmps);
        Plan thick = constant(fused(40, SIZES.get(size + 1), metres, 1), halfAmps);
        for (FindingCode code : List.of(FindingCode.WIRE_OVERLOADED, FindingCode.VOLTAGE_DROP)) {
            assertThat(has(thin, code) || !has(thick, code))
                    .as("%s behind %s", code, SIZES.get(size + 1))
                    .isTrue();
        }
    }

    /** The same plan with a load of constant current. */
    private static Plan constant(Plan plan, int tenthsA) {
        return plan.withPart(new Load(
                "lamp",
                null,
                new Load.LoadDraw(null, null, tenthsA / 2.0, null, null),
                null,
                null,
                null,
                null,
                List.of(Condition.values()),
                List.of()));
    }

    private static boolean has(Plan plan, FindingCode code) {
        return find(plan, code).isPresent();
    }

    @Test
    void aLinkHasToBeFourSizesSmallerThanTheWireBehindIt() {
        assertThat(codes(linked("18 AWG", "14 AWG"))).doesNotContain("link-too-large");
        assertThat(get(linked("16 AWG", "14 AWG"), FindingCode.LINK_TOO_LARGE).severity())
                .isEqualTo(Severity.WARNING);
        assertThat(get(linked("14 AWG", "14 AWG"), FindingCode.LINK_TOO_LARGE).severity())
                .isEqualTo(Severity.DANGER);
    }

    private static Plan linked(String link, String wire) {
        return plan(
                "{'kind':'fusible-link','id':'link','size':'" + link
                        + "'},{'kind':'load','id':'lamp','resistanceOhm':10," + Reviews.ALWAYS + "}",
                "{'id':'W1','from':'battery.plus','to':'link.a','resistanceOhm':0.001},"
                        + "{'id':'W2','from':'link.b','to':'lamp.a','size':'" + wire + "','lengthM':1},"
                        + "{'id':'W3','from':'lamp.b','to':'body.31','resistanceOhm':0.001}");
    }

    @Test
    void aCircuitWithoutAFuseIsADangerIfItIsAlwaysLive() {
        Plan plan = plan(
                "{'kind':'load','id':'lamp','resistanceOhm':10," + Reviews.ALWAYS
                        + "},{'kind':'joint','id':'splice','terminals':['1','2']}",
                "{'id':'W1','from':'battery.plus','to':'splice.1','size':'2.5 mm2','lengthM':1.5},"
                        + "{'id':'W2','from':'splice.2','to':'lamp.a','size':'2.5 mm2','lengthM':0.5},"
                        + "{'id':'W3','from':'lamp.b','to':'body.31','resistanceOhm':0.001}");
        Finding finding = get(plan, FindingCode.UNFUSED_CIRCUIT);
        assertThat(finding.severity()).isEqualTo(Severity.DANGER);
        assertThat(finding.ids()).containsExactlyInAnyOrder("W1", "W2");
        assertThat(figure(finding, "lengthM")).isCloseTo(2, within(1e-12));
        assertThat(Reviews.answer(plan).cautions()).contains(Caution.UNFUSED_SUPPLY);
    }

    @Test
    void aLeadToTheFirstFuseMayBeAFootLong() {
        assertThat(codes(lead(0.3))).doesNotContain("unfused-lead");
        assertThat(get(lead(1), FindingCode.UNFUSED_LEAD).severity()).isEqualTo(Severity.NOTE);
        assertThat(get(lead(3), FindingCode.UNFUSED_LEAD).severity()).isEqualTo(Severity.WARNING);
    }

    private static Plan lead(double lengthM) {
        return plan(
                "{'kind':'fuse','id':'F1','ratingA':10},{'kind':'load','id':'lamp','resistanceOhm':10," + Reviews.ALWAYS
                        + "}",
                "{'id':'W1','from':'battery.plus','to':'F1.a','size':'2.5 mm2','lengthM':" + lengthM + "},"
                        + "{'id':'W2','from':'F1.b','to':'lamp.a','size':'2.5 mm2','lengthM':1},"
                        + "{'id':'W3','from':'lamp.b','to':'body.31','resistanceOhm':0.001}");
    }
}
