package loomwright.drawing.diagram;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.ByteArrayInputStream;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import javax.xml.parsers.DocumentBuilderFactory;
import loomwright.answer.Progress;
import loomwright.backfeed.BackfeedLimits;
import loomwright.circuit.Plan;
import loomwright.circuit.Plans;
import loomwright.network.NetworkLimits;
import loomwright.operation.Step;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.w3c.dom.Document;
import org.w3c.dom.Element;
import org.w3c.dom.NodeList;

/** The SVG of a diagram: well formed, readable without eyes, the same every time, safe against any name. */
class D04_SvgTest {
    private static byte[] svg(Plan plan) {
        return DrawingSvg.of(
                        Diagram.of(
                                plan,
                                DiagramOptions.USUAL,
                                BackfeedLimits.defaults(),
                                NetworkLimits.defaults(),
                                Progress.UNWATCHED),
                        "d")
                .bytes();
    }

    private static Document parsed(byte[] svg) throws Exception {
        DocumentBuilderFactory factory = DocumentBuilderFactory.newInstance();
        factory.setNamespaceAware(true);
        factory.setFeature("http://apache.org/xml/features/disallow-doctype-decl", true);
        return factory.newDocumentBuilder().parse(new ByteArrayInputStream(svg));
    }

    private static List<Element> elements(Document document, String name) {
        NodeList nodes = document.getElementsByTagNameNS("http://www.w3.org/2000/svg", name);
        List<Element> elements = new ArrayList<>();
        for (int i = 0; i < nodes.getLength(); i++) {
            elements.add((Element) nodes.item(i));
        }
        return elements;
    }

    @Test
    void eachWireAndEachPartIsAnElementWithItsIdAndItsWords() throws Exception {
        Plan plan = Plans.example("sandpiper-bypass-relay");
        Document document = parsed(svg(plan));
        List<Element> groups = elements(document, "g");
        for (var wire : plan.wires()) {
            assertThat(groups).anySatisfy(g -> {
                assertThat(g.getAttribute("data-wire")).isEqualTo(wire.id());
                assertThat(g.getFirstChild().getTextContent())
                        .contains(wire.id(), wire.from().terminal());
            });
        }
        for (var part : plan.parts()) {
            assertThat(groups)
                    .anyMatch(g ->
                            List.of(g.getAttribute("data-part").split(" ", -1)).contains(part.id()));
        }
    }

    @Test
    void itIsAnImageWithTitleAndDescriptionForThoseWhoDoNotSeeIt() throws Exception {
        Element root = parsed(svg(Plans.example("sandpiper-unguarded-bypass"))).getDocumentElement();
        assertThat(root.getAttribute("role")).isEqualTo("img");
        assertThat(root.getAttribute("aria-labelledby")).isEqualTo("d-title d-desc");
        assertThat(elements(root.getOwnerDocument(), "title").get(0).getTextContent())
                .isEqualTo("Sandpiper 1500, unguarded bypass");
        assertThat(elements(root.getOwnerDocument(), "desc").get(0).getTextContent())
                .containsIgnoringCase(Step.RUN.description())
                .contains("Live wires: W3, W4", "Starter solenoid");
    }

    private static StepDrawings inAllSteps(String example) {
        return Diagram.of(
                Plans.example(example),
                DiagramOptions.USUAL.with(true),
                Drawn.LIMITS,
                NetworkLimits.defaults(),
                Progress.UNWATCHED);
    }

    @Test
    void eachStepOfAPictureOfAllStepsShowsWhatItsOwnPictureShows() throws Exception {
        StepDrawings all = inAllSteps("sandpiper-unguarded-bypass");
        Element root = parsed(DrawingSvg.of(all, "d").bytes()).getDocumentElement();
        assertThat(root.getAttribute("data-steps").split(" ", -1)).hasSize(Step.values().length);
        for (Step step : Step.values()) {
            Drawing alone = Diagram.of(
                            Plans.example("sandpiper-unguarded-bypass"),
                            DiagramOptions.USUAL.at(step),
                            Drawn.LIMITS,
                            NetworkLimits.defaults(),
                            Progress.UNWATCHED)
                    .drawing();
            assertThat(shown(root, step))
                    .as(step.code())
                    .hasSameElementsAs(alone.texts().stream().map(Text::text).toList());
            assertThat(all.drawings().get(step)).isEqualTo(alone);
        }
    }

    /** The texts that the style sheet leaves when a step is chosen; those of badges and symbols left out. */
    private static List<String> shown(Element root, Step step) {
        return elements(root.getOwnerDocument(), "text").stream()
                .filter(text -> isShown(text, step))
                .filter(text ->
                        !((Element) text.getParentNode()).getAttribute("class").contains("dg-mark")
                                && text.getAttribute("text-anchor").isEmpty())
                .map(Element::getTextContent)
                .toList();
    }

    private static boolean isShown(Element element, Step step) {
        List<String> classes = List.of(element.getAttribute("class").split(" ", -1));
        return !classes.contains("dg-at") || classes.contains("dg-at-" + step.code());
    }

    @Test
    void withoutAStyleSheetTheStepAskedForIsShown() throws Exception {
        Element root = parsed(
                        DrawingSvg.of(inAllSteps("sandpiper-as-built"), "d").bytes())
                .getDocumentElement();
        assertThat(root.getAttribute("data-step")).isEqualTo("run");
        for (String name : List.of("g", "text", "path", "rect")) {
            for (Element element : elements(root.getOwnerDocument(), name)) {
                assertThat(element.getAttribute("display").equals("none")).isEqualTo(!isShown(element, Step.RUN));
            }
        }
    }

    @Test
    void theStyleSheetOfThePageKnowsEveryStep() throws Exception {
        String css = new String(
                Objects.requireNonNull(getClass().getResourceAsStream("/page/diagram.css"))
                        .readAllBytes(),
                StandardCharsets.UTF_8);
        for (Step step : Step.values()) {
            assertThat(css).contains(".dg[data-step=\"" + step.code() + "\"] .dg-at-" + step.code());
        }
    }

    @Test
    void eachTerminalAndEachEndOfAWireHasItsName() throws Exception {
        Plan plan = Plans.example("sandpiper-bypass-relay");
        Document document = parsed(svg(plan));
        List<String> terminals = elements(document, "circle").stream()
                .map(circle -> circle.getAttribute("data-terminal"))
                .toList();
        for (var wire : plan.wires()) {
            assertThat(terminals).contains(wire.from().toString(), wire.to().toString());
            assertThat(elements(document, "g"))
                    .anyMatch(g -> g.getAttribute("data-wire").equals(wire.id())
                            && g.getAttribute("data-from").equals(wire.from().toString())
                            && g.getAttribute("data-to").equals(wire.to().toString()));
        }
    }

    @Test
    void textsAreTextsWithinTheViewBox() throws Exception {
        Document document = parsed(svg(Plans.example("sandpiper-as-built")));
        List<String> box =
                List.of(document.getDocumentElement().getAttribute("viewBox").split(" ", 4));
        List<Element> texts = elements(document, "text");
        assertThat(texts).hasSizeGreaterThan(150);
        for (Element text : texts) {
            if (((Element) text.getParentNode()).getAttribute("transform").isEmpty()) {
                assertThat(Double.parseDouble(text.getAttribute("x"))).isBetween(0.0, Double.parseDouble(box.get(2)));
                assertThat(Double.parseDouble(text.getAttribute("y"))).isBetween(0.0, Double.parseDouble(box.get(3)));
            }
        }
    }

    @Test
    void theSamePlanGivesTheSameBytes() {
        Plan plan = Plans.example("sandpiper-as-built");
        assertThat(svg(plan)).isEqualTo(svg(plan));
    }

    @Test
    void noNameBecomesAnElement() throws Exception {
        String evil = "<script>alert(1)</script>&\\\"\\u0000]]>";
        Plan plan = Plans.parse("{'schema':'loomwright/plan/1','name':'" + evil + "','system':{'nominalVoltageV':12},"
                + "'parts':[{'kind':'battery','id':'battery','label':'" + evil + "'},"
                + "{'kind':'earth','id':'body','label':'" + evil + "'},"
                + "{'kind':'lamp','id':'lamp','label':'" + evil + "','ratedV':12,'ratedW':5,'meantLive':[]}],"
                + "'wires':[{'id':'W1','from':'battery.plus','to':'lamp.a','resistanceOhm':1},"
                + "{'id':'W2','from':'lamp.b','to':'body.31','resistanceOhm':1},"
                + "{'id':'W3','from':'battery.minus','to':'body.31','resistanceOhm':1}]}");
        byte[] svg = svg(plan);
        Document document = parsed(svg);
        assertThat(elements(document, "script")).isEmpty();
        assertThat(new String(svg, StandardCharsets.UTF_8))
                .doesNotContain("<script")
                .contains("&lt;script");
        assertThat(elements(document, "title").get(0).getTextContent()).startsWith("<script>alert(1)</script>&\"");
    }

    @ParameterizedTest
    @ValueSource(strings = {" ", "\t", "\n", "\u2028", "\u200b", "\u00a0"})
    void namesOfBlanksOnlyAreNoText(String blank) {
        Plan plan = Plans.of(
                "{'kind':'battery','id':'battery'},{'kind':'earth','id':'body'}",
                "{'id':'W2','from':'battery.minus','to':'body.31','resistanceOhm':0.001}");
        Plan unnamed = new Plan(
                plan.schema(),
                blank,
                plan.system(),
                plan.conditions(),
                plan.parts(),
                plan.wires(),
                plan.connectors(),
                plan.notes());
        assertThat(Drawn.of(unnamed, Step.RUN).texts()).isNotEmpty();
    }

    @Test
    void aDeadShortIsDrawnAndSaidUnderTheTitle() {
        Plan shorted = Plans.of(
                "{'kind':'battery','id':'battery'},{'kind':'earth','id':'body'}",
                "{'id':'W1','from':'battery.plus','to':'body.31','resistanceOhm':1e-6},"
                        + "{'id':'W2','from':'battery.minus','to':'body.31','resistanceOhm':1e-6}");
        Drawing drawing = Drawn.of(shorted, Step.RUN);
        assertThat(Room.overlaps(drawing)).isEmpty();
        assertThat(drawing.texts()).anyMatch(text -> text.text().contains("short-circuited"));
    }
}
