"""Checks the descriptions in JSON (tests/descriptions, kept equal to the examples by
core/wire/description_test.cc) against schema/boiler.schema.json, which is what a page that
edits descriptions goes by."""
import copy
import json
import unittest

import jsonschema

from support.harness import ROOT, files, main, name_of

SCHEMA = json.loads((ROOT / "schema/boiler.schema.json").read_text())
VALIDATOR = jsonschema.Draft7Validator(SCHEMA)


def example(name):
    return json.loads((ROOT / f"tests/descriptions/{name}.json").read_text())


class BoilerSchema(unittest.TestCase):
    def test_is_a_schema(self):
        jsonschema.Draft7Validator.check_schema(SCHEMA)

    def test_every_example_conforms(self):
        paths = list(files(".json", folder=ROOT / "tests/descriptions"))
        self.assertEqual(len(paths), 3)
        for path in paths:
            with self.subTest(name_of(path)):
                errors = [f"{e.json_path}: {e.message[:200]}"
                          for e in VALIDATOR.iter_errors(json.loads(path.read_text()))]
                self.assertEqual(errors, [])

    def assert_refused(self, spoil, name="watertube"):
        description = example(name)
        spoil(description)
        self.assertFalse(VALIDATOR.is_valid(description))

    def test_refuses_what_is_no_description(self):
        spoilers = {
            "no format": lambda d: d.pop("format"),
            "another format": lambda d: d.update(format="steamworthy-boiler-2"),
            "no boiler": lambda d: d.pop("boiler"),
            "an unknown table": lambda d: d.update(whistle=[]),
            "an unknown key": lambda d: d["part"][0].update(colour="red"),
            "an unknown kind": lambda d: d["mounting"][0].update(kind="whistle"),
            "a text for a number": lambda d: d["section"][0].update(working_pressure_bar_gauge="36"),
            "another unit": lambda d: d["part"][0].update(wall_in=2),
            "a tag with a blank": lambda d: d["part"][0].update(tag="S D"),
            "no wall": lambda d: d["part"][0].pop("wall_mm"),
            "two diameters": lambda d: d["part"][0].update(outer_diameter_mm=1350),
            "keys of another shape": lambda d: d["part"][0].update(bottom_level_m=1, run="straight"),
            "neither parts nor content": lambda d: d.pop("part"),
        }
        for what, spoil in spoilers.items():
            with self.subTest(what):
                self.assert_refused(spoil)

    def test_refuses_parts_beside_content(self):
        parts = example("watertube")["part"]
        self.assert_refused(lambda d: d.update(part=copy.deepcopy(parts)), "minimal")


if __name__ == "__main__":
    main()
