package loomwright.list;

import static org.assertj.core.api.Assertions.assertThat;

import loomwright.catalogue.PartType;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Ends of wires in an owner's words: which part, what it is, which terminal. */
class L03_NamesTest {
    @ParameterizedTest
    @CsvSource({
        "battery +, battery, battery, +",
        "Battery plus, battery, battery, plus",
        "engine battery -, engine battery, battery, -",
        "key 15, key, key, 15",
        "ignition switch ign, ignition switch, key, ignition",
        "starter solenoid battery post, starter solenoid, starter-solenoid, battery post",
        "starter solenoid motor post, starter solenoid, starter-solenoid, motor post",
        "starter motor, starter motor, starter, ''",
        "starter button, starter button, starter-button, ''",
        "stop lamp switch, stop lamp switch, stop-switch, ''",
        "stop lamps, stop lamps, stop-lamp, ''",
        "fuse 2 out, fuse 2, fuse, out",
        "fuse S in, fuse s, fuse, in",
        "Fuse box out 1, fuse box, fuse-box, out 1",
        "coil -, coil, coil, -",
        "Coil.15, coil, coil, 15",
        "headlamp L, headlamp l, headlamp, ''",
        "Headlamp left dip, headlamp left dip, headlamp-dip, ''",
        "charge warning lamp, charge warning lamp, charge-lamp, ''",
        "Main beam lamp, main beam lamp, warning-lamp, ''",
        "light switch side, light switch, lighting-switch, side",
        "Lighting switch 58, lighting switch, lighting-switch, 58",
        "Dip switch 56a, dip switch, dip-switch, 56a",
        "horn button, horn button, horn-button, ''",
        "relay 2 87a, relay 2, relay, 87a",
        "control box B, control box, control-box, b",
        "dynamo F, dynamo, dynamo, f",
        "tank sender, tank sender, fuel-sender, ''",
        "bus -, bus -, joint, ''",
        "switch panel feed, switch panel feed, joint, ''",
        "engine block, engine block, engine, ''",
        "nav lights -, nav lights, navigation-lamp, -",
        "baterry +, battery, battery, +",
        "ignitoin switch 30, ignition switch, key, 30",
        "headlight 6V 30W, headlight, headlamp, ''",
        "split diode out 2, split diode, split-diode, out 2",
        "Batt +, battery, battery, +",
        "ammeter -, ammeter, ammeter, -",
        "fuse caravan out, fuse caravan, fuse, out",
        "fuse caravan 20A, fuse caravan, fuse, ''",
        "15A fuse, fuse 15a, fuse, ''",
        "fuse 10 A out, fuse 10a, fuse, out",
        "fuse other end, fuse, fuse, other end",
        "starter solenoid batt, starter solenoid, starter-solenoid, battery",
        "plough lamp, plough lamp, lamp, ''",
        "glow plug 3 a, glow plug 3, glow-plug, a",
        "glow plug 3 b, glow plug 3, glow-plug, b",
        "glow plug 12 A, glow plug, glow-plug, ''",
        "glow plug 12 a, glow plug, glow-plug, ''",
        "radio B, radio, radio, B",
        "ammeter A, ammeter, ammeter, A",
        "fuse 7 a, fuse 7, fuse, a",
        "fuse 7 A, fuse 7a, fuse, ''",
        "fuse 15 a, fuse 15a, fuse, ''",
        "horn push earth, horn push, horn-button, earth",
        "engine bay earth, engine bay earth, body, ''"
    })
    void anEnd(String text, String key, String type, String terminal) {
        Names.Name name = new Names().read(text);
        assertThat(name.key()).isEqualTo(key);
        assertThat(name.type()).isNotNull().extracting(PartType::name).isEqualTo(type);
        assertThat(name.terminal()).isEqualTo(terminal);
    }
}
