#!/usr/bin/env python3
"""Checks the sources against ROOMS: who includes whom, who may include JSON, TOML, SQL or PDF,
and that core calls no math function whose bits differ between machines.

Prints one line a fault and exits with 1 if there is any."""
import pathlib
import re
import sys

ROOT = pathlib.Path(__file__).resolve().parent.parent

# Headers that only some rooms may include.
ONLY = {
    r"nlohmann/|toml\+\+/": {"wire"},
    r"sqlite3\.h|libpq-fe\.h": {"store"},
    r"cairo|pango|xlsxwriter|qrencode": {"paper"},
    r"boost/": {"server"},
    r"CLI/": {"cli"},
    r"modbus": {"gauge"},
}
# design.md section 9: these differ between native and WebAssembly; numerics/math.h has our own.
UNSTABLE = re.compile(
    r"std::(exp|exp2|expm1|log|pow|sin|cos|tan|asin|acos|atan|atan2|sinh|cosh|tanh|cbrt|hypot|erf|erfc|"
    r"tgamma|lgamma|log1p|log2|log10|fma)\s*\(")
# Nothing in core reads a clock, a file, the environment, or randomness.
IMPURE = re.compile(
    r"#include <(fstream|filesystem|iostream|thread|mutex|random|ctime|atomic|future)>"
    r"|system_clock|steady_clock|\bgetenv\s*\(|\bfopen\s*\(|\brand\s*\(")
INCLUDE = re.compile(r'^\s*#\s*include\s*([<"])([^>"]+)[>"]')


def read_rooms():
    allowed = {}
    for line in (ROOT / "ROOMS").read_text().splitlines():
        words = line.split("#")[0].split()
        if not words:
            continue
        side, room = words[0].split("/")
        for other in words[1:]:
            if other not in allowed:
                yield_fault(f"ROOMS: {room} may not include {other}, which is not named above it")
        allowed[room] = (side, set(words[1:]))
    return allowed


FAULTS = []


def yield_fault(text):
    FAULTS.append(text)


def check_file(path, room, side, may, rooms):
    test = path.name.endswith(("_test.cc", "_test.h"))
    for number, line in enumerate(path.read_text().splitlines(), 1):
        where = f"{path.relative_to(ROOT)}:{number}"
        code = line.split("//")[0]
        found = INCLUDE.match(line)
        if found:
            name = found.group(2)
            if found.group(1) == '"':
                other = name.split("/")[0]
                if "/" not in name:
                    yield_fault(f"{where}: include \"{name}\" by its room: \"{room}/{name}\"")
                elif other not in rooms:
                    yield_fault(f"{where}: \"{name}\" is in no room of ROOMS")
                elif other != room and other not in may and not (test and other == "testing"):
                    yield_fault(f"{where}: {room} may not include {other} (see ROOMS)")
            else:
                for pattern, owners in ONLY.items():
                    if re.match(pattern, name) and room not in owners and not test:
                        yield_fault(f"{where}: only {', '.join(sorted(owners))} may include <{name}>")
        if side == "core" and not test:
            if UNSTABLE.search(code):
                yield_fault(f"{where}: use numerics/math.h: std's own gives other bits in WebAssembly")
            if IMPURE.search(line):
                yield_fault(f"{where}: core reads no clock, file, environment or randomness")


def main():
    rooms = read_rooms()
    count = 0
    for room, (side, may) in rooms.items():
        for path in sorted((ROOT / side / room).glob("*.*")):
            if path.suffix in (".h", ".cc"):
                check_file(path, room, side, may, rooms)
                count += 1
    for side in ("core", "app"):
        for folder in sorted((ROOT / side).iterdir()):
            if folder.is_dir() and folder.name not in rooms:
                yield_fault(f"{side}/{folder.name}: not in ROOMS")
    for fault in FAULTS:
        print(fault)
    if not FAULTS:
        print(f"check_rooms: {count} files keep to ROOMS")
    return 1 if FAULTS else 0


if __name__ == "__main__":
    sys.exit(main())
