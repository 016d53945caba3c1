"""Reads and verifies export files, from docs/formats/record.md alone. See record.py."""
import hashlib

from support.record import Cut, Flaw, Octets, device_of, read_fact, verifies


class Export:
    """What a file holds; `wrong` are tokens of what is wrong with the file itself."""

    def __init__(self, data):
        self.keys, self.facts, self.blobs, self.quarantined, self.wrong = [], [], [], [], []
        self.head = None
        octets = Octets(data)
        try:
            if octets.take(8) != b"SWEXPORT":
                self.wrong.append("no_export")
                return
            if octets.whole(2) != 1:
                self.wrong.append("export_format")
                return
        except Cut:
            self.wrong.append("no_export")
            return
        self.read_sections(data, octets)

    def read_sections(self, data, octets):
        ended = False
        while octets.left() and not ended:
            at = octets.at
            try:
                kind = octets.take(4)
                payload = octets.take(octets.whole(8))
            except Cut:
                self.wrong.append("cut_short")
                return
            try:
                if (kind == b"HEAD") != (at == 10):
                    raise Cut
                ended = self.read_section(kind, payload, data[:at])
            except (Cut, UnicodeDecodeError):
                self.wrong.append("section")
        if not ended:
            self.wrong.append("cut_short")
        elif octets.left():
            self.wrong.append("section")

    def read_section(self, kind, payload, before):
        octets = Octets(payload)
        if kind == b"HEAD":
            when = octets.whole(8, signed=True)
            program = octets.take(octets.whole(2)).decode()
            selection, closing = octets.whole(1), octets.take(16)
            if octets.left() or selection not in (0, 2) or (selection == 0 and any(closing)):
                raise Cut
            self.head = (when, program, selection, closing)
        elif kind == b"DKEY":
            if len(payload) != 32:
                raise Cut
            self.keys.append(payload)
        elif kind == b"FACT":
            self.facts.append((octets.whole(8), octets.take(64), octets.take(octets.left())))
        elif kind == b"BLOB":
            self.blobs.append(payload)
        elif kind == b"QUAR":
            when = octets.whole(8, signed=True)
            reason = octets.take(octets.whole(2)).decode()
            self.quarantined.append((when, reason, octets.take(64), octets.take(octets.left())))
        elif kind == b"DONE":
            counts = [octets.whole(8) for _ in range(4)]
            digest = octets.take(32)
            if octets.left():
                raise Cut
            held = [len(x) for x in (self.facts, self.keys, self.blobs, self.quarantined)]
            if counts != held:
                self.wrong.append("file_counts")
            if digest != hashlib.sha256(before).digest():
                self.wrong.append("file_hash")
            return True
        else:
            raise Cut
        return False


def check_feeds(facts):
    """Rules 2 to 6 of the document: yields tokens."""
    numbered = {}
    for fact in facts:
        feed = (fact["scope"], fact["scope_id"], fact["device"])
        numbered.setdefault(feed, {}).setdefault(fact["device_seq"], []).append(fact)
    for numbers in numbered.values():
        before = 0
        for seq in sorted(numbers):
            same = numbers[seq]
            distinct = {fact["hash"] for fact in same}
            yield from ["forked"] * (len(distinct) - 1) + ["doubled"] * (len(same) - len(distinct))
            if seq != before + 1:
                yield "gap"
            elif before:
                for fact in same:
                    earlier = [e for e in numbers[before] if e["hash"] == fact["prev_hash"]]
                    if not earlier:
                        yield "broken_chain"
                        continue
                    seen = {device: number for device, number, _ in fact["seen"]}
                    for device, number, _ in earlier[0]["seen"]:
                        if seen.get(device, 0) < number:
                            yield "seen_shrank"
            before = seq
    reported = set()
    for fact in facts:
        for device, number, digest in fact["seen"]:
            there = numbered.get((fact["scope"], fact["scope_id"], device), {}).get(number, [])
            if digest in [other["hash"] for other in there]:
                continue
            token = "seen_differs" if there else "seen_missing"
            where = (fact["scope_id"], device, number)
            if where not in reported:
                reported.add(where)
                yield token
    by_id = {}
    for fact in facts:
        by_id.setdefault(fact["id"], set()).add(fact["hash"])
    for hashes in by_id.values():
        yield from ["same_id"] * (len(hashes) - 1)


def verify(data):
    """The tokens of all that is wrong or missing, sorted."""
    export = Export(data)
    found = list(export.wrong)
    keys = {device_of(key): key for key in export.keys}
    facts = []
    for _, signature, encoded in export.facts:
        try:
            fact = read_fact(encoded)
        except Flaw:
            found.append("unreadable")
            continue
        facts.append(fact)
        key = keys.get(fact["device"])
        if key is None:
            found.append("no_key")
        elif not verifies(key, encoded, signature):
            found.append("bad_signature")
    found += [token for token in check_feeds(facts) if token != "doubled"]
    blobs = {hashlib.sha256(blob).digest() for blob in export.blobs}
    named = {blob for fact in facts for blob in fact["blobs"]}
    found += ["blob_missing"] * len(named - blobs)
    return sorted(found)
