"""Tests what the house asks of every file: length, no path of one machine, nothing left undone."""
import re
import shutil
import subprocess
import unittest

from support.harness import ROOT, files, main, name_of

SOURCES = (".h", ".cc", ".py", ".sh", ".ts", ".svelte", ".cmake")
TEXTS = SOURCES + (".md", ".toml", ".json", ".txt", ".bib", "run", "check", ".csv")
LONGEST = 500


class Files(unittest.TestCase):
    def test_no_source_is_longer_than_a_reader_can_hold(self):
        for path in files(*SOURCES):
            with self.subTest(name_of(path)):
                self.assertLessEqual(path.read_text().count("\n"), LONGEST)

    def test_no_file_names_a_folder_of_one_machine(self):
        folder = re.compile(r"(?<![\w.\"'/-])/(" + "|".join(["home", "root", "work", "tmp/w", "Users"])
                            + r")/")
        for path in files(*TEXTS):
            with self.subTest(name_of(path)):
                self.assertIsNone(folder.search(path.read_text()))

    def test_nothing_is_left_undone(self):
        undone = re.compile(r"\b(" + "|".join(["TO" + "DO", "FIX" + "ME", "X" * 3]) + r")\b")
        for path in files(*SOURCES):
            with self.subTest(name_of(path)):
                self.assertIsNone(undone.search(path.read_text()))

    def test_headers_are_guarded(self):
        for folder in ("core", "app"):
            for path in files(".h", folder=ROOT / folder):
                with self.subTest(name_of(path)):
                    self.assertIn("#pragma once", path.read_text())


class Scripts(unittest.TestCase):
    def test_shell_scripts_parse(self):
        for path in [ROOT / "run", ROOT / "check", ROOT / ".ci/run", *files(".sh")]:
            with self.subTest(name_of(path)):
                done = subprocess.run(["bash", "-n", str(path)], capture_output=True, text=True)
                self.assertEqual(done.stderr, "")

    def test_wrong_usage_ends_with_2(self):
        for command in (["check", "--short"], ["tools/install.sh"], ["tools/install.sh", "most"]):
            with self.subTest(command):
                done = subprocess.run([ROOT / command[0], *command[1:]], capture_output=True, text=True)
                self.assertEqual(done.returncode, 2)
                self.assertIn("usage:", done.stderr)

    def test_the_installer_is_silent_when_nothing_is_missing(self):
        done = subprocess.run([ROOT / "tools/install.sh", "check"], capture_output=True, text=True)
        self.assertEqual((done.returncode, done.stdout, done.stderr), (0, "", ""))

    def test_the_installer_says_what_only_root_can_install(self):
        if shutil.which("setpriv") is None:
            self.skipTest("no setpriv")
        # As nobody, without sudo on the path and with a dpkg-query that knows of nothing.
        import os
        import tempfile
        with tempfile.TemporaryDirectory() as folder:
            os.chmod(folder, 0o755)
            for name in ("bash", "dirname", "sed", "awk", "id", "env", "mktemp", "rm"):
                os.symlink(shutil.which(name), f"{folder}/{name}")
            with open(f"{folder}/dpkg-query", "w") as fake:
                fake.write("#!/bin/bash\nexit 1\n")
            os.chmod(f"{folder}/dpkg-query", 0o755)
            as_nobody = ["setpriv", "--reuid=65534", "--regid=65534", "--clear-groups"]
            script = (ROOT / "tools/install.sh").read_text()
            lists = (ROOT / "tools/packages.txt").read_text()
            os.mkdir(f"{folder}/tools")
            for name, text in (("install.sh", script), ("packages.txt", lists)):
                with open(f"{folder}/tools/{name}", "w") as copy:
                    copy.write(text)
            command = [shutil.which("bash"), f"{folder}/tools/install.sh", "run"]
            if os.getuid() == 0:
                command = [shutil.which("setpriv")] + as_nobody[1:] + command
            done = subprocess.run(command, env={"PATH": folder}, stdin=subprocess.DEVNULL,
                                  capture_output=True, text=True)
            self.assertEqual(done.returncode, 1, done.stderr)
            self.assertEqual(len(done.stderr.splitlines()), 1, done.stderr)
            self.assertIn("only root can install", done.stderr)
            self.assertIn("cmake", done.stderr)


if __name__ == "__main__":
    main()
