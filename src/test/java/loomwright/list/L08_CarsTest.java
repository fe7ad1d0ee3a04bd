package loomwright.list;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.List;
import loomwright.answer.InputError;
import loomwright.answer.RejectedInput;
import loomwright.circuit.Wire;
import loomwright.list.Cars.Car;
import org.junit.jupiter.api.Test;

/** One list of several cars. */
class L08_CarsTest {
    private static final String TWO = """
            setting,value
            voltage,6 V

            car,from,to,size,length
            Otter,battery +,horn,1.5 mm2,1 m
            Heron,battery +,fuse in,2.5 mm2,1 m
            ,fuse out,horn,1.5 mm2,2 m
            otter,horn,horn button,1 mm2,1 m

            car,part,kind,value
            Heron,fuse,fuse,15 A
            """;

    private static List<Car> cars(String text) {
        return Cars.of(TextList.read(text, ListLimits.defaults()));
    }

    @Test
    void eachCarHasItsRowsWhereverTheyStandAndTheSettingsOfAll() {
        List<Car> cars = cars(TWO);
        assertThat(cars).extracting(Car::name).containsExactly("Otter", "Heron");
        ListReading otter = PlanList.read(cars.get(0).source());
        ListReading heron = PlanList.read(cars.get(1).source());
        assertThat(ids(otter)).contains("W1", "W2").doesNotContain("W3");
        assertThat(String.valueOf(heron.plan().get("parts"))).contains("ratingA=15");
        assertThat(String.valueOf(otter.plan().get("parts"))).doesNotContain("ratingA");
        assertThat(String.valueOf(otter.plan().get("system")))
                .contains("nominalVoltageV=6")
                .isEqualTo(String.valueOf(heron.plan().get("system")));
    }

    private static List<String> ids(ListReading reading) {
        return Lists.plan(reading).wires().stream().map(Wire::id).toList();
    }

    @Test
    void anEmptyCellIsTheCarOfTheRowAbove() {
        assertThat(String.valueOf(
                        PlanList.read(cars(TWO).get(1).source()).plan().get("wires")))
                .contains("fuse", "horn")
                .doesNotContain("horn-button");
    }

    @Test
    void placesAreThoseOfTheWholeList() {
        assertThat(PlanList.read(cars(TWO).get(1).source()).places().values())
                .extracting(CellRef::row)
                .contains(6, 7);
    }

    @Test
    void aListThatNamesNoCarIsOneCar() {
        List<Car> cars = cars("from,to\nbattery +,horn\n");
        assertThat(cars).hasSize(1);
        assertThat(cars.get(0).name()).isNull();
    }

    @Test
    void anOperationOnOneCarDoesNotMixSeveral() {
        assertThatThrownBy(() -> PlanList.read(TextList.read(TWO, ListLimits.defaults())))
                .isInstanceOfSatisfying(
                        RejectedInput.class,
                        rejected -> assertThat(rejected.faults())
                                .extracting(InputError::code)
                                .containsExactly(InputError.Code.OVER_LIMIT));
        ListReading one = PlanList.read(TextList.read("car,from,to\nOtter,battery +,horn\n", ListLimits.defaults()));
        assertThat(String.valueOf(one.plan().get("parts"))).contains("horn");
    }
}
