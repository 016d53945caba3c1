#!/usr/bin/python3
"""The program as a user meets it: exit codes, JSON, messages, help, man page, completions."""
import json
import pathlib
import re
import subprocess
import sys
import tempfile
import unittest

ROOT = pathlib.Path(__file__).resolve().parent.parent
BUILD = ROOT / "build/release"
PROGRAM = BUILD / "steamworthy"
TRACES = ROOT / "tests/traces"
WATERTUBE = ROOT / "examples/watertube.toml"
ORDINARY = ["--work", "gaskets", "--rule", "us-marine-ordinary", "--authority", "an inspector",
            "--ceiling", "48 bar"]


def run(*arguments, text=None):
    answer = subprocess.run([PROGRAM, *map(str, arguments)], input=text, capture_output=True,
                            text=True, timeout=60)
    answer.stdout = answer.stdout.replace("\u00a0", " ")  # number and unit stay on one line
    return answer


def figures(sheet):
    return {(f["key"], f["subject"]): f for s in sheet["sections"] for f in s["figures"]}


class Check(unittest.TestCase):
    def test_finds_no_fault_in_the_examples(self):
        for path in sorted((ROOT / "examples").glob("*.toml")):
            answer = run("check", path)
            self.assertEqual(answer.returncode, 0, answer.stderr)
            self.assertIn("no fault found", answer.stdout)

    def test_names_every_fault_with_its_line(self):
        text = WATERTUBE.read_text().replace('format = "steamworthy-boiler-1"',
                                             'format = "steamworthy-boiler-1"\nnonsense = 1', 1)
        text = re.sub(r'wall = "50 mm"', 'wall = "50 kg"', text, count=1)
        answer = run("check", "-", text=text)
        self.assertEqual(answer.returncode, 1)
        self.assertGreaterEqual(len(answer.stderr.strip().splitlines()), 2)
        self.assertRegex(answer.stderr, r":\d+: ")

    def test_says_which_file_it_cannot_read(self):
        answer = run("check", "no-such-file.toml")
        self.assertEqual(answer.returncode, 1)
        self.assertIn("no-such-file.toml", answer.stderr)
        self.assertIn("cli.cannot_read", answer.stderr)


class Sheet(unittest.TestCase):
    def test_json_gives_the_figures_of_the_reference(self):
        # Independent Python model of ours over python3-iapws, 45 bar: see core/sheet/sheet_test.cc.
        answer = run("sheet", WATERTUBE, *ORDINARY, "--json")
        self.assertEqual(answer.returncode, 0, answer.stderr)
        sheet = json.loads(answer.stdout)
        found = figures(sheet)
        self.assertTrue(sheet["ok"])
        self.assertAlmostEqual(found["sheet.water_to_fill", ""]["value_m3"], 26.8863, delta=6e-5)
        self.assertAlmostEqual(found["sheet.ml_per_bar", ""]["value_ml_per_bar"], 1468.46, delta=1)
        self.assertAlmostEqual(
            found["sheet.litres_to_stage", "sheet.stage.test"]["value_l"], 66.43, delta=0.07)

    def test_text_shows_units_and_no_bare_key(self):
        for units in ("si", "us"):
            answer = run("sheet", WATERTUBE, *ORDINARY, "--units", units)
            self.assertEqual(answer.returncode, 0)
            self.assertIn("psi" if units == "us" else "bar gauge", answer.stdout)
            self.assertNotRegex(answer.stdout, r"<[a-z]+\.")
            self.assertNotIn("nan", answer.stdout.lower().split())
            self.assertNotRegex(answer.stdout, r"\btight\b")

    def test_working_shows_formula_and_source(self):
        answer = run("sheet", WATERTUBE, *ORDINARY, "--working")
        self.assertIn("p(z) = p_ref + rho g (z_ref - z)", answer.stdout)
        self.assertIn("IAPWS-R7-97", answer.stdout)
        self.assertNotRegex(answer.stdout, r"<[a-z]+\.")

    def test_without_rule_says_what_is_missing_and_gives_the_rest(self):
        answer = run("sheet", WATERTUBE)
        self.assertEqual(answer.returncode, 0)
        self.assertIn("--rule", answer.stdout)
        self.assertIn("--work", answer.stdout)
        self.assertIn("water for each bar", answer.stdout)

    def test_refuses_without_a_named_authority(self):
        answer = run("sheet", WATERTUBE, "--work", "gaskets", "--rule", "us-marine-ordinary")
        self.assertEqual(answer.returncode, 1)
        self.assertIn("STOP", answer.stdout)

    def test_the_three_examples_make_a_sheet(self):
        for path in sorted((ROOT / "examples").glob("*.toml")):
            answer = run("sheet", path, "--json", "--working")
            self.assertEqual(answer.returncode, 0, answer.stderr)
            json.loads(answer.stdout)

    def test_wrong_words_are_usage(self):
        for wrong in (["--work", "sweeping"], ["--units", "furlong"], ["--water", "5 bar"],
                      ["--trait", "haunted=yes"], ["--no-such-option"]):
            answer = run("sheet", WATERTUBE, *wrong)
            self.assertEqual(answer.returncode, 2, wrong)
            self.assertTrue(answer.stderr)
        self.assertEqual(run().returncode, 2)
        answer = run("nonsense")
        self.assertEqual(answer.returncode, 2)
        self.assertIn("nonsense", answer.stderr)

    def test_unknown_rule_is_refused_by_name(self):
        answer = run("sheet", WATERTUBE, "--rule", "no-such", "--json")
        self.assertEqual(answer.returncode, 1)
        self.assertEqual(json.loads(answer.stdout)["code"], "sheet.unknown_rule")


class Trace(unittest.TestCase):
    LOGS = sorted((ROOT / "tests/traces").glob("*.csv"))

    def test_understands_every_example_log(self):
        self.assertEqual(len(self.LOGS), 15)
        for path in self.LOGS:
            answer = run("trace", path, "--test", path.with_suffix(".meta.json"), "--json")
            self.assertEqual(answer.returncode, 0, answer.stderr)
            told = json.loads(answer.stdout)
            self.assertTrue(told["ok"])
            self.assertEqual(told["bad_line_count"], 0, path.name)
            lines = path.read_text().splitlines()
            self.assertEqual(told["summary"]["readings"], len(lines) - 1)
            self.assertEqual([c["header"] for c in told["columns"]], re.split("[,;]", lines[0]))
            self.assertIn("trace.hold_begins", [m["key"] for m in told["test"]])

    def test_says_what_it_understood_in_words(self):
        log = ROOT / "tests/traces/23_leak_small_us.csv"
        answer = run("trace", log)
        self.assertIn("Column 3 (Water temp (F)) is water temperature in \u00b0F.", answer.stdout)
        self.assertIn("Column 2 (Gauge (psig)) is pressure in psi, gauge.", answer.stdout)
        us = run("trace", log, "--units", "us")
        self.assertIn("psig", us.stdout.split("Summary")[1])
        for text in (answer.stdout, us.stdout):
            self.assertNotRegex(text, r"<[a-z]+\.")
            self.assertNotRegex(text.replace(log.name, ""), r"\btight\b")

    def test_can_be_overruled(self):
        text = "a,b,c\n07:00,14.7,20\n07:05,29.4,20\n"
        answer = run("trace", "-", "--column", "2=pressure", "--unit", "2=psi abs", "--column",
                     "3=metal", "--json", text=text)
        told = json.loads(answer.stdout)
        self.assertEqual([c["meaning"] for c in told["columns"]], ["clock", "pressure", "metal"])
        # 29.4 psi by the definition of the pound, the inch and standard gravity.
        self.assertAlmostEqual(told["summary"]["highest"][0]["value_bar_abs"],
                               29.4 * 0.45359237 * 9.80665 / 0.0254**2 / 1e5, places=9)

    def test_names_bad_lines_and_goes_on(self):
        answer = run("trace", "-", text="t_s,p_barg\n0,1.0\n5,oops\n10,1.0\n")
        self.assertEqual(answer.returncode, 0)
        self.assertIn('-:3: column 2 (p_barg): this is no number (found "oops"', answer.stdout)

    def test_fails_with_reasons_where_nothing_can_be_read(self):
        answer = run("trace", "-", "--json", text="colour,taste\n1,2\n3,4\n")
        self.assertEqual(answer.returncode, 1)
        told = json.loads(answer.stdout)
        self.assertFalse(told["ok"])
        self.assertEqual({p["code"] for p in told["problems"]}, {"trace.no_time", "trace.no_pressure"})
        log = self.LOGS[0]
        answer = run("trace", log, "--test", ROOT / "examples/watertube.toml")
        self.assertEqual(answer.returncode, 1)
        self.assertIn("wire.format", answer.stderr)

    def test_wrong_words_are_usage(self):
        for wrong in (["--column", "water"], ["--column", "0=water"], ["--column", "2=beer"],
                      ["--unit", "=psi"], ["--units", "furlong"], []):
            answer = run("trace", *([self.LOGS[0]] if wrong else []), *wrong)
            self.assertEqual(answer.returncode, 2, wrong)
            self.assertTrue(answer.stderr)


class Hold(unittest.TestCase):
    """Logs and truth of tests/traces: see core/wire/hold_on_traces_test.cc for where they come from."""

    CODES = {"no_loss_seen": 0, "losing": 3, "gaining": 3, "cannot_tell": 4}

    @staticmethod
    def ask(command, name, *more):
        log = TRACES / name
        return run(command, log, "--test", log.with_suffix(".meta.json"), *more)

    def test_answers_every_log_honestly_and_tells_the_shell(self):
        truth = json.loads((TRACES / "truth.json").read_text())["cases"]
        self.assertGreaterEqual(len(truth), 15)
        for name, one in truth.items():
            with self.subTest(name):
                answer = self.ask("hold", name, "--json")
                said = json.loads(answer.stdout)
                self.assertIn(said["result"], one["accept_results"])
                self.assertEqual(answer.returncode, self.CODES[said["result"]], answer.stderr)
                for key in ("net_loss_ml_per_min", "trapped_air_l"):
                    estimate = said[key]
                    self.assertLessEqual(estimate["low_90"], estimate["estimate"])
                    self.assertLessEqual(estimate["estimate"], estimate["high_90"])
                self.assertAlmostEqual(sum(said["fall_parts"].values()), said["fall_bar"], places=6)

    def test_no_text_says_the_word_that_it_must_not(self):
        for name in ("00_tight_good_si.csv", "36_und_small_leak_poor.csv", "50_gaining_si.csv"):
            for command in ("hold", "pumpup"):
                text = self.ask(command, name, "--working").stdout.split("\n", 1)[1]
                self.assertNotRegex(text.lower(), r"\btight\b")
                self.assertIn("90 % interval", text)

    def test_without_what_the_crew_saw_there_is_no_answer(self):
        test = TRACES / "19_leak_med.meta.json"
        stated = json.loads(test.read_text())
        del stated["pump_side_hung_open"]
        with tempfile.TemporaryDirectory() as folder:
            other = pathlib.Path(folder) / "test.meta.json"
            other.write_text(json.dumps(stated))
            answer = run("hold", TRACES / "19_leak_med.csv", "--test", other, "--json")
        self.assertEqual(answer.returncode, 4)
        said = json.loads(answer.stdout)
        self.assertEqual(said["reason"]["key"], "hold.pump_side_not_hung_open")
        self.assertIsNone(said["net_loss_ml_per_min"])

    def test_a_log_without_a_boiler_is_refused_with_the_reason(self):
        answer = run("hold", TRACES / "19_leak_med.csv")
        self.assertEqual(answer.returncode, 1)
        self.assertIn("hold.no_boiler", answer.stderr)
        answer = run("hold", TRACES / "19_leak_med.csv", "--boiler", WATERTUBE)
        self.assertEqual(answer.returncode, 4, answer.stderr)

    def test_the_pump_up_draws_the_airless_line(self):
        answer = self.ask("pumpup", "13_tight_much_air.csv", "--json")
        self.assertEqual(answer.returncode, 0, answer.stderr)
        said = json.loads(answer.stdout)
        self.assertGreater(said["points"][-1]["pumped_l"] - said["points"][-1]["airless_l"], 30)
        self.assertLess(said["known_at_bar_gauge"], 16)


class Pages(unittest.TestCase):
    def test_every_option_is_in_the_reference_the_man_page_and_the_completions(self):
        page = (ROOT / "docs/reference/cli.md").read_text()
        man = (BUILD / "pages/steamworthy.1").read_text().replace("\\-", "-")
        bash = (BUILD / "pages/steamworthy.bash").read_text()
        options = set()
        for command in ("sheet", "trace"):
            options |= set(re.findall(r"--[a-z][a-z-]+", run(command, "--help").stdout))
        self.assertGreater(len(options), 10)
        for option in options:
            for text in (page, man, bash):
                self.assertIn(option, text)
        for command in ("check", "sheet", "rules", "trace"):
            self.assertIn(f"steamworthy {command}", page)
            self.assertIn(f".SS {command}", man)

    def test_bash_can_read_its_completion(self):
        self.assertEqual(subprocess.run(["bash", "-n", BUILD / "pages/steamworthy.bash"]).returncode, 0)

    def test_rules_lists_every_rule_file(self):
        listed = {line.split()[0] for line in run("rules").stdout.splitlines()}
        self.assertEqual(listed, {path.stem for path in (ROOT / "rules").glob("*.toml")})


if __name__ == "__main__":
    result = unittest.main(exit=False, verbosity=0).result
    bad = len(result.failures) + len(result.errors)
    print(f"{result.testsRun - bad} passed, {bad} failed")
    sys.exit(1 if bad else 0)
