package loomwright.drawing.diagram;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.annotation.JsonSubTypes;
import java.io.IOException;
import java.nio.file.Files;
import java.util.Arrays;
import java.util.Map;
import loomwright.circuit.Part;
import loomwright.circuit.Plan;
import loomwright.circuit.Plans;
import org.junit.jupiter.api.Test;

/** Every kind of part has a symbol with all its terminals. */
class D01_SymbolsTest {
    /** One of each kind. */
    static final Plan ONE_OF_EACH = Plans.of(
            "{'kind':'battery','id':'battery'},{'kind':'alternator','id':'alternator'},"
                    + "{'kind':'dynamo','id':'dynamo'},{'kind':'control-box','id':'box','label':'control box'},{'kind':'ammeter','id':'ammeter'},"
                    + "{'kind':'stabiliser','id':'stabiliser'},{'kind':'flasher','id':'flasher'},{'kind':'led','id':'led','label':'LED lamp','currentA':0.2,'meantLive':[]},"
                    + "{'kind':'switch','id':'switch','terminals':['30','15'],'positions':[{'name':'on','joins':[['30','15']]}]},"
                    + "{'kind':'relay','id':'relay','coilResistanceOhm':85,'meantLive':[]},"
                    + "{'kind':'solenoid','id':'solenoid','holdInResistanceOhm':1,'pullInResistanceOhm':0.5,'meantLive':[]},"
                    + "{'kind':'motor','id':'motor','resistanceOhm':1,'meantLive':[]},"
                    + "{'kind':'ballast','id':'ballast','elementsOhm':[0.9,0.6,0.3]},"
                    + "{'kind':'resistor','id':'resistor','resistanceOhm':10},"
                    + "{'kind':'coil','id':'coil','primaryResistanceOhm':1.5,'use':'direct','meantLive':[]},"
                    + "{'kind':'contact-breaker','id':'breaker','label':'contact breaker'},{'kind':'module','id':'module','saturationV':1},"
                    + "{'kind':'capacitor','id':'capacitor','capacitanceUf':0.2},"
                    + "{'kind':'lamp','id':'lamp','ratedV':12,'ratedW':5,'meantLive':[]},"
                    + "{'kind':'load','id':'load','currentA':1,'meantLive':[]},"
                    + "{'kind':'diode','id':'diode','forwardV':0.7,'slopeOhm':0.01},"
                    + "{'kind':'fuse','id':'fuse','ratingA':10},"
                    + "{'kind':'fusible-link','id':'link','label':'fusible link','size':'14 AWG','lengthM':0.2},"
                    + "{'kind':'joint','id':'joint','terminals':['1','2']},{'kind':'earth','id':'earth'},"
                    + "{'kind':'connector-half','id':'half','label':'connector half','terminals':['1','2'],'form':'blade','widthMm':6.3,'gender':'male'}",
            "");

    @Test
    void theSymbolsAreThoseOfTheClosedSetOfParts() {
        assertThat(Symbols.kinds())
                .containsExactlyInAnyOrderElementsOf(Arrays.stream(
                                Part.class.getAnnotation(JsonSubTypes.class).value())
                        .<Class<? extends Part>>map(t -> t.value().asSubclass(Part.class))
                        .toList());
        assertThat(ONE_OF_EACH.parts().stream().map(Part::getClass))
                .hasSize(Symbols.kinds().size());
    }

    @Test
    void eachSymbolHasAPinForEachTerminalWithinItsWidth() {
        Flow flow = Flow.of(ONE_OF_EACH);
        for (Part part : ONE_OF_EACH.parts()) {
            Body body = Symbols.of(new Setting(part, flow, Map.of(), Map.of(), null));
            assertThat(body.pins().stream().map(Body.Pin::terminal))
                    .as(part.id())
                    .containsExactlyInAnyOrderElementsOf(part.terminals());
            assertThat(body.pins())
                    .as(part.id())
                    .allSatisfy(pin -> assertThat(pin.x()).isBetween(0.0, body.widthPx()));
            assertThat(body.shapes()).as(part.id()).isNotEmpty();
        }
    }

    /** docs/symbols.svg is what the service draws; {@link SymbolsPicture} writes it. */
    @Test
    void theSymbolsOfTheDocsAreThoseThatAreDrawn() throws IOException {
        assertThat(Files.readString(SymbolsPicture.FILE)).isEqualTo(SymbolsPicture.text());
    }

    @Test
    void aPartThatNothingIsWiredToIsDrawnAllTheSame() {
        Drawing drawing = Drawn.of(ONE_OF_EACH, loomwright.operation.Step.RUN);
        assertThat(drawing.symbols()).hasSize(ONE_OF_EACH.parts().size());
        assertThat(Room.overlaps(drawing)).isEmpty();
    }
}
