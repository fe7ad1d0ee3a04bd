package loomwright.service;

import static org.assertj.core.api.Assertions.assertThat;

import io.restassured.response.Response;
import java.awt.image.BufferedImage;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.util.List;
import javax.imageio.ImageIO;
import org.junit.jupiter.api.Test;

/** Diagrams over HTTP: by address for an example, by body for a plan. */
class DiagramTest {
    private static final String BYPASS = "/v1/examples/sandpiper-unguarded-bypass/diagram";

    @Test
    void anExampleHasAnAddressThatIsAPicture() {
        Response answer = LiveService.ask().get(BYPASS + "?step=crank&title=Merle%20Valley");
        assertThat(answer.statusCode()).isEqualTo(200);
        assertThat(answer.contentType()).isEqualTo("image/svg+xml");
        assertThat(answer.asString())
                .contains("<title id=\"diagram-title\">Merle Valley</title>", "Cranking", "data-wire=\"W35\"");
    }

    /** Generated clients name every form there is; a page that shows a picture names none but pictures, or anything. */
    @Test
    void whoNamesJsonReadsItAsData() {
        for (String accept :
                List.of("application/json, image/svg+xml, image/png, application/problem+json", "application/json")) {
            assertThat(LiveService.ask().accept(accept).get(BYPASS).contentType())
                    .isEqualTo("application/json");
        }
        for (String accept :
                List.of("*/*", "image/avif,image/webp,*/*;q=0.8", "image/svg+xml, application/json;q=0.5")) {
            assertThat(LiveService.ask().accept(accept).get(BYPASS).contentType())
                    .isEqualTo("image/svg+xml");
        }
    }

    @Test
    void aPlanInTheBodyIsDrawnAsItIsAsExample() {
        String plan =
                LiveService.ask().get("/v1/examples/otter-6v-positive-earth").asString();
        String drawn = LiveService.ask()
                .contentType("application/json")
                .body(plan)
                .post("/v1/plans/diagram?step=running&marks=none")
                .asString();
        assertThat(drawn)
                .isEqualTo(LiveService.ask()
                        .get("/v1/examples/otter-6v-positive-earth/diagram?step=running&marks=none")
                        .asString());
    }

    /** One answer to a page on which a switch is moved: the picture, and the figures that another operation gives alone. */
    @Test
    void afterMovesOneAnswerHasPictureFiguresAndWhatStayedIn() {
        Response drawn =
                LiveService.ask().accept("application/json").get(BYPASS + "?after=key:crank,key:run&figures=true");
        Response solved = LiveService.ask()
                .contentType("application/json")
                .body(LiveService.ask()
                        .get("/v1/examples/sandpiper-unguarded-bypass")
                        .asString())
                .post("/v1/plans/solution?after=key:crank,key:run&full=true");

        assertThat(drawn.jsonPath().getString("result.step")).isEqualTo("run");
        assertThat(drawn.jsonPath().getList("result.held", String.class)).containsExactly("solenoid");
        assertThat(drawn.jsonPath().<Object>get("result.figures.steps.find { it.step == 'run' }"))
                .isNotNull()
                .isEqualTo(solved.jsonPath().get("result.steps[0]"));
        assertThat(drawn.jsonPath().getList("result.figures.steps")).hasSize(7);
        assertThat(LiveService.ask()
                        .accept("application/json")
                        .get(BYPASS)
                        .jsonPath()
                        .<Object>get("result.figures"))
                .isNull();
    }

    @Test
    void asPngItHasTwoDotsForEachPixelOfTheSvg() throws IOException {
        Response png =
                LiveService.ask().accept("image/png").get("/v1/examples/otter-6v-positive-earth/diagram?marks=none");
        assertThat(png.contentType()).isEqualTo("image/png");
        BufferedImage image = ImageIO.read(new ByteArrayInputStream(png.asByteArray()));
        String svg = LiveService.ask()
                .get("/v1/examples/otter-6v-positive-earth/diagram?marks=none&format=svg")
                .asString();
        double width = Double.parseDouble(svg.replaceAll("(?s).*? width=\"([\\d.]+)\".*", "$1"));
        assertThat(image.getWidth()).isEqualTo((int) Math.ceil(2 * width));
    }

    @Test
    void aPictureForAPostIsAThousandDotsWide() throws IOException {
        Response png = LiveService.ask()
                .accept("image/png")
                .get("/v1/examples/otter-6v-positive-earth/diagram?marks=none&size=post");
        assertThat(ImageIO.read(new ByteArrayInputStream(png.asByteArray())).getWidth())
                .isEqualTo(1000);
    }

    @Test
    void oneAnswerInJsonHasAllStepsAndAllMarksInWords() {
        Response answer = LiveService.ask().accept("application/json").get(BYPASS + "?step=crank&legend=none");
        assertThat(answer.jsonPath().getString("result.step")).isEqualTo("crank");
        assertThat(answer.jsonPath().getList("result.steps.step", String.class))
                .containsExactly("off", "accessory", "run", "crank", "running", "off-engine-turning", "off-again");
        assertThat(answer.jsonPath().getString("result.svg")).startsWith("<svg").contains("dg-at-running");
        assertThat(answer.jsonPath().getList("result.marks.code", String.class)).contains("backfeed");
        assertThat(answer.jsonPath().getList("cautions.code", String.class)).contains("disconnect-battery");
    }

    @Test
    void marksCanBeChosen() {
        assertThat(LiveService.ask().get(BYPASS + "?marks=backfeed").asString())
                .contains("Contact points: open", "data-mark=\"1\"");
        assertThat(LiveService.ask().get(BYPASS + "?marks=none").asString()).doesNotContain("data-mark");
        assertThat(LiveService.ask().get(BYPASS + "?marks=colours").statusCode())
                .isEqualTo(400);
        assertThat(LiveService.ask().get(BYPASS + "?step=midnight").statusCode())
                .isEqualTo(400);
    }

    @Test
    void anotherFormOrAnUnknownExampleIsRefused() {
        assertThat(LiveService.ask().accept("text/csv").get(BYPASS).statusCode())
                .isEqualTo(406);
        assertThat(LiveService.ask().get("/v1/examples/no-such/diagram").statusCode())
                .isEqualTo(404);
    }
}
