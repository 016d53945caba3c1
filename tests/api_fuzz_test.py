"""A small fuzzer driven by the description of the API: calls that keep to it, and calls that break it
in one place, in an order that a seed fixes. No call may be answered by 500, every refusal has the
one shape of an error, and the program lives on. STEAMWORTHY_FUZZ_SECONDS says for how long."""
import json
import os
import random
import re
import time
import unittest

from support.harness import ROOT, main
from support.served import Served, Visitor

SECONDS = float(os.environ.get("STEAMWORTHY_FUZZ_SECONDS")
                or (600 if os.environ.get("STEAMWORTHY_LONG") else 10))
SEED = int(os.environ.get("STEAMWORTHY_FUZZ_SEED", "1"))
DOC = json.loads((ROOT / "docs/formats/openapi.json").read_text())
ODD = ["", " ", "0", "-1", "1e400", "9" * 40, "\u0000", "\u2028", "é" * 300, "../..", "'; --", "{}", "null",
       "true", "%00", "\ud7ff", "a" * 5000, "<b>", "NaN"]
ODD_JSON = [None, True, False, 0, -1, 2 ** 63, 1e308, "", "x", [], {}, [[]], [None], {"": None}, "é" * 300]
# Calls that would end the run: the way out of the plant, and a stream that has no end.
LEAVE_OUT = {"sign_out", "end_session", "remove_person", "revoke_device", "set_secret", "events"}


class Maker:
    """Makes values by a schema, with the names that the plant really has among them."""

    def __init__(self, chance, names):
        self.chance, self.names = chance, names

    def value(self, schema, depth=0):
        if "$ref" in schema:
            return self.value(DOC["components"]["schemas"][schema["$ref"].split("/")[-1]], depth)
        if "anyOf" in schema:
            return self.value(self.chance.choice(schema["anyOf"]), depth)
        if "enum" in schema:
            return self.chance.choice(schema["enum"])
        kind = schema.get("type", "object")
        if isinstance(kind, list):
            kind = self.chance.choice(kind)
        if kind == "object":
            fields = schema.get("properties", {})
            needed = schema.get("required", [])
            return {name: self.value(part, depth + 1) for name, part in fields.items()
                    if name in needed or self.chance.random() < 0.4}
        if kind == "array":
            return [self.value(schema["items"], depth + 1) for _ in range(self.chance.randint(0, 3))]
        if kind == "integer":
            return self.chance.choice([0, 1, 7, 100, 10 ** 6])
        if kind == "number":
            return self.chance.choice([0, 0.5, 45.0, -3, 1e6])
        if kind == "boolean":
            return self.chance.random() < 0.5
        if kind == "null":
            return None
        return self.chance.choice(self.names)

    def broken(self, value):
        """The value with one place of it replaced."""
        if isinstance(value, dict) and value and self.chance.random() < 0.8:
            name = self.chance.choice(sorted(value))
            return {**value, name: self.broken(value[name])}
        if isinstance(value, list) and value and self.chance.random() < 0.8:
            at = self.chance.randrange(len(value))
            return [*value[:at], self.broken(value[at]), *value[at + 1:]]
        return self.chance.choice(ODD_JSON)


def calls():
    for path, methods in DOC["paths"].items():
        for method, call in methods.items():
            if call["operationId"] not in LEAVE_OUT:
                yield path, method.upper(), call


class Fuzz(unittest.TestCase):
    def setUp(self):
        self.served = Served()
        self.addCleanup(self.served.close)
        self.mara = Visitor(self.served)
        self.assertEqual(self.mara.enrol_first().status, 201)
        self.assertEqual(self.mara.sign_in("mara").status, 201)
        boiler = self.mara.get("/api/plant").json["boilers"][0]["boiler"]
        self.closing = self.mara.post("/api/closings", {"boiler": boiler}).json["closing"]
        self.names = [self.closing, boiler, "mara", "274913", "TG-1", "SP-SD", "gaskets", "45 bar",
                      "us-marine-ordinary", "0" * 64, "ab"]

    def address(self, chance, make, path, call):
        def part(found):
            if chance.random() < 0.1:
                return chance.choice(ODD)
            if found.group(1) == "kind":
                return chance.choice(["test-sheet.pdf", "walkdown.pdf", "labels.pdf", "x.pdf"])
            return self.closing if found.group(1) == "closing" else chance.choice(self.names)
        path = re.sub(r"\{(\w+)\}", part, path)
        items = []
        for parameter in call.get("parameters", []):
            if parameter["in"] == "query" and chance.random() < 0.3:
                value = make.value(parameter["schema"]) if chance.random() < 0.8 else chance.choice(ODD)
                items.append((parameter["name"], str(value).lower() if value in (True, False) else value))
        query = "&".join(f"{name}={self.quoted(value)}" for name, value in items)
        return self.quoted(path, "/") + ("?" + query if query else "")

    @staticmethod
    def quoted(text, safe=""):
        from urllib.parse import quote
        return quote(str(text), safe=safe, errors="surrogatepass")

    def body(self, chance, make, call):
        """Type and bytes."""
        content = call.get("requestBody", {}).get("content", {})
        if not content:
            return None, None
        kind = chance.choice(sorted(content))
        if kind != "application/json":
            return kind, bytes(chance.randrange(256) for _ in range(chance.randint(0, 200)))
        value = make.value(content[kind]["schema"])
        if chance.random() < 0.6:
            value = make.broken(value)
        data = json.dumps(value).encode()
        if chance.random() < 0.1:
            data = data[:chance.randint(0, len(data))]
        return kind, data

    def test_no_call_is_answered_by_500_and_the_program_lives_on(self):
        chance = random.Random(SEED)
        make = Maker(chance, self.names)
        table = list(calls())
        self.assertGreater(len(table), 25)
        counts = {}
        until = time.monotonic() + SECONDS
        while time.monotonic() < until:
            path, method, call = chance.choice(table)
            address = self.address(chance, make, path, call)
            kind, data = self.body(chance, make, call)
            answer = self.mara.call(method, address, data, content=kind)
            told = f"seed {SEED}: {method} {address} {str(data)[:300]} -> {answer.data[:300]}"
            counts[answer.status] = counts.get(answer.status, 0) + 1
            self.assertTrue(answer.status < 500, told)
            if answer.status >= 400:
                self.assertLessEqual({"code", "message", "problems"}, set(answer.json), told)
            if answer.status in (401, 423) and call["operationId"] != "sign_in":
                time.sleep(0.01)
            if self.mara.get("/api/me").json["person"] is None:
                self.mara.sign_in("mara")
        self.assertGreater(sum(counts.values()), 50, counts)
        self.assertGreater(len(counts), 4, counts)
        self.assertEqual(self.served.stop()[0], 0)
        self.assertNotIn("server.fault", self.served.requests())
        print(f"{sum(counts.values())} calls: {dict(sorted(counts.items()))}")


if __name__ == "__main__":
    main()
