"""The bot against a running service (LOOMWRIGHT, else http://127.0.0.1:8080): python3 -m unittest test_bot."""

import os
import pathlib
import subprocess
import sys
import tempfile
import unittest

BOT = pathlib.Path(__file__).with_name("bot.py")
# The last line of a text that was cut: of what how many lines are missing.
LEFT_OUT = r"\n\*[^\n]*[1-9]\d* of \d+ lines[^\n]*\*\n*$"


def reply(line, **settings):
    run = subprocess.run([sys.executable, str(BOT)], input=line.encode(), capture_output=True, timeout=120,
                         env={**os.environ, **settings})
    assert run.returncode == 0 and not run.stderr, run.stderr.decode()
    return run.stdout.decode()


class Figures(unittest.TestCase):
    def test_units_tell_the_figures_apart_in_any_order(self):
        # Out and back, 14 AWG (2.525 ohm per 1000 ft at 20 C, ASTM B258), 8 A: 20 ft give 0.4041 V
        # and 6 m 0.3977 V of solid wire at 20 C. Stranded (1.08) and at 34.38 C (0.00393 per K) it is 1.1410 times as much.
        self.assertIn("**0.4538 V**", reply("drop 14 AWG 3 m 8 A"))
        self.assertEqual(reply("drop 14 AWG 3 m 8 A"), reply("Drop: 8 amps over 3 metres of AWG 14?"))
        self.assertIn("**0.4611 V**", reply("drop 14 awg 10 ft 8A"))

    def test_a_decimal_comma_is_understood(self):
        self.assertEqual(reply("drop 2,5 mm2 3,0 m 8 A"), reply("drop 2.5 mm2 3.0 m 8 A"))

    def test_a_ballast_is_chosen_for_a_coil(self):
        # R = U / I - rest = 12.6 / (7 / 3) - 0.05 - 3 - 0.03, with the values that the answer says are assumed.
        self.assertIn("A ballast of **2.32 ohm** leaves the coil 7 V.", reply("ballast 3 ohm coil at 12 V"))

    def test_a_ballast_is_judged_with_a_coil(self):
        self.assertIn("**6.342 V**", reply("ballast 1.4 ohm with 1.5 ohm coil"))
        self.assertIn("**6.342 V**", reply("ballast 0.7 ohm 0.7 ohm coil of 1.5 ohm"))

    def test_other_calculations(self):
        self.assertIn("**15 A**", reply("fuse 8 A 14 AWG"))
        self.assertIn("usual | 14 AWG", reply("size 8 A 3 m lighting"))
        self.assertIn("kV** to spare", reply("spark 3000 rpm 0.65 mm"))
        self.assertIn("**5.105 ohm**", reply("ohms 6 || 13 + 1"))
        self.assertIn("**5.105 ohm**", reply("ohms: 6 ohm || 13 ohm + 1 ohm"))

    def test_cautions_are_there(self):
        self.assertIn("Disconnect the battery", reply("drop 14 AWG 3 m 8 A"))


class Plans(unittest.TestCase):
    def test_one_step(self):
        text = reply("plan sandpiper as-built run")
        self.assertIn("| battery.plus | 12.4", text)
        self.assertNotIn("-0.00", text)

    def test_a_topic(self):
        self.assertRegex(reply("plan sandpiper unguarded backfeed"), r"\*\*danger\*\*: .*starter solenoid")
        self.assertIn("## Findings", reply("plan otter"))
        self.assertIn("What each single mistake does", reply("plan otter mistakes"))

    def test_several_that_fit_are_named(self):
        self.assertIn("there are also `sandpiper-unguarded-bypass`", reply("plan sandpiper run"))

    def test_an_unknown_one_is_answered_with_the_list(self):
        self.assertIn("`plan otter-6v-positive-earth`", reply("plan warbler"))

    def test_no_picture_without_an_address_for_readers(self):
        self.assertNotIn("![", reply("plan otter", PICTURES=""))


LIST = """I traced this on my bike. 6 V, positive earth.

| from | to | size | length |
|---|---|---|---|
| battery - | fuse in | 2.5 mm2 | 25 cm |
| fuse out | ignitoin switch 30 | 1.5 mm2 | 60 cm |
| ignition switch 15 | coil 15 | 1.5 mm2 | 45 cm |
| coil 1 | points | 1 mm2 | 40 cm |
| battery - | horn | 0.5 mm2 | 2 m |

Is that right?
"""


class PastedList(unittest.TestCase):
    def test_questions_stand_first_then_what_was_assumed_then_the_worst(self):
        text = reply(LIST)
        self.assertLess(text.index("## Questions"), text.index("## Read from the list"))
        self.assertLess(text.index("## Read from the list"), text.index("- **danger**:"))
        self.assertIn("(row ", text)
        self.assertIn("Disconnect the battery", text)

    def test_the_picture_is_there_to_attach(self):
        with tempfile.TemporaryDirectory() as folder:
            text = reply(LIST, ATTACH=folder)
            files = list(pathlib.Path(folder).iterdir())
            self.assertIn(f"]({files[0].name})", text)
            self.assertEqual(files[0].read_bytes()[:8], b"\x89PNG\r\n\x1a\n")

    def test_it_fits_into_a_post(self):
        long = LIST.replace("\nIs that", "".join(
            f"| fuse out | lamp {i} | 0.5 mm2 | 2 m |\n" for i in range(40)) + "\nIs that")
        for most in (2600, 4000):
            text = reply(long, POST_LENGTH=str(most))
            self.assertLessEqual(len(text), most)
            self.assertIn("## Read from the list", text)
            self.assertIn("- **danger**:", text)
            self.assertRegex(text, LEFT_OUT)

    def test_what_cannot_be_read_is_said(self):
        self.assertIn("cannot be worked out", reply("from,to\n"))


class Length(unittest.TestCase):
    def test_no_post_is_longer_than_allowed(self):
        for line in ("plan sandpiper run", "plan sandpiper unguarded review", "spark 3000 rpm"):
            for most in (2600, 4000):
                text = reply(line, POST_LENGTH=str(most), PICTURES="https://wiring.example")
                self.assertLessEqual(len(text), most, line)
        self.assertRegex(reply("plan sandpiper unguarded review"), LEFT_OUT)


class Friendliness(unittest.TestCase):
    def test_what_it_does_not_understand(self):
        for line in ("", "   \n", "hello", "drop", "drop 14 AWG 8 A", "ballast 3 ohm", "plan", "spark fast", "ohms"):
            text = reply(line)
            self.assertTrue("`drop 14 AWG 3 m 8 A`" in text or "`plan otter" in text or "cannot" in text, (line, text))

    def test_the_services_reason(self):
        self.assertIn("Accepted:", reply("drop 14 AWG 3 m 99999999 A"))

    def test_nothing_of_the_line_becomes_markup(self):
        self.assertIn(r"\[x\](y)", reply("[x](y)<b>"))
        self.assertIn("at most 300", reply("x" * 5000))

    def test_bytes_that_are_no_text(self):
        run = subprocess.run([sys.executable, str(BOT)], input=b"\xff\xfe\x00", capture_output=True, timeout=60)
        self.assertEqual((run.returncode, run.stderr), (0, b""))

    def test_a_service_that_is_not_there(self):
        self.assertIn("does not answer at the moment", reply("drop 14 AWG 3 m 8 A", LOOMWRIGHT="http://127.0.0.1:9"))


if __name__ == "__main__":
    unittest.main()
