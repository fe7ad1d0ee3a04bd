package loomwright.service;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import io.restassured.path.json.JsonPath;
import java.util.List;
import java.util.Map;
import org.assertj.core.data.Percentage;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvFileSource;

/** Every row of the reference files comes out over HTTP: as a described size where it is one, and in its table. */
class ReferenceRowsTest {
    @ParameterizedTest(name = "ASTM B258 rule with IEC 60028 resistivity: {0} AWG, {1} mm, {5} ohm per 1000 ft")
    @CsvFileSource(resources = "/conductor/awg.csv", numLinesToSkip = 1)
    void americanWireGauge(
            String gauge, double diameterMm, double areaMm2, double mils, double ohmPerKm, double ohmPer1000Ft) {
        JsonPath size = size(gauge.replace("/", "%2F") + "%20AWG");
        assertThat(size.getDouble("diameterMm")).isCloseTo(diameterMm, within(0.51e-4));
        assertThat(size.getDouble("areaMm2")).isCloseTo(areaMm2, within(0.51e-4));
        assertThat(size.getDouble("circularMils")).isCloseTo(mils, within(0.051));
        assertThat(size.getDouble("ohmPerM") * 1000).isCloseTo(ohmPerKm, Percentage.withPercentage(0.005));
        assertThat(size.getDouble("ohmPer1000Ft")).isCloseTo(ohmPer1000Ft, Percentage.withPercentage(0.005));
    }

    @ParameterizedTest(name = "IEC 60228 class 5: {0} mm2, {1} ohm/km plain, {2} tinned")
    @CsvFileSource(resources = "/conductor/iec60228-class5.csv", numLinesToSkip = 1)
    void flexibleMetricConductors(String areaMm2, double plainOhmPerKm, double tinnedOhmPerKm) {
        JsonPath size = size(areaMm2 + "mm2");
        assertThat(size.getString("system")).isEqualTo("metric-iec60228");
        assertThat(size.getDouble("ohmPerM") * 1000).isCloseTo(plainOhmPerKm, within(1e-9));
        assertThat(size.getDouble("tinnedOhmPerM") * 1000).isCloseTo(tinnedOhmPerKm, within(1e-9));
    }

    @ParameterizedTest(name = "ISO 6722, from memory: {0} mm2, {1} mohm/m")
    @CsvFileSource(resources = "/conductor/iso6722.csv", numLinesToSkip = 1)
    void roadVehicleCable(String areaMm2, double milliohmPerM) {
        assertThat(size("ISO%20" + areaMm2 + "%20mm2").getDouble("ohmPerM") * 1000)
                .isCloseTo(milliohmPerM, within(1e-9));
    }

    /** A blank of the reference file says that the figure was not recorded there. */
    @ParameterizedTest(name = "SAE J1128 and J1127, from memory: SAE {0}, {1} mm2 nominal, {2} circular mils")
    @CsvFileSource(resources = "/conductor/sae-cable.csv", numLinesToSkip = 1)
    void saeCable(String name, @Nullable Double nominalMm2, @Nullable Double circularMils) {
        assertThat(size("SAE%20" + name.replace("/", "%2F")).getString("name")).isEqualTo("SAE " + name);
        Map<String, Object> row = row("sae-cable", "saeSize", name);
        if (nominalMm2 != null) {
            assertThat(number(row, "metricNominalMm2")).isEqualTo(nominalMm2);
        }
        if (circularMils != null) {
            assertThat(number(row, "minCircularMils")).isEqualTo(circularMils);
        }
    }

    @ParameterizedTest(name = "33 CFR 183.425 Table 5: {0} AWG at 60 to 200 C: {1} {2} {3} {4} {5} {6} {7} A")
    @CsvFileSource(resources = "/conductor/us-33cfr183-ampacity.csv", numLinesToSkip = 1)
    void ampacityByTheRegulation(
            String gauge, double a60, double a75, double a80, double a90, double a105, double a125, double a200) {
        assertThat(allowedA(gauge, "us-33cfr183")).containsExactly(a60, a75, a80, a90, a105, a125, a200);
    }

    @ParameterizedTest(name = "AC 43.13-1B table 11-9: {0} AWG at 105, 150, 200 C: {1} {2} {3} A")
    @CsvFileSource(resources = "/conductor/ac43-ampacity.csv", numLinesToSkip = 1)
    void ampacityByTheCircular(String gauge, double a105, double a150, double a200) {
        assertThat(allowedA(gauge, "ac43-13")).containsExactly(a105, a150, a200);
    }

    @ParameterizedTest(name = "{0}: at {1} x the rating {2} to {3} s")
    @CsvFileSource(resources = "/conductor/blade-limits.csv", numLinesToSkip = 1)
    void openingTimes(String standard, double multiple, double minS, @Nullable Double maxS, String status) {
        List<Map<String, Object>> rows = rows("blade-fuse-limits");
        assertThat(rows)
                .anySatisfy(row -> assertThat(row.get("standard") + " " + number(row, "multiple") + " "
                                + number(row, "minS") + " " + number(row, "maxS") + " " + row.get("status"))
                        .isEqualTo(standard + " " + multiple + " " + minS + " " + maxS + " " + status));
    }

    @ParameterizedTest(name = "blade fuse colours, from memory: {0} A {1}")
    @CsvFileSource(resources = "/conductor/blade-ratings.csv", numLinesToSkip = 1)
    void ratingsAndColours(double ratingA, String colour) {
        assertThat(rows("blade-fuse-ratings"))
                .filteredOn(row -> Double.valueOf(ratingA).equals(number(row, "ratingA")))
                .extracting(row -> row.get("colour"))
                .containsExactly(colour);
    }

    @ParameterizedTest(name = "IEC 60757: {0} is {1}")
    @CsvFileSource(resources = "/conductor/colours.csv", numLinesToSkip = 1)
    void colours(String code, String colour) {
        assertThat(row("colours", "code", code)).containsEntry("colour", colour);
    }

    @ParameterizedTest(name = "DIN 72552: {0} is {1}")
    @CsvFileSource(resources = "/conductor/terminals.csv", numLinesToSkip = 1)
    void terminals(String terminal, String meaning, String status) {
        assertThat(row("terminals", "terminal", terminal))
                .containsEntry("meaning", meaning)
                .containsEntry("status", status);
    }

    @Test
    void everyListedTableIsThereWithItsSourceAsJsonAndCsv() {
        List<Map<String, Object>> tables = LiveService.ask()
                .get("/v1/tables")
                .then()
                .statusCode(200)
                .extract()
                .jsonPath()
                .getList("result.tables");
        assertThat(tables).isNotEmpty();
        for (Map<String, Object> listed : tables) {
            String href = String.valueOf(listed.get("href"));
            JsonPath table = LiveService.ask()
                    .get(href)
                    .then()
                    .statusCode(200)
                    .extract()
                    .jsonPath()
                    .setRootPath("result");
            for (String word : List.of("name", "title", "source", "edition", "section", "status")) {
                assertThat(table.getString(word)).as(href + " " + word).isNotBlank();
                assertThat(table.getString(word)).isEqualTo(listed.get(word));
            }
            List<String> lines = LiveService.ask()
                    .get(href + "?format=csv")
                    .then()
                    .statusCode(200)
                    .extract()
                    .asString()
                    .lines()
                    .toList();
            assertThat(lines).as(href).hasSize(1 + table.getList("rows").size());
            assertThat(lines.get(0))
                    .isEqualTo(String.join(",", table.<String>getList("columns")) + ",tableSource,tableStatus");
            assertThat(lines.get(1)).contains(table.getString("section"));
        }
    }

    private static JsonPath size(String encoded) {
        return LiveService.ask()
                .get("/v1/conductors/" + encoded)
                .then()
                .statusCode(200)
                .extract()
                .jsonPath()
                .setRootPath("result");
    }

    private static List<@Nullable Double> allowedA(String gauge, String table) {
        List<Map<String, Object>> all =
                size(gauge.replace("/", "%2F") + "%20AWG").getList("ampacities");
        return all.stream()
                .filter(one -> table.equals(one.get("table")) && Boolean.TRUE.equals(one.get("ownRow")))
                .<@Nullable Double>map(one -> number(one, "allowedA"))
                .toList();
    }

    private static List<Map<String, Object>> rows(String table) {
        return LiveService.ask()
                .get("/v1/tables/" + table)
                .then()
                .statusCode(200)
                .extract()
                .jsonPath()
                .getList("result.rows");
    }

    private static Map<String, Object> row(String table, String column, String key) {
        return rows(table).stream()
                .filter(row -> key.equals(String.valueOf(row.get(column))))
                .findFirst()
                .orElseThrow(() -> new AssertionError("no row " + key));
    }

    /** By its digits: the JSON reader of the tests makes floats of short fractions. */
    private static @Nullable Double number(Map<String, Object> row, String column) {
        return row.get(column) instanceof Number number ? Double.valueOf(number.toString()) : null;
    }
}
