"""Holds the documents to the sources: sources cited, error codes, names and links."""
import re
import unittest

from support.harness import ROOT, files, main, name_of

KEY = r"[A-Z][A-Za-z0-9.]*(?:-[A-Za-z0-9.]+)+"
# Names of steels have the shape of a source's key; core/materials lists them.
GRADE = re.compile(r"(SA|A|EN-GJS|P|TP)-?[0-9]")


def bibliography():
    text = (ROOT / "docs/bibliography.bib").read_text()
    return re.findall(r"^@\w+\{([^,\s]+),\n(.*?)^\}", text, re.MULTILINE | re.DOTALL)


def in_brackets(text):
    """Keys cited as [KEY], [KEY, Table 3] or [KEY-1; KEY-2]; not the text of a link."""
    for cited in re.findall(r"\[([^\[\]\n]+)\](?!\()", text):
        for part in re.split(r"[,;]", cited):
            if re.fullmatch(KEY, part.strip()):
                yield part.strip()


def comments(text):
    return "\n".join(re.findall(r"//(.*)", text))


class Bibliography(unittest.TestCase):
    @classmethod
    def setUpClass(cls):
        cls.keys = {key for key, _ in bibliography()}

    def assert_known(self, path, cited):
        unknown = sorted(set(cited) - self.keys)
        self.assertFalse(unknown, f"{name_of(path)} cites what docs/bibliography.bib has not")

    def test_no_key_stands_twice(self):
        keys = [key for key, _ in bibliography()]
        self.assertTrue(keys)
        self.assertEqual(sorted(set(keys)), sorted(keys))

    def test_every_entry_is_read(self):
        # An entry that the pattern above cannot read would escape every other test.
        text = (ROOT / "docs/bibliography.bib").read_text()
        self.assertEqual(len(re.findall(r"^@", text, re.MULTILINE)), len(bibliography()))

    def test_every_entry_says_how_it_was_seen(self):
        for key, body in bibliography():
            self.assertRegex(body, r"note\s*=\s*\{\s*seen:", f"{key} does not say how it was seen")

    def test_sources_in_comments_are_known(self):
        for folder in ("core", "app", "fuzz", "bench", "tests"):
            for path in files(".h", ".cc", folder=ROOT / folder):
                with self.subTest(name_of(path)):
                    self.assert_known(path, in_brackets(comments(path.read_text())))

    def test_sources_in_documents_are_known(self):
        for path in files(".md"):
            with self.subTest(name_of(path)):
                self.assert_known(path, in_brackets(path.read_text()))

    def test_sources_in_strings_are_known(self):
        for folder in ("core", "app"):
            for path in files(".h", ".cc", folder=ROOT / folder):
                if path.stem.endswith("_test") or path.parent.name == "testing":
                    continue
                code = re.sub(r"//[^\n]*", "", path.read_text())
                cited = re.findall(f'"({KEY})"', code)
                cited = [key for key in cited if key != "UTF-8"]
                if path.parent.name == "server":
                    continue  # it cites nothing; names of HTTP's headers have the shape of a key
                if path.parent.name == "materials":
                    cited = [key for key in cited if not GRADE.match(key)]
                with self.subTest(name_of(path)):
                    self.assert_known(path, cited)

    def test_sources_of_rules_are_known(self):
        paths = list(files(".toml", folder=ROOT / "rules"))
        self.assertTrue(paths)
        for path in paths:
            cited = re.findall(r'^\s*(?:source|key)\s*=\s*"([^"]+)"', path.read_text(), re.MULTILINE)
            with self.subTest(name_of(path)):
                self.assertTrue(cited, f"{name_of(path)} names no source")
                self.assert_known(path, cited)


class ErrorCodes(unittest.TestCase):
    def setUp(self):
        import sys
        sys.path.insert(0, str(ROOT / "tools"))
        import list_errors
        self.in_sources = list_errors.codes()
        self.in_page = list_errors.meanings()

    def test_every_code_of_the_sources_is_in_the_page(self):
        missing = {code: places for code, places in self.in_sources.items()
                   if code not in self.in_page}
        self.assertFalse(missing, "neither an error code of docs/reference/errors.md (run "
                                  "tools/list_errors.py) nor the key of a sentence in core/words")

    def test_every_code_of_the_page_is_in_the_sources(self):
        self.assertFalse(sorted(set(self.in_page) - set(self.in_sources)))

    def test_every_code_has_a_meaning(self):
        self.assertTrue(self.in_page)
        self.assertFalse([code for code, meaning in self.in_page.items() if len(meaning) < 10])


class Names(unittest.TestCase):
    """Functions, files and links that the documents name."""

    def test_functions_named_in_the_architecture_exist(self):
        text = (ROOT / "ARCHITECTURE.md").read_text()
        named = re.findall(r"`((?:\w+::)+\w+)\(\)`", text)
        self.assertGreater(len(named), 10)
        sources = {}
        for line in (ROOT / "ROOMS").read_text().splitlines():
            if line.startswith(("core/", "app/")):
                folder = ROOT / line.split()[0]
                if not folder.is_dir():
                    continue
                sources[folder.name] = "\n".join(
                    path.read_text() for path in files(".h", ".cc", folder=folder)
                    if not path.stem.endswith("_test"))
        for name in named:
            parts = [part for part in name.split("::") if part != "steamworthy"]
            with self.subTest(name):
                self.assertIn(parts[0], sources, "no such room")
                self.assertRegex(sources[parts[0]], rf"\b{parts[-1]}\s*\(", "no such function")

    def test_files_named_in_the_documents_exist(self):
        for page in ("ARCHITECTURE.md", "CONTRIBUTING.md", "README.md"):
            named = re.findall(r"`((?:core|app|tools|docs|rules|examples|tests|fuzz|bench|cmake)/"
                               r"[\w./-]*)`", (ROOT / page).read_text())
            for name in named:
                if "NAME" in name:
                    continue
                with self.subTest(page=page, name=name):
                    self.assertTrue((ROOT / name).exists(), f"{page} names {name}, which is gone")

    def test_links_between_documents_lead_somewhere(self):
        for path in files(".md"):
            for link in re.findall(r"\]\(([^)#\s]+)[^)]*\)", path.read_text()):
                if not re.match(r"[a-z]+:", link):
                    with self.subTest(page=name_of(path), link=link):
                        self.assertTrue((path.parent / link).exists())

    def test_methods_named_in_workings_have_a_page(self):
        for path in files(".h", ".cc", folder=ROOT / "core"):
            if path.stem.endswith("_test"):
                continue
            for name in re.findall(r"docs/methods/([\w-]+\.md)", path.read_text()):
                with self.subTest(source=name_of(path), page=name):
                    self.assertTrue((ROOT / "docs/methods" / name).exists())


class Guides(unittest.TestCase):
    """What the guides quote of pages and program."""

    def test_labels_in_the_tutorial_stand_on_the_pages(self):
        text = " ".join((ROOT / "docs/tutorial/first-closing.md").read_text().split())
        words = "\n".join(path.read_text() for path in files(".ts", folder=ROOT / "web/src/words"))
        labels = [label for label in re.findall(r"\*\*(.+?)\*\*", text) if label != "bold"]
        self.assertGreater(len(labels), 50)
        for label in labels:
            with self.subTest(label):
                self.assertIn(f'"{label}"', words, "no page says so")

    def test_pictures_of_the_tutorial_are_shown_and_small(self):
        folder = ROOT / "docs/tutorial"
        shown = set(re.findall(r"!\[[^\]]+\]\(([^)]+)\)", (folder / "first-closing.md").read_text()))
        self.assertEqual(shown, {path.name for path in folder.glob("*.png")})
        self.assertGreater(len(shown), 5)
        for name in sorted(shown):
            with self.subTest(name):
                data = (folder / name).read_bytes()
                # The signature of a PNG file: W3C PNG, third edition, 5.2.
                self.assertEqual(data[:8], b"\x89PNG\r\n\x1a\n")
                self.assertLess(len(data), 150_000)

    def test_options_in_the_install_guide_are_those_of_the_program(self):
        text = (ROOT / "docs/install.md").read_text()
        known = "\n".join(path.read_text() for path in files(".cc", folder=ROOT / "app/cli"))
        served = re.findall(r"--[a-z-]+", "\n".join(re.findall(r"steamworthy serve .*|`--.*?`", text)))
        self.assertGreater(len(served), 5)
        for option in served:
            with self.subTest(option):
                self.assertRegex(known, rf'"{option}"')


if __name__ == "__main__":
    main()
