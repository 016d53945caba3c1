"""Tests tools/check_rooms.py: each fault is planted in a small house of its own and must be found."""
import pathlib
import shutil
import subprocess
import sys
import tempfile
import unittest

from support.harness import ROOT, main

ROOMS = """\
core/base
core/water    base
core/sheet    base water
core/wire     base
core/testing  base
app/store     base
app/cli       base wire
"""


class CheckRooms(unittest.TestCase):
    def setUp(self):
        folder = tempfile.TemporaryDirectory()
        self.addCleanup(folder.cleanup)
        self.house = pathlib.Path(folder.name)
        (self.house / "tools").mkdir()
        shutil.copy(ROOT / "tools/check_rooms.py", self.house / "tools")
        self.write("ROOMS", ROOMS)
        for line in ROOMS.splitlines():
            path = line.split()[0]
            room = path.split("/")[1]
            self.write(f"{path}/{room}.h", f"#pragma once\nint {room}();\n")

    def write(self, name, text):
        path = self.house / name
        path.parent.mkdir(parents=True, exist_ok=True)
        path.write_text(text)

    def check(self):
        done = subprocess.run([sys.executable, self.house / "tools/check_rooms.py"],
                              capture_output=True, text=True)
        return done.returncode, done.stdout + done.stderr

    def expect_fault(self, *words):
        code, output = self.check()
        self.assertEqual(code, 1, output)
        self.assertEqual(len(output.splitlines()), 1, output)
        for word in words:
            self.assertIn(word, output)

    def expect_no_fault(self):
        code, output = self.check()
        self.assertEqual(code, 0, output)

    def test_a_sound_house_passes(self):
        self.write("core/sheet/sheet.cc",
                   '#include "sheet/sheet.h"\n#include <cmath>\n#include "water/water.h"\n')
        self.expect_no_fault()

    def test_an_include_of_a_room_that_is_not_on_the_own_line_is_found(self):
        self.write("core/water/water.cc", '#include "water/water.h"\n#include "sheet/sheet.h"\n')
        self.expect_fault("core/water/water.cc:2", "water may not include sheet")

    def test_core_may_not_include_app(self):
        self.write("core/wire/wire.cc", '#include "store/store.h"\n')
        self.expect_fault("core/wire/wire.cc:1", "wire may not include store")

    def test_an_include_of_no_room_is_found(self):
        self.write("core/base/base.cc", '#include "elsewhere/x.h"\n')
        self.expect_fault("core/base/base.cc:1", "in no room")

    def test_an_include_without_its_room_is_found(self):
        self.write("core/base/base.cc", '#include "base.h"\n')
        self.expect_fault("core/base/base.cc:1", "base/base.h")

    def test_a_room_that_is_in_no_list_is_found(self):
        self.write("core/attic/attic.h", "#pragma once\n")
        self.expect_fault("core/attic", "not in ROOMS")

    def test_a_room_that_may_include_one_below_it_is_found(self):
        self.write("ROOMS", ROOMS.replace("core/base\n", "core/base     water\n"))
        self.expect_fault("base may not include water", "not named above it")

    def test_only_wire_includes_json_and_toml(self):
        for header in ("nlohmann/json.hpp", "toml++/toml.h"):
            with self.subTest(header):
                self.write("core/wire/wire.cc", f"#include <{header}>\n")
                self.expect_no_fault()
                self.write("app/cli/cli.cc", f"#include <{header}>\n")
                self.expect_fault("app/cli/cli.cc:1", "only wire")
                (self.house / "app/cli/cli.cc").unlink()

    def test_only_store_knows_sql(self):
        self.write("app/store/store.cc", "#include <sqlite3.h>\n")
        self.expect_no_fault()
        self.write("app/cli/cli.cc", "#include <sqlite3.h>\n")
        self.expect_fault("app/cli/cli.cc:1", "only store")

    def test_core_calls_no_function_whose_bits_differ(self):
        for call in ("std::exp(x)", "std::pow(x, 2.0)", "std::hypot (x, x)"):
            with self.subTest(call):
                self.write("core/water/water.cc", f"double f(double x) {{ return {call}; }}\n")
                self.expect_fault("core/water/water.cc:1", "numerics/math.h")

    def test_core_may_call_those_whose_bits_agree(self):
        self.write("core/water/water.cc",
                   "double f(double x) { return std::floor(x) + std::sqrt(x) + std::fabs(x); }\n")
        self.expect_no_fault()

    def test_core_touches_nothing_of_the_world(self):
        for line in ("#include <fstream>", "#include <random>", "auto t = std::chrono::system_clock::now();",
                     'auto e = std::getenv("HOME");'):
            with self.subTest(line):
                self.write("core/water/water.cc", line + "\n")
                self.expect_fault("core/water/water.cc:1", "core reads no clock")

    def test_tests_may_use_what_the_code_may_not(self):
        self.write("core/water/water_test.cc",
                   '#include <fstream>\n#include "testing/testing.h"\n'
                   "double f(double x) { return std::exp(x); }\n")
        self.expect_no_fault()

    def test_the_real_house_passes(self):
        done = subprocess.run([sys.executable, ROOT / "tools/check_rooms.py"],
                              capture_output=True, text=True)
        self.assertEqual(done.returncode, 0, done.stdout)


if __name__ == "__main__":
    main()
