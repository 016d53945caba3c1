"""A served program for tests: started on a free port with a store of its own, and stopped; and
visitors who enrol a device, sign in, and report facts that they have signed."""
import base64
import hashlib
import http.client
import json
import os
import pathlib
import re
import shutil
import signal
import socket
import subprocess
import tempfile
import time
import uuid

from support import record
from support.harness import PROGRAM, ROOT

SECRETS = {"mara": "274913", "ole": "815302", "ida": "495817"}


def program():
    """The release program; another one where the environment names it."""
    return os.environ.get("STEAMWORTHY_PROGRAM", str(PROGRAM))


class Served:
    def __init__(self, *options, folder=None):
        self.folder = pathlib.Path(folder or tempfile.mkdtemp(prefix="steamworthy_server_"))
        self.is_own_folder = folder is None
        self.log = open(self.folder / "requests.log", "ab")
        self.process = subprocess.Popen(
            [program(), "serve", str(self.folder / "plant.steamworthy"), "--new", "--port", "0",
             "--boiler", str(ROOT / "examples/watertube.toml"), *options],
            stdin=subprocess.DEVNULL, stdout=subprocess.PIPE, stderr=self.log, text=True)
        self.said = ""
        while "/enrol#" not in self.said:
            line = self.process.stdout.readline()
            if not line:
                self.log.close()
                raise AssertionError("did not start: " + self.said
                                     + (self.folder / "requests.log").read_text())
            self.said += line
        self.scheme, self.port = re.search(r"(https?)://[^\s]*?:(\d+)/", self.said).groups()
        self.port = int(self.port)
        self.code = re.search(r"/enrol#(\w+)", self.said).group(1)

    def stop(self, how=signal.SIGTERM, within=10):
        """Ends the program; its exit code and how long it took."""
        start = time.monotonic()
        if self.process.poll() is None:
            self.process.send_signal(how)
        code = self.process.wait(within)
        self.process.stdout.close()
        self.log.close()
        return code, time.monotonic() - start

    def requests(self):
        return (self.folder / "requests.log").read_text()

    def close(self):
        if self.process.poll() is None:
            self.process.kill()
            self.process.wait()
        self.process.stdout.close()
        self.log.close()
        if self.is_own_folder:
            shutil.rmtree(self.folder)

    def socket(self, timeout=30):
        return socket.create_connection(("127.0.0.1", self.port), timeout)

    def raw(self, data, timeout=30):
        """Sends bytes as they are; all that comes until the other end closes."""
        with self.socket(timeout) as connection:
            connection.sendall(data)
            answer = b""
            while True:
                piece = connection.recv(65536)
                if not piece:
                    return answer
                answer += piece


class Answer:
    def __init__(self, response, data):
        self.status, self.headers, self.data = response.status, response.headers, data

    @property
    def json(self):
        return json.loads(self.data)

    @property
    def code(self):
        return self.json.get("code") if self.data[:1] == b"{" else None


class Visitor:
    """Somebody at a page: cookies, a key, and the feeds of the facts that the device has made."""

    def __init__(self, served, name="one"):
        self.served, self.key, self.cookies = served, record.Key("server test " + name), {}
        self.feeds = {}
        self.person = ""

    def call(self, method, path, body=None, headers=None, content="application/json"):
        connection = http.client.HTTPConnection("127.0.0.1", self.served.port, timeout=60)
        send = dict(headers or {})
        if body is not None:
            if not isinstance(body, (bytes, str)):
                body = json.dumps(body)
            send.setdefault("Content-Type", content)
        if self.cookies:
            send["Cookie"] = "; ".join(f"{k}={v}" for k, v in self.cookies.items())
        try:
            connection.request(method, path, body, {k: v for k, v in send.items() if v is not None})
            response = connection.getresponse()
            data = response.read()
        finally:
            connection.close()
        for cookie in response.headers.get_all("Set-Cookie") or []:
            name, _, value = cookie.split(";")[0].partition("=")
            self.cookies[name] = value
        return Answer(response, data)

    def get(self, path, **more):
        return self.call("GET", path, **more)

    def post(self, path, body=None, **more):
        return self.call("POST", path, {} if body is None else body, **more)

    def enrol(self, code, first_person=None):
        body = {"code": code, "device_name": "tablet", "public_key": self.key.public.hex(),
                "signature": self.key.sign(b"steamworthy enrolment 1\n" + code.encode()).hex()}
        if first_person:
            body["first_person"] = first_person
        return self.post("/api/enrolments", body)

    def enrol_first(self):
        return self.enrol(self.served.code, {"who": "mara", "name": "Mara Lind",
                                             "roles": ["lead_hand", "engineer"],
                                             "secret": SECRETS["mara"]})

    def sign_in(self, who, secret=None):
        self.person = who
        return self.post("/api/sessions", {"person": who, "secret": secret or SECRETS[who]})

    def let_in(self, other, who, *roles):
        """Enrols another person and their device, and signs them in."""
        answer = self.post("/api/people", {"who": who, "name": who.title(), "roles": list(roles),
                                           "secret": SECRETS[who]})
        assert answer.status == 201, answer.data
        code = self.call("POST", "/api/enrolment-codes").json["code"]
        assert other.enrol(code).status == 201
        assert other.sign_in(who).status == 201

    def seal(self, closing, kind, body, person=None, **changed):
        """A fact as this device makes it, ready to be reported."""
        seq, prev = self.feeds.get(closing, (0, bytes(32)))
        now = int(time.time() * 1000)
        fact = {"id": uuid7(now), "scope": 2, "scope_id": uuid.UUID(closing).bytes,
                "device": self.key.device, "device_seq": seq + 1, "prev_hash": prev, "seen": [],
                "person": self.person if person is None else person, "kind": kind,
                "kind_version": 1, "happened_at_ms": now, "happened_precision_ms": 1000,
                "recorded_at_ms": now, "utc_offset_min": 0, "blobs": [],
                "body": json.dumps(body).encode()}
        fact.update(changed)
        data = record.write_fact(fact)
        self.feeds[closing] = (fact["device_seq"], hashlib.sha256(data).digest())
        return sent(data, fact["body"], self.key.sign(data))

    def report(self, closing, *sealed):
        return self.post(f"/api/closings/{closing}/facts", {"facts": list(sealed)})


def sent(data, body, signature):
    """Sealed bytes as the API takes them."""
    header = data[:len(data) - len(body) - 4]
    return {"header_base64": base64.b64encode(header).decode(),
            "body_base64": base64.b64encode(body).decode(),
            "signature_base64": base64.b64encode(signature).decode()}


def uuid7(now_ms):
    random = bytearray(os.urandom(10))
    random[0] = random[0] & 0x0f | 0x70
    random[2] = random[2] & 0x3f | 0x80
    return now_ms.to_bytes(6, "big") + bytes(random)
