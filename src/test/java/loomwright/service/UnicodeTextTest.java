package loomwright.service;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.json.JsonMapper;
import com.fasterxml.jackson.databind.node.ObjectNode;
import io.restassured.response.Response;
import java.io.ByteArrayInputStream;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import javax.xml.XMLConstants;
import javax.xml.parsers.DocumentBuilderFactory;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/**
 * A caller's texts may hold any character: each general category of Unicode, blanks that are all there is, and halves of pairs
 * go through every face. Each answers, or says what is wrong; none fails.
 */
class UnicodeTextTest {
    /** Of each category its first, a middle and its last character. */
    private static final int OF_A_CATEGORY = 3;

    private static final JsonMapper MAPPER = new JsonMapper();

    /** One face of the service: an operation and what is accepted from it. */
    private record Face(String path, String accept) {}

    private static final List<Face> FACES = List.of(
            new Face("/v1/plans/review", "application/json"),
            new Face("/v1/plans/review", "text/csv"),
            new Face("/v1/plans/review", "text/markdown"),
            new Face("/v1/plans/solution", "text/csv"),
            new Face("/v1/plans/backfeed", "application/json"),
            new Face("/v1/plans/mistakes", "text/markdown"),
            new Face("/v1/plans/readings", "text/markdown"),
            new Face("/v1/plans/diagram", "image/svg+xml"),
            new Face("/v1/plans/sheet", "text/html"),
            new Face("/v1/plans/conversion", "text/csv"),
            new Face("/v1/plans/conversion", "application/vnd.openxmlformats-officedocument.spreadsheetml.sheet"),
            new Face("/v1/plans/conversion", "application/vnd.oasis.opendocument.spreadsheet"));

    private static Stream<String> texts() {
        Map<Integer, List<Integer>> byCategory = new LinkedHashMap<>();
        for (int point = 0; point <= Character.MAX_CODE_POINT; point++) {
            byCategory
                    .computeIfAbsent(Character.getType(point), type -> new ArrayList<>())
                    .add(point);
        }
        List<String> texts = new ArrayList<>(List.of(" ", "\t\n", "\u2028", "\u200B\u200B", "\uFEFF", "\u202E", ""));
        byCategory.values().forEach(points -> {
            for (int i = 0; i < OF_A_CATEGORY; i++) {
                String one = Character.toString(points.get(i * (points.size() - 1) / (OF_A_CATEGORY - 1)));
                texts.add(one);
                texts.add("Lamp " + one + " left");
            }
        });
        return texts.stream().distinct();
    }

    private static byte[] plan(String text) throws Exception {
        ObjectNode plan = (ObjectNode) MAPPER.readTree("""
                {"system": {"nominalVoltageV": 12},
                 "parts": [{"kind": "battery", "id": "battery"}, {"kind": "earth", "id": "body"},
                           {"kind": "lamp", "id": "lamp", "ratedV": 12, "ratedW": 21}],
                 "wires": [{"id": "W1", "from": "battery.plus", "to": "lamp.a", "size": "1 mm2", "lengthM": 1},
                           {"id": "W2", "from": "lamp.b", "to": "body.31", "size": "1 mm2", "lengthM": 1},
                           {"id": "W3", "from": "battery.minus", "to": "body.31", "size": "16 mm2", "lengthM": 1}]}""");
        plan.put("name", text);
        ((ObjectNode) plan.at("/parts/2")).put("label", text);
        plan.putArray("notes").add(text);
        return MAPPER.writeValueAsBytes(plan);
    }

    @ParameterizedTest
    @MethodSource("texts")
    void anyTextGoesThroughEveryFaceOrIsRefusedWithItsPlace(String text) throws Exception {
        for (Face face : FACES) {
            Response response = LiveService.ask()
                    .contentType("application/json")
                    .accept(face.accept() + ", application/problem+json;q=0.1")
                    .body(plan(text))
                    .post(face.path());
            assertThat(response.statusCode()).as(face.toString()).isIn(200, 400, 422);
            if (response.statusCode() != 200) {
                assertThat(response.jsonPath().getString("detail"))
                        .as(face.toString())
                        .isNotBlank();
            } else if (face.accept().contains("svg")) {
                DocumentBuilderFactory xml = DocumentBuilderFactory.newInstance();
                xml.setFeature(XMLConstants.FEATURE_SECURE_PROCESSING, true);
                assertThat(xml.newDocumentBuilder()
                                .parse(new ByteArrayInputStream(response.asByteArray()))
                                .getDocumentElement()
                                .getTagName())
                        .isEqualTo("svg");
            }
        }
    }
}
