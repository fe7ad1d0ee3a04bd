package loomwright.list;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.List;
import loomwright.answer.InputError;
import loomwright.answer.RejectedInput;
import loomwright.circuit.Alternator;
import loomwright.circuit.FilamentLamp;
import loomwright.circuit.Motor;
import loomwright.circuit.Plan;
import loomwright.circuit.Solenoid;
import loomwright.circuit.Switch;
import loomwright.list.ListAssumption.Code;
import loomwright.message.MessageCode;
import loomwright.message.MessageFinder;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** What people who had read the page about lists only wrote at their first try. */
class L10_FirstTriesTest {
    @ParameterizedTest
    @CsvSource({
        "positive, live, minus",
        "positive, earth, plus",
        "positive, hot, minus",
        "negative, live, plus",
        "negative, ground, minus",
        "positive, +, plus",
        "positive, negative post, minus"
    })
    void thePolesOfABatteryMayBeNamedByTheEarth(String earth, String words, String pole) {
        ListReading reading =
                Lists.of(earth + " earth\n\nfrom,to,size,length\nbattery " + words + ",horn,2.5 mm2,1 m\n");
        assertThat(Lists.ends(Lists.plan(reading), "W1")).isEqualTo("battery." + pole + " horn.a");
    }

    @Test
    void theEarthOfABatteryIsAPlaceWhereTheBatteryItselfIsWiredToIt() {
        Plan plan = Lists.plan(Lists.of("from,to\nbattery -,battery earth\nbattery +,horn\n"));
        assertThat(Lists.ends(plan, "W1")).isEqualTo("battery.minus earth.31");
    }

    /** The wire from a starter to the coil is a bypass without a relay; on the earthed terminal it would be a short circuit. */
    @Test
    void aWireThatLeadsOnFromAnEarthedLoadIsOnItsFedTerminal() {
        Plan plan = Lists.plan(Lists.of("""
                from,to,size,length
                battery +,starter solenoid,35 mm2,80 cm
                starter solenoid,starter motor,35 mm2,40 cm
                starter motor,coil +,2.5 mm2,1 m
                starter motor,earth,35 mm2,30 cm
                coil -,points,1.5 mm2,50 cm
                """));
        assertThat(Lists.ends(plan, "W2")).isEqualTo("starter-solenoid.45 starter-motor.33");
        assertThat(Lists.ends(plan, "W3")).isEqualTo("starter-motor.33 coil.15");
        assertThat(Lists.ends(plan, "W4")).isEqualTo("starter-motor.32 earth.31");
    }

    @Test
    void aStarterWithTerminalsOfASolenoidHasOneOnIt() {
        ListReading reading = Lists.of("""
                from,to,size,length
                battery +,starter 30,25 mm2,80 cm
                starter 30,alternator B+,6 mm2,1 m
                starter 30,key 30,4 mm2,1 m
                key 50,starter 50,2.5 mm2,1 m
                starter 16,coil +,1.5 mm2,1 m
                coil -,points,1.5 mm2,50 cm
                """);
        Plan plan = Lists.plan(reading);
        assertThat(plan.listParts(Motor.class))
                .singleElement()
                .extracting(Motor::id)
                .isEqualTo("starter");
        assertThat(plan.listParts(Solenoid.class))
                .singleElement()
                .extracting(Solenoid::id)
                .isEqualTo("starter-solenoid");
        assertThat(Lists.ends(plan, "W1")).isEqualTo("battery.plus starter-solenoid.30");
        assertThat(Lists.ends(plan, "W4")).isEqualTo("key.50 starter-solenoid.50");
        assertThat(Lists.ends(plan, "W5")).isEqualTo("starter-solenoid.15a coil.15");
        assertThat(Lists.ends(plan, "starter-stud")).isEqualTo("starter-solenoid.45 starter.33");
        assertThat(plan.wires()).anyMatch(wire -> wire.from().toString().equals("starter.32"));
        assertThat(Lists.assumptions(reading)).contains(Code.SOLENOID_ON_STARTER);
    }

    @Test
    void theSidesOfASolenoidAreItsTerminals() {
        Plan plan = Lists.plan(Lists.of(
                "from,to\nbattery +,solenoid battery side\nsolenoid motor side,starter\nkey start,solenoid small\n"));
        assertThat(Lists.ends(plan, "W1")).isEqualTo("battery.plus solenoid.30");
        assertThat(Lists.ends(plan, "W2")).isEqualTo("solenoid.45 starter.33");
    }

    @ParameterizedTest
    @CsvSource({"headlamps main, 90", "headlamp main, 45", "main beams, 90"})
    void aPluralInTheMiddleOfANameIsTwoBulbs(String name, double watts) {
        Plan plan = Lists.plan(Lists.of("from,to\nbattery +," + name + "\n"));
        assertThat(plan.listParts(FilamentLamp.class))
                .singleElement()
                .extracting(FilamentLamp::ratedW)
                .isEqualTo(watts);
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = ';',
            value = {"1 1/2 ft; 0.4572", "1½ ft; 0.4572", "about 18 in; 0.4572", "3/4 m; 0.75", "4 ft 6; 1.3716"})
    void lengthsAsTheyAreSaid(String written, double lengthM) {
        assertThat(Quantities.lengthM(written, "").orElseThrow()).isEqualTo(lengthM);
    }

    @Test
    void aColumnOfLengthsIsInOneUnitAndAskedForOnce() {
        ListReading reading = Lists.of("from,to,size,length\nbattery +,fuse in,2.5,10\nfuse out,horn,2.5,160\n");
        assertThat(Lists.plan(reading).findWire("W1").orElseThrow().conductor().lengthM())
                .isEqualTo(0.1);
        assertThat(Lists.plan(reading).findWire("W2").orElseThrow().conductor().lengthM())
                .isEqualTo(1.6);
        assertThat(Lists.questions(reading)).containsOnlyOnce(Question.Code.LENGTH_UNIT);
        assertThat(Lists.assumptions(reading)).containsOnlyOnce(Code.SIZE_UNIT);
    }

    @Test
    void sizesWithoutAUnitThatAreGaugesAreAskedFor() {
        ListReading reading = Lists.of("from,to,size,length\nbattery +,fuse in,14,1 m\nfuse out,horn,16,1 m\n");
        assertThat(Lists.plan(reading).findWire("W2").orElseThrow().conductor().size())
                .isEqualTo("16 AWG");
        assertThat(Lists.questions(reading)).contains(Question.Code.SIZE_UNIT);
    }

    @Test
    void aRowOfTheTableOfPartsThatFitsNoWireIsAskedAbout() {
        ListReading reading = Lists.of(
                "from,to\nbattery +,fuse 35 A A3\nfuse 35 A A3,horn\n\npart,kind,value\nfuse 35 A,fuse,17.5 A\n");
        assertThat(reading.questions()).anySatisfy(question -> {
            assertThat(question.message().code()).isEqualTo(Question.Code.PART_WITHOUT_WIRE);
            assertThat(question.choices()).hasSize(2);
        });
    }

    @Test
    void anEngineOnItsOwnIsAskedForItsStrap() {
        String wires = "from,to\nbattery +,horn\nbattery -,body\nalternator -,engine\nalternator B+,battery +\n";
        ListReading asked = Lists.of(wires);
        assertThat(Lists.questions(asked)).contains(Question.Code.ENGINE_STRAP);
        assertThat(Lists.plan(asked).wires())
                .anyMatch(wire -> wire.from().toString().equals("engine.1"));
        ListReading stated = Lists.of(wires + "engine,body\n");
        assertThat(Lists.questions(stated)).doesNotContain(Question.Code.ENGINE_STRAP);
        ListReading none = Lists.of(wires + "\nsetting,value\nengine strap,none\n");
        assertThat(Lists.questions(none)).doesNotContain(Question.Code.ENGINE_STRAP);
        assertThat(Lists.plan(none).wires())
                .noneMatch(wire -> wire.from().toString().equals("engine.1"));
    }

    /** A setting that decides nothing is told, with the reason. */
    @Test
    void aSettingOfTheStrapThatIsNotUsedIsTold() {
        String wires = "from,to\nbattery +,horn\nbattery -,body\nalternator B+,battery +\n";
        String none = "\nsetting,value\nengine strap,none\n";
        assertThat(codes(Lists.of(wires + "alternator -,engine\nengine,body\n" + none)))
                .contains(Code.STRAP_CONTRADICTED);
        assertThat(codes(Lists.of(wires + "alternator -,body\n" + none))).contains(Code.STRAP_WITHOUT_ENGINE);
        assertThat(codes(Lists.of(wires + "alternator -,engine\n" + none)))
                .doesNotContain(Code.STRAP_CONTRADICTED, Code.STRAP_WITHOUT_ENGINE);
    }

    /** A car with an alternator has an engine; that its strap is sound is said once, and can be denied. */
    @Test
    void anEngineThatNoRowNamesIsTakenToHaveASoundStrap() {
        String wires = "from,to\nbattery +,horn\nbattery -,body\nalternator B+,battery +\nbattery +,starter\n";
        ListReading taken = Lists.of(wires);
        assertThat(codes(taken)).containsOnlyOnce(Code.ENGINE_ON_BODY);
        assertThat(Lists.questions(taken)).doesNotContain(Question.Code.ENGINE_STRAP);
        assertThat(Lists.plan(taken).wires())
                .noneMatch(wire -> wire.to().toString().startsWith("engine"));
        ListReading none = Lists.of(wires + "\nsetting,value\nengine strap,none\n");
        assertThat(codes(none)).doesNotContain(Code.ENGINE_ON_BODY, Code.STRAP_WITHOUT_ENGINE);
        assertThat(Lists.plan(none).wires().stream()
                        .filter(wire -> wire.to().toString().equals("engine.1")))
                .hasSize(2);
        assertThat(codes(Lists.of("from,to\nbattery +,horn\nbattery -,body\n"))).doesNotContain(Code.ENGINE_ON_BODY);
    }

    private static List<MessageCode> codes(ListReading reading) {
        return reading.assumptions().stream()
                .map(assumption -> assumption.message().code())
                .toList();
    }

    /** Where a sense wire ends, the regulator measures; what it does without it is assumed and said. */
    @Test
    void aWireToTheSenseTerminalSaysThatThereIsOne() {
        String wires = "from,to\nbattery -,body\n%s B+,battery +\n%s sense,battery +\n";
        ListReading plain = Lists.of(wires.formatted("alternator", "alternator"));
        assertThat(codes(plain)).contains(Code.SENSE_LOST);
        assertThat(Lists.plan(plain).listParts(Alternator.class).get(0).senseLost())
                .isEqualTo(Alternator.SenseLost.FULL_OUTPUT);
        ListReading fallsBack = Lists.of(wires.formatted("fall-back alternator", "fall-back alternator"));
        assertThat(codes(fallsBack)).doesNotContain(Code.SENSE_LOST);
        assertThat(Lists.plan(fallsBack).listParts(Alternator.class).get(0).senseLost())
                .isEqualTo(Alternator.SenseLost.FALLS_BACK);
    }

    @Test
    void headingsThatAreNotKnownAreShown() {
        assertThatThrownBy(() -> Lists.of("Von;Nach;Laenge\nA;B;2\n"))
                .isInstanceOfSatisfying(RejectedInput.class, rejected -> {
                    InputError fault = rejected.faults().get(0);
                    assertThat(fault.code()).isEqualTo(InputError.Code.MISSING);
                    assertThat(MessageFinder.word(fault.accepted(), "found")).contains("Von, Nach");
                });
        assertThat(Lists.plan(Lists.of("Start;End\nbattery +;horn\n")).wires()).isNotEmpty();
    }

    /** "and" may belong to the name of a switch or fuse; a plus sign never does. */
    @ParameterizedTest
    @CsvSource({
        "coil SW + fuse 2 in, W1 W1-2",
        "fuse 2 in + coil SW, W1 W1-2",
        "heater switch + flasher unit + stop light switch, W1 W1-2 W1-3",
        "side and tail light switch, W1"
    })
    void aPlusSignJoinsPartsAtOneEnd(String end, String wires) {
        Plan plan = Lists.plan(
                Lists.of("from,to,size,length\nkey 15,\"" + end + "\",1.5 mm2,1 m\nbattery +,key 30,4 mm2,1 m\n"));
        assertThat(plan.wires().stream()
                        .filter(wire -> wire.from().part().equals("key"))
                        .filter(wire -> wire.from().terminal().equals("15"))
                        .map(wire -> wire.id()))
                .containsExactly(wires.split(" "));
    }

    /** Block and gearbox are bolted together: a strap at either earths both. */
    @Test
    void anEngineHasSeveralNames() {
        ListReading reading = Lists.of("""
                from,to
                battery -,engine block
                gearbox,body
                battery +,horn
                horn,engine

                point,against,reading,condition
                gearbox,body,0.1 V,key off
                """);
        Plan plan = Lists.plan(reading);
        assertThat(Lists.ends(plan, "W1")).isEqualTo("battery.minus engine.1");
        assertThat(Lists.ends(plan, "W2")).isEqualTo("engine.1 body.31");
        assertThat(Lists.ends(plan, "W4")).isEqualTo("horn.b engine.1");
        assertThat(reading.readings().readings().get(0)).containsEntry("red", "engine.1");
        assertThat(Lists.questions(reading)).doesNotContain(Question.Code.ENGINE_STRAP);
    }

    @Test
    void aLeadBetweenEngineAndGearboxJoinsTwoPlaces() {
        Plan plan = Lists.plan(Lists.of("from,to\nbattery -,body\nengine,gearbox\ngearbox,body\n"));
        assertThat(Lists.ends(plan, "W2")).isEqualTo("engine.1 gearbox.1");
    }

    /** Numbered plugs with the letters of their ends are no plugs of so many amperes. */
    @Test
    void aLetterAfterANumberIsATerminal() {
        Plan plan = Lists.plan(Lists.of("""
                from,to
                battery +,glow plug 3 a
                glow plug 3 b,horn button
                glow plug 3 a,glow plug 4 A
                glow plug 4 B,glow plug 5
                battery -,body
                """));
        assertThat(Lists.ends(plan, "W1")).isEqualTo("battery.plus glow-plug-3.a");
        assertThat(Lists.ends(plan, "W2")).isEqualTo("glow-plug-3.b horn-button.in");
    }

    @ParameterizedTest
    @CsvSource({
        "'radio B,fuse;radio,body', radio.a fuse.a",
        "'radio B,body;radio,fuse', radio.b body.31",
        "'radio B,fuse;radio A,fuse 2', radio.b fuse.a",
        "'ammeter B,battery +', ammeter.a battery.plus",
        "'ammeter A,battery +', ammeter.b battery.plus",
        "'ammeter b,battery +', ammeter.b battery.plus"
    })
    void aBMayBeAFeedOrASecondEnd(String wires, String ends) {
        Plan plan = Lists.plan(Lists.of("from,to\n" + wires.replace(";", "\n") + "\nbattery -,body\n"));
        assertThat(Lists.ends(plan, "W1")).isEqualTo(ends);
    }

    @Test
    void theEarthOfAHornPushIsItsOwnContact() {
        Plan plan = Lists.plan(Lists.of("""
                from,to
                battery +,horn
                horn,horn push
                horn push earth,body
                battery -,body
                """));
        assertThat(Lists.ends(plan, "W3")).isEqualTo("horn-push.31 body.31");
        assertThat(plan.wires()).hasSize(4);
        assertThat(((Switch) plan.findPart("horn-push").orElseThrow())
                        .positions()
                        .get(1)
                        .joins())
                .containsExactly(List.of("in", "31"));
    }

    /** A lamp in the switch has an earth as well: that is no short circuit. */
    @Test
    void theEarthOfASwitchThatHasBothContactsIsApart() {
        Plan plan = Lists.plan(Lists.of("""
                from,to
                battery +,door switch in
                door switch out,horn
                door switch earth,body
                battery -,body
                """));
        assertThat(((Switch) plan.findPart("door-switch").orElseThrow())
                        .positions()
                        .get(1)
                        .joins())
                .containsExactly(List.of("in", "out"));
    }

    @Test
    void aPropertyOfAPartIsFoundInItsOwnColumn() {
        ListReading reading = Lists.of("""
                from,to
                battery +,lights in
                lights out,horn

                part,kind,position
                lights,switch,half
                """);
        assertThat(reading.places()).containsEntry("/parts/0/position", new CellRef("", 6, "position"));
    }
}
