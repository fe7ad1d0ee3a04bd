package loomwright.list;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.Objects;
import loomwright.circuit.Alternator;
import loomwright.circuit.Coil;
import loomwright.circuit.FilamentLamp;
import loomwright.circuit.FixedResistor;
import loomwright.circuit.Fuse;
import loomwright.circuit.Load;
import loomwright.circuit.Motor;
import loomwright.circuit.Plan;
import loomwright.circuit.Relay;
import loomwright.circuit.Switch;
import loomwright.circuit.Wire;
import loomwright.conductor.ConductorSize;
import loomwright.list.ListAssumption.Code;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** What is filled in is said, what cannot be guessed is asked; each names its row and column. */
class L07_AssumptionsAndQuestionsTest {
    @Test
    void aRelays87IsAskedAboutAndNeverGuessed() {
        ListReading reading = Lists.of(
                "from,to,size,length",
                "battery +,relay 87,1.5 mm2,1 m",
                "relay 87a,horn,1.5 mm2,1 m",
                "key 15,relay 86,1 mm2,1 m",
                "relay 85,earth,1 mm2,1 m",
                "battery +,key 30,4 mm2,1 m");
        Question question = reading.questions().stream()
                .filter(q -> q.message().code() == Question.Code.TERMINAL_WITH_TWO_MEANINGS)
                .findFirst()
                .orElseThrow();
        assertThat(question.at()).isEqualTo(new CellRef("", 2, "to"));
        assertThat(question.choices()).hasSize(2);
        assertThat(question.about()).contains("relay", "W1");
    }

    /** A table with ids, labels and values is an owner's, however exact its kinds are. */
    @Test
    void valuesAreReadBesideLabels() {
        ListReading reading = Lists.of(
                "part,label,kind,value",
                "fuse-1,Fuse 1,fuse,10 A",
                "L1,Left headlamp,lamp,12 V 45 W",
                "",
                "from,to,size,length",
                "battery +,fuse-1 in,2.5 mm2,1 m",
                "Fuse 1 out,L1.a,2.5 mm2,1 m",
                "left headlamp -,body,2.5 mm2,1 m");
        Plan plan = Lists.plan(reading);
        assertThat(plan.findPart("fuse-1").orElseThrow())
                .isInstanceOfSatisfying(
                        Fuse.class, fuse -> assertThat(fuse.ratingA()).isEqualTo(10));
        assertThat(plan.findPart("L1").orElseThrow())
                .isInstanceOfSatisfying(
                        FilamentLamp.class, lamp -> assertThat(lamp.ratedW()).isEqualTo(45));
        assertThat(plan.listParts(FilamentLamp.class)).hasSize(1);
        assertThat(plan.listParts(Fuse.class)).hasSize(1);
        assertThat(Lists.ends(plan, "W2")).isEqualTo("fuse-1.b L1.a");
        assertThat(Lists.questions(reading)).isEmpty();
    }

    /** Trade tables of thin-wall cable, from memory: 105 C (ISO 6722, class B); 28 strands of 0.30 mm are 2 mm2. */
    @ParameterizedTest
    @CsvSource({"28/0.30 thin wall, ''", "2 mm2 thinwall, ''", "2 mm2, thin-wall"})
    void thinWallCableStandsMoreHeat(String size, String insulation) {
        ListReading reading = Lists.of(
                "from,to,size,length,insulation",
                "battery +,fuse in," + size + ",1 m," + insulation,
                "fuse out,horn,28/0.30,1 m,");
        Plan plan = Lists.plan(reading);
        Wire thin = plan.findWire("W1").orElseThrow();
        assertThat(thin.laid().insulationTemperatureC()).isEqualTo(105);
        assertThat(ConductorSize.parse(Objects.requireNonNull(thin.conductor().size()))
                        .areaMm2())
                .isBetween(1.97, 2.01);
        assertThat(plan.findWire("W2").orElseThrow().laid().insulationTemperatureC())
                .isNull();
        assertThat(reading.assumptions()).extracting(a -> a.message().code()).contains(Code.THIN_WALL);
    }

    /** A starter is series-wound, an electric cooling fan has magnets, a glow plug is colder than it is hot. */
    @Test
    void whatATypeIsKnownToBeIsFilledIn() {
        Plan plan = Lists.plan(Lists.of(
                "from,to,size,length",
                "battery +,starter,35 mm2,1 m",
                "battery +,cooling fan,2.5 mm2,1 m",
                "battery +,heater fan,2.5 mm2,1 m",
                "battery +,glow plug,10 mm2,1 m",
                "battery +,stepped resistor,2.5 mm2,1 m",
                "stepped resistor,horn,2.5 mm2,1 m"));
        assertThat(plan.listParts(Motor.class))
                .extracting(Motor::excitation)
                .containsExactly(Motor.Excitation.SERIES, Motor.Excitation.PERMANENT_MAGNET, Motor.Excitation.SHUNT);
        Load plug = (Load) plan.findPart("glow-plug").orElseThrow();
        assertThat(plug.switchOnOhm())
                .isLessThan(Objects.requireNonNull(plug.draw().resistanceOhm()));
        assertThat(plan.listParts(FixedResistor.class))
                .singleElement()
                .satisfies(step -> assertThat(step.resistanceOhm()).isBetween(1.0, 2.0));
    }

    @Test
    void whatIsTheSameOfSeveralWiresIsSaidOnce() {
        ListReading reading =
                Lists.of("from,to,length", "battery +,horn,1 m", "battery +,key 30,2 m", "horn,horn button,1 m");
        List<ListAssumption> grouped = AssumptionGroups.of(reading.assumptions());
        assertThat(grouped.stream().filter(each -> each.message().code() == Code.SIZE))
                .singleElement()
                .satisfies(each -> assertThat(each.about()).containsExactly("W1", "W2", "W3"));
        assertThat(reading.assumptions().stream().filter(each -> each.message().code() == Code.SIZE))
                .hasSize(3);
    }

    @ParameterizedTest
    @CsvSource({"horn and lights fuse", "regulator and cut-out", "battery +", "coil + terminal"})
    void oneNameIsNotTakenForTwo(String end) {
        assertThat(new Names().split(end)).containsExactly(end);
    }

    @Test
    void withAWireAt30TheMarkIsPlain() {
        ListReading reading = Lists.of(
                "from,to,size,length",
                "battery +,relay 30,1.5 mm2,1 m",
                "relay 87,horn,1.5 mm2,1 m",
                "key 15,relay 86,1 mm2,1 m",
                "relay 85,earth,1 mm2,1 m",
                "battery +,key 30,4 mm2,1 m");
        assertThat(Lists.questions(reading)).doesNotContain(Question.Code.TERMINAL_WITH_TWO_MEANINGS);
        assertThat(Lists.plan(reading).listParts(Relay.class)).hasSize(1);
    }

    @Test
    void theAnswerToTheQuestionIsUnderstood() {
        ListReading reading = Lists.of(
                "from,to,size,length",
                "battery +,relay 87 in,1.5 mm2,1 m",
                "relay 87a,horn,1.5 mm2,1 m",
                "key 15,relay 86,1 mm2,1 m",
                "relay 85,earth,1 mm2,1 m",
                "battery +,key 30,4 mm2,1 m");
        assertThat(Lists.questions(reading)).isEmpty();
        assertThat(Lists.ends(Lists.plan(reading), "W1")).isEqualTo("battery.plus relay.30");
    }

    @Test
    void everyGapOfAWireIsFilledAndSaid() {
        ListReading reading = Lists.of("from,to", "battery +,horn");
        assertThat(Lists.assumptions(reading))
                .contains(
                        Code.VOLTAGE,
                        Code.EARTH_POLARITY,
                        Code.SIZE,
                        Code.LENGTH,
                        Code.USUAL_VALUE,
                        Code.CASE_EARTH,
                        Code.BATTERY_EARTH);
        assertThat(reading.questions()).isEmpty();
    }

    @Test
    void whatTheListSaysIsNotAssumed() {
        ListReading reading = Lists.of(
                "setting,value",
                "voltage,12 V",
                "earth,negative",
                "",
                "part,kind,value,works when",
                "horn,load,4 A,always",
                "",
                "from,to,size,length",
                "battery +,horn +,1.5 mm2,2 m",
                "horn -,body,1.5 mm2,1 m",
                "battery -,body,16 mm2,0.5 m");
        assertThat(reading.assumptions()).isEmpty();
        assertThat(reading.questions()).isEmpty();
    }

    @Test
    void withPositiveEarthTheMarksOfACoilChangePlaces() {
        Plan plan = Lists.plan(Lists.of(
                "12 V; positive earth;;",
                "from;to;size;length",
                "battery -;key 30;2.5 mm2;1 m",
                "key 15;coil -;1.5 mm2;1 m",
                "coil +;points;1.5 mm2;1 m"));
        assertThat(Lists.ends(plan, "W2")).isEqualTo("key.15 coil.15");
        assertThat(Lists.ends(plan, "W3")).isEqualTo("coil.1 points.1");
    }

    @Test
    void aCoilBesideABallastIsTakenForOneThatNeedsIt() {
        Plan plan = Lists.plan(Lists.of(
                "from,to,size,length",
                "battery +,key 30,2.5 mm2,1 m",
                "key 15,ballast in,1.5 mm2,1 m",
                "ballast out,coil +,1.5 mm2,1 m",
                "coil -,points,1.5 mm2,1 m"));
        assertThat(plan.listParts(Coil.class).get(0).use()).isEqualTo(Coil.Use.WITH_BALLAST);
        assertThat(plan.listParts(Coil.class).get(0).primaryResistanceOhm()).isBetween(1.3, 1.5);
    }

    @Test
    void whatNobodyKnowsIsAskedWithChoicesAndSolvedMeanwhile() {
        ListReading reading = Lists.of("from,to,size,length", "battery +,gizmo,1.5 mm2,1 m", "gizmo,lamp,fat,1 m");
        assertThat(Lists.questions(reading))
                .contains(Question.Code.WHAT_PART, Question.Code.WIRE_SIZE, Question.Code.WHAT_VALUE);
        assertThat(Lists.plan(reading).listParts(FilamentLamp.class)).hasSize(1);
        assertThat(reading.questions())
                .allSatisfy(question -> assertThat(question.choices()).isNotEmpty());
    }

    @Test
    void aMissingEndIsAskedForWithItsRow() {
        ListReading reading = Lists.of("from,to", "battery +,horn", "horn,");
        assertThat(reading.questions()).anySatisfy(question -> {
            assertThat(question.message().code()).isEqualTo(Question.Code.MISSING_END);
            assertThat(question.at()).isEqualTo(new CellRef("", 3, "to"));
        });
    }

    @Test
    void aCellMergedWithTheOneAboveIsReadAsThatOne() {
        ListReading reading = Lists.of("from,to", "battery +,horn", ",radio");
        assertThat(Lists.assumptions(reading)).contains(Code.AS_ROW_ABOVE);
        assertThat(Lists.ends(Lists.plan(reading), "W2")).isEqualTo("battery.plus radio.a");
    }

    @Test
    void twoListsSentTogetherAreJoinedAtPartsOfTheSameName() {
        Plan plan = Lists.plan(Lists.of(
                "from,to,size,length",
                "battery +,fuse 1 in,2.5 mm2,1 m",
                "fuse 1 out,horn,1.5 mm2,1 m",
                "",
                "from,to,size,length",
                "Fuse 1 out,radio,1.5 mm2,1 m"));
        assertThat(Lists.ends(plan, "W3")).isEqualTo("fuse-1.b radio.a");
    }

    @Test
    void aHeadlampsTwoFilamentsAreTwoLamps() {
        Plan plan = Lists.plan(Lists.of(
                "from,to,size,length",
                "battery +,dip switch 56,2.5 mm2,1 m",
                "dip switch 56a,headlamp left main 12V 60/55W,1.5 mm2,2 m",
                "dip switch 56b,headlamp left dip 12V 60/55W,1.5 mm2,2 m"));
        assertThat(plan.listParts(FilamentLamp.class))
                .extracting(FilamentLamp::ratedW)
                .containsExactly(60.0, 55.0);
    }

    @ParameterizedTest
    @CsvSource({
        "alternator B+, alternator B+, true",
        "alternator B+, charge lamp, true",
        "alternator B+, alternator D+, false",
    })
    void onlyAnAlternatorWithAWireAtDPlusNeedsItsLamp(String output, String second, boolean selfExciting) {
        ListReading reading = Lists.of(
                "from,to,size,length",
                "battery +,key 30,2.5 mm2,1 m",
                "battery +," + output + ",6 mm2,1 m",
                "key 15," + second + ",1 mm2,1 m");
        Plan plan = Lists.plan(reading);
        assertThat(plan.listParts(Alternator.class))
                .extracting(Alternator::selfExciting)
                .containsExactly(selfExciting);
        assertThat(Lists.assumptions(reading).contains(Code.SELF_EXCITING)).isEqualTo(selfExciting);
    }

    /**
     * Three plugs of 1.7 V and 35 A in series (1.7 / 35 = 0.0486 ohm) behind 0.1 ohm and a tell-tale of 0.03 ohm: hot they take about
     * 12.6 / (3 x 0.0486 + 0.13) = 45 A and have 2.2 V each. Cold they have half their own ohms, not half of a 12 V plug's.
     */
    @Test
    void glowPlugsInSeriesAreOfTheirOwnVolts() {
        Plan plan = Lists.plan(Lists.of(
                "part,value,kind",
                "plug A,1.7 V 35 A,glow plug",
                "plug B,1.7 V 35 A,glow plug",
                "plug C,1.7 V 35 A,glow plug",
                "glow tell-tale,0.03 ohm,",
                "",
                "from,to,size,length",
                "battery +,glow tell-tale,10 mm2,1 m",
                "glow tell-tale,plug A in,10 mm2,1 m",
                "plug A out,plug B in,10 mm2,0.1 m",
                "plug B out,plug C in,10 mm2,0.1 m",
                "plug C out,engine,10 mm2,0.1 m"));
        assertThat(plan.listParts(Load.class)).hasSize(3).allSatisfy(plug -> {
            assertThat(plug.draw().resistanceOhm()).isCloseTo(0.0486, within(1e-4));
            assertThat(plug.switchOnOhm()).isCloseTo(0.0243, within(1e-4));
            assertThat(plug.operateV()).isCloseTo(1.02, within(1e-9));
        });
        assertThat(plan.listParts(FixedResistor.class))
                .extracting(FixedResistor::resistanceOhm)
                .containsExactly(0.03);
        assertThat(plan.listParts(FilamentLamp.class)).isEmpty();
    }

    private static ListReading switchStanding(String position) {
        return Lists.of(
                "part,kind,value,position",
                "light switch,switch,off/on," + position,
                "side lamp,lamp,5 W,",
                "",
                "from,to,size,length",
                "battery +,light switch in,2.5 mm2,1 m",
                "light switch out,side lamp,1.5 mm2,2 m");
    }

    @ParameterizedTest
    @CsvSource({"on, on", "ON, on", "off, off"})
    void aFreeSwitchStandsWhereTheListSays(String written, String position) {
        Plan plan = Lists.plan(switchStanding(written));
        assertThat(plan.listParts(Switch.class)).extracting(Switch::position).containsExactly(position);
        assertThat(Lists.plan(switchStanding("")).listParts(Switch.class).get(0).position())
                .isNull();
    }

    /** The plan is not taken with a position that the switch has not; the problem names the two that it has. */
    @Test
    void aPositionThatASwitchHasNotIsHandedOnToBeRefused() {
        ListReading reading = switchStanding("middle");
        assertThatThrownBy(() -> Lists.plan(reading)).hasStackTraceContaining("RejectedInput");
    }
}
