"""A second reader, writer and verifier of the record, written from docs/formats/record.md alone.

It shares no code with the program: hashes are hashlib's, signatures python3-cryptography's. Where
the two disagree, one of them or the document is wrong."""
import hashlib
import re
import uuid

from cryptography.exceptions import InvalidSignature
from cryptography.hazmat.primitives import serialization
from cryptography.hazmat.primitives.asymmetric.ed25519 import Ed25519PrivateKey, Ed25519PublicKey

SCOPES = {1: "plant", 2: "closing"}
LONGEST_BODY = 4 << 20
EARLIEST_MS, LATEST_MS = -62135596800000, 253402300799999


class Flaw(Exception):
    """Bytes that are no fact, with the reason's token."""


class Cut(Exception):
    """The bytes ended too early."""


class Octets:
    def __init__(self, data):
        self.data, self.at = data, 0

    def left(self):
        return len(self.data) - self.at

    def take(self, count):
        if count > self.left():
            raise Cut
        self.at += count
        return self.data[self.at - count:self.at]

    def whole(self, size, signed=False):
        return int.from_bytes(self.take(size), "big", signed=signed)


def device_of(public_key):
    return hashlib.sha256(b"steamworthy device 1\n" + public_key).digest()[:16]


class Key:
    """A device's private key, made from a name so that vectors are the same each time."""

    def __init__(self, name):
        seed = hashlib.sha256(name.encode()).digest()
        self.private = Ed25519PrivateKey.from_private_bytes(seed)
        self.public = self.private.public_key().public_bytes(
            serialization.Encoding.Raw, serialization.PublicFormat.Raw)
        self.device = device_of(self.public)

    def sign(self, data):
        return self.private.sign(data)


def write_header(fact):
    out = fact["id"]
    out += bytes([fact["scope"]]) + fact["scope_id"]
    out += fact["device"] + fact["device_seq"].to_bytes(8, "big") + fact["prev_hash"]
    out += len(fact["seen"]).to_bytes(2, "big")
    for device, seq, digest in fact["seen"]:
        out += device + seq.to_bytes(8, "big") + digest
    for text in (fact["person"], fact["kind"]):
        data = text if isinstance(text, bytes) else text.encode()
        out += len(data).to_bytes(2, "big") + data
    out += fact["kind_version"].to_bytes(2, "big")
    out += fact["happened_at_ms"].to_bytes(8, "big", signed=True)
    out += fact["happened_precision_ms"].to_bytes(4, "big")
    out += fact["recorded_at_ms"].to_bytes(8, "big", signed=True)
    out += fact["utc_offset_min"].to_bytes(2, "big", signed=True)
    out += len(fact["blobs"]).to_bytes(2, "big") + b"".join(fact["blobs"])
    return out


def frame(header, body, magic=b"SWFACT", form=1):
    return (magic + form.to_bytes(2, "big") + len(header).to_bytes(4, "big") + header
            + len(body).to_bytes(4, "big") + body)


def write_fact(fact):
    return frame(write_header(fact), fact["body"])


def is_uuid7(data):
    return data[6] & 0xf0 == 0x70 and data[8] & 0xc0 == 0x80


def rising(items):
    return all(a < b for a, b in zip(items, items[1:]))


def read_header(data):
    octets, fact = Octets(data), {}
    fact["id"] = octets.take(16)
    fact["scope"] = octets.whole(1)
    fact["scope_id"] = octets.take(16)
    fact["device"] = octets.take(16)
    fact["device_seq"] = octets.whole(8)
    fact["prev_hash"] = octets.take(32)
    fact["seen"] = [(octets.take(16), octets.whole(8), octets.take(32))
                    for _ in range(octets.whole(2))]
    fact["person"] = octets.take(octets.whole(2))
    fact["kind"] = octets.take(octets.whole(2))
    fact["kind_version"] = octets.whole(2)
    fact["happened_at_ms"] = octets.whole(8, signed=True)
    fact["happened_precision_ms"] = octets.whole(4)
    fact["recorded_at_ms"] = octets.whole(8, signed=True)
    fact["utc_offset_min"] = octets.whole(2, signed=True)
    fact["blobs"] = [octets.take(32) for _ in range(octets.whole(2))]
    if octets.left():
        raise Cut
    return fact


def check_fields(fact):
    """The conditions on fields, in the order of the document's table."""
    seen = fact["seen"]
    person_bad = len(fact["person"]) > 200
    try:
        person_bad |= any(ord(c) < 0x20 or ord(c) == 0x7f for c in fact["person"].decode())
    except UnicodeDecodeError:
        person_bad = True
    kind = fact["kind"].decode("latin-1")
    times = (fact["happened_at_ms"], fact["recorded_at_ms"])
    for token, bad in (
            ("id", not is_uuid7(fact["id"])),
            ("scope", fact["scope"] not in SCOPES or not is_uuid7(fact["scope_id"])),
            ("device_seq", not 0 < fact["device_seq"] < 1 << 63),
            ("prev_hash", (fact["device_seq"] == 1) != (fact["prev_hash"] == bytes(32))),
            ("seen", len(seen) > 1000 or not rising([s[0] for s in seen])
             or any(s[0] == fact["device"] or not 0 < s[1] < 1 << 63 for s in seen)),
            ("person", person_bad),
            ("kind", not re.fullmatch(r"[a-z][a-z0-9_]*(\.[a-z][a-z0-9_]*)+", kind)
             or len(kind) > 64),
            ("kind_version", fact["kind_version"] == 0),
            ("time", not all(EARLIEST_MS <= t <= LATEST_MS for t in times)),
            ("offset", abs(fact["utc_offset_min"]) > 18 * 60),
            ("blobs", len(fact["blobs"]) > 1000 or not rising(fact["blobs"]))):
        if bad:
            raise Flaw(token)


def read_fact(data):
    octets = Octets(data)
    try:
        if octets.take(6) != b"SWFACT":
            raise Flaw("magic")
        if octets.whole(2) != 1:
            raise Flaw("format")
        header = octets.take(octets.whole(4))
        length = octets.whole(4)
        if length > LONGEST_BODY:
            raise Flaw("body")
        body = octets.take(length)
    except Cut:
        raise Flaw("too_short") from None
    if octets.left():
        raise Flaw("too_long")
    try:
        fact = read_header(header)
    except Cut:
        raise Flaw("header_length") from None
    check_fields(fact)
    fact["body"] = body
    fact["hash"] = hashlib.sha256(data).digest()
    return fact


def verifies(public_key, data, signature):
    try:
        Ed25519PublicKey.from_public_bytes(public_key).verify(signature, data)
        return True
    except InvalidSignature:
        return False


def shown(fact):
    """A fact as the vectors show it."""
    text = {name: fact[name] for name in ("device_seq", "kind_version", "happened_at_ms",
                                          "happened_precision_ms", "recorded_at_ms",
                                          "utc_offset_min", "person", "kind")}
    text.update(id=str(uuid.UUID(bytes=fact["id"])), scope=SCOPES[fact["scope"]],
                scope_id=str(uuid.UUID(bytes=fact["scope_id"])), device=fact["device"].hex(),
                prev_hash=fact["prev_hash"].hex(), body=fact["body"].hex(),
                seen=[{"device": d.hex(), "device_seq": n, "hash": h.hex()}
                      for d, n, h in fact["seen"]],
                blobs=[blob.hex() for blob in fact["blobs"]])
    return text
