#!/usr/bin/python3
"""`steamworthy log` as a user meets it, and its verdicts on exports held to those of the second
verifier (tests/support/record_export.py)."""
import hashlib
import json
import os
import pathlib
import random
import re
import shutil
import tempfile
import tomllib
import unittest

from support import record, record_export
from support.harness import ROOT, main, run

LINES = """# a closing begins
{"person": "P-01", "kind": "closure.opened", "body": {"closure": "FW-A07"}}

{"person": "P-01", "kind": "leak.found", "happened_at_ms": 1764072000000, "utc_offset_min": 60,
 "precision": "hour", "body": {"leak": "1", "place": "FW-A07", "at": "gasket", "passes": "out"}}
{"closing": "plant", "person": "P-01", "kind": "remark.made", "body": {"text": "lot L-12"}}
""".replace(",\n ", ", ")


class Log(unittest.TestCase):
    def setUp(self):
        self.folder = pathlib.Path(tempfile.mkdtemp())
        self.addCleanup(shutil.rmtree, self.folder)
        self.store = self.folder / "plant.steamworthy"
        self.lines = self.write("facts.jsonl", LINES)
        self.good("create", self.store)

    def write(self, name, text):
        path = self.folder / name
        path.write_text(text)
        return path

    def good(self, *arguments):
        answer = run("log", *arguments)
        self.assertEqual(answer.returncode, 0, answer.stderr + answer.stdout)
        return answer.stdout

    def refused(self, *arguments, code):
        answer = run("log", *arguments)
        self.assertEqual(answer.returncode, 1, answer.stdout)
        self.assertIn(code, answer.stderr)
        return answer.stderr

    def append(self, store=None):
        text = self.good("append", store or self.store, self.lines, "--closing", "new")
        return re.search(r"closing new begins: (\S+)", text).group(1)

    def exported(self, store=None, name="record.swexport", *options):
        path = self.folder / name
        self.good("export", store or self.store, path, *options)
        return path.read_bytes()

    def two_devices(self):
        """An export with facts of two devices, each countersigned or seen by the other."""
        self.append()
        self.good("backup", self.store, self.folder / "backup")
        second = self.folder / "second.steamworthy"
        self.good("restore", self.folder / "backup", second)
        self.append(second)
        return second, self.exported(second, "second.swexport")


class Commands(Log):
    def test_facts_are_stored_and_listed_as_sentences(self):
        closing = self.append()
        text = self.good("list", self.store)
        self.assertIn("P-01 opened closure FW-A07.", text)
        self.assertIn("2025-11-25 13:00", text)
        self.assertIn(f"Closing {closing}", text)
        self.assertLess(text.index("Plant"), text.index("Closing"))
        self.assertNotIn("lot L-12", self.good("list", self.store, "--closing", closing))
        rows = [json.loads(line) for line in self.good("list", self.store, "--json").splitlines()]
        self.assertEqual([row["kind"] for row in rows],
                         ["remark.made", "closure.opened", "leak.found"])
        self.assertEqual(rows[2]["precision"], "hour")
        self.assertEqual(rows[2]["closing"], closing)

    def test_wrong_lines_are_all_told_and_none_is_stored(self):
        wrong = self.write("wrong.jsonl", LINES + """{"person": "P-01", "kind": "no.kind", "body": {}}
{"person": "P-01", "kind": "closure.opened", "body": {"closure": 7}, "device": "x"}
{"closing": "elsewhere", "person": "P-01", "kind": "closure.opened", "body": {"closure": "A"}}
not JSON
""")
        told = self.refused("append", self.store, wrong, "--closing", "new", code="facts.unknown_kind")
        for line in (6, 7, 8, 9):
            self.assertRegex(told, rf"wrong\.jsonl:{line}: ")
        self.assertIn("service.no_closing", told)
        self.assertEqual(self.good("list", self.store), "")
        self.refused("append", self.store, self.lines, code="service.no_closing")

    def test_a_script_may_name_closings_and_devices(self):
        script = self.write("script.jsonl", json.dumps(
            {"closing": "demo", "device": "tablet", "device_seq": 1, "seen": {}, "person": "P-01",
             "kind": "closure.opened", "body": {"closure": "FW-A07"}, "recorded_at_ms": 1}) + "\n")
        self.refused("append", self.store, script, code="wire.unknown_key")
        self.assertIn("closing demo begins", self.good("append", self.store, script, "--script"))

    def test_a_store_is_not_made_over_another_and_is_missed(self):
        self.refused("create", self.store, code="store.exists")
        self.refused("append", self.folder / "none", self.lines, code="store.missing")
        self.refused("list", self.folder / "none", code="store.missing")
        self.refused("export", self.store, self.lines, code="store.exists")
        self.refused("backup", self.store, self.lines, code="store.exists")

    def test_a_key_that_others_may_read_is_refused(self):
        key = pathlib.Path(f"{self.store}.key")
        self.assertEqual(key.stat().st_mode & 0o777, 0o600)
        os.chmod(key, 0o644)
        self.refused("append", self.store, self.lines, "--closing", "new", code="store.key_unsafe")

    def test_a_restored_store_is_another_device(self):
        second, _ = self.two_devices()
        first = set(re.findall(r"device (\S+)", self.good("keys", self.store)))
        both = set(re.findall(r"device (\S+)", self.good("keys", second)))
        self.assertEqual(len(both), 2)
        self.assertLess(first, both)

    def test_one_closing_is_exported_with_its_plant(self):
        closing, other = self.append(), self.append()
        export = record_export.Export(self.exported(self.store, "one.swexport", "--closing", closing))
        scopes = [record.shown({**record.read_fact(f), "person": "", "kind": ""})["scope_id"]
                  for _, _, f in export.facts]
        self.assertEqual(scopes.count(closing), 2)
        self.assertEqual(scopes.count(other), 0)
        self.assertEqual(len(scopes), 4)
        self.refused("export", self.store, self.folder / "x", "--closing",
                     "01a21484-4792-79f1-925b-58f0fb8cfff7", code="store.unknown_closing")

    def test_a_damaged_store_is_told_by_verify(self):
        self.append()
        self.assertIn("a store", self.good("verify", self.store))
        data = self.store.read_bytes()
        self.store.write_bytes(data.replace(b"FW-A07", b"FW-A08", 1))
        answer = run("log", "verify", self.store)
        self.assertEqual(answer.returncode, 1)
        self.assertIn("WRONG", answer.stdout)
        self.assertIn("Nothing: something is wrong", answer.stdout)


PLANT = [
    {"kind": "person.enrolled", "body": {"who": "R. Lind", "name": "Ragna Lind", "roles": ["lead_hand"]}},
    {"kind": "person.enrolled", "body": {"who": "J. Moe", "name": "Jon Moe", "roles": ["hand"]}},
    {"kind": "site.limits_set", "body": {"air_holds_s": 1800, "count_holds_s": 1200, "open_below_celsius": 45,
                                         "spring_hangers": True}}]


class OfTheDemoBoiler(Log):
    BOILER = ROOT / "examples/watertube.toml"

    def say(self, *facts, closing="new", person="R. Lind"):
        lines = "".join(json.dumps({"person": person, **fact}) + "\n" for fact in facts)
        return self.good("append", self.store, self.write("say.jsonl", lines), "--closing", closing)

    def begin(self):
        self.say(*PLANT, closing="plant")
        text = self.say({"kind": "closing.started", "body": {
            "boiler": "B1", "description_sha256": hashlib.sha256(self.BOILER.read_bytes()).hexdigest()}})
        return re.search(r"closing new begins: (\S+)", text).group(1)

    def view(self, command, *arguments):
        return json.loads(self.good(command, self.store, "--boiler", self.BOILER, "--json", *arguments))

    def shown(self, command, *arguments):
        return self.good(command, self.store, "--boiler", self.BOILER, *arguments).replace("\u00a0", " ")

    def ready_to_open(self, closing):
        boiler = tomllib.loads(self.BOILER.read_text())
        facts = []
        for line in boiler["isolation"]:
            facts += [{"kind": "isolation.made", "body": {"isolation": line["tag"], "how": "blank"}},
                      {"kind": "isolation.tried", "body": {"isolation": line["tag"]}}]
        for mounting in boiler["mounting"]:
            if mounting["kind"] == "vent":
                facts += [{"kind": kind, "body": {"mounting": mounting["tag"]}}
                          for kind in ("vent.opened", "vent.moving_air")]
            if mounting["kind"] in ("drain", "blowdown"):
                facts += [{"kind": kind, "body": {"mounting": mounting["tag"]}}
                          for kind in ("drain.opened", "drain.proved")]
        facts += [{"kind": "reading.taken", "body": {"gauge": "TG-1", "pressure_bar_gauge": 0}},
                  {"kind": "temperature.taken", "body": {"thermometer": "TM-1", "of": "metal",
                                                         "temperature_celsius": 30}}]
        self.say(*facts, closing=closing)

    def clear(self, *arguments, second="J. Moe"):
        return run("log", "clear", self.store, "--boiler", self.BOILER, "--person", "R. Lind",
                   "--second", second, *arguments)


class State(OfTheDemoBoiler):
    """Where a closing of the demo boiler stands, and permission, over the command line."""

    def test_state_is_told_in_sentences_and_as_the_closing_view(self):
        closing = self.begin()
        self.say({"kind": "closure.opened", "body": {"closure": "FH-A01"}},
                 {"kind": "tally.in", "body": {"space": "SP-SD", "who": "J. Moe"}},
                 {"kind": "temporary.on", "body": {"temporary": "T-1", "where": "SV-1"}},
                 {"kind": "leak.found", "body": {"leak": "1", "place": "FH-A01", "at": "gasket",
                                                 "passes": "out"}}, closing=closing)
        text = self.shown("state")
        for words in ("Repairing since", "1 of 1 opened closures left", "inside: J. Moe (SP-SD)", "1 open leak",
                      "Next: clear to fill", "nobody may let it pass", "T-1 on SV-1", "1: gasket at FH-A01"):
            self.assertIn(words, text)
        view = self.view("state")
        self.assertEqual((view["closing"], view["stage"], view["boiler"]), (closing, "repairing", "B1"))
        self.assertEqual(view["next_step"], "fill")
        self.assertEqual(view["last"][0]["kind"], "leak.found")
        self.assertIn(f"{len(view['outstanding'])} still outstanding", view["sentence"])

    def test_outstanding_speaks_of_one_clearance_in_the_units_asked_for(self):
        self.begin()
        self.assertIn("up to 652.7 psig", self.shown("outstanding", "--step", "raise_pressure", "--up-to", "45 bar",
                                                     "--units", "us"))
        asked = self.view("outstanding", "--step", "raise_pressure", "--up-to", "45 bar")
        self.assertEqual(asked["up_to_bar_gauge"], 45)
        self.assertFalse(asked["may_be_given"])
        self.assertIn("s5_sheet", [item["check"] for item in asked["outstanding"]])
        self.assertIn("SP-SD", self.shown("outstanding", "--step", "enter", "--subject", "SP-SD"))
        for arguments, code in ((["--step", "enter"], "service.no_subject"),
                                (["--step", "raise_pressure"], "service.no_pressure")):
            self.refused("outstanding", self.store, "--boiler", self.BOILER, *arguments, code=code)
        wrong = run("log", "outstanding", self.store, "--boiler", self.BOILER, "--step", "dance")
        self.assertEqual(wrong.returncode, 2)

    def test_a_clearance_is_refused_then_given_and_lapses(self):
        closing = self.begin()
        refused = self.clear("--step", "open")
        self.assertEqual(refused.returncode, 1)
        self.assertIn("still outstanding", refused.stdout)
        self.ready_to_open(closing)
        given = self.clear("--step", "open")
        self.assertEqual(given.returncode, 0, given.stdout + given.stderr)
        self.assertIn("Closures and doors may be opened.", given.stdout)
        self.assertIn("It lapses when", given.stdout)
        self.assertIn("clear to open, by R. Lind and J. Moe: stands", self.shown("state"))
        self.say({"kind": "reading.taken", "body": {"gauge": "TG-1", "pressure_bar_gauge": 2}}, closing=closing)
        self.assertIn("clear to open, by R. Lind and J. Moe: lapsed", self.shown("state"))
        self.assertIn("service.two_names", self.clear("--step", "open", second="nobody").stderr)

    def test_another_description_is_refused_and_so_is_a_store_of_several_closings(self):
        self.begin()
        told = self.refused("state", self.store, "--boiler", ROOT / "examples/firetube.toml",
                            code="service.other_description")
        self.assertIn(hashlib.sha256(self.BOILER.read_bytes()).hexdigest(), told)
        second = self.begin()
        self.refused("state", self.store, "--boiler", self.BOILER, code="service.which_closing")
        self.assertIn("Shut down", self.shown("state", "--closing", second))
        self.refused("state", self.store, "--boiler", self.BOILER, "--closing",
                     "01a21484-4792-79f1-925b-58f0fb8cfff7", code="service.unknown_closing")


class Work(OfTheDemoBoiler):
    def work(self, *arguments):
        answer = run(*arguments)
        self.assertEqual(answer.returncode, 0, answer.stderr + answer.stdout)
        return answer.stdout.replace("\u00a0", " ")

    def test_a_plate_is_judged_by_its_gaps(self):
        gaps = ["--gap", "12=0.4 mm", "--gap", "3=0.4 mm", "--gap", "6=0.4 mm", "--gap", "9=0.4 mm"]
        self.assertIn("ood as it stands", self.work("fitup", self.BOILER, "SD-M1", *gaps))
        off = ["--gap", "12=2.0 mm", "--gap", "3=1.0 mm", "--gap", "6=0.1 mm", "--gap", "9=1.0 mm"]
        answer = json.loads(self.work("fitup", self.BOILER, "SD-M1", *off, "--json"))
        self.assertEqual(answer["verdict"], "good_once_moved")
        self.assertGreater(answer["move_up_mm"], 0.5)
        for arguments, code in ((["SD-M1", "--gap", "12=1 mm"], 1), (["no", *gaps], 1),
                                (["SD-M1", "--gap", "12"], 2)):
            self.assertEqual(run("fitup", self.BOILER, *arguments).returncode, code)

    def test_repairs_are_planned_from_the_open_leaks(self):
        closing = self.begin()
        self.say({"kind": "leak.found", "body": {"leak": "3", "place": "FH-A01", "at": "gasket", "passes": "out",
                                                 "drops_per_min": 12}},
                 {"kind": "leak.found", "body": {"leak": "4", "place": "FH-A02", "at": "gasket", "passes": "out"}},
                 {"kind": "leak.repaired", "body": {"leak": "4", "how": "remade"}}, closing=closing)
        text = self.work("repair", self.store, "--boiler", self.BOILER)
        self.assertIn("Leak 3: gasket at FH-A01", text)
        self.assertNotIn("Leak 4", text)
        plan = json.loads(self.work("repair", self.store, "--boiler", self.BOILER, "--cure", "3=remake_joint",
                                    "--drain-rate", "120 L/min", "--json"))
        self.assertEqual(plan["leaks"][0]["cure"], "remake_joint")
        self.assertTrue(plan["leaks"][0]["needs_drop"])
        self.assertEqual(plan["leaks"][0]["drops_per_min"], 12)
        for cure in ("3=prayer", "9=remake_joint"):
            self.assertEqual(run("repair", self.store, "--boiler", self.BOILER, "--cure", cure).returncode, 2)

    def test_the_list_before_fire_follows_the_entries(self):
        closing = self.begin()
        before = json.loads(self.work("raising", self.store, "--boiler", self.BOILER, "--level", "8.5 m", "--json"))
        self.assertEqual({item["done"] for item in before["before_fire"]}, {False})
        self.assertEqual(before["start_level"]["figures"][0]["value_m"], 8.5)
        self.say(*({"kind": kind, "body": {"temporary": "T-1", **more}} for kind, more in
                   (("temporary.on", {"where": "SV-1"}), ("temporary.off", {}), ("temporary.seen_off", {}))),
                 closing=closing)
        text = self.work("raising", self.store, "--boiler", self.BOILER)
        self.assertRegex(text, r"\[x\] .*T-1 \(SV-1\)")
        self.assertIn(f"{len(before['before_fire']) - 1} of {len(before['before_fire'])} still to do", text)


class Verify(Log):
    def verdict(self, data):
        path = self.folder / "judged.swexport"
        path.write_bytes(data)
        answer = run("log", "verify", path, "--json")
        report = json.loads(answer.stdout)
        self.assertEqual(answer.returncode, 0 if report["ok"] else 1)
        return report, sorted(f["fault"] for f in report["findings"] if f["weight"] != "remark")

    def test_says_what_an_export_proves_and_what_not(self):
        _, data = self.two_devices()
        report, wrong = self.verdict(data)
        self.assertEqual(wrong, [])
        self.assertTrue(report["whole"])
        self.assertEqual(report["facts"], report["verified"])
        self.assertEqual(record_export.verify(data), [])
        text = self.good("verify", self.folder / "judged.swexport")
        for words in ("This proves", "was countersigned by device", "This does not prove",
                      "That what was reported is true", "Whose the key of device"):
            self.assertIn(words, text)
        key = self.good("keys", self.store).split()[-1]
        self.assertIn("is the one that you named",
                      self.good("verify", self.folder / "judged.swexport", "--key", key))

    def test_agrees_with_the_second_verifier_on_changed_bytes(self):
        _, data = self.two_devices()
        chance = random.Random(20261125)
        for _ in range(150):
            changed = bytearray(data)
            for _ in range(chance.choice((1, 1, 1, 3))):
                changed[chance.randrange(len(data))] ^= 1 << chance.randrange(8)
            with self.subTest(changed.hex()[:0]):
                _, wrong = self.verdict(bytes(changed))
                self.assertEqual(wrong, record_export.verify(bytes(changed)))
                self.assertTrue(wrong)

    def test_agrees_with_the_second_verifier_on_sections_taken_out_doubled_and_swapped(self):
        _, data = self.two_devices()
        head, sections, at = data[:10], [], 10
        while at < len(data):
            end = at + 12 + int.from_bytes(data[at + 4:at + 12], "big")
            sections.append(data[at:end])
            at = end
        chance = random.Random(1)
        for _ in range(60):
            changed = list(sections)
            i, j = (chance.randrange(1, len(changed) - 1) for _ in range(2))
            move = chance.randrange(3)
            if move == 0:
                del changed[i]
            elif move == 1:
                changed.insert(j, changed[i])
            else:
                changed[i], changed[j] = changed[j], changed[i]
            changed = head + b"".join(changed)
            _, wrong = self.verdict(changed)
            self.assertEqual(wrong, record_export.verify(changed))

    def test_is_not_fooled_by_a_file_hash_made_good(self):
        # The forger changes a word and the hash at the end; he has no key.
        _, data = self.two_devices()
        body = data[:-12 - 64].replace(b"FW-A07", b"FW-A09", 1)
        done = data[-12 - 64:-32] + hashlib.sha256(body).digest()
        self.assertEqual(done[:4], b"DONE")
        report, wrong = self.verdict(body + done)
        self.assertIn("bad_signature", wrong)
        self.assertNotIn("file_hash", wrong)
        self.assertFalse(report["ok"])
        self.assertEqual(report["proves"], [])

    def test_other_files_are_no_exports(self):
        _, wrong = self.verdict(b"something else")
        self.assertEqual(wrong, ["no_export"])


class Pages(unittest.TestCase):
    def test_every_command_and_option_is_in_the_reference(self):
        page = (ROOT / "docs/reference/cli.md").read_text()
        man = (ROOT / "build/release/pages/steamworthy.1").read_text().replace("\\-", "-")
        names = re.findall(r"^  ([a-z]+) ", run("log", "--help").stdout, re.MULTILINE)
        self.assertEqual(len(names), 11)
        for name in names:
            self.assertIn(f"`steamworthy log {name}", page)
            self.assertIn(f".SS log {name}", man)
            for option in re.findall(r"--[a-z-]+", run("log", name, "--help").stdout):
                if option != "--help":
                    self.assertIn(option, page)


if __name__ == "__main__":
    main()
