package loomwright.conductor;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import loomwright.answer.RejectedInput;
import org.assertj.core.data.Percentage;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvFileSource;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Every size of the reference tables, row by row, as the service carries it and as it calculates with it. */
class SizeTablesTest {
    private static final double FEET_1000_M = 304.8;

    /** The reference prints four decimals of mm and mm2 and five figures of resistance. */
    @ParameterizedTest(name = "ASTM B258 rule with IEC 60028 resistivity: {0} AWG, {1} mm, {5} ohm per 1000 ft")
    @CsvFileSource(resources = "/conductor/awg.csv", numLinesToSkip = 1)
    void americanWireGauge(
            String gauge,
            double diameterMm,
            double areaMm2,
            double circularMils,
            double ohmPerKm,
            double ohmPer1000Ft) {
        ConductorSize size = ConductorSize.parse(gauge + " AWG");
        assertThat(size.diameterMm()).isCloseTo(diameterMm, within(0.51e-4));
        assertThat(size.areaMm2()).isCloseTo(areaMm2, within(0.51e-4));
        assertThat(size.circularMils()).isCloseTo(circularMils, within(0.051));
        assertThat(size.resistanceOhmPerM(20) * 1000).isCloseTo(ohmPerKm, Percentage.withPercentage(0.005));
        assertThat(size.resistanceOhmPerM(20) * FEET_1000_M).isCloseTo(ohmPer1000Ft, Percentage.withPercentage(0.005));
    }

    @ParameterizedTest(name = "NBS Handbook 100: {0} AWG, {6} ohm per 1000 ft")
    @CsvFileSource(resources = "/conductor/awg.csv", numLinesToSkip = 1)
    void americanWireGaugeAsHandbook100PrintsIt(
            String gauge, String mm, String mm2, String mils, String km, String ft, double ohmPer1000Ft) {
        ReferenceTable table = SizeSystem.AWG.table();
        assertThat(table.getNumber(table.findRow(gauge).orElseThrow(), "nbs100OhmPer1000Ft20C"))
                .isEqualTo(ohmPer1000Ft);
        assertThat(ConductorSize.parse(gauge + " AWG").resistanceOhmPerM(20) * FEET_1000_M)
                .isCloseTo(ohmPer1000Ft, Percentage.withPercentage(0.4));
    }

    @ParameterizedTest(name = "IEC 60228 class 5: {0} mm2, {1} ohm/km plain, {2} tinned")
    @CsvFileSource(resources = "/conductor/iec60228-class5.csv", numLinesToSkip = 1)
    void flexibleMetricConductors(String areaMm2, double plainOhmPerKm, double tinnedOhmPerKm) {
        ConductorSize size = ConductorSize.parse(areaMm2 + " mm2");
        assertThat(size.system()).isEqualTo(SizeSystem.METRIC_IEC60228);
        assertThat(size.resistanceOhmPerM(20)).isCloseTo(plainOhmPerKm / 1000, within(1e-12));
        ReferenceTable table = size.system().table();
        assertThat(table.getNumber(table.findRow(areaMm2).orElseThrow(), "maxOhmPerKm20CTinned"))
                .isEqualTo(tinnedOhmPerKm);
    }

    @ParameterizedTest(name = "ISO 6722, from memory: {0} mm2, {1} mohm/m")
    @CsvFileSource(resources = "/conductor/iso6722.csv", numLinesToSkip = 1)
    void roadVehicleCable(String areaMm2, double milliohmPerM) {
        assertThat(ConductorSize.parse("ISO " + areaMm2 + " mm2").resistanceOhmPerM(20))
                .isCloseTo(milliohmPerM / 1000, within(1e-12));
    }

    /** The chart prints four decimals of ohm per metre: within 1 per cent, or half of the last digit. */
    @ParameterizedTest(name = "trailer-wiring cable chart of a towing-parts supplier: {0}, {1} mm2, {2} ohm/m")
    @CsvFileSource(resources = "/conductor/strands.csv", numLinesToSkip = 1)
    void vehicleCableByItsStrands(String designation, double areaMm2, double ohmPerM) {
        ConductorSize size = ConductorSize.parse(designation);
        assertThat(size.system()).isEqualTo(SizeSystem.STRANDS);
        assertThat(size.areaMm2()).isCloseTo(areaMm2, within(0.51e-3));
        assertThat(size.resistanceOhmPerM(20)).isCloseTo(ohmPerM, within(Math.max(0.51e-4, 0.01 * ohmPerM)));
    }

    /** Designations that no table lists, of wires made to order. Area: strands x pi d^2 / 4; the lay as in the chart above, 1.076 to 1.085. */
    @ParameterizedTest(name = "{0}: strands of {1} mm, {2} of them")
    @CsvSource({
        "50/0.25, 0.25, 50",
        "50/.25, 0.25, 50",
        "20/.011, 0.2794, 20",
        "10/0.07, 0.07, 10",
        "10/0.0028, 0.07112, 10",
        "61/1.13, 1.13, 61",
        "7/3.0, 3, 7"
    })
    void anyDesignationByStrands(String designation, double diameterMm, int strands) {
        ConductorSize size = ConductorSize.parse(designation);
        double areaMm2 = strands * Math.PI * Math.pow(diameterMm / 2, 2);
        assertThat(size.name()).isEqualTo(designation);
        assertThat(size.areaMm2()).isCloseTo(areaMm2, Percentage.withPercentage(1e-9));
        assertThat(size.resistanceOhmPerM(20) * areaMm2 / 0.017241).isBetween(1.076, 1.085);
    }

    @ParameterizedTest(name = "no vehicle cable has strands like {0}")
    @ValueSource(strings = {"10/0.0027", "7/3.1", "7/0.30.1", "0/0.30"})
    void strandsTooThinOrTooThick(String designation) {
        assertThatThrownBy(() -> ConductorSize.parse(designation)).isInstanceOf(RejectedInput.class);
    }

    /** A row that is remembered by two columns is carried by both; the calculation takes the smaller area. */
    @ParameterizedTest(name = "SAE J1128 and J1127, from memory: SAE {0}, {1} mm2 nominal")
    @CsvFileSource(resources = "/conductor/sae-cable.csv", numLinesToSkip = 1)
    void saeCable(String name, Double nominalMm2, Double circularMils, Double ratioToAwg, Double areaMm2) {
        ConductorSize size = ConductorSize.parse("SAE " + name);
        ReferenceTable table = SizeSystem.SAE.table();
        var row = table.findRow(name).orElseThrow();
        if (nominalMm2 != null) {
            assertThat(table.getNumber(row, "metricNominalMm2")).isEqualTo(nominalMm2);
        }
        if (circularMils != null) {
            assertThat(table.getNumber(row, "minCircularMils")).isEqualTo(circularMils);
            assertThat(size.circularMils()).isLessThanOrEqualTo(circularMils * (1 + 1e-12));
        }
        if (circularMils != null && ratioToAwg != null) {
            double awg = ConductorSize.parse(name + " AWG").circularMils();
            assertThat(circularMils / awg).isCloseTo(ratioToAwg, within(0.0006));
        }
        if (areaMm2 != null) {
            assertThat(size.areaMm2()).isEqualTo(areaMm2);
        }
        assertThat(size.resistanceOhmPerM(20) * size.areaMm2()).isCloseTo(1.0 / 58, within(1e-12));
    }
}
