#!/usr/bin/python3
"""Holds the second reader of the record (tests/support/record.py) to the test vectors, and the
document to both."""
import json
import re
import unittest

from support import record
from support.harness import ROOT, main

VECTORS = json.loads((ROOT / "tests/record_vectors/facts.json").read_text())
PAGE = (ROOT / "docs/formats/record.md").read_text()


class Vectors(unittest.TestCase):
    def test_facts_are_read_as_shown(self):
        self.assertGreaterEqual(len(VECTORS["facts"]), 5)
        for row in VECTORS["facts"]:
            with self.subTest(row["name"]):
                data = bytes.fromhex(row["bytes"])
                fact = record.read_fact(data)
                fact["person"] = fact["person"].decode()
                fact["kind"] = fact["kind"].decode()
                self.assertEqual(record.write_fact(fact), data)
                for name, value in record.shown(fact).items():
                    self.assertEqual(value, row[name], name)
                self.assertEqual(fact["hash"].hex(), row["hash"])
                key = bytes.fromhex(row["public_key"])
                self.assertEqual(record.device_of(key), fact["device"])
                signature = bytes.fromhex(row["signature"])
                self.assertTrue(record.verifies(key, data, signature))
                self.assertFalse(record.verifies(key, data + b" ", signature))

    def test_flawed_bytes_are_refused_for_the_reason_shown(self):
        self.assertGreaterEqual(len(VECTORS["flawed"]), 20)
        for row in VECTORS["flawed"]:
            with self.subTest(row["name"]):
                with self.assertRaises(record.Flaw) as refused:
                    record.read_fact(bytes.fromhex(row["bytes"]))
                self.assertEqual(str(refused.exception), row["flaw"])


class Page(unittest.TestCase):
    def test_names_every_field_and_every_flaw(self):
        for name in VECTORS["facts"][0]:
            if name in ("name", "hash", "signature", "public_key", "bytes"):
                continue
            self.assertIn(f"`{name}`" if name not in ("body",) else name, PAGE)
        source = (ROOT / "core/record/envelope.cc").read_text()
        flaws = re.findall(r'"record\.flaw\.([a-z_]+)"', source)
        self.assertGreater(len(flaws), 10)
        for flaw in flaws:
            self.assertIn(f"`{flaw}`", PAGE)


if __name__ == "__main__":
    main()
