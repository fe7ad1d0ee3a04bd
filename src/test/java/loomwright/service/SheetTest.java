package loomwright.service;

import static org.assertj.core.api.Assertions.assertThat;
import static org.hamcrest.Matchers.equalTo;
import static org.hamcrest.Matchers.everyItem;
import static org.hamcrest.Matchers.startsWith;

import com.fasterxml.jackson.databind.JsonNode;
import io.restassured.path.json.JsonPath;
import io.restassured.response.ValidatableResponse;
import java.io.ByteArrayInputStream;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import javax.xml.parsers.DocumentBuilderFactory;
import loomwright.operation.Step;
import loomwright.service.http.FixedHeaders;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.w3c.dom.Document;
import org.w3c.dom.Element;
import org.w3c.dom.NamedNodeMap;
import org.w3c.dom.NodeList;
import org.w3c.dom.Text;

/** The printed sheet: 1 one file with nothing from outside, 2 its sections, 3 what it says is what the others say, 4 in words. */
class SheetTest {
    private static final Pattern SECTION = Pattern.compile("<section(?: class=\"([a-z]*)\")?>");

    private static final String HOSTILE = "</td><script>alert(1)</script><img src='http://a.example/'>&amp;\\\"";

    /** A lamp behind a switch, whose wires a caller can name and add to. */
    private static String plan(String name, String moreParts, String moreWires) {
        return """
            {"schema": "loomwright/plan/1", "name": "%s", "system": {"nominalVoltageV": 12},
             "parts": [{"kind": "battery", "id": "battery"}, {"kind": "earth", "id": "body"},
                       {"kind": "fuse", "id": "F1", "ratingA": 30},
                       {"kind": "lamp", "id": "lamp", "label": "%s", "ratedV": 12, "ratedW": 21, "meantLive": ["run"]}%s],
             "wires": [{"id": "W1", "from": "battery.plus", "to": "F1.a", "size": "1.5 mm2", "lengthM": 0.2, "colour": "RD"},
                       {"id": "W2", "from": "F1.b", "to": "lamp.a", "size": "1 mm2", "lengthM": 2, "colour": "GNYE"},
                       {"id": "W3", "from": "lamp.b", "to": "body.31", "size": "1 mm2", "lengthM": 0.5, "colour": "BK"},
                       {"id": "W4", "from": "battery.minus", "to": "body.31", "size": "16 mm2", "lengthM": 0.4}%s]}
            """.formatted(name, name, moreParts, moreWires);
    }

    private static String before() {
        return plan("Reading lamp", "", "");
    }

    private static String after() {
        return plan(
                "Reading lamp and horn",
                ", {\"kind\": \"load\", \"id\": \"horn\", \"resistanceOhm\": 3, \"meantLive\": [\"run\"]}",
                ", {\"id\": \"W5\", \"from\": \"F1.b\", \"to\": \"horn.a\", \"size\": \"1.5 mm2\", \"lengthM\": 1.25,"
                        + " \"colour\": \"BU\"}, {\"id\": \"W6\", \"from\": \"horn.b\", \"to\": \"body.31\","
                        + " \"size\": \"1.5 mm2\", \"lengthM\": 0.3, \"colour\": \"BK\"}");
    }

    private static ValidatableResponse post(String path, String body) {
        return LiveService.ask()
                .contentType("application/json")
                .body(body)
                .post(path)
                .then();
    }

    private static Document sheet(String body) {
        String page = post("/v1/plans/sheet", body)
                .statusCode(200)
                .contentType("text/html; charset=utf-8")
                .header("Content-Security-Policy", equalTo(FixedHeaders.ANSWER_CONTENT_SECURITY))
                .extract()
                .asString();
        assertThat(page).startsWith("<!DOCTYPE html>\n<html lang=\"en\">");
        try {
            return DocumentBuilderFactory.newInstance()
                    .newDocumentBuilder()
                    .parse(new ByteArrayInputStream(page.getBytes(StandardCharsets.UTF_8)));
        } catch (Exception e) {
            throw new AssertionError("not well-formed: " + e.getMessage(), e);
        }
    }

    private static Document one() {
        return sheet("{\"document\": \"record\", \"plan\": " + before() + "}");
    }

    private static Document two() {
        return two("record");
    }

    private static Document two(String document) {
        return sheet("{\"title\": \"Fit a horn\", \"document\": \"" + document + "\", \"plan\": " + before()
                + ", \"after\": " + after() + "}");
    }

    private static List<String> texts(Document page, String element) {
        NodeList found = page.getElementsByTagName(element);
        List<String> texts = new ArrayList<>();
        for (int i = 0; i < found.getLength(); i++) {
            texts.add(found.item(i).getTextContent());
        }
        return texts;
    }

    private static List<Element> all(Document page) {
        NodeList found = page.getElementsByTagName("*");
        List<Element> elements = new ArrayList<>();
        for (int i = 0; i < found.getLength(); i++) {
            elements.add((Element) found.item(i));
        }
        return elements;
    }

    /** No element that loads something, no address but the name space of SVG, no address in the style. */
    private static void assertNothingFromOutside(Document page) {
        for (Element element : all(page)) {
            assertThat(Set.of("script", "link", "img", "iframe", "object", "embed", "base", "image", "foreignObject"))
                    .doesNotContain(element.getTagName());
            NamedNodeMap attributes = element.getAttributes();
            for (int i = 0; i < attributes.getLength(); i++) {
                String name = attributes.item(i).getNodeName().toLowerCase(Locale.ROOT);
                String value = attributes.item(i).getNodeValue();
                assertThat(name).doesNotStartWith("on").isNotIn("src", "srcset", "action", "style");
                if (name.endsWith("href")) {
                    assertThat(value).startsWith("#");
                }
                if (!name.equals("xmlns")) {
                    assertThat(value).doesNotContain("//a.example").doesNotContain("https:");
                }
            }
        }
        assertThat(texts(page, "style")).singleElement().asString().doesNotContain("url(", "@import", "http");
    }

    @Test
    void itIsOneFileWithNothingFromOutside() {
        assertNothingFromOutside(one());
        assertNothingFromOutside(two());
        assertNothingFromOutside(two("bench"));
        assertNothingFromOutside(sheet("{\"plan\": " + before() + "}"));
    }

    @Test
    void hostileNamesStayNames() {
        String hostile = plan(HOSTILE, "", "");
        Document page = sheet("{\"document\": \"record\", \"title\": \"" + HOSTILE + "\", \"plan\": " + hostile + "}");
        String name = HOSTILE.replace("\\\"", "\"");
        assertThat(texts(page, "h1")).containsExactly(name);
        assertThat(texts(page, "title")).contains(name);
        assertThat(texts(page, "td")).contains(name);
        assertThat(page.getElementsByTagName("script").getLength()).isZero();
        assertThat(page.getElementsByTagName("img").getLength()).isZero();
    }

    @Test
    void noTwoElementsHaveTheSameId() {
        assertThat(all(two()).stream().map(e -> e.getAttribute("id")).filter(id -> !id.isEmpty()))
                .hasSizeGreaterThanOrEqualTo(4)
                .doesNotHaveDuplicates();
    }

    @Test
    void aSheetOfOnePlanHasItsSections() {
        Document page = one();
        assertThat(texts(page, "h1")).containsExactly("Reading lamp");
        assertThat(texts(page, "h2"))
                .containsExactly(
                        "Before you touch anything",
                        "Parts and wire of this plan",
                        "What each load gets",
                        "Findings",
                        "Readings to take",
                        "Where the rules come from");
        assertThat(texts(page, "figcaption")).contains("The circuit");
        assertThat(texts(page, "dt")).containsExactly("Vehicle", "Owner", "Done by", "Date");
    }

    @ParameterizedTest
    @ValueSource(strings = {"bench", "record"})
    void howAListWasReadStandsBehindTheCautionsAndBeforeTheResults(String document) {
        String list = "from,to,size,length\nbattery +,fuse in,0.5 mm2,1 m\nfuse out,horn,0.5 mm2,1 m\n";
        String page = LiveService.ask()
                .accept("text/html")
                .multiPart("plan", "car.csv", list.getBytes(StandardCharsets.UTF_8), "text/csv")
                .multiPart("document", document)
                .post("/v1/plans/sheet")
                .asString();
        List<String> sections =
                SECTION.matcher(page).results().map(section -> section.group(1)).toList();
        assertThat(sections).startsWith("cautions", "reading", "reading");
        assertThat(sections.subList(3, sections.size())).doesNotContain("cautions", "reading");
        assertThat(page).contains("This is not certain. Fuse");
    }

    @Test
    void aBenchSheetHasTheWorkInStepsThePictureOfItAndFewReadings() {
        Document page = two("bench");
        assertThat(texts(page, "h1")).containsExactly("Fit a horn");
        assertThat(texts(page, "h2"))
                .containsSubsequence("Before you touch anything", "Work", "To buy", "Readings to take");
        assertThat(texts(page, "svg")).hasSize(2);
        assertThat(all(page).stream()
                        .map(e -> e.getAttribute("data-wire"))
                        .filter(wire -> !wire.isEmpty())
                        .distinct())
                .contains("W5", "W6")
                .doesNotContain("W3");
        assertThat(boxes(page)).isBetween(1L, 10L);
        assertThat(all(page).stream().map(e -> e.getAttribute("id")).filter(id -> !id.isEmpty()))
                .doesNotHaveDuplicates();
    }

    @Test
    void aSheetOfAChangeShowsBeforeAndAfterAndTheWork() {
        Document page = two();
        assertThat(texts(page, "h1")).containsExactly("Fit a horn");
        assertThat(texts(page, "h2")).contains("Work", "Parts and wire to get");
        assertThat(texts(page, "figcaption")).contains("As it is", "As it will be");
        assertThat(texts(page, "title")).contains("Reading lamp", "Reading lamp and horn");
        assertThat(texts(page, "td"))
                .contains("wire added", "1.25 m", "BU", "W5", "W6")
                .doesNotContain("W4");
    }

    /** The head of each table is a {@code thead}, which browsers print again on each page. */
    @Test
    void tablesRepeatTheirHeads() {
        Document page = two();
        assertThat(page.getElementsByTagName("thead").getLength())
                .isEqualTo(page.getElementsByTagName("table").getLength())
                .isGreaterThan(5);
        assertThat(texts(page, "style").get(0))
                .contains(
                        "thead { display: table-header-group; }", "@page { size: auto;", "tr { break-inside: avoid; }");
    }

    @Test
    void itSaysWhatTheReviewAndTheReadingsSay() {
        Document page = two();
        List<String> cells = texts(page, "td");
        JsonPath review =
                post("/v1/plans/review", after()).statusCode(200).extract().jsonPath();
        assertThat(review.getList("result.findings.text", String.class)).isNotEmpty();
        // Behind it stands what the finding is not certain on account of.
        assertThat(review.getList("result.findings.text", String.class))
                .allSatisfy(text -> assertThat(cells).anyMatch(cell -> cell.startsWith(text)));
        JsonPath readings =
                post("/v1/plans/readings", after()).statusCode(200).extract().jsonPath();
        assertThat(cells)
                .containsAll(readings.getList("result.readings.collect { it.tells.text.join(' ') }", String.class))
                .containsAll(readings.getList("result.readings.redLabel", String.class));
        assertThat(boxes(page)).isEqualTo(readings.getList("result.readings").size());
        assertThat(texts(page, "li"))
                .containsAll(review.getList("cautions.text", String.class))
                .containsAll(readings.getList("result.first.text", String.class));
    }

    private static long boxes(Document page) {
        return all(page).stream()
                .filter(e -> e.getAttribute("class").equals("box"))
                .peek(box -> assertThat(box.getTextContent()).isEmpty())
                .count();
    }

    /** This lamp is meant to be live with the key on only, and hangs on the battery. */
    @Test
    void theConditionTableHasTheVoltsOfTheSolutionAndMarksWhatIsWrong() {
        JsonPath solution =
                post("/v1/plans/solution", before()).statusCode(200).extract().jsonPath();
        float volts = solution.getFloat("result.steps[0].parts.find { it.part == 'lamp' }.acrossV");
        String off = String.format(Locale.ROOT, "! %.1f V works", volts);
        String run = String.format(Locale.ROOT, "%.1f V works", volts);
        assertThat(texts(one(), "td")).contains(off, run);
    }

    /** A relay that holds itself in, and an engine that runs on, show after the key is turned off. */
    @Test
    void whatStaysLiveAfterTheKeyIsTurnedOffIsMarkedToo() {
        List<String> cells = texts(one(), "td");
        int off = IntStream.range(0, cells.size())
                .filter(i -> cells.get(i).startsWith("! "))
                .findFirst()
                .orElseThrow();
        List<Step> steps = List.of(Step.values());
        assertThat(cells.get(off + steps.indexOf(Step.OFF_ENGINE_TURNING))).startsWith("! ");
        assertThat(cells.get(off + steps.indexOf(Step.OFF_AGAIN))).startsWith("! ");
    }

    @Test
    void aCoilWhoseModuleConductsNothingWithTheEngineStoppedIsNoFault() {
        String module = LiveService.ask()
                .get("/v1/examples/sandpiper-electronic-module")
                .asString();
        String meantInRun = module.replaceFirst("(\"kind\": ?\"coil\".*?\"meantLive\": ?\\[)", "$1\"run\", ");
        assertThat(texts(sheet("{\"document\": \"record\", \"plan\": " + meantInRun + "}"), "td"))
                .noneMatch(cell -> cell.startsWith("? "))
                .contains("High-energy coil");
    }

    @Test
    void whatIsWrongWithThePlanAsModifiedIsSaidOfIt() {
        String neverOperates = plan(
                "x",
                ", {\"kind\": \"load\", \"id\": \"horn\", \"resistanceOhm\": 3, \"operateV\": 50, \"meantLive\":"
                        + " [\"run\"]}",
                ", {\"id\": \"W5\", \"from\": \"F1.b\", \"to\": \"horn.a\", \"size\": \"1.5 mm2\", \"lengthM\": 1}");
        post("/v1/plans/sheet", "{\"plan\": " + before() + ", \"after\": " + neverOperates + "}")
                .statusCode(422)
                .body("errors.pointer", everyItem(startsWith("/after/")));
    }

    /** Words of the contract that are words of the trade as well. */
    private static final Set<String> OF_THE_TRADE = Set.of("high-tension");

    /** Names of properties as {@code turnsRatio}, words of closed sets as {@code fusible-link}. */
    private static Set<String> wordsOfTheContract() {
        Set<String> words = new HashSet<>();
        for (JsonNode node : JsonContainers.in(LiveService.CONTRACT.document().at("/components/schemas"))) {
            node.path("properties").fieldNames().forEachRemaining(words::add);
            node.path("enum").forEach(word -> words.add(word.asText()));
            node.path("x-extensible-enum").forEach(word -> words.add(word.asText()));
        }
        words.removeIf(word -> !word.matches(".*([a-z0-9][A-Z]|[a-z0-9]-[a-z]).*") || OF_THE_TRADE.contains(word));
        assertThat(words).contains("turnsRatio", "conductsWhenStopped", "fusible-link", "with-ballast", "engine-bay");
        return words;
    }

    private static Stream<Arguments> examplesAloneAndInPairs() {
        List<String> names = LiveService.ask().get("/v1/examples").jsonPath().getList("examples.name");
        return names.stream()
                .flatMap(before ->
                        names.stream().map(after -> Arguments.of(before, after.equals(before) ? "" : after)));
    }

    /** Ids and labels are those of the person who wrote the plan; they stay what they are. */
    @ParameterizedTest(name = "{0} {1}")
    @MethodSource("examplesAloneAndInPairs")
    void noWordOfTheContractIsOnASheet(String before, String after) {
        String plan = LiveService.ask().get("/v1/examples/" + before).asString();
        String other = after.isEmpty()
                ? ""
                : ", \"after\": "
                        + LiveService.ask().get("/v1/examples/" + after).asString();
        Pattern words = Pattern.compile("(?<![\\w.-])(" + String.join("|", wordsOfTheContract()) + ")(?![\\w.-])");
        Pattern labels = Pattern.compile(
                Pattern.compile("\"label\"\\s*:\\s*\"([^\"]+)\"")
                        .matcher(plan + other)
                        .results()
                        .map(label -> Pattern.quote(label.group(1)))
                        .collect(Collectors.joining("|")),
                Pattern.CASE_INSENSITIVE);
        for (String document : List.of("bench", "record")) {
            assertThat(ownTexts(sheet("{\"document\": \"" + document + "\", \"plan\": " + plan + other + "}")))
                    .hasSizeGreaterThan(50)
                    .noneMatch(text ->
                            words.matcher(labels.matcher(text).replaceAll("")).find())
                    .noneMatch(text -> text.matches("(?s).*([\\[{]|\\b(true|false|null)\\b).*"));
        }
    }

    /** The texts of the page one by one, so that no two cells run together; without the style. */
    private static List<String> ownTexts(Document page) {
        List<String> texts = new ArrayList<>();
        for (Element element : all(page)) {
            NodeList children = element.getChildNodes();
            for (int i = 0; i < children.getLength(); i++) {
                if (children.item(i) instanceof Text text
                        && !element.getTagName().equals("style")) {
                    texts.add(text.getData());
                }
            }
        }
        return texts;
    }
}
