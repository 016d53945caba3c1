"""Reads papers back with programs that are not ours: poppler, qpdf, zbar, expat, openpyxl."""
import io
import json
import pathlib
import re
import subprocess
import tempfile
import unittest
import xml.etree.ElementTree as ElementTree

import openpyxl

from support.harness import ROOT, main, run

WATERTUBE = ROOT / "examples/watertube.toml"
ORDINARY = ["--work", "gaskets", "--rule", "us-marine-ordinary", "--authority", "an inspector",
            "--ceiling", "48 bar", "--hold", "30 min"]
KINDS = ["test-sheet", "pressure-log", "closures", "walkdown", "tally", "handover", "leave-safe",
         "taking-over", "labels", "temporaries", "isolations", "stores"]
SVG = "{http://www.w3.org/2000/svg}"


def output(*command):
    done = subprocess.run([str(word) for word in command], capture_output=True, text=True)
    if done.returncode:
        raise AssertionError(f"{command[0]}: {done.stderr}")
    return done.stdout


def plain(text):
    """Blanks and line ends alike: where lines break is not what is read back."""
    return " ".join(text.replace("\u00a0", " ").split())


class Made(unittest.TestCase):
    @classmethod
    def setUpClass(cls):
        cls.folder = tempfile.TemporaryDirectory()
        cls.path = pathlib.Path(cls.folder.name)

    @classmethod
    def tearDownClass(cls):
        cls.folder.cleanup()

    def make(self, *arguments, name="out.pdf", kind="paper"):
        out = self.path / name
        done = run(kind, *arguments, "-o", out)
        self.assertEqual(done.returncode, 0, done.stderr)
        return out


class Pdf(Made):
    def test_every_kind_is_a_sound_tagged_file_with_its_fonts_in_it(self):
        for kind in KINDS:
            for example, more in ((WATERTUBE, ORDINARY), (ROOT / "examples/firetube.toml", []),
                                  (ROOT / "examples/minimal.toml", [])):
                with self.subTest(kind=kind, example=example.stem):
                    out = self.make(kind, example, *more)
                    self.assertIn("No syntax or stream encoding errors", output("qpdf", "--check", out))
                    info = output("pdfinfo", out)
                    self.assertRegex(info, r"Tagged: +yes")
                    self.assertRegex(info, r"Title: +\S+")
                    self.assertRegex(info, r"Creator: +Steamworthy \d")
                    fonts = output("pdffonts", out).splitlines()[2:]
                    self.assertTrue(fonts)
                    for font in fonts:
                        self.assertIn("DejaVuSansCondensed", font)
                        # embedded, a subset, with a table from glyphs to letters
                        self.assertRegex(font, r" yes yes yes +\d")

    def test_structure_has_headings_tables_and_figures(self):
        out = self.make("test-sheet", WATERTUBE, *ORDINARY)
        structure = output("pdfinfo", "-struct", out)
        self.assertTrue(structure.startswith("Document"))
        for element in ("H1", "Table", "TR", "TH", "TD", "P (block)", "Figure"):
            self.assertIn(element, structure)

    def test_the_outline_names_the_sections(self):
        out = self.make("test-sheet", WATERTUBE, *ORDINARY)
        qdf = output("qpdf", "--json", "--json-key=outlines", out)
        titles = [item["title"] for item in json.loads(qdf)["outlines"]]
        self.assertIn("Safety valves", titles)

    def test_each_figure_of_the_sheet_is_there_with_its_unit(self):
        for units in ("si", "us"):
            out = self.make("test-sheet", WATERTUBE, *ORDINARY, "--units", units)
            text = plain(output("pdftotext", "-layout", out, "-"))
            sheet = plain(run("sheet", WATERTUBE, *ORDINARY, "--units", units).stdout)
            values = set(re.findall(r"\): ([-\d.]+ (?:bar gauge|psig|bar|psi|°C|°F|MPa|ksi|%|mL/min))(?= )",
                                    sheet))
            self.assertGreater(len(values), 60)
            for value in values:
                with self.subTest(units=units, value=value):
                    self.assertIn(value, text)

    def test_sizes_of_pages(self):
        for size, points in (("a4", "595.276 x 841.89"), ("letter", "612 x 792")):
            out = self.make("tally", WATERTUBE, "--paper", size)
            self.assertIn(points, output("pdfinfo", out))

    def test_the_same_input_gives_the_same_bytes_and_a_day_shows(self):
        first = self.make("closures", WATERTUBE, name="a.pdf").read_bytes()
        second = self.make("closures", WATERTUBE, name="b.pdf").read_bytes()
        self.assertEqual(first, second)
        dated = self.make("closures", WATERTUBE, "--date", "2026-11-25", name="c.pdf")
        self.assertIn("2026", output("pdfinfo", dated))
        self.assertIn("2026-11-25", output("pdftotext", dated, "-"))

    def test_the_code_at_the_foot_says_what_the_foot_says(self):
        out = self.make("handover", WATERTUBE, *ORDINARY)
        output("pdftoppm", "-r", "200", "-png", "-f", "1", "-l", "1", out, self.path / "page")
        read = output("zbarimg", "--quiet", "--raw", next(self.path.glob("page-*.png"))).split()
        text = output("pdftotext", out, "-")
        self.assertEqual(read[0], "steamworthy")
        self.assertEqual(read[2:4], ["handover", "B1"])
        self.assertIn(read[4], text)
        self.assertEqual(read[5], "us-marine-ordinary")

    def test_labels_can_be_read_by_a_phone(self):
        # A reader looks at one label at a time; zbar, given a page of them, mixes their corners.
        out = self.make("labels", WATERTUBE)
        text = output("pdftotext", "-f", "1", "-l", "1", out, "-")
        dots = 150 / 25.4
        column, row, left, top = 182.0 / 3, 27.0, 14.0, 23.8  # mm, as labels() lays them out
        found = set()
        for cell in range(27):
            corner = (left + cell % 3 * column, top + cell // 3 * row)
            box = [str(round(v * dots)) for v in (*corner, column, row)]
            picture = self.path / "label"
            output("pdftoppm", "-r", "150", "-png", "-singlefile", "-f", "1", "-l", "1",
                   "-x", box[0], "-y", box[1], "-W", box[2], "-H", box[3], out, picture)
            read = output("zbarimg", "--quiet", "--raw", f"{picture}.png").split()
            self.assertEqual(len(read), 1)
            boiler, tag = read[0].split("/")
            self.assertEqual(boiler, "B1")
            self.assertIn(tag, text)
            found.add(tag)
        self.assertEqual(len(found), 27)

    def test_a_hash_tells_inputs_apart(self):
        def hash_of(*arguments):
            text = output("pdftotext", self.make("tally", WATERTUBE, *arguments), "-")
            return re.search(r"inputs ([0-9a-f]{12})", text).group(1)
        self.assertEqual(hash_of(), hash_of("--units", "us"))
        self.assertNotEqual(hash_of(), hash_of("--hold", "31 min"))
        # As docs/methods/paper.md tells to compute it.
        digest = output("sha256sum", WATERTUBE).split()[0]
        line = f"watertube.toml {digest}\n"
        by_hand = subprocess.run(["sha256sum"], input=line, capture_output=True, text=True).stdout
        self.assertEqual(hash_of(), by_hand[:12])


CLOSING = ["--facts", ROOT / "examples/demo-plant.jsonl", "--facts", ROOT / "examples/demo-closing.jsonl"]


def demo_facts():
    lines = (ROOT / "examples/demo-closing.jsonl").read_text().splitlines()
    return [json.loads(line) for line in lines if line and not line.startswith("#")]


def bodies(kind):
    return [fact["body"] for fact in demo_facts() if fact["kind"] == kind]


class Filled(Made):
    """Papers of the demo closing: what its file says is looked for in what poppler reads back."""

    def text(self, kind, *more, name="filled.pdf"):
        out = self.make(kind, WATERTUBE, *ORDINARY, *CLOSING, *more, name=name)
        self.assertIn("No syntax or stream encoding errors", output("qpdf", "--check", out))
        return plain(output("pdftotext", "-layout", out, "-"))

    def test_every_closure_has_its_state(self):
        for more in ([], ["--paper", "letter", "--units", "us"]):
            out = self.make("closures", WATERTUBE, *ORDINARY, *CLOSING, *more, name="closures.pdf")
            rows = {}
            raw = output("pdftotext", "-layout", out, "-")
            for body in bodies("closure.opened") + bodies("closure.not_opened"):
                rows.setdefault(body["closure"], [])
            for line in raw.splitlines():
                first = line.split()[:1]
                if first and first[0] in rows:
                    rows[first[0]].append(line)
            self.assertEqual(len(rows), 116)
            for tag, lines in rows.items():
                with self.subTest(tag):
                    self.assertTrue(any(len(line.split()) > 4 for line in lines))
            text = plain(output("pdftotext", "-raw", out, "-"))
            pages = raw.count("\f")  # each with the legend
            hardened = {body["closure"] for body in bodies("closure.hardened_up")}
            self.assertEqual(text.count("hardened up, done"), len(hardened) + pages)
            for lot in {body["lot"] for body in bodies("gasket.fitted")}:
                self.assertIn(lot, text)

    def test_the_walkdown_has_every_place_seen_and_every_leak(self):
        text = self.text("walkdown")
        dry = {body["place"] for body in bodies("place.seen_dry")}
        self.assertGreater(len(dry), 200)
        self.assertGreaterEqual(text.count("✓"), len(dry))
        for body in bodies("leak.found"):
            self.assertIn(body["leak"], text)
            self.assertIn(body["place"], text)
        for body in bodies("leak.repaired"):
            self.assertIn(body["how"].split()[0], text)

    def test_every_temporary_isolation_and_lock(self):
        temporaries, isolations = self.text("temporaries"), self.text("isolations")
        for body in bodies("temporary.on"):
            self.assertRegex(temporaries, rf"{body['temporary']}\b.*{body['where']}")
        for body in bodies("isolation.made"):
            self.assertIn(body["lock"], isolations)

    def test_who_went_in_with_what_and_who_counted(self):
        text = self.text("tally")
        for body in bodies("tally.in"):
            self.assertIn(body["who"], text)
        for body in bodies("tool.in"):
            self.assertIn(body["tool"], text)
        for body in bodies("space.counted"):
            self.assertIn(body["second"], text)
        self.assertNotIn("still inside", text)

    def test_the_pressure_log_has_every_reading(self):
        text = self.text("pressure-log")
        for body in bodies("reading.taken"):
            self.assertIn(f"{body['pressure_bar_gauge']:.2f}", text)
        self.assertIn("psig", self.text("pressure-log", "--units", "us"))

    def test_taking_over_has_the_signatures(self):
        text = self.text("taking-over")
        for kind in ("boiler.given", "boiler.received", "signature.given"):
            for fact in demo_facts():
                if fact["kind"] == kind:
                    self.assertIn(fact["person"], text)
                    self.assertIn(f"{fact['device']}/{fact['device_seq']}", text)

    def test_the_record_has_people_leaks_findings_and_says_that_lines_prove_nothing(self):
        out = self.make(WATERTUBE, ROOT / "examples/holds/demo-hold.csv", "--test",
                        ROOT / "examples/holds/demo-hold.toml", *CLOSING, kind="record", name="r.pdf")
        text = plain(output("pdftotext", "-layout", out, "-"))
        people = {fact["person"] for fact in demo_facts()}
        people |= {body["who"] for kind in ("tally.in", "attendant.posted", "post.taken", "vent.manned")
                   for body in bodies(kind)}
        self.assertGreater(len(people), 7)
        for person in people:
            self.assertIn(person, text)
        for words in ("K1", "K2", "K3", "F1", "the ball does not come out", "nobody signed"):
            self.assertIn(words, text)

    def test_from_a_store_the_heads_are_those_of_the_export(self):
        store = self.path / "plant.steamworthy"
        self.assertEqual(run("log", "create", store).returncode, 0)
        lines = self.path / "lines.jsonl"
        lines.write_text("\n".join(
            json.dumps({"person": "R. Lind", "kind": kind, "body": body}) for kind, body in (
                ("closing.started", {"boiler": "B1", "description_sha256": "0" * 64}),
                ("temporary.on", {"temporary": "T-1", "where": "SV-1"}))))
        done = run("log", "append", store, lines, "--closing", "new")
        receipts = [line.split() for line in done.stdout.splitlines() if re.match(r"\d+ \S+ [0-9a-f]{64}$", line)]
        closing = re.search(r"closing new begins: (\S+)", done.stdout).group(1)
        out = self.make(WATERTUBE, ROOT / "examples/holds/demo-hold.csv", "--log", store, "--closing", closing,
                        kind="record", name="s.pdf")
        text = plain(output("pdftotext", "-layout", out, "-"))
        self.assertIn(receipts[-1][2], text)
        self.assertIn("another description", text)
        again = self.make("temporaries", WATERTUBE, "--log", store, name="t.pdf")
        self.assertIn("R. Lind", output("pdftotext", again, "-"))
        done = run("paper", "tally", ROOT / "examples/firetube.toml", "--log", store, "-o", self.path / "x.pdf")
        self.assertEqual(done.returncode, 1)
        self.assertIn("service.other_boiler", done.stderr)

    def test_a_closing_that_is_not_there(self):
        done = run("paper", "tally", WATERTUBE, *CLOSING, "--closing", "B9", "-o", self.path / "x.pdf")
        self.assertEqual(done.returncode, 1)
        self.assertIn("service.no_closing", done.stderr)
        done = run("paper", "tally", WATERTUBE, "--closing", "B9", "-o", self.path / "x.pdf")
        self.assertEqual(done.returncode, 2)


class Record(Made):
    def test_says_what_hold_says_and_reads_back(self):
        log = ROOT / "tests/traces/16_leak_big.csv"
        test = ROOT / "tests/traces/16_leak_big.meta.json"
        out = self.make(WATERTUBE, log, "--test", test, kind="record", name="record.pdf")
        self.assertIn("No syntax or stream encoding errors", output("qpdf", "--check", out))
        text = plain(output("pdftotext", "-layout", out, "-"))
        for words in ("what the gauge says", "net loss over the hold", "16_leak_big.csv",
                      "16_leak_big.meta.json", "Places seen dry", "Instruments"):
            self.assertIn(words, text)
        first = out.read_bytes()
        again = self.make(WATERTUBE, log, "--test", test, kind="record", name="again.pdf")
        self.assertEqual(first, again.read_bytes())

    def test_without_a_test_file_the_gauge_cannot_tell(self):
        log = ROOT / "tests/traces/16_leak_big.csv"
        out = self.make(WATERTUBE, log, "--units", "us", kind="record", name="bare.pdf")
        text = plain(output("pdftotext", "-layout", out, "-"))
        self.assertIn("cannot tell", text)
        self.assertIn("psig", text)

    def test_a_log_that_is_none_is_refused(self):
        done = run("record", WATERTUBE, WATERTUBE, "-o", self.path / "x.pdf")
        self.assertEqual(done.returncode, 1)
        self.assertRegex(done.stderr, r"trace\.")


class Drawing(Made):
    def test_pdf_has_every_tag(self):
        out = self.make(WATERTUBE, kind="draw", name="drawing.pdf")
        words = set(output("pdftotext", out, "-").split())
        tags = {row[0].value for row in self.closures()}
        self.assertEqual(len(tags), 116)
        self.assertFalse(tags - words)

    def closures(self):
        out = self.make(WATERTUBE, kind="table", name="closures.xlsx")
        return list(openpyxl.load_workbook(out)["closures"].iter_rows(min_row=2))

    def test_svg_parses_and_its_text_is_text(self):
        self.make(WATERTUBE, kind="draw", name="view.svg")
        pages = sorted(self.path.glob("view-*.svg"))
        self.assertGreater(len(pages), 4)
        words = set()
        for page in pages:
            root = ElementTree.parse(page).getroot()
            self.assertEqual(root.tag, SVG + "svg")
            words |= {element.text for element in root.iter(SVG + "text")}
        for tag in ("SD-M1", "FH-A01", "FH", "from the front"):
            self.assertIn(tag, words)

    def test_png_is_a_page(self):
        out = self.make(ROOT / "examples/minimal.toml", kind="draw", name="minimal.png")
        self.assertTrue(out.read_bytes().startswith(b"\x89PNG\r\n\x1a\n"))

    def test_pages_of_svg_and_png_are_numbered(self):
        done = run("draw", WATERTUBE, "-o", self.path / "many.png")
        names = done.stdout.splitlines()
        self.assertTrue(names[0].endswith("many-01.png"))
        for name in names:
            self.assertTrue(pathlib.Path(name).exists())


class Spreadsheet(Made):
    def test_holds_the_numbers_of_the_sheet(self):
        out = self.make(WATERTUBE, *ORDINARY, kind="table", name="t.xlsx")
        book = openpyxl.load_workbook(out)
        sheet = json.loads(run("sheet", WATERTUBE, *ORDINARY, "--json").stdout)
        known = [f for s in sheet["sections"] for f in s["figures"]
                 if any(k.startswith("value_") for k in f)]
        rows = [row for row in book["figures"].iter_rows(min_row=2, values_only=True)
                if row[3] is not None]
        self.assertGreater(len(known), 200)
        in_json = [next(v for k, v in f.items() if k.startswith("value_") or k == "value") for f in known]
        in_book = [row[3] for row in rows]
        # Figures without a unit have no key that ends in one: they are compared by number alone.
        missing = [v for v in in_json if not any(abs(v - w) <= 1e-6 * max(1, abs(v)) for w in in_book)]
        # JSON and pages may differ in the unit of percents (fraction) and of large volumes.
        self.assertFalse(missing)
        for row in rows:
            self.assertIsInstance(row[3], (int, float))

    def test_heads_carry_units(self):
        for units, wanted in (("si", "level, m"), ("us", "level, ft")):
            out = self.make(WATERTUBE, "--units", units, kind="table", name="u.xlsx")
            heads = [cell.value for cell in openpyxl.load_workbook(out)["closures"][1]]
            self.assertIn(wanted, heads)

    def test_the_same_input_gives_the_same_bytes(self):
        first = self.make(WATERTUBE, kind="table", name="1.xlsx").read_bytes()
        second = self.make(WATERTUBE, kind="table", name="2.xlsx").read_bytes()
        self.assertEqual(first, second)
        openpyxl.load_workbook(io.BytesIO(first))


class Wrong(Made):
    def test_words_that_are_not_accepted(self):
        for wrong in (["paper", "poem", WATERTUBE, "-o", "x.pdf"],
                      ["paper", "tally", WATERTUBE, "-o", "x.doc"],
                      ["paper", "tally", WATERTUBE],
                      ["draw", WATERTUBE, "-o", "x.pdf", "--paper", "a3"],
                      ["draw", WATERTUBE, "-o", "x.pdf", "--date", "tomorrow"],
                      ["table", WATERTUBE, "-o", "x.pdf"]):
            done = run(*wrong)
            self.assertEqual(done.returncode, 2, wrong)

    def test_a_folder_that_is_not_there(self):
        done = run("draw", WATERTUBE, "-o", self.path / "no/such/x.pdf")
        self.assertEqual(done.returncode, 1)
        self.assertIn("cli.cannot_write", done.stderr)


if __name__ == "__main__":
    main()
