package loomwright.list;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;
import loomwright.circuit.ForEachExample;
import loomwright.circuit.Plan;
import loomwright.circuit.Plans;
import loomwright.circuit.RandomVehicle;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Any plan goes out as a list and comes back as the same plan, with nothing assumed and nothing asked. */
class L05_OutAndInAgainTest {
    private static final ListLimits LIMITS = ListLimits.defaults();

    @ForEachExample
    void everyExample(String name) {
        assertSameAgain(Plans.example(name));
    }

    static List<String> templates() throws IOException {
        try (Stream<Path> files = Files.list(Path.of("src/main/resources/templates"))) {
            return files.map(file -> file.getFileName().toString())
                    .filter(name -> name.endsWith(".csv"))
                    .sorted()
                    .toList();
        }
    }

    @ParameterizedTest
    @MethodSource("templates")
    void everyTemplate(String file) throws IOException {
        assertSameAgain(Lists.plan(Lists.of(Files.readString(Path.of("src/main/resources/templates", file)))));
    }

    @ParameterizedTest
    @ValueSource(longs = {1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 12})
    void vehiclesMadeAtRandomOfEveryKindOfPart(long seed) {
        assertSameAgain(RandomVehicle.of(seed, RandomVehicle.EVERY_KIND));
    }

    @ParameterizedTest
    @ValueSource(strings = {"roadster.csv", "saloon-lights.txt", "bike-post.md", "boat.csv"})
    void theListsOfPeopleOnceTheyAreRead(String file) {
        assertSameAgain(Lists.plan(Lists.named(file)));
    }

    @Test
    void textThatASpreadsheetWouldTakeForAFormula() {
        Plan plan = Plans.of(
                "{'kind':'battery','id':'B','label':'=1+1'},{'kind':'lamp','id':'L','label':'+12, hot; side','ratedV':12,"
                        + "'ratedW':5,'meantLive':[]}",
                "{'id':'1','from':'B.plus','to':'L.a','resistanceOhm':0.01},"
                        + "{'id':'02','from':'L.b','to':'B.minus','size':'14 AWG','lengthFt':3.25}");
        assertSameAgain(plan);
    }

    private static void assertSameAgain(Plan plan) {
        List<Sheet> sheets = ListWriter.write(Lists.tree(plan));
        String csv = ListWriter.csv(sheets);
        assertSame(plan, TextList.read(TextList.decode(csv.getBytes(StandardCharsets.UTF_8)), LIMITS));
        assertSame(plan, Workbooks.readXlsx(Workbooks.writeXlsx(sheets), LIMITS));
        assertSame(plan, Workbooks.readOds(Workbooks.writeOds(sheets), LIMITS));
    }

    private static void assertSame(Plan plan, ListSource source) {
        ListReading reading = PlanList.read(source);
        assertThat(reading.assumptions()).isEmpty();
        assertThat(reading.questions()).isEmpty();
        assertThat(Lists.plan(reading)).isEqualTo(plan);
    }
}
