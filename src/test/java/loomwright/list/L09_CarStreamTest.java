package loomwright.list;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import loomwright.answer.InputError;
import loomwright.list.CarStream.Arrived;
import loomwright.list.Cars.Car;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Cars of a list that is read line by line. */
class L09_CarStreamTest {
    private static final String TWO = """
            A club of two
            voltage,6 V

            car,from,to,size,length
            Otter,battery +,horn,1.5 mm2,1 m
            otter,horn,horn button,1 mm2,1 m
            car,part,kind,value
            Otter,horn,horn,5 A
            car,from,to,length
            Heron,battery +,"fuse
            in",1 m
            ,fuse out,horn,2 m
            """;

    private static List<Arrived> arrived(String text) {
        CarStream stream = new CarStream(ListLimits.defaults());
        List<Arrived> cars = new ArrayList<>();
        text.lines().forEach(line -> {
            stream.add(line.getBytes(StandardCharsets.UTF_8));
            for (Arrived car = stream.poll(); car != null; car = stream.poll()) {
                cars.add(car);
            }
        });
        stream.end();
        for (Arrived car = stream.poll(); car != null; car = stream.poll()) {
            cars.add(car);
        }
        return cars;
    }

    private static ListReading reading(Arrived car) {
        assertThat(car.faults()).isEmpty();
        assertThat(car.source()).isNotNull();
        return PlanList.read(java.util.Objects.requireNonNull(car.source()));
    }

    @ParameterizedTest
    @ValueSource(strings = {",", ";", "\t"})
    void aCarIsReadAsInTheWholeList(String separator) {
        String text = TWO.replace(",", separator);
        List<Arrived> cars = arrived(text);
        List<Car> whole = Cars.of(TextList.read(text, ListLimits.defaults()));
        assertThat(cars).extracting(Arrived::name).containsExactly("Otter", "Heron");
        for (int i = 0; i < 2; i++) {
            ListReading streamed = reading(cars.get(i));
            ListReading atOnce = PlanList.read(whole.get(i).source());
            assertThat(streamed.plan()).isEqualTo(atOnce.plan());
            assertThat(streamed.places()).isEqualTo(atOnce.places());
            assertThat(streamed.assumptions()).hasSameSizeAs(atOnce.assumptions());
        }
    }

    @Test
    void aMarkdownTableIsReadSoToo() {
        String text =
                "6 V\n\n| car | from | to |\n|---|---|---|\n| Otter | battery + | horn |\n| Heron | battery + | horn |\n";
        List<Arrived> cars = arrived(text);
        assertThat(cars).extracting(Arrived::name).containsExactly("Otter", "Heron");
        assertThat(String.valueOf(reading(cars.get(1)).plan().get("system"))).contains("nominalVoltageV=6");
    }

    @Test
    void aCarIsCompleteWhenTheNextOneBegins() {
        CarStream stream = new CarStream(ListLimits.defaults());
        for (String line : List.of("car,from,to", "Otter,battery +,horn", "Otter,horn,body")) {
            stream.add(line.getBytes(StandardCharsets.UTF_8));
            assertThat(stream.isEmpty()).isTrue();
        }
        stream.add("Heron,battery +,horn".getBytes(StandardCharsets.UTF_8));
        assertThat(stream.poll()).isNotNull().extracting(Arrived::name).isEqualTo("Otter");
    }

    @Test
    void rowsThatStandApartAreToldOnceAndTheRestGoesOn() {
        List<Arrived> cars = arrived(
                "car,from,to\nA,battery +,horn\nB,battery +,horn\nA,horn,body\nA,horn,engine\nC,battery +,horn\n");
        assertThat(cars).extracting(Arrived::name).containsExactly("A", "B", "A", "C");
        assertThat(cars.get(2).faults()).singleElement().satisfies(fault -> {
            assertThat(fault.code()).isEqualTo(InputError.Code.OVER_LIMIT);
            assertThat(fault.place()).isEqualTo("row 4");
        });
    }

    @Test
    void aTableOfAllCarsBelowTheFirstCarIsToldAndNotPassedOver() {
        List<Arrived> cars = arrived(
                "car,from,to\nA,battery +,horn\nB,battery +,horn\nC,battery +,horn\n\nsetting,value\nvoltage,6 V\n");
        assertThat(cars).extracting(Arrived::name).containsExactly("A", "B", null, "C");
        assertThat(cars.get(2).faults())
                .singleElement()
                .extracting(InputError::place)
                .isEqualTo("row 6");
    }

    @Test
    void aListThatNamesNoCarIsOneCar() {
        List<Arrived> cars = arrived("from,to\nbattery +,horn\n");
        assertThat(cars).singleElement().extracting(Arrived::name).isNull();
        assertThat(String.valueOf(reading(cars.get(0)).plan().get("parts"))).contains("horn");
    }

    @Test
    void aQuoteThatIsNeverClosedEndsWithItsRow() {
        String text = "car,from,to\nA,battery +,horn\nB,\"battery +,horn\n" + "C,battery +,horn\n".repeat(200)
                + "D,battery +,horn\n";
        List<Arrived> cars = arrived(text);
        assertThat(cars).filteredOn(car -> !car.faults().isEmpty()).isNotEmpty();
        assertThat(cars).last().extracting(Arrived::name).isEqualTo("D");
    }
}
