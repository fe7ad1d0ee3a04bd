package loomwright.list;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.tuple;

import loomwright.circuit.Ammeter;
import loomwright.circuit.Battery;
import loomwright.circuit.Dynamo;
import loomwright.circuit.EarthPolarity;
import loomwright.circuit.FilamentLamp;
import loomwright.circuit.Fuse;
import loomwright.circuit.Plan;
import loomwright.circuit.Switch;
import loomwright.list.ListAssumption.Code;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** The lists as people write them become plans; none is refused, and none asks more than five questions. */
class L04_ListsOfPeopleTest {
    @ParameterizedTest
    @CsvSource({
        "roadster.csv, 23, 12",
        "saloon-lights.txt, 12, 12",
        "bike-post.md, 9, 6",
        "boat.csv, 24, 12",
        "heron.csv, 20, 12",
        "caravan-socket.csv, 22, 12",
        "dynamo-bike.md, 18, 6",
        "tractor.csv, 22, 12"
    })
    void eachBecomesAPlanWithAllItsWires(String file, int rows, double nominalV) {
        ListReading reading = Lists.named(file);
        Plan plan = Lists.plan(reading);
        assertThat(plan.wires()).hasSizeGreaterThanOrEqualTo(rows);
        assertThat(plan.system().nominalVoltageV()).isEqualTo(nominalV);
        assertThat(reading.questions()).hasSizeLessThanOrEqualTo(5);
        assertThat(plan.wires()).allSatisfy(wire -> {
            assertThat(plan.findPart(wire.from().part()).orElseThrow().terminals())
                    .contains(wire.from().terminal());
            assertThat(plan.findPart(wire.to().part()).orElseThrow().terminals())
                    .contains(wire.to().terminal());
        });
    }

    @Test
    void theRoadster() {
        ListReading reading = Lists.named("roadster.csv");
        Plan plan = Lists.plan(reading);
        assertThat(Lists.ends(plan, "W1")).isEqualTo("battery.plus starter-solenoid.30");
        assertThat(Lists.ends(plan, "W6")).isEqualTo("control-box.A ignition-switch.30");
        assertThat(Lists.ends(plan, "W12")).isEqualTo("coil.1 distributor-points.1");
        assertThat(Lists.ends(plan, "W17")).isEqualTo("light-switch.58 tail-lamps.a");
        assertThat(plan.findWire("W1").orElseThrow().conductor().size()).isEqualTo("37/0.90");
        assertThat(plan.findWire("W1").orElseThrow().conductor().lengthM()).isEqualTo(0.762);
        assertThat(plan.findWire("W13").orElseThrow().colour()).isEqualTo("WHRD");
        assertThat(plan.findPart("tail-lamps").orElseThrow())
                .isInstanceOfSatisfying(
                        FilamentLamp.class, lamps -> assertThat(lamps.ratedW()).isEqualTo(10));
        assertThat(Lists.assumptions(reading))
                .contains(Code.VOLTAGE, Code.EARTH_POLARITY, Code.CASE_EARTH, Code.SEVERAL_BULBS);
        assertThat(Lists.questions(reading)).containsExactly(Question.Code.FUSE_RATING);
    }

    @Test
    void aButtonForTheStarterIsPressedWhileCranking() {
        Plan plan = Lists.plan(Lists.named("roadster.csv"));
        assertThat(plan.findPart("starter-button").orElseThrow())
                .isInstanceOfSatisfying(
                        Switch.class, button -> assertThat(button.free()).isFalse());
    }

    /** A fuse with its rating in its name, lamps whose wires go on to a socket, a switch that nothing feeds, a total in a wrong column. */
    @Test
    void theSocketOfACaravan() {
        ListReading reading = Lists.named("caravan-socket.csv");
        Plan plan = Lists.plan(reading);
        assertThat(plan.listParts(Fuse.class))
                .extracting(Fuse::id, Fuse::ratingA)
                .contains(tuple("fuse-caravan", 20.0));
        assertThat(Lists.ends(plan, "W2")).isEqualTo("fuse-caravan.b socket-pin-9.1");
        assertThat(Lists.ends(plan, "W3")).isEqualTo("rear-left-indicator.a socket-pin-1.1");
        assertThat(Lists.ends(plan, "W14")).isEqualTo("indicator-switch.L rear-left-indicator.a");
        assertThat(plan.findPart("lights-switch").orElseThrow().terminals()).containsExactly("58", "30");
        assertThat(Lists.questions(reading)).doesNotContain(Question.Code.MISSING_END, Question.Code.WHAT_PART);
    }

    /** A fuse by its rating and by its name, two parts at one end, dittos, sizes in a column that is called wire. */
    @Test
    void theMotorcycleWithADynamo() {
        ListReading reading = Lists.named("dynamo-bike.md");
        Plan plan = Lists.plan(reading);
        assertThat(plan.listParts(Fuse.class))
                .singleElement()
                .satisfies(fuse -> assertThat(fuse.ratingA()).isEqualTo(15));
        assertThat(Lists.ends(plan, "6")).isEqualTo("coil.1 points.1");
        assertThat(Lists.ends(plan, "6-2")).isEqualTo("coil.1 condenser.a");
        assertThat(Lists.ends(plan, "4")).isEqualTo("ammeter.b ignition-switch.30");
        assertThat(plan.findWire("4").orElseThrow().conductor().size()).isEqualTo("14/0.30");
        assertThat(Lists.questions(reading)).containsExactly(Question.Code.WIRE_SIZE);
    }

    /** Short names, an ammeter marked with signs, a mark on the key that only its owner knows, a word that is no slip. */
    @Test
    void theTractor() {
        ListReading reading = Lists.named("tractor.csv");
        Plan plan = Lists.plan(reading);
        assertThat(plan.listParts(Battery.class)).hasSize(1);
        assertThat(plan.listParts(Ammeter.class)).hasSize(1);
        assertThat(plan.findPart("plough-lamp")).isPresent();
        assertThat(Lists.ends(plan, "W1")).endsWith(".plus starter-solenoid.30");
        assertThat(Lists.ends(plan, "W6")).startsWith("key-switch.H ");
        assertThat(Lists.questions(reading)).containsExactly(Question.Code.POSITIONS, Question.Code.WHAT_VALUE);
    }

    @Test
    void aSentenceOfAPostIsNoTitle() {
        assertThat(Lists.plan(Lists.named("bike-post.md")).name()).isEqualTo("Plan from a list");
    }

    @Test
    void theSaloonKeepsItsTitleAndLosesItsTotals() {
        ListReading reading = Lists.named("saloon-lights.txt");
        Plan plan = Lists.plan(reading);
        assertThat(plan.name()).isEqualTo("Lights of the blue saloon, third draft");
        assertThat(Lists.ends(plan, "1")).isEqualTo("battery.plus fuse-box-1.a");
        assertThat(Lists.ends(plan, "10")).isEqualTo("dip-switch.56b headlamp-left-dip.a");
        assertThat(plan.findWire("3").orElseThrow().conductor().lengthM()).isEqualTo(2.4);
        assertThat(Lists.assumptions(reading)).doesNotContain(Code.ROW_LEFT_OUT);
    }

    @Test
    void theMotorcycleHasPositiveEarthAndTwoSlips() {
        ListReading reading = Lists.named("bike-post.md");
        Plan plan = Lists.plan(reading);
        assertThat(plan.system().earthPolarity()).isEqualTo(EarthPolarity.POSITIVE);
        assertThat(Lists.assumptions(reading).stream().filter(Code.SPELLING::equals))
                .hasSize(2);
        assertThat(Lists.ends(plan, "b")).isEqualTo("fuse.b ignition-switch.30");
        assertThat(Lists.ends(plan, "i")).isEqualTo("dynamo.D charge-light.b");
        assertThat(Lists.ends(plan, "i-2")).isEqualTo("charge-light.a ignition-switch.61");
        assertThat(plan.wires())
                .anySatisfy(wire -> assertThat(wire.from() + " " + wire.to()).isEqualTo("battery.plus body.31"));
    }

    @Test
    void theBoatHasTwoBatteriesAndReturnsOfItsOwn() {
        ListReading reading = Lists.named("boat.csv");
        Plan plan = Lists.plan(reading);
        assertThat(plan.name()).isEqualTo("Day boat with two batteries");
        assertThat(plan.listParts(Battery.class))
                .extracting(Battery::capacityAh)
                .containsExactly(75.0, 60.0);
        assertThat(Lists.ends(plan, "13")).isEqualTo("split-diode-2.cathode service-battery.plus");
        assertThat(Lists.ends(plan, "22")).isEqualTo("bilge-pump.32 bus-minus.1");
        assertThat(plan.findPart("nav-lights").orElseThrow()).isInstanceOfSatisfying(FilamentLamp.class, lights -> {
            assertThat(lights.ratedW()).isEqualTo(30);
            assertThat(lights.meantLiveWhen().get(0).switches()).containsOnlyKeys("nav-switch");
        });
    }

    @ParameterizedTest
    @CsvSource({"1200 rpm", "22 A 1200 rpm", "1200 rev/min"})
    void theSpeedOfAMachineIsTakenFromItsRow(String value) {
        Plan plan = Lists.plan(Lists.of(
                "part,value", "dynamo," + value, "", "from,to", "dynamo D,control box D", "control box A,battery +"));
        assertThat(plan.listParts(Dynamo.class))
                .singleElement()
                .extracting(Dynamo::speedRpm)
                .isEqualTo(1200.0);
    }
}
