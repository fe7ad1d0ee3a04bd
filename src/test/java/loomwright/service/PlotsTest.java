package loomwright.service;

import static loomwright.message.Arg.arg;
import static org.assertj.core.api.Assertions.assertThat;
import static org.hamcrest.Matchers.equalTo;

import io.restassured.path.json.JsonPath;
import io.restassured.response.Response;
import java.awt.image.BufferedImage;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.util.List;
import java.util.Locale;
import javax.imageio.ImageIO;
import loomwright.drawing.Labels;
import loomwright.drawing.plot.PlotText;
import loomwright.message.Argument.Quantity;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.w3c.dom.Element;

/** Curves instead of figures: 1 as SVG, 2 as PNG, 3 the figures in them, 4 how they are asked for. */
class PlotsTest {
    static List<String> questions() {
        return List.of(
                "/v1/spark?speedRpm=3000",
                "/v1/spark?speedRpm=6000&switchedBy=module&currentLimitA=5&ballastResistanceOhm=1.5&coilKind=for-ballast"
                        + "&supplyFromV=5&supplyToV=15&supplySteps=20",
                "/v1/spark?speedFromRpm=20&speedToRpm=20000&speedSteps=1&gapMm=3&supplyV=6&cylinders=8",
                "/v1/voltage-drop?size=14&lengthM=3&currentA=5",
                "/v1/voltage-drop?size=4%2F0&lengthFt=0.5&currentA=300&returnPath=chassis&chassisOhm=0.001",
                "/v1/voltage-drop?size=24%20AWG&lengthM=400&currentA=0.01",
                "/v1/conductor-size?currentA=8&lengthM=4&system=metric-iso6722",
                "/v1/conductor-size?currentA=5000&lengthM=4",
                "/v1/fuse?size=14&currentA=8&inrushA=30&inrushS=0.01&prospectiveA=400",
                "/v1/fuse?size=20%20AWG&currentA=80",
                "/v1/fuse?size=ISO%200.13%20mm2&currentA=0.5",
                "/v1/fuse?size=2%2F0&currentA=200&circuit=starter&prospectiveA=20000");
    }

    private static byte[] svg(String question) {
        return LiveService.ask()
                .accept("image/svg+xml")
                .get(question)
                .then()
                .statusCode(200)
                .contentType("image/svg+xml")
                .extract()
                .asByteArray();
    }

    @ParameterizedTest
    @MethodSource("questions")
    void everyLabelHasItsRoomAndThePictureIsDescribed(String question) {
        Labels picture = Labels.of(svg(question));
        assertThat(picture.collisions()).isEmpty();
        assertThat(picture.list()).hasSizeGreaterThan(12);
        assertThat(picture.textOf("title")).isNotBlank();
        assertThat(picture.textOf("desc")).endsWith(".").hasSizeGreaterThan(60);
        assertThat(picture.root().getAttribute("role")).isEqualTo("img");
    }

    /** An axis says what and in which unit. */
    @ParameterizedTest
    @MethodSource("questions")
    void theAxesHaveUnits(String question) {
        assertThat(Labels.of(svg(question)).list())
                .map(Labels.Label::text)
                .filteredOn(text -> text.matches(".*, (ms|A|V|kV|rpm|m|s)"))
                .hasSizeGreaterThanOrEqualTo(2);
    }

    @ParameterizedTest
    @MethodSource("questions")
    void theSamePictureComesAsDots(String question) throws IOException {
        BufferedImage image = ImageIO.read(new ByteArrayInputStream(LiveService.ask()
                .get(question + "&format=png")
                .then()
                .statusCode(200)
                .contentType("image/png")
                .extract()
                .asByteArray()));
        Element root = Labels.of(svg(question)).root();
        assertThat(image.getWidth()).isEqualTo(2 * Integer.parseInt(root.getAttribute("width")));
        assertThat(image.getHeight()).isEqualTo(2 * Integer.parseInt(root.getAttribute("height")));
    }

    @Test
    void theFiguresInTheLegendAreThoseOfTheAnswer() {
        String question = "/v1/spark?speedRpm=4200";
        JsonPath at = LiveService.ask().get(question).then().extract().jsonPath();
        assertThat(Labels.of(svg(question)).list())
                .map(Labels.Label::text)
                .contains(
                        PlotText.PRIMARY_BREAK
                                .with(
                                        arg("peakA", at.getDouble("result.at.peakA")),
                                        arg("dwellS", at.getDouble("result.at.dwellMs") / 1000))
                                .text(),
                        PlotText.REQUIRED
                                .with(arg("required", kilovolts(at.getDouble("result.at.requiredKv"))))
                                .text(),
                        PlotText.ASKED_ABOUT
                                .with(arg("available", kilovolts(at.getDouble("result.at.availableKv"))))
                                .text(),
                        PlotText.WITH_RESERVE
                                .with(arg("reserve", kilovolts(1.5 * at.getDouble("result.at.requiredKv"))))
                                .text());
        String run = "/v1/voltage-drop?size=14&lengthM=3&currentA=5";
        double totalV = LiveService.ask().get(run).then().extract().jsonPath().getDouble("result.totalV");
        assertThat(Labels.of(svg(run)).list())
                .map(Labels.Label::text)
                .contains(PlotText.DROP_ASKED
                        .with(arg("size", "14 AWG"), arg("lengthM", 3.0), arg("dropV", totalV))
                        .text());
    }

    /** Without a sweep of its own the picture ends a little beyond what is asked, and shows the supply as well. */
    @Test
    void theAxisOfSpeedIsWhereTheQuestionIs() {
        List<String> texts = Labels.of(svg("/v1/spark?speedRpm=1000&currentLimitA=6&switchedBy=module")).list().stream()
                .map(Labels.Label::text)
                .toList();
        assertThat(texts)
                .contains(PlotText.AXIS_SPEED.text(), PlotText.AXIS_SUPPLY.text())
                .doesNotContain("8000");
    }

    /** Which side is safe is an area, not a line to be interpreted. */
    @Test
    void theFusePlotHasTheAreaInWhichTheWireIsTooHot() {
        Labels picture = Labels.of(svg("/v1/fuse?size=14&currentA=8&prospectiveA=400"));
        assertThat(picture.list())
                .map(Labels.Label::text)
                .contains("wire too hot: the fuse must blow below this", "fuse blows within this");
    }

    /** Both sides of a change over the same axes, with the figures that each side has alone. */
    @Test
    void aChangeIsDrawnBeforeAndAfterInOnePlot() {
        String change =
                "{\"before\": {\"speedRpm\": 3000, \"coilKind\": \"for-ballast\", \"ballastResistanceOhm\": 1.5,"
                        + " \"gapMm\": 0.65}, \"after\": {\"speedRpm\": 3000, \"coilKind\": \"for-ballast\", \"gapMm\": 1.1}}";
        JsonPath answer = ask(change, "application/json").jsonPath();
        Labels picture = Labels.of(ask(change, "image/svg+xml").asByteArray());

        assertThat(picture.collisions()).isEmpty();
        List<String> texts = picture.list().stream().map(Labels.Label::text).toList();
        assertThat(texts).containsOnlyOnce(PlotText.AXIS_SPEED.text(), PlotText.AXIS_SUPPLY.text());
        for (String side : List.of("before", "after")) {
            PlotText name = PlotText.valueOf(side.toUpperCase(Locale.ROOT));
            String at = "result." + side + ".at.";
            assertThat(texts)
                    .contains(
                            name.with(arg(
                                            "line",
                                            PlotText.ASKED_ABOUT.with(
                                                    arg("available", kilovolts(answer.getDouble(at + "availableKv"))))))
                                    .text(),
                            name.with(arg(
                                            "line",
                                            PlotText.REQUIRED.with(
                                                    arg("required", kilovolts(answer.getDouble(at + "requiredKv"))))))
                                    .text(),
                            name.with(arg(
                                            "line",
                                            PlotText.PRIMARY_BREAK.with(
                                                    arg("peakA", answer.getDouble(at + "peakA")),
                                                    arg("dwellS", answer.getDouble(at + "dwellMs") / 1000))))
                                    .text());
        }
    }

    private static Response ask(String change, String accept) {
        return LiveService.ask()
                .contentType("application/json")
                .accept(accept)
                .body(change)
                .post("/v1/ignition-change")
                .then()
                .statusCode(200)
                .extract()
                .response();
    }

    /** What browsers send for an {@code img} element; and POST as well as GET. */
    @Test
    void aPageGetsAPictureByALinkAndAProgramByPost() {
        for (String accept : List.of(
                "image/avif,image/webp,image/apng,image/svg+xml,image/*,*/*;q=0.8", "image/*", "image/*;q=0.5")) {
            LiveService.ask()
                    .accept(accept)
                    .get("/v1/fuse?size=14&currentA=8")
                    .then()
                    .statusCode(200)
                    .contentType("image/svg+xml");
        }
        byte[] posted = LiveService.ask()
                .contentType("application/json")
                .accept("image/svg+xml")
                .body("{\"size\": \"14\", \"currentA\": 8}")
                .post("/v1/fuse")
                .then()
                .statusCode(200)
                .extract()
                .asByteArray();
        assertThat(posted).isEqualTo(svg("/v1/fuse?size=14&currentA=8"));
    }

    @Test
    void aFaultyQuestionIsAProblemAndNoPicture() {
        LiveService.ask()
                .accept("image/svg+xml, application/problem+json;q=0.5")
                .get("/v1/voltage-drop?size=14&lengthM=0&currentA=5")
                .then()
                .statusCode(400)
                .body("errors[0].parameter", equalTo("lengthM"));
    }

    private static Quantity kilovolts(double kilovolts) {
        return new Quantity(kilovolts, "kV");
    }
}
