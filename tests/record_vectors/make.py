#!/usr/bin/python3
"""Makes tests/record_vectors/facts.json: facts with their bytes, hash and signature, and bytes that
are no fact. Made by the second writer, tests/support/record.py; the program's own is held to it."""
import hashlib
import json
import pathlib
import sys
import uuid

sys.path.insert(0, str(pathlib.Path(__file__).resolve().parent.parent))
from support import record  # noqa: E402

CLOSING = uuid.UUID("0193690e-7a00-7c00-8000-0000000000c1").bytes
PLANT = uuid.UUID("01936900-0000-7000-8000-0000000000a0").bytes
KEYS = {name: record.Key(f"steamworthy vector {name}") for name in ("one", "two", "node")}
NOON = 1764072000000  # 2025-11-25T12:00:00Z


def identity(number):
    return uuid.UUID(f"0193690e-7b{number:02x}-7abc-9def-{number:012x}").bytes


def facts():
    made, heads, feeds = [], {}, {}

    def add(name, key, body, scope=2, person="P-01", kind="closure.opened", see=(), **other):
        signer = KEYS[key]
        scope_id = CLOSING if scope == 2 else PLANT
        seq, prev = feeds.get((scope, key), (0, bytes(32)))
        number = len(made) + 1
        fact = {"id": identity(number), "scope": scope, "scope_id": scope_id,
                "device": signer.device, "device_seq": seq + 1, "prev_hash": prev,
                "seen": sorted((KEYS[k].device, *heads[k]) for k in see),
                "person": person, "kind": kind, "kind_version": 1,
                "happened_at_ms": NOON + 60000 * number, "happened_precision_ms": 60000,
                "recorded_at_ms": NOON + 60000 * number + 2500, "utc_offset_min": 60,
                "blobs": [], "body": body}
        fact.update(other)
        data = record.write_fact(fact)
        digest = hashlib.sha256(data).digest()
        feeds[(scope, key)] = (fact["device_seq"], digest)
        if scope == 2:
            heads[key] = (fact["device_seq"], digest)
        made.append({"name": name, **record.shown(fact), "public_key": signer.public.hex(),
                     "bytes": data.hex(), "hash": digest.hex(),
                     "signature": signer.sign(data).hex()})

    photo = hashlib.sha256(b"a photo").digest()
    trace = hashlib.sha256(b"a trace").digest()
    add("the first of a feed", "one", b'{"closure": "FW-A07"}')
    add("another device that has seen it, with two blobs", "two",
        '{"place": "SD-3", "drops_per_min": 4, "note": "über der Naht, 1\u20442 Zoll"}'.encode(),
        see=["one"], person="Zażółć Gęślą", kind="leak.found", blobs=sorted([photo, trace]))
    add("the second of a feed", "one", b'{"closure": "FW-A08"}', see=["two"])
    add("of the plant", "node", b'{"person": "P-02", "name": "A. Hand"}', scope=1,
        kind="person.enrolled", person="P-01")
    add("a checkpoint", "node", b"{}", see=["one", "two"], person="", kind="record.checkpoint",
        happened_precision_ms=0)
    add("an empty body, the earliest times, west of Greenwich", "two", b"", see=["one", "node"],
        kind="a.b", kind_version=65535, happened_at_ms=record.EARLIEST_MS,
        recorded_at_ms=record.EARLIEST_MS, utc_offset_min=-570,
        happened_precision_ms=4294967295)
    add("the latest times, a body that is no text", "two", bytes(range(256)),
        see=["one", "node"], kind="a" * 62 + ".z", person="\u00e9" * 100,
        happened_at_ms=record.LATEST_MS, recorded_at_ms=record.LATEST_MS, utc_offset_min=1080)
    return made


def flawed(row):
    """Bytes with one flaw each."""
    data = bytes.fromhex(row["bytes"])
    good = record.read_fact(data)
    other = KEYS["node"].device
    hash1, hash2 = bytes([1]) * 32, bytes([2]) * 32

    def with_(**changed):
        return record.write_fact({**good, **changed})

    header = record.write_header(good)
    rows = [
        ("cut in the header", "too_short", data[:40]),
        ("nothing at all", "too_short", b""),
        ("the last byte missing", "too_short", data[:-1]),
        ("a byte too many", "too_long", data + b"\n"),
        ("another magic", "magic", b"SWFACX" + data[6:]),
        ("format 2", "format", record.frame(header, good["body"], form=2)),
        ("a header with a byte too many", "header_length",
         record.frame(header + b"\0", good["body"])),
        ("a header with a byte too few", "header_length", record.frame(header[:-1], good["body"])),
        ("an id of version 4", "id", with_(id=uuid.UUID(bytes=good["id"], version=4).bytes)),
        ("scope 3", "scope", with_(scope=3)),
        ("a scope's id of zeros", "scope", with_(scope_id=bytes(16))),
        ("number 0", "device_seq", with_(device_seq=0)),
        ("number 2^63", "device_seq", with_(device_seq=1 << 63, prev_hash=hash1)),
        ("the first with a hash before it", "prev_hash", with_(prev_hash=hash1)),
        ("the second without", "prev_hash", with_(device_seq=2)),
        ("has seen itself", "seen", with_(seen=[(good["device"], 1, hash1)])),
        ("has seen number 0", "seen", with_(seen=[(other, 0, hash1)])),
        ("has seen number 2^63", "seen", with_(seen=[(other, 1 << 63, hash1)])),
        ("has seen one twice", "seen", with_(seen=[(other, 1, hash1), (other, 2, hash2)])),
        ("a control character in the person", "person", with_(person="P\n1")),
        ("no UTF-8 in the person", "person", with_(person=b"P\xff")),
        ("an overlong form in the person", "person", with_(person=b"\xc0\xaf")),
        ("a person of 201 bytes", "person", with_(person="p" * 201)),
        ("a kind of one word", "kind", with_(kind="opened")),
        ("a kind in capitals", "kind", with_(kind="Closure.opened")),
        ("a kind of 65 bytes", "kind", with_(kind="a." + "a" * 63)),
        ("version 0 of a kind", "kind_version", with_(kind_version=0)),
        ("before the year 1", "time", with_(happened_at_ms=record.EARLIEST_MS - 1)),
        ("after the year 9999", "time", with_(recorded_at_ms=record.LATEST_MS + 1)),
        ("19 hours east", "offset", with_(utc_offset_min=19 * 60)),
        ("blobs that fall", "blobs", with_(blobs=[hash2, hash1])),
        ("a blob twice", "blobs", with_(blobs=[hash1, hash1])),
        ("a body said to be too long", "body",
         data[:12 + len(header)] + (record.LONGEST_BODY + 1).to_bytes(4, "big") + b"{}"),
    ]
    return [{"name": n, "flaw": f, "bytes": b.hex()} for n, f, b in rows]


def main():
    made = facts()
    text = {"facts": made, "flawed": flawed(made[0])}
    path = pathlib.Path(__file__).with_name("facts.json")
    path.write_text(json.dumps(text, indent=1, ensure_ascii=False) + "\n")
    print(f"{len(made)} facts, {len(text['flawed'])} flawed")


if __name__ == "__main__":
    main()
