"""Tests the served program from outside, with real sockets: what it answers to calls that are wrong,
how it bears clients that are slow or greedy, live updates, and its end."""
import json
import re
import signal
import socket
import ssl
import time
import unittest
import uuid

from support.harness import main
from support.served import SECRETS, Served, Visitor, sent
from support.wrong_calls import NOBODY, ORDINARY, TABLE


class Plant(unittest.TestCase):
    """One served program for all tests of a class: mara leads, ole is a hand on his own tablet."""

    @classmethod
    def setUpClass(cls):
        cls.served = Served()
        cls.addClassCleanup(cls.served.close)
        cls.mara, cls.ole = Visitor(cls.served, "one"), Visitor(cls.served, "two")
        assert cls.mara.enrol_first().status == 201
        assert cls.mara.sign_in("mara").status == 201
        cls.mara.let_in(cls.ole, "ole", "hand")

    def assert_refused(self, answer, status, code):
        """The one shape of an error, with that status and code."""
        self.assertEqual((answer.status, answer.code), (status, code), answer.data[:300])
        body = answer.json
        self.assertLessEqual(set(body), {"code", "message", "problems", "outstanding"})
        self.assertTrue(body["message"])
        for problem in body["problems"]:
            self.assertEqual(set(problem), {"code", "file", "line", "field", "found", "accepted",
                                            "message"})


class Bytes(Plant):
    """What is no HTTP, too large, or too slow."""

    def status_of(self, data, timeout=30):
        first = self.served.raw(data, timeout).split(b"\r\n")[0]
        return first.decode()

    def test_what_is_no_request_gets_400_and_the_end(self):
        for data in (b"\x16\x03\x01\x02\x00\x01\x00", b"HELLO\r\n\r\n", b"GET\r\n\r\n",
                     b"GET / HTTP/9.9\r\n\r\n", b"GET / HTTP/1.1\r\nno colon\r\n\r\n",
                     b"GET /\x00 HTTP/1.1\r\n\r\n",
                     b"POST /api/sessions HTTP/1.1\r\nContent-Length: x\r\n\r\n"):
            with self.subTest(data):
                self.assertIn(" 400 ", self.status_of(data))

    def test_a_head_above_16_kib_gets_431(self):
        data = b"GET / HTTP/1.1\r\nX: " + b"a" * 200000 + b"\r\n\r\n"
        self.assertIn(" 431 ", self.status_of(data))

    def test_a_body_above_1_mib_gets_413_before_it_is_sent(self):
        start = time.monotonic()
        for path in (b"/api/sessions", b"/api/people", b"/api/nothing"):
            self.assertIn(" 413 ", self.status_of(
                b"POST " + path + b" HTTP/1.1\r\nContent-Length: 9000000\r\n\r\n"))
        self.assertLess(time.monotonic() - start, 3)

    def test_a_body_in_chunks_is_bounded_too(self):
        chunk = b"10000\r\n" + b"a" * 65536 + b"\r\n"
        with self.served.socket() as connection:
            connection.sendall(b"POST /api/sessions HTTP/1.1\r\nTransfer-Encoding: chunked\r\n\r\n")
            try:
                for _ in range(100):
                    connection.sendall(chunk)
            except OSError:
                pass
            try:
                self.assertIn(b" 413 ", connection.recv(4096))
            except ConnectionResetError:
                pass  # it was cut while more was on the way

    def test_a_head_that_drips_is_cut_after_ten_seconds_and_holds_nobody(self):
        with self.served.socket() as slow:
            start = time.monotonic()
            slow.sendall(b"GET /api/health HTTP/1.1\r\n")
            slow.settimeout(1)
            cut = None
            while cut is None and time.monotonic() - start < 20:
                try:
                    slow.sendall(b"X: y\r\n")
                    if slow.recv(1) == b"":
                        cut = time.monotonic() - start
                except TimeoutError:
                    before = time.monotonic()
                    self.assertEqual(self.mara.get("/api/health").status, 200)
                    self.assertLess(time.monotonic() - before, 1)
                except OSError:
                    cut = time.monotonic() - start
            self.assertIsNotNone(cut)
            self.assertGreater(cut, 8)
            self.assertLess(cut, 13)

    def test_two_requests_in_one_piece_get_two_answers(self):
        data = b"GET /api/health HTTP/1.1\r\nHost: x\r\n\r\n" \
               b"GET /api/health HTTP/1.1\r\nHost: x\r\nConnection: close\r\n\r\n"
        self.assertEqual(self.served.raw(data).count(b"HTTP/1.1 200 OK"), 2)

    def test_a_head_alone_is_answered_without_a_body(self):
        answer = self.served.raw(b"HEAD /api/health HTTP/1.1\r\nConnection: close\r\n\r\n")
        head, _, body = answer.partition(b"\r\n\r\n")
        self.assertRegex(head.decode(), r"Content-Length: [1-9]")
        self.assertEqual(body, b"")

    def test_every_answer_is_guarded(self):
        for path in ("/api/health", "/api/nothing", "/nothing.js"):
            headers = self.mara.get(path).headers
            policy = headers["Content-Security-Policy"]
            self.assertNotIn("unsafe-inline", policy)
            self.assertIn("default-src 'none'", policy)
            self.assertIn("frame-ancestors 'none'", policy)
            self.assertEqual(headers["X-Content-Type-Options"], "nosniff")
            self.assertEqual(headers["Referrer-Policy"], "no-referrer")
            self.assertEqual(headers["Cache-Control"], "no-store")


class WrongCalls(Plant):
    """Calls that are wrong, each with the error that it must get."""

    @classmethod
    def setUpClass(cls):
        super().setUpClass()
        cls.nobody = Visitor(cls.served, "nobody")
        cls.boiler = cls.mara.get("/api/plant").json["boilers"][0]["boiler"]
        cls.closing = cls.mara.post("/api/closings", {"boiler": cls.boiler}).json["closing"]
        cls.node = [d["device"] for d in cls.mara.get("/api/devices").json["devices"]
                    if d["is_node"]][0]

    def test_every_wrong_call_gets_its_error(self):
        self.assertGreaterEqual(len(TABLE), 100)
        for who, method, path, body, status, code in TABLE:
            for name in ("closing", "node"):
                path = path.replace("{" + name + "}", getattr(self, name))
            if isinstance(body, dict):
                body = json.dumps(body).replace("{boiler}", self.boiler)
            with self.subTest(who=who, call=f"{method} {path}", body=str(body)[:60]):
                visitor = getattr(self, who)
                self.assert_refused(visitor.call(method, path, body), status, code)
                # A wrong secret counts; a right one lets the next trial be the first again.
                if code == "server.wrong_secret" and who == "mara":
                    self.assertEqual(self.mara.sign_in("mara").status, 201)
                    self.assertEqual(self.ole.sign_in("ole").status, 201)

    def test_a_sheet_is_issued_with_what_was_agreed_with_the_inspector(self):
        agreed = {**ORDINARY, "examination": "522 psi", "safety_valves_in_place_below": "30 bar"}
        self.assertEqual(self.mara.post(f"/api/closings/{self.closing}/sheet", agreed).status, 201)
        issued = self.mara.get(f"/api/closings/{self.closing}").json["sheet"]
        # 1 psi = 6894.757 Pa: NIST SP 811 (2008), appendix B.8.
        self.assertAlmostEqual(issued["examination_pressure_bar_gauge"], 522 * 0.06894757, places=5)
        self.assertEqual(issued["safety_valves_in_place_below_bar_gauge"], 30)

    def test_a_call_from_another_place_is_refused(self):
        for headers in ({"Origin": "https://elsewhere"}, {"Origin": "null"},
                        {"Sec-Fetch-Site": "cross-site"}):
            self.assert_refused(self.mara.post("/api/enrolment-codes", {}, headers=headers), 403,
                                "server.other_origin")

    def test_a_body_of_another_type_is_refused(self):
        for content in ("text/plain", "application/x-www-form-urlencoded", None):
            self.assert_refused(self.mara.call("POST", "/api/people", "{}", {"Content-Type": content}),
                                415, "server.wrong_type")

    def test_the_request_log_holds_no_secret(self):
        self.mara.sign_in("mara")
        log = self.served.requests()
        self.assertIn("POST /api/sessions", log)
        for secret in [*SECRETS.values(), self.served.code, *self.mara.cookies.values()]:
            self.assertNotIn(secret, log)


class Facts(Plant):
    """Facts that devices report."""

    @classmethod
    def setUpClass(cls):
        super().setUpClass()
        boiler = cls.mara.get("/api/plant").json["boilers"][0]["boiler"]
        cls.closing = cls.mara.post("/api/closings", {"boiler": boiler}).json["closing"]

    def remark(self, visitor, text="seen", **changed):
        return visitor.seal(self.closing, "remark.made", {"text": text}, **changed)

    def test_a_fact_is_stored_once_and_shown_as_a_sentence(self):
        fact = self.remark(self.ole, "first look")
        first = self.ole.report(self.closing, fact)
        self.assertEqual(first.status, 200, first.data)
        receipt = first.json["receipts"][0]
        self.assertFalse(receipt["doubled"])
        self.assertGreater(receipt["intake_no"], 0)
        again = self.ole.report(self.closing, fact).json["receipts"][0]
        self.assertEqual(again, {**receipt, "doubled": True})
        shown = self.mara.get(f"/api/closings/{self.closing}/facts?before=0&limit=1").json
        self.assertEqual(shown["facts"][0]["intake_no"], receipt["intake_no"])
        self.assertEqual(shown["facts"][0]["person_name"], "Ole")
        self.assertIn("first look", json.dumps(shown["facts"][0]))

    def test_the_feed_says_what_the_next_fact_must_name(self):
        self.ole.report(self.closing, self.remark(self.ole))
        feed = self.ole.get(f"/api/closings/{self.closing}/feed").json
        seq, digest = self.ole.feeds[self.closing]
        self.assertEqual((feed["device_seq"], feed["hash"]), (seq, digest.hex()))
        self.assertEqual([head["device_seq"] > 0 for head in feed["seen"]],
                         [True] * len(feed["seen"]))
        seen = [(bytes.fromhex(h["device"]), h["device_seq"], bytes.fromhex(h["hash"]))
                for h in feed["seen"]]
        answer = self.ole.report(self.closing, self.remark(self.ole, seen=seen))
        self.assertEqual(answer.json["receipts"][0]["put_aside"], "")

    def test_a_fact_of_an_unknown_kind_is_kept_and_shown_as_unreadable(self):
        fact = self.ole.seal(self.closing, "later.kind", {"x": 1})
        self.assertEqual(self.ole.report(self.closing, fact).status, 200)
        shown = self.ole.get(f"/api/closings/{self.closing}/facts?before=0&limit=1").json["facts"][0]
        self.assertFalse(shown["is_readable"])
        self.assertEqual(shown["kind"], "later.kind")

    def test_what_is_not_its_own_is_refused(self):
        other = Visitor(self.served, "stranger")
        other.person = "ole"
        stranger = self.remark(other)
        self.assert_refused(self.ole.report(self.closing, stranger), 403, "server.other_device")
        before = dict(self.ole.feeds)
        named = self.remark(self.ole, person="mara")
        self.assert_refused(self.ole.report(self.closing, named), 403, "server.other_person")
        elsewhere = self.remark(self.ole, scope_id=uuid.UUID(NOBODY).bytes)
        self.assert_refused(self.ole.report(self.closing, elsewhere), 400, "server.other_closing")
        self.ole.feeds = before
        self.assert_refused(self.ole.report(self.closing, sent(b"SWFACT" + bytes(40), b"", bytes(64))),
                            400, "server.not_a_fact")

    def test_a_wrong_signature_is_put_aside_and_said(self):
        before = dict(self.ole.feeds)
        fact = self.remark(self.ole)
        self.ole.feeds = before
        fact["signature_base64"] = sent(b"", b"", bytes(64))["signature_base64"]
        answer = self.ole.report(self.closing, fact)
        self.assertEqual(answer.json["receipts"][0]["put_aside"], "bad_signature")
        self.assertEqual(answer.json["receipts"][0]["intake_no"], 0)

    def test_the_site_sets_its_limits_and_they_are_a_fact_of_the_plant(self):
        self.assertFalse(self.ole.get("/api/site/limits").json["is_set"])
        limits = {"air_holds_s": 1800, "open_below_celsius": 50.0, "spring_hangers": False,
                  "source": "site rule 4"}
        self.assertEqual(self.mara.call("PUT", "/api/site/limits", limits).status, 200)
        said = self.ole.get("/api/site/limits").json
        self.assertEqual({key: said["limits"][key] for key in limits}, limits)

    def test_the_drawing_can_be_tapped(self):
        svg = self.ole.get(f"/api/closings/{self.closing}/drawing.svg").data.decode()
        kinds = set(re.findall(r'data-kind="(\w+)"', svg))
        self.assertEqual(kinds, {"part", "closure", "mounting"})
        self.assertNotIn("style=", svg)

    def test_many_facts_of_many_devices_are_all_there(self):
        for visitor in (self.mara, self.ole):
            facts = [self.remark(visitor, f"{i}") for i in range(50)]
            receipts = visitor.report(self.closing, *facts).json["receipts"]
            numbers = [receipt["intake_no"] for receipt in receipts]
            self.assertEqual(numbers, list(range(numbers[0], numbers[0] + 50)))

    def test_a_revoked_device_and_a_person_who_left_report_no_more(self):
        ida = Visitor(self.served, "ida")
        self.mara.let_in(ida, "ida", "pump_hand")
        self.assertEqual(ida.report(self.closing, self.remark(ida)).status, 200)
        self.assertEqual(self.mara.call("DELETE", "/api/people/ida").status, 200)
        self.assert_refused(ida.report(self.closing, self.remark(ida)), 401, "server.not_signed_in")
        self.assertEqual(self.mara.call("DELETE", "/api/devices/" + ida.key.device.hex()).status, 200)
        self.assert_refused(ida.report(self.closing, self.remark(ida)), 401, "server.revoked")
        self.assert_refused(ida.get("/api/people"), 401, "server.revoked")


class Follower:
    """A page that follows a closing's events."""

    def __init__(self, visitor, closing, last=None, after=None, receive_buffer=None):
        self.socket = socket.socket()
        if receive_buffer:
            self.socket.setsockopt(socket.SOL_SOCKET, socket.SO_RCVBUF, receive_buffer)
        self.socket.settimeout(25)
        self.socket.connect(("127.0.0.1", visitor.served.port))
        cookies = "; ".join(f"{k}={v}" for k, v in visitor.cookies.items())
        query = "" if after is None else f"?after={after}"
        header = "" if last is None else f"Last-Event-ID: {last}\r\n"
        self.socket.sendall((f"GET /api/closings/{closing}/events{query} HTTP/1.1\r\nHost: x\r\n"
                             f"Cookie: {cookies}\r\n{header}\r\n").encode())
        self.data = b""

    def until(self, text):
        while text not in self.data:
            piece = self.socket.recv(65536)
            if not piece:
                raise AssertionError(f"it ended before {text}: {self.data[-300:]}")
            self.data += piece
        return self.data

    def event(self):
        """The next event: name, id, data."""
        head, _, rest = self.until(b"event:").partition(b"event:")
        number = re.findall(rb"id: (\d+)\n", head)[-1]
        self.data = rest
        name, _, self.data = self.until(b"\n\n").partition(b"\n\n")
        kind, _, data = name.partition(b"\ndata: ")
        return kind.strip().decode(), int(number), json.loads(data)

    def close(self):
        self.socket.close()


class Events(Plant):
    """Live updates."""

    @classmethod
    def setUpClass(cls):
        super().setUpClass()
        boiler = cls.mara.get("/api/plant").json["boilers"][0]["boiler"]
        begun = cls.mara.post("/api/closings", {"boiler": boiler}).json
        cls.closing = begun["closing"]

    def follow(self, **more):
        follower = Follower(self.mara, self.closing, **more)
        self.addCleanup(follower.close)
        follower.until(b"retry: 2000\n\n")
        return follower

    def report(self):
        fact = self.ole.seal(self.closing, "remark.made", {"text": "seen"})
        return self.ole.report(self.closing, fact).json["receipts"][0]["intake_no"]

    def test_a_fact_is_told_to_all_within_a_second(self):
        followers = [self.follow() for _ in range(20)]
        start = time.monotonic()
        number = self.report()
        for follower in followers:
            kind, last, data = follower.event()
            self.assertEqual((kind, last, data["intake_no"]), ("facts", number, number))
            self.assertEqual(data["closing"], self.closing)
            self.assertIn("stage", data)
        self.assertLess(time.monotonic() - start, 1)

    def test_a_step_without_its_clearance_alarms_on_another_page(self):
        follower = self.follow()
        start = time.monotonic()
        fact = self.ole.seal(self.closing, "raising.started", {"to_bar_gauge": 45.0})
        told = self.ole.report(self.closing, fact).json
        kind, _, data = follower.event()
        self.assertLess(time.monotonic() - start, 1)
        self.assertEqual(kind, "facts")
        self.assertTrue(told["alarms"])
        self.assertEqual([alarm["name"] for alarm in data["alarms"]],
                         [alarm["name"] for alarm in told["alarms"]])
        self.assertTrue(all(alarm["text"] for alarm in data["alarms"]))

    def test_who_comes_back_is_told_what_came_meanwhile(self):
        first = self.report()
        follower = self.follow(last=first)
        follower.close()
        second = self.report()
        third = self.report()
        self.assertEqual(self.follow(last=first).event()[:2], ("facts", third))
        self.assertEqual(self.follow(after=second).event()[:2], ("facts", third))

    def test_who_knows_more_than_there_is_is_told_to_read_anew(self):
        number = self.report()
        kind, last, data = self.follow(last=number + 1000).event()
        self.assertEqual((kind, last, data), ("resync", number, {"intake_no": number}))

    def test_a_sign_of_life_comes_every_fifteen_seconds(self):
        follower = self.follow()
        start = time.monotonic()
        follower.until(b": ping\n\n")
        self.assertLess(time.monotonic() - start, 17)
        self.assertGreater(time.monotonic() - start, 10)

    def test_who_does_not_read_holds_nobody(self):
        stuck = [Follower(self.mara, self.closing, receive_buffer=1024) for _ in range(20)]
        for follower in stuck:
            self.addCleanup(follower.close)
        follower = self.follow()
        for _ in range(30):
            start = time.monotonic()
            number = self.report()
            while follower.event()[1] < number:
                pass
            self.assertLess(time.monotonic() - start, 1)

    def test_who_has_gone_is_not_counted(self):
        before = self.mara.get("/api/health").json["watching"]
        followers = [self.follow() for _ in range(5)]
        self.assertEqual(self.mara.get("/api/health").json["watching"], before + 5)
        for follower in followers:
            follower.close()
        time.sleep(0.5)
        self.assertLessEqual(self.mara.get("/api/health").json["watching"], before)


class Connections(unittest.TestCase):
    def test_one_address_has_so_many_connections_and_no_more(self):
        served = Served("--connections-per-address", "20")
        self.addCleanup(served.close)
        held = [served.socket() for _ in range(20)]
        time.sleep(0.3)
        self.assertIn(b" 503 ", served.raw(b""))
        for connection in held:
            connection.close()
        time.sleep(0.3)
        self.assertEqual(Visitor(served).get("/api/health").status, 200)

    def test_a_flood_of_half_heads_holds_nobody(self):
        served = Served()
        self.addCleanup(served.close)
        flood = [served.socket() for _ in range(400)]
        for connection in flood:
            connection.sendall(b"GET / HTTP/1.1\r\nX:")
        start = time.monotonic()
        self.assertEqual(Visitor(served).get("/api/health").status, 200)
        self.assertLess(time.monotonic() - start, 1)
        for connection in flood:
            connection.close()


class End(unittest.TestCase):
    def test_it_ends_when_told_with_followers_attached_and_says_so(self):
        for how in (signal.SIGTERM, signal.SIGINT):
            with self.subTest(how):
                served = Served()
                self.addCleanup(served.close)
                mara = Visitor(served)
                mara.enrol_first()
                mara.sign_in("mara")
                boiler = mara.get("/api/plant").json["boilers"][0]["boiler"]
                closing = mara.post("/api/closings", {"boiler": boiler}).json["closing"]
                followers = [Follower(mara, closing) for _ in range(50)]
                for follower in followers:
                    follower.until(b"retry")
                idle = [served.socket() for _ in range(5)]
                code, seconds = served.stop(how)
                self.assertEqual(code, 0)
                self.assertLess(seconds, 6)
                for connection in [*idle, *(follower.socket for follower in followers)]:
                    connection.close()

    def test_what_was_there_is_there_again(self):
        first = Served()
        mara = Visitor(first)
        mara.enrol_first()
        mara.sign_in("mara")
        boiler = mara.get("/api/plant").json["boilers"][0]["boiler"]
        closing = mara.post("/api/closings", {"boiler": boiler}).json["closing"]
        number = mara.report(closing, mara.seal(closing, "remark.made",
                                                {"text": "seen"}))
        self.assertEqual(number.status, 200, number.data)
        self.assertEqual(first.stop()[0], 0)
        again = Served(folder=first.folder)
        self.addCleanup(first.close)
        self.addCleanup(again.close)
        mara.served = again
        self.assertEqual(mara.get("/api/me").json["person"]["who"], "mara")
        view = mara.get(f"/api/closings/{closing}").json
        self.assertEqual(view["intake_no"], number.json["receipts"][0]["intake_no"])


class Tls(unittest.TestCase):
    def test_a_certificate_is_made_and_good_for_this_machine(self):
        served = Served("--tls")
        self.addCleanup(served.close)
        self.assertEqual(served.scheme, "https")
        certificate = served.folder / "plant.steamworthy.cert"
        self.assertEqual((served.folder / "plant.steamworthy.cert.key").stat().st_mode & 0o777, 0o600)
        context = ssl.create_default_context(cafile=str(certificate))
        with socket.create_connection(("127.0.0.1", served.port)) as plain:
            with context.wrap_socket(plain, server_hostname="localhost") as secure:
                shown = ":".join(f"{b:02X}" for b in __import__("hashlib").sha256(
                    secure.getpeercert(binary_form=True)).digest())
                self.assertIn(shown, served.said)
                self.assertIn(secure.version(), ("TLSv1.2", "TLSv1.3"))
                secure.sendall(b"GET /api/health HTTP/1.1\r\nConnection: close\r\n\r\n")
                self.assertIn(b"200 OK", secure.recv(4096))
        old = ssl.SSLContext(ssl.PROTOCOL_TLS_CLIENT)
        old.check_hostname, old.verify_mode = False, ssl.CERT_NONE
        with self.assertWarns(DeprecationWarning):
            old.maximum_version = ssl.TLSVersion.TLSv1_1
        with socket.create_connection(("127.0.0.1", served.port)) as plain:
            with self.assertRaises(OSError):
                old.wrap_socket(plain)

    def test_plain_http_is_not_spoken_where_others_can_listen(self):
        served = Served("--address", "0.0.0.0")
        self.addCleanup(served.close)
        self.assertEqual(served.scheme, "https")


if __name__ == "__main__":
    main()
