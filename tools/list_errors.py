#!/usr/bin/env python3
"""Lists the error codes of the sources, and writes them into docs/reference/errors.md.

    tools/list_errors.py            rewrites the table: new codes are added without a meaning, codes
                                    that are gone are dropped, meanings written by hand are kept
    tools/list_errors.py --list     prints the codes with the files that use them

An error code is a string "room.problem" in the sources of a room, outside its tests, that is not
the key of a sentence in core/words and not the key of a figure. tests/docs_test.py holds the table
to this."""
import pathlib
import re
import sys

ROOT = pathlib.Path(__file__).resolve().parent.parent
PAGE = ROOT / "docs/reference/errors.md"
CODE = re.compile(r'"([a-z][a-z_]*)((?:\.[a-z][a-z0-9_]*)+)"')
ROW = re.compile(r"^\| `([a-z_.0-9]+)` \| (.*?) *\|$")
HEAD = "| code | meaning |\n| --- | --- |\n"
# Ends of strings that look like a code and are the name of a file.
FILE_NAMES = (".h", ".cc", ".toml", ".json", ".md", ".csv", ".txt", ".bib", ".pdf", ".svg", ".png")


def rooms():
    lines = (ROOT / "ROOMS").read_text().splitlines()
    return {line.split()[0].split("/")[1]: line.split()[0] for line in lines
            if line.startswith(("core/", "app/"))}


def strings(path):
    """The strings "room.something" of a source file, comments left out."""
    code = re.sub(r"//[^\n]*", "", path.read_text())
    for room, rest in CODE.findall(code):
        if not (room + rest).endswith(FILE_NAMES):
            yield room, room + rest


def keys_of_words():
    """Every key that core/words has a sentence or a name for."""
    found = set()
    for path in (ROOT / "core/words").glob("*"):
        if path.suffix in (".cc", ".h", ".inc") and not path.name.endswith("_test.cc"):
            found |= {whole for _, whole in strings(path)}
    return found


def codes():
    """The error codes of the sources: code -> the files that use it."""
    known = rooms()
    words = keys_of_words()
    found = {}
    for room, folder in known.items():
        if room in ("words", "testing"):
            continue
        for path in sorted((ROOT / folder).glob("*")):
            if path.suffix not in (".cc", ".h") or path.stem.endswith("_test"):
                continue
            for first, whole in strings(path):
                if first in known and whole not in words:
                    found.setdefault(whole, []).append(path.relative_to(ROOT).as_posix())
    return found


def meanings():
    """The table as it stands: code -> meaning."""
    if not PAGE.exists():
        return {}
    rows = (ROW.match(line) for line in PAGE.read_text().splitlines())
    return {row.group(1): row.group(2) for row in rows if row}


def main():
    found = codes()
    if sys.argv[1:] == ["--list"]:
        for code in sorted(found):
            print(code, " ".join(sorted(set(found[code]))))
        return
    known = meanings()
    text = PAGE.read_text()
    start = text.index(HEAD) + len(HEAD)
    rows = "".join(f"| `{code}` | {known.get(code, '')} |\n" for code in sorted(found))
    PAGE.write_text(text[:start] + rows)
    empty = [code for code in sorted(found) if not known.get(code)]
    print(f"{len(found)} codes, {len(empty)} without a meaning")


if __name__ == "__main__":
    main()
