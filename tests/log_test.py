#!/usr/bin/python3
"""`steamworthy log` as a user meets it, and its verdicts on exports held to those of the second
verifier (tests/support/record_export.py)."""
import json
import os
import pathlib
import random
import re
import shutil
import tempfile
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
        import hashlib
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
        self.assertEqual(len(names), 8)
        for name in names:
            self.assertIn(f"`steamworthy log {name}", page)
            self.assertIn(f".SS log {name}", man)
            for option in re.findall(r"--[a-z-]+", run("log", name, "--help").stdout):
                if option != "--help":
                    self.assertIn(option, page)


if __name__ == "__main__":
    main()
